// How far the parts of a piece move with their moisture, along each axis of the world.

import { axisOf } from "../geometry/place.ts";
import type { Axis } from "../geometry/solid.ts";
import {
	changeOfBoard,
	type Moving,
	movingBy,
	type Sawn,
} from "../mechanics/movement.ts";
import { numberOf } from "../model/size.ts";
import type { Part, Piece } from "../model/types.ts";
import { panelNamed } from "../tables/panels.ts";
import { woodNamed } from "../tables/woods.ts";
import { leastMark, marked } from "./marked.ts";
import { moistureRange, seasonOf } from "./season.ts";

/**
 * How the wood of a part moves that is sawn from a board: as its stock file says, else by the tables. Undefined for a panel,
 * and where neither knows the wood.
 */
export function boardWood({ stock }: Part): Moving | undefined {
	if (stock.kind !== "board") return undefined;
	if (stock.shrinkage) return movingBy(stock.shrinkage);
	return stock.species === undefined ? undefined : woodNamed(stock.species);
}

/** The axis of the world across a part's grain, in its width. */
export function acrossOf({ place }: Part): Axis {
	return axisOf(place.axes[1]);
}

export function sawnOf({ stock }: Part): Sawn {
	return stock.sawn ?? "flat";
}

/** `quarter-sawn white oak`; `white oak, taken as flat-sawn` where the stock does not say. */
export function cutText(part: Part): string {
	const { species = "wood", sawn } = part.stock;
	return sawn === undefined
		? `${species}, taken as flat-sawn`
		: `${sawn}-sawn ${species}`;
}

const ways = ["along", "across", "through"] as const;

/**
 * Change of a part's size along an axis while its moisture goes from `from` to `to` %, as a share of it. A panel moves by one
 * coefficient in its plane. Undefined where the tables do not know what the part is made of.
 */
export function changeOf(
	part: Part,
	axis: Axis,
	from: number,
	to: number,
): number | undefined {
	const wood = boardWood(part);
	if (wood) {
		const way = ways[part.place.axes.findIndex((one) => axisOf(one) === axis)];
		return changeOfBoard(wood, way ?? "along", sawnOf(part), from, to);
	}
	const panel =
		part.stock.kind === "sheet" && part.stock.species !== undefined
			? panelNamed(part.stock.species)
			: undefined;
	return panel && panel.change * (to - from);
}

/**
 * `Over the year it moves 5/64 in across (6.2 to 10.8 % moisture, flat-sawn white oak)`. Undefined where the piece does not
 * say how damp its room gets, for what is not sawn from a known wood, and where it is less than half a mark of the tape.
 */
export function movementText(part: Part, piece: Piece): string | undefined {
	const season = seasonOf(piece);
	if (!season || !boardWood(part)) return undefined;
	const share = changeOf(part, acrossOf(part), season.dry, season.wet) ?? 0;
	const moves = numberOf(part.width) * share;
	if (moves < leastMark(piece.display) / 2) return undefined;
	return `Over the year it moves ${marked(piece.display, moves)} across (${moistureRange(season.dry, season.wet)}, ${cutText(part)})`;
}
