// What stands over a piece and a component: how many parts it takes to buy and to cut, what is wrong in it, who makes it. Where
// the lines stand follows from the tree alone; what they say is worked out when one comes into sight.

import type { FileNode, Span } from "../../grammar/index.ts";
import type { MaterialLayout } from "../layouts/index.ts";
import type { Design, Finding, Piece } from "../model/types.ts";
import { buyingList } from "../outputs/buying-list.ts";
import { formatBoardFeet, formatMoney } from "../units/format.ts";
import { Rational } from "../units/rational.ts";
import { bodiesOf } from "./support/bodies.ts";
import { placedIn } from "./support/place.ts";
import { declaredNames } from "./support/tokens/scope.ts";

/** `figures`: parts, sheets, board feet, cost. `findings`: errors and warnings. `uses`: what is made from a component. */
export type LensKind = "figures" | "findings" | "uses";

export interface Lens {
	readonly kind: LensKind;
	/** Of the name of the piece or component. */
	readonly span: Span;
	readonly name: string;
}

/** In order of place, those of one thing in the order in which they are shown. */
export function codeLenses(tree: FileNode): Lens[] {
	return bodiesOf(tree).flatMap(({ statement, context, name }) => {
		const { construct } = placedIn("file", statement);
		const [node] = construct ? declaredNames(statement, construct) : [];
		if (!node) return [];
		const kinds: readonly LensKind[] =
			context === "piece"
				? ["figures", "findings"]
				: ["uses", "figures", "findings"];
		return kinds.map((kind) => ({ kind, span: node.span, name }));
	});
}

/** The piece or component that a lens is over. */
export function pieceOf(
	{ pieces, uri }: Design,
	{ span }: Pick<Lens, "span">,
): Piece | undefined {
	return pieces.find(
		({ declaration: { origin } }) =>
			origin.uri === uri &&
			origin.span.start <= span.start &&
			span.end <= origin.span.end,
	);
}

/**
 * `31 parts · 3 sheets · 14.20 board feet · 812.50 USD`; a component is told by its own values. `layouts` are those of the
 * piece.
 */
export function figuresTitle(
	piece: Piece,
	{ stocks }: Design,
	layouts: readonly MaterialLayout[],
): string {
	const parts = piece.parts.filter(({ role }) => role !== "aid").length;
	const list = buyingList([{ piece, stocks }], layouts);
	const sheets = list.sheets
		.flatMap(({ line }) => line.bought)
		.reduce((sum, { count }) => sum + count, 0);
	const feet = list.boards.reduce(
		(sum, { line }) => sum + (line.feet?.bought ?? 0),
		0,
	);
	const { totals, atLeast, unpriced } = list.cost;
	const isLess = atLeast || unpriced.length > 0;
	return [
		counted(parts, "part"),
		...(sheets > 0 ? [counted(sheets, "sheet")] : []),
		...(feet > 0
			? [`${formatBoardFeet(Rational.near(feet, 1_000_000))} board feet`]
			: []),
		...totals.map(
			({ amount, currency }) =>
				`${isLess ? "at least " : ""}${formatMoney(amount)}${currency ? ` ${currency}` : ""}`,
		),
	].join(" · ");
}

/** `1 error, 2 warnings`, in the lines of the thing itself. */
export function findingsTitle(
	piece: Piece,
	findings: readonly Finding[],
): string {
	const { uri, span } = piece.declaration.origin;
	const own = findings.filter(
		({ origin }) =>
			origin.uri === uri &&
			span.start <= origin.span.start &&
			origin.span.end <= span.end,
	);
	const count = (severity: Finding["severity"]): number =>
		own.filter((finding) => finding.severity === severity).length;
	const told = [
		...(count("error") > 0 ? [counted(count("error"), "error")] : []),
		...(count("warning") > 0 ? [counted(count("warning"), "warning")] : []),
	];
	return told.length > 0 ? told.join(", ") : "no errors, no warnings";
}

/** `made 3 times in 2 designs`; the files in which something is made from it, once for each time. */
export function usesTitle(files: readonly string[]): string {
	if (files.length === 0) return "made nowhere";
	const designs = new Set(files).size;
	const times = files.length === 1 ? "once" : `${files.length} times`;
	return `made ${times} in ${counted(designs, "design")}`;
}

function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? "" : "s"}`;
}
