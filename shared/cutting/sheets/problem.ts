// A job as the search sees it: equal parts gathered into kinds, the kerf folded into all sizes, absurd figures put aside.
import type { Rectangle, SheetJob } from "../job.ts";

/**
 * Parts of one size. Sizes are grown by one kerf, and so is the sheet: then pieces lie edge to edge and the kerf is
 * gone from the problem, since n pieces and n - 1 cuts fit in a length W just when n grown pieces fit in W + kerf.
 */
export interface Kind {
	/** Along the grain, grown. */
	readonly x: number;
	/** Across the grain, grown. */
	readonly y: number;
	readonly turns: boolean;
	readonly count: number;
	/** Of one, grown. */
	readonly area: number;
	/** The job's parts that are of this kind. */
	readonly members: readonly Member[];
}

/** So many of one of the job's parts; `swapped` if its length is the kind's y. */
export interface Member {
	readonly part: number;
	readonly count: number;
	readonly swapped: boolean;
}

/** A stock that can be cut from. */
export interface Blank {
	/** Index into the job's stocks. */
	readonly stock: number;
	/** Grown, after trimming. */
	readonly x: number;
	readonly y: number;
	readonly trim: number;
	/** What one costs; nothing if it is on hand. */
	readonly price: number;
	readonly count: number;
	/** Where the trimmed sheet is blemished, in its own coordinates, clipped to it. */
	readonly defects: readonly Rectangle[];
}

export interface Problem {
	readonly kinds: readonly Kind[];
	readonly blanks: readonly Blank[];
	readonly kerf: number;
	readonly leastStrip: number;
	readonly longestFirstCut: number;
	readonly stages: number;
	/** Least size of a remnant worth keeping, not grown. */
	readonly keepLength: number;
	readonly keepWidth: number;
	/** Parts without a sensible size, or beyond the most parts that one job may have. */
	readonly refused: readonly {
		readonly part: number;
		readonly count: number;
		readonly why: "too-large" | "no-stock-left";
	}[];
}

/** Parts that one job may have; what is beyond is not laid out but reported missing. */
export const mostParts = 100_000;

/**
 * The job made ready. Nothing is thrown: a count that is not a finite number above 0 asks for nothing, a part whose
 * sizes are not finite numbers above 0 is too large for any stock, and a stock with such a size is no stock; a kerf,
 * trim, price or limit that is no number, or negative, is left out.
 */
export function prepare(job: SheetJob): Problem {
	const kerf = orElse(job.kerf, 0);
	const kinds = new Map<string, MutableKind>();
	const refused: {
		part: number;
		count: number;
		why: "too-large" | "no-stock-left";
	}[] = [];
	let room = mostParts;
	job.parts.forEach((part, index) => {
		const asked = Number.isFinite(part.count) ? Math.floor(part.count) : 0;
		if (asked <= 0) return;
		if (!isSize(part.length) || !isSize(part.width)) {
			refused.push({ part: index, count: asked, why: "too-large" });
			return;
		}
		const count = Math.min(asked, room);
		room -= count;
		if (count < asked)
			refused.push({ part: index, count: asked - count, why: "no-stock-left" });
		if (count === 0) return;
		const turns = part.turns && part.length !== part.width;
		const swap = turns && part.width > part.length;
		const x = (swap ? part.width : part.length) + kerf;
		const y = (swap ? part.length : part.width) + kerf;
		const key = `${x} ${y} ${turns}`;
		const known = kinds.get(key);
		if (known === undefined) {
			const members = [{ part: index, count, swapped: swap }];
			kinds.set(key, { x, y, turns, count, area: x * y, members });
		} else {
			known.count += count;
			known.members.push({ part: index, count, swapped: swap });
		}
	});
	return {
		kinds: [...kinds.values()],
		blanks: job.stocks.flatMap((stock, index) => {
			const trim = orElse(stock.trim, 0);
			const length = stock.length - 2 * trim;
			const width = stock.width - 2 * trim;
			const count = Math.floor(orElse(stock.count, 0, true));
			if (!isSize(length) || !isSize(width) || count < 1) return [];
			return [
				{
					stock: index,
					x: length + kerf,
					y: width + kerf,
					trim,
					price: stock.onHand === true ? 0 : orElse(stock.price, 0),
					count,
					defects: (stock.defects ?? []).flatMap((defect) =>
						clipped(defect, trim, length, width),
					),
				},
			];
		}),
		kerf,
		leastStrip: orElse(job.leastStrip, 0),
		longestFirstCut: orElse(job.longestFirstCut, Number.POSITIVE_INFINITY),
		stages: orElse(job.stages, Number.POSITIVE_INFINITY),
		keepLength: orElse(job.worthKeeping?.length, 0),
		keepWidth: orElse(job.worthKeeping?.width, 0),
		refused,
	};
}

interface MutableKind {
	readonly x: number;
	readonly y: number;
	readonly turns: boolean;
	count: number;
	readonly area: number;
	readonly members: Member[];
}

function isSize(value: number): boolean {
	return Number.isFinite(value) && value > 0;
}

function orElse(
	value: number | undefined,
	otherwise: number,
	endless = false,
): number {
	if (value === undefined || Number.isNaN(value) || value < 0) return otherwise;
	return Number.isFinite(value) || endless ? value : otherwise;
}

function clipped(
	defect: Rectangle,
	trim: number,
	length: number,
	width: number,
): Rectangle[] {
	const x = Math.max(0, defect.x - trim);
	const y = Math.max(0, defect.y - trim);
	const right = Math.min(length, defect.x - trim + defect.length);
	const top = Math.min(width, defect.y - trim + defect.width);
	return right > x && top > y
		? [{ x, y, length: right - x, width: top - y }]
		: [];
}
