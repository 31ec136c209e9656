// What of a text the formatter must leave as it stands, because it could not be read in full.

import type {
	Block,
	FileNode,
	ParseResult,
	Span,
	Statement,
	SyntaxFault,
} from "../../grammar/index.ts";

/** Faults that are about braces: what belongs to what was guessed from the indentation. */
const braceFaults: ReadonlySet<string> = new Set([
	"missing-close-brace",
	"missing-open-brace",
	"stray-close-brace",
]);

/** Faults that tie a statement to the one before it on its line. */
const tyingFaults: ReadonlySet<string> = new Set([
	"words-after-block",
	"two-blocks",
]);

export interface Damage {
	/** The statement's items, its block aside, hold a fault. */
	readonly headline: (statement: Statement) => boolean;
	/** The statement belongs to the line of the one before it. */
	readonly tied: (statement: Statement) => boolean;
	/** The braces within the statement are not all there. */
	readonly braces: (statement: Statement) => boolean;
	/** Some braces of the text are guessed from its indentation. */
	readonly guessed: boolean;
}

export function damageIn(text: string, result: ParseResult): Damage {
	const places = result.faults.filter(
		(fault) =>
			fault.severity === "error" ||
			(fault.severity === "warning" && fault.id !== "improper-fraction"),
	);
	// Beyond the last listed fault anything may be wrong.
	const listedUpTo =
		result.faults.at(-1)?.id === "more-faults"
			? (result.faults.at(-1) as SyntaxFault).span.start
			: Number.POSITIVE_INFINITY;
	const braces = places.filter((fault) => braceFaults.has(fault.id));
	const tied = new Set(
		places
			.filter((fault) => tyingFaults.has(fault.id))
			.map((fault) => fault.span.start),
	);
	const unbraced = unbracedStatements(text, result.tree);
	return {
		headline: ({ span, block }) => {
			const end = block ? block.span.start + 1 : span.end;
			return end > listedUpTo || touchesAny(places, { start: span.start, end });
		},
		tied: ({ span }) => tied.has(span.start),
		braces: (statement) =>
			unbraced.has(statement) || touchesAny(braces, statement.span),
		guessed: braces.length > 0 || unbraced.size > 0,
	};
}

/** Faults stand in order of place. */
function touchesAny(faults: readonly SyntaxFault[], span: Span): boolean {
	let low = 0;
	let high = faults.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((faults[middle] as SyntaxFault).span.start < span.start) {
			low = middle + 1;
		} else high = middle;
	}
	const first = faults[low];
	return first !== undefined && first.span.start <= span.end;
}

/** Top-level statements in which some block has a brace that does not stand in the text. */
function unbracedStatements(text: string, tree: FileNode): Set<Statement> {
	const sound = (block: Block): boolean =>
		block.closed &&
		text[block.span.start] === "{" &&
		block.statements.every((one) => !one.block || sound(one.block));
	return new Set(tree.statements.filter(({ block }) => block && !sound(block)));
}
