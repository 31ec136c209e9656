// Reads the lines that put a thing in its place: `left at …`, `top at …`, `centred across on …`.

import { axisIndex, pathText, type Side, sides } from "./meaning.ts";
import { resolve } from "./names.ts";
import type { Held } from "./part-builder.ts";
import type { PieceContext } from "./piece-context.ts";
import { boundsOfMeaning, placeOn } from "./positions.ts";
import type { Row, Rows } from "./rows.ts";
import { minus, over, plus, type Size } from "./size.ts";
import type { Way } from "./types.ts";

const ways: Readonly<Record<string, Way>> = { across: "x", up: "y", deep: "z" };

const readings: Readonly<Record<Way, readonly string[]>> = {
	x: ["right from NAME.left", "left from NAME.right"],
	y: ["up from floor", "above NAME", "below NAME"],
	z: ["back from NAME.front", "forward from NAME.back"],
};

/**
 * For each axis: which face is held, and where. Undefined where no line says so.
 * `extents` are the thing's sizes along x, y, z, needed to centre it; undefined sizes cannot be centred.
 */
export function readPlacing(
	context: PieceContext,
	rows: Rows,
	extents: readonly [Size | undefined, Size | undefined, Size | undefined],
): [Held | undefined, Held | undefined, Held | undefined] {
	const held: [Held | undefined, Held | undefined, Held | undefined] = [
		undefined,
		undefined,
		undefined,
	];
	const by: (Row | undefined)[] = [undefined, undefined, undefined];
	const hold = (axis: Way, row: Row, value: Held): void => {
		const index = axisIndex[axis];
		const before = by[index];
		if (before) {
			context.evaluation.report(
				"placed-twice",
				row.headline,
				`\`${before.head}\` places it already on this axis: take one of the two lines away`,
				{ related: [{ origin: before.headline, message: "The first one" }] },
			);
			return;
		}
		by[index] = row;
		held[index] = value;
	};
	for (const row of rows.all) {
		const side = sides[row.head as Side];
		const position = row.position("at");
		if (side && position) {
			const at = placeOn(context.frame, position, {
				axis: side.axis,
				// `bottom at seat` stands on it, `top at seat` meets its underside.
				near: side.outward === 1 ? -1 : 1,
				readings: readings[side.axis],
				floor: context.origin[1],
			});
			if (at) hold(side.axis, row, { side: side.outward, at });
		}
		if (row.head === "centred") centre(context, row, extents, hold);
	}
	return held;
}

function centre(
	context: PieceContext,
	row: Row,
	extents: readonly (Size | undefined)[],
	hold: (axis: Way, row: Row, value: Held) => void,
): void {
	const axis = ways[row.word("way") ?? ""];
	const ref = row.ref("on");
	if (!axis || !ref) return;
	const meaning = resolve(context.frame, ref);
	if (!meaning) return;
	const bounds = boundsOfMeaning(meaning);
	if (!bounds) {
		context.evaluation.report(
			"not-a-datum",
			row.at(ref.span),
			`\`${pathText(ref.segments)}\` has no middle: name a part, a box or a leg`,
		);
		return;
	}
	const index = axisIndex[axis];
	const extent = extents[index];
	if (!extent) return;
	const room = minus(minus(bounds.max[index], bounds.min[index]), extent);
	hold(axis, row, { side: -1, at: plus(bounds.min[index], over(room, 2)) });
}
