// The sizes of a box before it has a place: outside and inside, what runs past what, how the back is let in.

import { Rational } from "../../units/rational.ts";
import { lessBoth, plusBoth } from "../both-sides.ts";
import { inches, positiveLength, sizeAtLeastZero } from "../expressions.ts";
import type { PieceContext } from "../piece-context.ts";
import { stockOf } from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { minus, plus, type Size, stated, zero } from "../size.ts";
import type { Stock } from "../types.ts";
import type { PanelName } from "./box-panels.ts";
import { kindRow } from "./join.ts";

/** A housing that a `join` line of the box asks for between two of its panels. */
export interface PanelHousing {
	readonly kind: "dado" | "groove" | "rabbet";
	readonly depth: Size;
	readonly wide: Size | undefined;
	readonly row: Row;
}

export interface BackPlan {
	readonly stock: Stock;
	readonly thick: Size;
	readonly backing: "rabbet" | "groove" | "inset" | "applied";
	/** Into the panels: rabbet or groove. */
	readonly depth: Size;
	/** From the rear plane of the box to the back's rear face. */
	readonly inset: Size;
	/** In total, on each of the two axes. */
	readonly clearance: Size;
	readonly row: Row;
}

interface Extents {
	readonly width: Size;
	readonly height: Size;
	readonly depth: Size;
}

export interface BoxPlan {
	readonly outside: Extents;
	readonly inside: Extents;
	/** Zero where there is no such panel. */
	readonly thick: Readonly<Record<PanelName, Size>>;
	readonly stock: Readonly<Partial<Record<PanelName, Stock>>>;
	readonly rowOf: Readonly<Partial<Record<PanelName, Row>>>;
	readonly mitred: boolean;
	/** Whether the first of two neighbouring panels runs over the end of the second. */
	readonly runsOver: (panel: PanelName, neighbour: PanelName) => boolean;
	/** What `join` says of a host and a member. */
	readonly housing: (host: string, member: string) => PanelHousing | undefined;
	readonly back: BackPlan | undefined;
	/** Rear plane to the rear face of the back; zero without one. */
	readonly behind: Size;
	/** Rear plane to the front face of the back. */
	readonly backFront: Size;
	/** Rear plane to where the four panels begin: the back's thickness where it is applied. */
	readonly panelsFrom: Size;
}

export function planBox(
	context: PieceContext,
	rows: Rows,
	name: string,
	row: Row,
): BoxPlan | undefined {
	const { frame } = context;
	const panels = readPanels(context, rows);
	if (!panels) return undefined;
	const { thick, stock, rowOf } = panels;
	const back = readBack(context, rows);
	const outsideRow = rows.first("outside");
	const insideRow = rows.first("inside");
	if (outsideRow && insideRow) {
		context.evaluation.report(
			"said-twice",
			insideRow.headline,
			"The size is given outside already; the inside follows: take one of the two lines away",
			{ related: [{ origin: outsideRow.headline, message: "The outside" }] },
		);
	}
	const sizeRow = outsideRow ?? insideRow;
	if (!sizeRow) {
		context.evaluation.report(
			"missing-line",
			row.headline,
			`\`${name}\` has no size: add \`outside WIDTH x HEIGHT x DEPTH\` or \`inside …\``,
		);
		return undefined;
	}
	const expression = sizeRow.expression("size");
	const written =
		expression?.kind === "cross"
			? (["width", "height", "depth"] as const).map((what, index) =>
					positiveLength(frame, expression.sizes[index], `The ${what}`),
				)
			: [];
	const [width, height, depth] = written;
	if (!width || !height || !depth) return undefined;

	const behind = back
		? back.backing === "inset" || back.backing === "groove"
			? back.inset
			: zero
		: zero;
	const backFront = back ? plus(behind, back.thick) : zero;
	const outside: Extents = outsideRow
		? { width, height, depth }
		: {
				width: plusBoth(width, thick.left, thick.right),
				height: plusBoth(height, thick.bottom, thick.top),
				depth: plus(depth, backFront),
			};
	const inside: Extents = outsideRow
		? {
				width: lessBoth(width, thick.left, thick.right),
				height: lessBoth(height, thick.bottom, thick.top),
				depth: back ? minus(depth, backFront) : depth,
			}
		: { width, height, depth };
	for (const what of ["width", "height", "depth"] as const) {
		if (inside[what].value.sign() > 0) continue;
		context.evaluation.report(
			"no-size",
			sizeRow.headline,
			`Nothing is left inside: the panels take more than the ${what} of \`${name}\``,
		);
		return undefined;
	}
	const mitred = rows.first("corners")?.word("style") === "mitred";
	const caps = readCaps(context, rows, panels.present);
	const housings = readHousings(context, rows);
	return {
		outside,
		inside,
		thick,
		stock,
		rowOf,
		mitred,
		runsOver: (panel, neighbour) => {
			if (!caps) return panel === "left" || panel === "right";
			const own = caps.has(panel);
			const other = caps.has(neighbour);
			return own === other ? panel === "left" || panel === "right" : own;
		},
		housing: (host, member) => housings.get(`${host}~${member}`),
		back,
		behind,
		backFront,
		panelsFrom: back?.backing === "applied" ? back.thick : zero,
	};
}

function readPanels(context: PieceContext, rows: Rows) {
	const thick: Record<PanelName, Size> = {
		top: zero,
		bottom: zero,
		left: zero,
		right: zero,
	};
	const stock: Partial<Record<PanelName, Stock>> = {};
	const rowOf: Partial<Record<PanelName, Row>> = {};
	const present = new Set<PanelName>();
	let complete = true;
	for (const row of rows.every("panels")) {
		const made = stockOf(context, row.ref("material"), ["sheet", "board"]);
		for (const word of row.names("panels")) {
			const panel = word.text as PanelName;
			if (present.has(panel)) {
				context.evaluation.report(
					"said-twice",
					row.at(word.span),
					`\`${panel}\` has its material already: name it once`,
				);
				continue;
			}
			present.add(panel);
			rowOf[panel] = row;
			if (made?.thick) {
				thick[panel] = made.thick;
				stock[panel] = made;
			} else complete = false;
		}
	}
	return complete && present.size > 0
		? { thick, stock, rowOf, present }
		: undefined;
}

function readCaps(
	context: PieceContext,
	rows: Rows,
	present: ReadonlySet<PanelName>,
): ReadonlySet<PanelName> | undefined {
	const row = rows.first("caps");
	if (!row) return undefined;
	const caps = new Set(row.words("panels") as PanelName[]);
	const upright = [...caps].filter((one) => one === "left" || one === "right");
	if (upright.length > 0 && upright.length < caps.size)
		context.evaluation.report(
			"caps-clash",
			row.headline,
			"At a corner only one panel can run over the other: name the sides or top and bottom, not both",
		);
	for (const name of row.names("panels"))
		if (!present.has(name.text as PanelName))
			context.evaluation.report(
				"unknown-name",
				row.at(name.span),
				`This box has no ${name.text} panel that could run over its neighbours`,
			);
	return caps;
}

/** The housings that the box's own `join` lines cut into its panels: they change the members' lengths. */
function readHousings(
	context: PieceContext,
	rows: Rows,
): ReadonlyMap<string, PanelHousing> {
	const housings = new Map<string, PanelHousing>();
	for (const row of rows.every("join")) {
		// Settling the join reads these lines once more: what is wrong in them is told once all the same.
		const lines = readRows(context.evaluation, row.uri, row.block, "join");
		const kind = kindRow(lines);
		if (
			kind?.head !== "dado" &&
			kind?.head !== "groove" &&
			kind?.head !== "rabbet"
		)
			continue;
		const depth = positiveLength(
			context.frame,
			kind.expression("depth"),
			"The depth",
		);
		const wide = kind.expression("wide")
			? positiveLength(context.frame, kind.expression("wide"), "The width")
			: undefined;
		if (!depth) continue;
		const first = row.refs("parts").map(lastName);
		const others = row.refs("others").map(lastName);
		const housing: PanelHousing = { kind: kind.head, depth, wide, row: kind };
		const pairs = others.length > 0 ? [first, others] : [first, first];
		for (const a of pairs[0] as string[])
			for (const b of pairs[1] as string[])
				if (a !== b) {
					housings.set(`${b}~${a}`, housing);
					if (!housings.has(`${a}~${b}`)) housings.set(`${a}~${b}`, housing);
				}
	}
	return housings;
}

function lastName(path: {
	readonly segments: readonly { readonly text: string }[];
}): string {
	return path.segments.at(-1)?.text ?? "";
}

/**
 * What a back is smaller by than its place where the maker writes nothing, both sides together: common practice, no source.
 * Chosen so that a shop at its default tolerances is sure to get it in. Opening and back are each cut to a stop (1/64 in
 * either way) and rounded to what the rule shows (1/64 in, or 0.25 mm), a rabbet or groove on both sides is routed within
 * 0.1 mm: at worst 4 x 1/64 in + 0.2 mm = 1.79 mm in inches, 2 x 1/64 in + 2 x 0.25 mm + 0.2 mm = 1.49 mm in millimetres;
 * between the panels, without the router, 1.59 mm (1/16 in) and 1.29 mm. The ranges in `fits.ts` leave as much above.
 */
const usualClearance = {
	letIn: {
		in: stated(inches(3, 32), "3/32 in of clearance"),
		mm: stated(Rational.of(2), "2 mm of clearance"),
	},
	between: {
		in: stated(inches(1, 16), "1/16 in of clearance"),
		mm: stated(Rational.of(3, 2), "1.5 mm of clearance"),
	},
} as const;

function readBack(context: PieceContext, rows: Rows): BackPlan | undefined {
	const row = rows.every("back").find((one) => one.ref("material"));
	if (!row) return undefined;
	const stock = stockOf(context, row.ref("material"), ["sheet", "board"]);
	if (!stock?.thick) return undefined;
	const rabbet = row.expression("rabbet");
	const groove = row.expression("groove");
	const inset = row.expression("inset");
	const ways = [rabbet, groove, row.has("applied") || undefined].filter(
		(one) => one !== undefined,
	);
	if (ways.length > 1 || ((rabbet || row.has("applied")) && inset)) {
		context.evaluation.report(
			"back-unclear",
			row.headline,
			"The back is let in one way: `rabbet`, `groove` (with `inset`), `inset` alone, or `applied`",
		);
		return undefined;
	}
	const letIn = rabbet !== undefined || groove !== undefined;
	const clearance =
		sizeAtLeastZero(
			context.frame,
			row.expression("clearance"),
			"The clearance",
		) ??
		(row.has("applied")
			? zero
			: usualClearance[letIn ? "letIn" : "between"][context.display.unit]);
	const depth = rabbet
		? positiveLength(context.frame, rabbet, "The rabbet")
		: groove
			? positiveLength(context.frame, groove, "The groove")
			: zero;
	const from = inset
		? sizeAtLeastZero(context.frame, inset, "The inset")
		: zero;
	if (!depth || !from) return undefined;
	return {
		stock,
		thick: stock.thick,
		backing: rabbet
			? "rabbet"
			: groove
				? "groove"
				: row.has("applied")
					? "applied"
					: "inset",
		depth,
		inset: from,
		clearance,
		row,
	};
}
