// Two legs that are each other's mirror image become one statement that makes a left and a right one.

import {
	type Block,
	children,
	type Item,
	type Node,
	type Statement,
} from "../../../grammar/index.ts";
import { bodyAt, commentsOf, type removal } from "../support/bodies.ts";
import { namesOf } from "../support/known-names.ts";
import { placeAt } from "../support/place.ts";
import type { Asked, Offer } from "../support/refactoring.ts";

const mirror: Readonly<Record<string, string>> = {
	left: "right",
	right: "left",
};

export function mirroredPair({ snapshot, span }: Asked): Offer[] {
	const { text, result } = snapshot;
	const body = bodyAt(result.tree, span.start);
	const place = placeAt(result.tree, span.start);
	const here = [
		...place.around.map(({ statement }) => statement),
		...(place.statement ? [place.statement.statement] : []),
	].find((one) => body?.block.statements.includes(one));
	if (!body || !here || !isLone(here)) return [];
	const twin = body.block.statements.find(
		(one) => one !== here && isLone(one) && areMirrored(here, one),
	);
	if (!twin) return [];
	const [left, right] = handsOf(here, twin);
	const names = [left, right].map((one) => namesOf(one, body.context)[0] ?? "");
	const nameItem = left.items[1] as Item;
	return [
		{
			id: "mirrored-pair",
			kind: "refactor.rewrite",
			title: `Make \`${names[0]}\` and \`${names[1]}\` a handed pair`,
			change: () => {
				const said = new Set(
					result.tree.comments
						.filter(({ span: at }) => isIn(at, left))
						.map((comment) => mirroredText(comment.text)),
				);
				const { above, behind } = commentsOf(snapshot, right);
				const known = new Set(
					[
						...commentsOf(snapshot, left).above,
						commentsOf(snapshot, left).behind,
					].map((comment) => mirroredText(comment?.text ?? "")),
				);
				// What is said of the right one alone is said above the pair.
				const own = [
					...result.tree.comments.filter(
						(comment) =>
							isIn(comment.span, right) &&
							!said.has(mirroredText(comment.text)),
					),
					...[...above, ...(behind ? [behind] : [])].filter(
						(comment) => !known.has(mirroredText(comment.text)),
					),
				];
				const top =
					commentsOf(snapshot, left).above[0]?.span.start ?? left.span.start;
				return {
					edits: [
						...(own.length > 0
							? [
									{
										span: { start: top, end: top },
										text: own
											.map((comment) => `// ${comment.text.trim()}\n`)
											.join(""),
									},
								]
							: []),
						{
							span: nameItem.span,
							text: `${names[0]}, ${names[1]} handed`,
						},
						...takenAway(snapshot, right),
					],
					keeps: "all" as const,
					mergesComments: true,
				};
			},
		},
	];

	function takenAway(
		asked: Asked["snapshot"],
		statement: Statement,
	): ReturnType<typeof removal> {
		const { above, behind } = commentsOf(asked, statement);
		const start = above[0]?.span.start ?? statement.span.start;
		const end = behind?.span.end ?? statement.span.end;
		const from = text
			.slice(0, start)
			.search(/(?:\r\n|\r|\n)[ \t]*(?:(?:\r\n|\r|\n)[ \t]*)*$|[ \t]*;?[ \t]*$/);
		return [{ span: { start: from < 0 ? start : from, end }, text: "" }];
	}
}

/** One leg by itself, with a block that can be read. */
function isLone(statement: Statement): boolean {
	return (
		statement.head === "leg" &&
		statement.items.length === 2 &&
		statement.items[1]?.kind === "path" &&
		statement.block !== undefined
	);
}

function isIn(
	span: { readonly start: number; readonly end: number },
	{ span: outer }: Statement,
): boolean {
	return outer.start <= span.start && span.end <= outer.end;
}

/** The left one first: it is read as it is written, the other in the mirror. */
function handsOf(
	here: Statement,
	twin: Statement,
): readonly [left: Statement, right: Statement] {
	return saysSide(here) === "right" ? [twin, here] : [here, twin];
}

/** The side of the first line that names one. */
function saysSide({ block }: Statement): string | undefined {
	const words: string[] = [];
	const visit = (node: Node): void => {
		if (node.kind === "name" && mirror[node.text]) words.push(node.text);
		for (const child of children(node)) visit(child);
	};
	if (block) visit(block);
	return words[0];
}

/** Whether two blocks say the same with left for right. */
function areMirrored(a: Statement, b: Statement): boolean {
	return (
		saysSide(a) !== undefined &&
		sameBlock(a.block as Block, b.block as Block, mirrorOf(a), mirrorOf(b))
	);
}

/** What stands in for the leg's own name. */
function mirrorOf(statement: Statement): (name: string) => string {
	const own = namesOf(statement, "piece")[0] ?? "";
	return (name) => (name === own ? "" : name);
}

function sameBlock(
	a: Block,
	b: Block,
	ofA: (name: string) => string,
	ofB: (name: string) => string,
): boolean {
	return (
		a.statements.length === b.statements.length &&
		a.statements.every((one, index) =>
			sameLine(one, b.statements[index] as Statement, ofA, ofB),
		)
	);
}

function sameLine(
	a: Statement,
	b: Statement,
	ofA: (name: string) => string,
	ofB: (name: string) => string,
): boolean {
	return (
		a.items.length === b.items.length &&
		a.items.every((one, index) =>
			sameNode(one, b.items[index] as Item, ofA, ofB),
		) &&
		(a.block && b.block
			? sameBlock(a.block, b.block, ofA, ofB)
			: a.block === b.block)
	);
}

function sameNode(
	a: Node,
	b: Node,
	ofA: (name: string) => string,
	ofB: (name: string) => string,
): boolean {
	if (a.kind !== b.kind || a.kind === "bad") return false;
	if (a.kind === "name" && b.kind === "name")
		return (mirror[ofA(a.text)] ?? ofA(a.text)) === ofB(b.text);
	if (a.kind === "measure" && b.kind === "measure")
		return (
			a.numerator * b.denominator === b.numerator * a.denominator &&
			a.unit === b.unit
		);
	if (a.kind === "size-number" && b.kind === "size-number")
		return a.number === b.number;
	if (a.kind === "text" && b.kind === "text") return a.value === b.value;
	if ("operator" in a && "operator" in b && a.operator !== b.operator)
		return false;
	const [left, right] = [children(a), children(b)];
	return (
		left.length === right.length &&
		left.every((one, index) => sameNode(one, right[index] as Node, ofA, ofB))
	);
}

/** A comment, whichever side it is about. */
function mirroredText(text: string): string {
	return text.trim().replace(/\b(?:left|right)\b/g, "side");
}
