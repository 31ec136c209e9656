// The words of a text by what they mean, for colouring. Read from the tree and the table, so that colours are there while
// other lines are broken and nothing waits for the evaluation; worked out for each statement of the file once, and kept as
// long as the statement is the same object, so that a keystroke colours anew what it changed.

import {
	type Comment,
	type Construct,
	type ContextId,
	constructAt,
	type FileNode,
	type Filled,
	type Form,
	type FormElement,
	fill,
	type Item,
	type MeasureNode,
	type NameNode,
	type PathNode,
	phraseWords,
	type Span,
	type Statement,
} from "../../grammar/index.ts";
import {
	modifierBits,
	type TokenTypeName,
	typeNumber,
	typeOfDeclared,
} from "./support/tokens/legend.ts";
import {
	declaredNames,
	type Named,
	namedBy,
	type Scope,
	scopeOf,
} from "./support/tokens/scope.ts";

/** Start (from the start of the group), length, number of the type, bits of the modifiers. */
export const numbersPerToken = 4;

/** Tokens that stand together, in order of place; none crosses a line. */
export interface TokenGroup {
	/** Offset in the text that the tokens of the group are counted from. */
	readonly start: number;
	/** As long as this is the same object, so is what it says: to keep what is made of it. */
	readonly tokens: readonly number[];
}

/** What a `use` line brings: supplies (fasteners, coatings) are found by their size or kind, so they need no mention. */
export type Imported = "material" | "supply" | "component";

/** What a name that a `use` line brings is in the file that it comes from; undefined where that is not known. */
export type ImportKind = (name: string, path: string) => Imported | undefined;

/** All words of a text that have a colour by meaning, in order of place. */
export function semanticTokens(
	tree: FileNode,
	importKind: ImportKind = () => undefined,
): readonly TokenGroup[] {
	const file = fileScope(tree, importKind);
	const groups: TokenGroup[] = [];
	const comments = new CommentReader(tree.comments);
	for (const statement of tree.statements) {
		const { span } = statement;
		const before = comments.upTo(span.start);
		if (before) groups.push(before);
		const within = comments.take(span.end);
		groups.push({ start: span.start, tokens: kept(statement, file, within) });
	}
	const last = comments.upTo(Number.POSITIVE_INFINITY);
	if (last) groups.push(last);
	return groups;
}

/** What lies in a part of the text; a token that it cuts is taken whole. */
export function tokensWithin(
	groups: readonly TokenGroup[],
	{ start: from, end: to }: Span,
): readonly TokenGroup[] {
	return groups.flatMap((group) => {
		const { start, tokens } = group;
		const last = tokens.length - numbersPerToken;
		const endOf = (at: number): number =>
			start + (tokens[at] as number) + (tokens[at + 1] as number);
		if (last < 0 || start + (tokens[0] as number) >= to) return [];
		if (endOf(last) <= from) return [];
		const inside: number[] = [];
		for (let at = 0; at <= last; at += numbersPerToken) {
			if (endOf(at) > from && start + (tokens[at] as number) < to)
				inside.push(...tokens.slice(at, at + numbersPerToken));
		}
		return inside.length === tokens.length
			? [group]
			: [{ start, tokens: inside }];
	});
}

const kindsOfTrees = new WeakMap<FileNode, ReadonlyMap<string, Imported>>();

/** What another file may take from this one. */
export function declaredKinds(tree: FileNode): ReadonlyMap<string, Imported> {
	const known = kindsOfTrees.get(tree);
	if (known) return known;
	const kinds = new Map<string, Imported>();
	for (const statement of tree.statements) {
		const isSupply =
			statement.head === "fastener" || statement.head === "coating";
		for (const [name, { kind }] of summaryOf(statement).declared) {
			if (kind === "component") kinds.set(name, "component");
			else if (kind === "material")
				kinds.set(name, isSupply ? "supply" : "material");
		}
	}
	kindsOfTrees.set(tree, kinds);
	return kinds;
}

interface FileScope {
	readonly names: Scope;
	/** The same object for two texts in which the statements see the same names. */
	readonly key: NamesKey;
	/** Whether anything but that statement needs the name. */
	readonly uses: (name: string, besides: Statement) => boolean;
}

interface NamesKey {
	readonly text: string;
}

/** Keys of the files at hand, the newest last: comparing thousands of statements by the text of it would take longer than reading them. */
const keys: NamesKey[] = [];
const mostKeys = 16;

function keyOf(text: string): NamesKey {
	const known = keys.find((one) => one.text === text);
	if (known) return known;
	const made = { text };
	keys.push(made);
	if (keys.length > mostKeys) keys.shift();
	return made;
}

interface Kept {
	readonly key: NamesKey;
	/** Which names of a `use` line are used. */
	readonly used: string;
	readonly tokens: readonly number[];
}

const keptTokens = new WeakMap<Statement, Kept>();

function kept(
	statement: Statement,
	file: FileScope,
	comments: readonly Comment[],
): readonly number[] {
	// What a `use` line is coloured as hangs on the lines that use its names; there are few of them.
	const used = statement.head === "use" ? usedKey(statement, file) : "";
	const { key } = file;
	const known = keptTokens.get(statement);
	if (known?.key === key && known.used === used) return known.tokens;
	const writer = new Writer(statement.span.start);
	new Reader(writer, file).statement(statement, "file", [file.names]);
	for (const comment of comments) writer.comment(comment);
	const tokens = writer.sorted();
	keptTokens.set(statement, { key, used, tokens });
	return tokens;
}

function usedKey(statement: Statement, file: FileScope): string {
	const row = constructAt("file", statement.head);
	return (row ? declaredNames(statement, row) : [])
		.map(({ text }) => (file.uses(text, statement) ? "+" : "-"))
		.join("");
}

/** Names that a statement of the file declares, and all words in it that may mean one: kept with it. */
interface Summary {
	readonly declared: Scope;
	readonly words: ReadonlySet<string>;
}

const summaries = new WeakMap<Statement, Summary>();

function summaryOf(statement: Statement): Summary {
	const known = summaries.get(statement);
	if (known) return known;
	const declared = scopeOf(
		{
			kind: "block",
			span: statement.span,
			statements: [statement],
			closed: true,
		},
		"file",
	);
	const words = new Set<string>();
	collectWords(statement, "file", words);
	const made = { declared, words };
	summaries.set(statement, made);
	return made;
}

/** First words of all paths, those that a line declares left out. */
function collectWords(
	statement: Statement,
	context: ContextId | undefined,
	words: Set<string>,
): void {
	const row = context && constructAt(context, statement.head);
	const own = new Set(row?.declares ? declaredNames(statement, row) : []);
	const visit = (item: Item): void => {
		switch (item.kind) {
			case "path": {
				const [first] = item.segments;
				if (first && !own.has(first)) words.add(first.text);
				return;
			}
			case "call":
				item.args.forEach(visit);
				return;
			case "unary":
				visit(item.operand);
				return;
			case "binary":
			case "compare":
				visit(item.left);
				visit(item.right);
				return;
			case "cross":
				item.sizes.forEach(visit);
				return;
			case "list":
				item.elements.forEach(visit);
				return;
			case "group":
				visit(item.inner);
				return;
		}
	};
	for (const item of statement.head === ""
		? statement.items
		: statement.items.slice(1))
		visit(item);
	for (const inner of statement.block?.statements ?? [])
		collectWords(inner, row?.block, words);
}

function fileScope(tree: FileNode, importKind: ImportKind): FileScope {
	const names = new Map<string, Named>();
	const supplies = new Set<string>();
	const all = tree.statements.map(summaryOf);
	tree.statements.forEach((statement, index) => {
		const path = statement.items.at(-1);
		for (const [name, named] of (all[index] as Summary).declared) {
			if (names.has(name)) continue;
			const brings =
				named.kind === "import" && path?.kind === "text"
					? importKind(name, path.value)
					: undefined;
			const type = brings && typeOfImported[brings];
			names.set(name, type ? { ...named, type } : named);
			// Of what is not found nothing is known, either.
			if (named.kind === "import" && (!brings || brings === "supply"))
				supplies.add(name);
		}
	});
	return {
		names,
		key: keyOf(
			JSON.stringify(
				[...names].map(([name, { type, members }]) => [
					name,
					type,
					...(members?.keys() ?? []),
				]),
			),
		),
		uses: (name, besides) =>
			supplies.has(name) ||
			tree.statements.some(
				(statement, index) =>
					statement !== besides && (all[index] as Summary).words.has(name),
			),
	};
}

const typeOfImported = {
	material: typeOfDeclared.material,
	supply: typeOfDeclared.material,
	component: typeOfDeclared.component,
} as const;

const phrases: ReadonlySet<string> = new Set(phraseWords());

/** Puts tokens down as numbers, counted from the start of their group. */
class Writer {
	private readonly start: number;
	private readonly rows: [number, number, number, number][] = [];

	constructor(start: number) {
		this.start = start;
	}

	put({ start, end }: Span, type: TokenTypeName, modifiers = 0): void {
		if (end > start)
			this.rows.push([
				start - this.start,
				end - start,
				typeNumber[type],
				modifiers,
			]);
	}

	comment({ span, doc }: Comment): void {
		this.put(span, "comment", doc ? documentation : 0);
	}

	sorted(): readonly number[] {
		return this.rows.sort((a, b) => a[0] - b[0]).flat();
	}
}

const declaration = modifierBits("declaration");
const documentation = modifierBits("documentation");
const builtIn = modifierBits("readonly", "defaultLibrary");
const unused = modifierBits("unused");
const readOnly = modifierBits("readonly");

/** Comments in order, those between statements apart from those within. */
class CommentReader {
	private readonly comments: readonly Comment[];
	private next = 0;

	constructor(comments: readonly Comment[]) {
		this.comments = comments;
	}

	take(end: number): readonly Comment[] {
		const from = this.next;
		while (
			this.next < this.comments.length &&
			(this.comments[this.next] as Comment).span.start < end
		)
			this.next++;
		return this.comments.slice(from, this.next);
	}

	/** Those before an offset, as a group of their own; undefined for none. */
	upTo(end: number): TokenGroup | undefined {
		const taken = this.take(end);
		const [first] = taken;
		if (!first) return undefined;
		const writer = new Writer(first.span.start);
		for (const comment of taken) writer.comment(comment);
		return { start: first.span.start, tokens: writer.sorted() };
	}
}

/** Names in force, inner ones first. */
type Scopes = readonly Scope[];

class Reader {
	private readonly out: Writer;
	private readonly file: FileScope;
	/** Words of the outermost block at hand: a size that none of them names is used by nothing. */
	private words: ReadonlySet<string> = new Set();

	constructor(out: Writer, file: FileScope) {
		this.out = out;
		this.file = file;
	}

	statement(
		statement: Statement,
		context: ContextId | undefined,
		scopes: Scopes,
	): void {
		const row = context && constructAt(context, statement.head);
		if (context === "file") this.words = summaryOf(statement).words;
		if (statement.head !== "") this.out.put(statement.headSpan, "keyword");
		this.headline(statement, row, context, scopes);
		const { block } = statement;
		if (!block) return;
		const own = ownNames(statement, row, context, scopes);
		const inner = own && own.size > 0 ? [own, ...scopes] : scopes;
		for (const one of block.statements) this.statement(one, row?.block, inner);
	}

	private headline(
		statement: Statement,
		row: Construct | undefined,
		context: ContextId | undefined,
		scopes: Scopes,
	): void {
		const result = row && fill(statement, row);
		const filled = result?.ok ? result.filled : undefined;
		const { made, chosen, values } = rolesOf(filled, statement, row);
		const top = (item: Item): void => {
			if (item.kind === "list") {
				item.elements.forEach(top);
				return;
			}
			const [first] = item.kind === "path" ? item.segments : [];
			if (!first || item.kind !== "path") this.value(item, scopes);
			else if (made.has(first)) {
				if (row && context) this.made(first, statement, row, context);
			} else if (chosen.has(first)) this.out.put(first.span, "modifier");
			else if (!filled || values.has(item)) this.path(item, first, scopes);
			else this.out.put(first.span, "modifier");
		};
		for (const item of statement.head === ""
			? statement.items
			: statement.items.slice(1)) {
			top(item);
		}
	}

	private value(item: Item, scopes: Scopes): void {
		switch (item.kind) {
			case "measure":
				this.measure(item);
				return;
			case "size-number":
				this.out.put(item.span, "number");
				return;
			case "text":
				this.out.put(item.span, "string");
				return;
			case "equals":
				this.out.put(item.span, "operator");
				return;
			case "path": {
				const [first] = item.segments;
				if (first) this.path(item, first, scopes);
				return;
			}
			case "call":
				this.out.put(item.callee.span, "function", builtIn);
				for (const one of item.args) this.value(one, scopes);
				return;
			case "unary":
				this.value(item.operand, scopes);
				return;
			case "binary":
			case "compare":
				this.value(item.left, scopes);
				this.out.put(item.operatorSpan, "operator");
				this.value(item.right, scopes);
				return;
			case "cross":
				for (const one of item.sizes) this.value(one, scopes);
				return;
			case "list":
				for (const one of item.elements) this.value(one, scopes);
				return;
			case "group":
				this.value(item.inner, scopes);
				return;
		}
	}

	/** `5 ft 2 in`: numbers and units in turn. */
	private measure({ text, span }: MeasureNode): void {
		let from = 0;
		const put = (end: number, type: TokenTypeName): void => {
			const part = text.slice(from, end);
			const start = span.start + from + part.length - part.trimStart().length;
			this.out.put({ start, end: start + part.trim().length }, type);
			from = end;
		};
		for (const match of text.matchAll(unitText)) {
			put(match.index, "number");
			put(match.index + match[0].length, "unit");
		}
		put(text.length, "number");
	}

	/** A name where it is made, or where a given is set. */
	private made(
		{ text, span }: NameNode,
		statement: Statement,
		row: Construct,
		context: ContextId,
	): void {
		if (!row.declares) {
			this.out.put(span, "parameter");
			return;
		}
		const named = namedBy(row, context);
		const used =
			named.kind === "import"
				? this.file.uses(text, statement)
				: named.kind !== "size" || this.words.has(text);
		const { type } =
			named.kind === "import" ? (this.file.names.get(text) ?? named) : named;
		this.out.put(
			span,
			type,
			declaration | named.modifiers | (used ? 0 : unused),
		);
	}

	private path(path: PathNode, first: NameNode, scopes: Scopes): void {
		let named: Named | undefined;
		for (const scope of scopes) {
			named = scope.get(first.text);
			if (named) break;
		}
		if (named) this.out.put(first.span, named.type, named.modifiers);
		else if (first.text === "floor")
			this.out.put(first.span, "property", builtIn);
		else if (path.segments.length === 1 && phrases.has(first.text))
			this.out.put(first.span, "modifier");
		for (const segment of path.segments.slice(1)) {
			const isMaterial = named?.type === "class";
			named = named?.members?.get(segment.text);
			if (named) this.out.put(segment.span, named.type, named.modifiers);
			else if (isMaterial) this.out.put(segment.span, "enumMember");
			else this.out.put(segment.span, "property", readOnly);
		}
	}
}

const unitText = /[\p{L}\p{M}%\u00b0\u00ba"'\u2032\u2033\u2019\u201d]+/gu;

/** The names that are in force in the block of a statement besides those around it. */
function ownNames(
	statement: Statement,
	row: Construct | undefined,
	context: ContextId | undefined,
	[scope]: Scopes,
): Scope | undefined {
	if (context === "file" && statement.block)
		return scopeOf(statement.block, row?.block);
	const [name] = row?.declares ? declaredNames(statement, row) : [];
	return name && scope?.get(name.text)?.members;
}

/** Which nodes of a headline stand for what; all other plain words are words of the form. */
interface Roles {
	/** Names that the line makes, or sets. */
	readonly made: ReadonlySet<NameNode>;
	/** Words out of a choice. */
	readonly chosen: ReadonlySet<NameNode>;
	/** Items that are values: sizes, references, places. */
	readonly values: ReadonlySet<Item>;
}

function rolesOf(
	filled: Filled | undefined,
	statement: Statement,
	row: Construct | undefined,
): Roles {
	if (!filled) {
		const made = row?.declares ? declaredNames(statement, row) : [];
		return { made: new Set(made), chosen: new Set(), values: new Set() };
	}
	const made = new Set<NameNode>();
	const chosen = new Set<NameNode>();
	const values = new Set<Item>();
	for (const [slot, value] of filled.slots) {
		switch (value.kind) {
			case "names":
				for (const name of value.names)
					(choicesOf(filled.form).has(slot) ? chosen : made).add(name);
				break;
			case "refs":
				for (const ref of value.refs) values.add(ref);
				break;
			case "expression":
				values.add(value.expression);
				if (value.expression.kind === "list")
					for (const one of value.expression.elements) values.add(one);
				break;
			case "position":
				for (const one of value.position.offsets) values.add(one);
				if (value.position.datum) values.add(value.position.datum);
				break;
		}
	}
	return { made, chosen, values };
}

const choices = new WeakMap<Form, ReadonlySet<string>>();

/** The slots of a form that take words of the language. */
function choicesOf(form: Form): ReadonlySet<string> {
	let found = choices.get(form);
	if (!found) {
		const names = new Set<string>();
		const visit = (elements: readonly FormElement[]): void => {
			for (const element of elements) {
				if (element.kind === "choice") names.add(element.slot);
				else if (element.kind === "optional") visit(element.elements);
			}
		};
		visit(form.elements);
		found = names;
		choices.set(form, found);
	}
	return found;
}
