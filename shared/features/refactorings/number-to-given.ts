// A size that is written more than once becomes a given: one name, one place to change it.

import {
	type Expression,
	expressionsOf,
	fill,
	type MeasureNode,
	type Span,
	type Statement,
} from "../../../grammar/index.ts";
import { units } from "../../units/dimensions.ts";
import { bareNumbers } from "../support/bare-numbers.ts";
import { type Body, bodyAt, holds, putAmongGivens } from "../support/bodies.ts";
import { namesOf } from "../support/known-names.ts";
import { placedIn, visitPlaced } from "../support/place.ts";
import type { Asked, Offer } from "../support/refactoring.ts";
import {
	expressionsIn,
	freeName,
	namesWritten,
	slotType,
} from "../support/uses.ts";

/** Lines that tell of the world as it is, or that name goods by their size. */
const facts: ReadonlySet<string> = new Set([
	"edition",
	"unit",
	"precision",
	"measured",
	"cut",
	"room",
	"shop",
	"load",
	"tenon",
	"wall",
]);

interface Occurrence {
	readonly node: MeasureNode;
	/** What it is there. */
	readonly name: string;
}

export function numberToGiven({ snapshot, span }: Asked): Offer[] {
	const { tree } = snapshot.result;
	const body = bodyAt(tree, span.start);
	if (!body) return [];
	const all = occurrencesIn(body);
	const chosen = all.find(({ node }) => holds(node.span, span));
	if (!chosen) return [];
	const alike = all.filter(({ node }) => isSame(node, chosen.node));
	if (alike.length < 2) return [];
	const taken = namesWritten(tree);
	const wanted = freeName(chosen.name, new Set());
	const owner = ownerAt(body, chosen.node.span);
	const name =
		taken.has(wanted) && owner
			? freeName(`${owner}-${chosen.name}`, taken)
			: freeName(chosen.name, taken);
	const spelled = chosen.node.text;
	return [
		{
			id: "number-to-given",
			kind: "refactor.extract",
			title: `Make \`${spelled}\` a given \`${name}\`, in ${alike.length} places`,
			change: () => ({
				edits: [
					putAmongGivens(snapshot, body, `given ${name} = ${spelled}`),
					...alike.map(({ node }) => ({ span: node.span, text: name })),
				],
			}),
		},
	];
}

/** The lengths and angles that are written in a piece, in its order. */
function occurrencesIn({ block, context }: Body): Occurrence[] {
	const { roles } = bareNumbers(block, context);
	const found: Occurrence[] = [];
	visitPlaced(block, context, ({ statement, construct }) => {
		if (facts.has(statement.head)) return false;
		const result = construct && fill(statement, construct);
		if (!construct || !result?.ok) return true;
		for (const [slot, value] of result.filled.slots) {
			if (slotType(construct, slot) === "fastener") continue;
			// A size that has a name already keeps it, and its limits.
			const named = construct.declares === "size";
			for (const [index, one] of expressionsIn(value).entries())
				for (const [place, size] of sizesIn(one).entries())
					for (const node of expressionsOf(size)) {
						if (node.kind !== "measure") continue;
						if (named && (slot !== "value" || node === size)) continue;
						if (node.unit === "none" && roles.get(node) !== "length") continue;
						const { dimension } = units[node.unit];
						if (
							dimension !== "length" &&
							dimension !== "angle" &&
							node.unit !== "none"
						)
							continue;
						if (node.numerator === 0n) continue;
						found.push({
							node,
							name: nameFor(
								statement,
								slot,
								index + place,
								one.kind === "cross",
							),
						});
					}
		}
		return true;
	});
	return found;
}

/** The thing of the piece whose lines hold a place. */
function ownerAt({ block, context }: Body, span: Span): string | undefined {
	const statement = block.statements.find((one) => holds(one.span, span));
	return statement &&
		placedIn(context, statement).construct?.declares !== "size"
		? namesOf(statement, context)[0]
		: undefined;
}

function sizesIn(expression: Expression): readonly Expression[] {
	return expression.kind === "cross" ? expression.sizes : [expression];
}

const ofBox = ["width", "height", "depth"] as const;
const ofPart = ["length", "width", "thickness"] as const;

/** Where the slot's own name says too little. */
const usualNames: Readonly<Record<string, string>> = {
	at: "distance",
	start: "distance",
	stop: "distance",
	bottom: "level",
	top: "level",
	height: "level",
	value: "amount",
	wide: "breadth",
	thick: "thickness",
	every: "spacing",
	angle: "slant",
	condition: "limit",
	dado: "dado-depth",
	rabbet: "rabbet-depth",
	groove: "groove-depth",
	inset: "inset-depth",
};

/** By the line that it stands in, as one would call it. */
function nameFor(
	{ head }: Statement,
	slot: string,
	index: number,
	isCross: boolean,
): string {
	if (isCross)
		return (
			(head === "outside" || head === "inside" ? ofBox : ofPart)[index] ??
			"size"
		);
	if (slot === "distance") return `${head}-by`;
	if (slot === "depth" || slot === "diameter") return `${head}-${slot}`;
	return usualNames[slot] ?? (slot === "amount" ? head : slot);
}

function isSame(a: MeasureNode, b: MeasureNode): boolean {
	return (
		a.unit === b.unit &&
		a.numerator * b.denominator === b.numerator * a.denominator
	);
}
