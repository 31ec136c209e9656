/**
 * The syntax tree: what a `.rod` text says, before it means anything.
 *
 * Every node carries a half-open span of UTF-16 offsets that is finite, lies inside the text and holds the spans of
 * its children. A tree exists for every text, however broken; what could not be read is a `BadNode`.
 */

/** Half-open range of UTF-16 code units: `start` is in it, `end` is not. */
export interface Span {
	readonly start: number;
	readonly end: number;
}

/** Units that may stand after a number. `none` = the number stands bare and takes its meaning from its place. */
export type Unit =
	| "none"
	| "in"
	| "ft"
	| "ft-in"
	| "mm"
	| "cm"
	| "m"
	| "deg"
	| "lb"
	| "oz"
	| "kg"
	| "g"
	| "F"
	| "C"
	| "percent"
	| "gauge";

/** A number with its unit. The value is exact: `numerator / denominator` in that unit (`5 ft 2 in` is 62 `ft-in` inches). */
export interface MeasureNode {
	readonly kind: "measure";
	readonly span: Span;
	readonly numerator: bigint;
	/** Positive. A literal with a zero denominator (`1/0`) reads as 0/1 and brings an error of its own. */
	readonly denominator: bigint;
	readonly unit: Unit;
	/** As it was typed. */
	readonly text: string;
}

/** A screw or biscuit size: `#8`. */
export interface SizeNumberNode {
	readonly kind: "size-number";
	readonly span: Span;
	readonly number: number;
}

export interface TextNode {
	readonly kind: "text";
	readonly span: Span;
	/** Without the quotes, escapes resolved. */
	readonly value: string;
}

export interface NameNode {
	readonly kind: "name";
	readonly span: Span;
	readonly text: string;
}

/** `width`, `case.front.edges`; a word of the language (`from`, `up`) is a path of one segment, too. */
export interface PathNode {
	readonly kind: "path";
	readonly span: Span;
	readonly segments: readonly NameNode[];
}

/** `max(a, b)`: a name with a bracket that touches it. */
export interface CallNode {
	readonly kind: "call";
	readonly span: Span;
	readonly callee: NameNode;
	readonly args: readonly Expression[];
}

export interface UnaryNode {
	readonly kind: "unary";
	readonly span: Span;
	readonly operator: "+" | "-";
	readonly operand: Expression;
}

export interface BinaryNode {
	readonly kind: "binary";
	readonly span: Span;
	readonly operator: "+" | "-" | "*" | "/";
	readonly operatorSpan: Span;
	readonly left: Expression;
	readonly right: Expression;
}

export interface CompareNode {
	readonly kind: "compare";
	readonly span: Span;
	readonly operator: "<=" | ">=" | "==" | "!=" | "<" | ">";
	readonly operatorSpan: Span;
	readonly left: Expression;
	readonly right: Expression;
}

/** `a x b x c`: sizes side by side, never a product. Two or more. */
export interface CrossNode {
	readonly kind: "cross";
	readonly span: Span;
	readonly sizes: readonly Expression[];
}

/** `a, b, c`: two or more. */
export interface ListNode {
	readonly kind: "list";
	readonly span: Span;
	readonly elements: readonly Expression[];
}

/** `( … )` */
export interface GroupNode {
	readonly kind: "group";
	readonly span: Span;
	readonly inner: Expression;
}

/** What could not be read; an error with the same place stands in the list of errors. */
export interface BadNode {
	readonly kind: "bad";
	readonly span: Span;
}

export type Expression =
	| MeasureNode
	| SizeNumberNode
	| TextNode
	| PathNode
	| CallNode
	| UnaryNode
	| BinaryNode
	| CompareNode
	| CrossNode
	| ListNode
	| GroupNode
	| BadNode;

/** The `=` of `given width = 54`. */
export interface EqualsNode {
	readonly kind: "equals";
	readonly span: Span;
}

/** One of the things that stand side by side in a statement. */
export type Item = Expression | EqualsNode;

export interface Comment {
	/** From the first slash to the end of the line, the line break not in it. */
	readonly span: Span;
	/** `///` */
	readonly doc: boolean;
	/** Nothing but blanks before it on its line. */
	readonly ownLine: boolean;
	/** Without the slashes and one leading blank. */
	readonly text: string;
}

export interface Block {
	readonly kind: "block";
	/** From `{` to `}`, or to where the missing `}` was assumed. */
	readonly span: Span;
	readonly statements: readonly Statement[];
	/** The closing brace stands in the text. */
	readonly closed: boolean;
}

/**
 * One fact: a head word, what stands beside it, and a block or none. The tree knows no constructs: which heads there are
 * and what may follow them is the business of `grammar/table`.
 */
export interface Statement {
	readonly kind: "statement";
	readonly span: Span;
	/** The line without its block. */
	readonly headline: Span;
	/** The first item if it is a plain word, else an empty string. */
	readonly head: string;
	readonly headSpan: Span;
	/** All items, the head among them. */
	readonly items: readonly Item[];
	readonly block: Block | undefined;
	/** `///` lines that stand directly before it, joined by line breaks; empty if none. */
	readonly doc: string;
}

export interface FileNode {
	readonly kind: "file";
	readonly span: Span;
	readonly statements: readonly Statement[];
	/** In order of place; not part of the statements. */
	readonly comments: readonly Comment[];
}

export type Node = FileNode | Block | Statement | Item | NameNode;

/** A replacement of `span` by `text`. */
export interface Edit {
	readonly span: Span;
	readonly text: string;
}

/** Something wrong with the text itself. */
export interface SyntaxFault {
	/** Stable, kebab-case. */
	readonly id: string;
	readonly severity: "error" | "warning" | "hint";
	readonly span: Span;
	/** One line: what is wrong and what would mend it. */
	readonly message: string;
	/** Mechanical mend, where there is one. */
	readonly fix?: { readonly title: string; readonly edits: readonly Edit[] };
}

export interface ParseResult {
	readonly tree: FileNode;
	readonly faults: readonly SyntaxFault[];
	/** Each brace of the text has its partner: nothing had to be read by the indentation. */
	readonly balanced: boolean;
}
