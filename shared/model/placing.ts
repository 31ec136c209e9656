// Reads the lines that put a thing in its place: `left at …`, `top at …`, `centred across on …`.

import { type Side, sides } from "./meaning.ts";
import type { Held } from "./part-builder.ts";
import type { PieceContext } from "./piece-context.ts";
import { placeOn, reachOn } from "./positions.ts";
import type { Row, Rows } from "./rows.ts";
import { minus, over, plus, type Size } from "./size.ts";
import type { Way } from "./types.ts";

const ways: Readonly<Record<string, Way>> = { across: "x", up: "y", deep: "z" };

const readings: Readonly<Record<Way, readonly string[]>> = {
	x: ["right from NAME.left", "left from NAME.right"],
	y: ["up from floor", "above NAME", "below NAME"],
	z: ["back from NAME.front", "forward from NAME.back"],
};

/** For each axis, by itself and when it is first asked for: which face is held, and where. Undefined where no line says so. */
export type Placing = Readonly<Record<Way, () => Held | undefined>>;

/**
 * The places of a thing, each axis by itself: it may be placed by something that is placed by it on another one.
 * `extent` is the thing's size along an axis, needed to centre it; a size that is not known cannot be centred.
 */
export function readPlacing(
	context: PieceContext,
	thing: { readonly name: string; readonly row: Row; readonly rows: Rows },
	extent: (axis: Way) => Size | undefined,
): Placing {
	const { name, row, rows } = thing;
	const along = (axis: Way): (() => Held | undefined) =>
		context.evaluation.lazy(`the place of ${name}`, row.headline, () =>
			placeAlong(context, rows, axis, extent),
		);
	return { x: along("x"), y: along("y"), z: along("z") };
}

function placeAlong(
	context: PieceContext,
	rows: Rows,
	axis: Way,
	extent: (axis: Way) => Size | undefined,
): Held | undefined {
	const [first, ...others] = rows.all.filter((row) => axisOf(row) === axis);
	if (!first) return undefined;
	for (const other of others)
		context.evaluation.report(
			"placed-twice",
			other.headline,
			`\`${first.head}\` places it already on this axis: take one of the two lines away`,
			{ related: [{ origin: first.headline, message: "The first one" }] },
		);
	if (first.head === "centred") return centre(context, first, axis, extent);
	const { outward } = sides[first.head as Side];
	const position = first.position("at");
	const at =
		position &&
		placeOn(context.frame, position, {
			axis,
			// `bottom at seat` stands on it, `top at seat` meets its underside.
			near: outward === 1 ? -1 : 1,
			readings: readings[axis],
			floor: context.origin[1],
		});
	return at && { side: outward, at };
}

/** The axis that a line places something on; undefined for a line that does not. */
function axisOf(row: Row): Way | undefined {
	if (row.head === "centred") return ways[row.word("way") ?? ""];
	return row.position("at") ? sides[row.head as Side]?.axis : undefined;
}

function centre(
	context: PieceContext,
	row: Row,
	axis: Way,
	extent: (axis: Way) => Size | undefined,
): Held | undefined {
	const ref = row.ref("on");
	const reach = ref && reachOn(context.frame, ref, axis);
	const own = extent(axis);
	if (!reach || !own) return undefined;
	const room = minus(minus(reach.high, reach.low), own);
	return { side: -1, at: plus(reach.low, over(room, 2)) };
}

/** From where to where a thing of that extent reaches, held as it is. */
export function heldReach(
	held: Held,
	extent: Size,
): { readonly low: Size; readonly high: Size } {
	return held.side === -1
		? { low: held.at, high: plus(held.at, extent) }
		: { low: minus(held.at, extent), high: held.at };
}
