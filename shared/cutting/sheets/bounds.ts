// What no plan can beat: least price and least number of sheets, from areas.
import type { Problem } from "./problem.ts";

export interface Bounds {
	readonly price: number;
	readonly sheets: number;
}

/** From the area of the parts alone, grown parts on grown sheets; on-hand sheets count as filled to the last corner. */
export function areaBounds(problem: Problem, wanted: Int32Array): Bounds {
	let area = 0;
	wanted.forEach((count, kind) => {
		area += count * (problem.kinds[kind]?.area ?? 0);
	});
	const bySize = [...problem.blanks].sort((a, b) => b.x * b.y - a.x * a.y);
	let sheets = 0;
	let rest = area;
	for (const { x, y, count } of bySize) {
		const needed = Math.min(count, Math.ceil(rest / (x * y) - slack));
		if (needed <= 0) break;
		sheets += needed;
		rest -= needed * x * y;
	}
	const byPrice = [...problem.blanks].sort(
		(a, b) => a.price / (a.x * a.y) - b.price / (b.x * b.y),
	);
	let price = 0;
	rest = area;
	for (const blank of byPrice) {
		const needed = Math.min(
			blank.count,
			Math.max(0, rest / (blank.x * blank.y)),
		);
		price += needed * blank.price;
		rest -= needed * blank.x * blank.y;
	}
	return { sheets, price: roundedUp(price, problem) };
}

const slack = 1e-9;

/** A price is a sum of prices: the next multiple of what divides them all, where they are whole numbers. */
export function roundedUp(price: number, problem: Problem): number {
	let step = 0;
	for (const blank of problem.blanks) {
		if (!Number.isSafeInteger(blank.price)) return price * (1 - slack);
		step = commonDivisor(step, blank.price);
	}
	return step === 0
		? 0
		: Math.ceil(price / step - slack * (1 + price / step)) * step;
}

function commonDivisor(a: number, b: number): number {
	let [x, y] = [a, b];
	while (y !== 0) [x, y] = [y, x % y];
	return x;
}
