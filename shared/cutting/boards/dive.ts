// From the relaxed plan to a whole one: board after board is fixed where the relaxed plan is nearly whole already.

import { topUp } from "./fill.ts";
import { type Endgame, finish } from "./finish.ts";
import { lengthOf, type Pattern, patternFrom } from "./pattern.ts";
import { Relaxation } from "./relaxation.ts";
import { type Rest, restOf } from "./rest.ts";

/** How far chance leads away from the relaxed plan, in shares of a board. */
const wander = 0.3;
/** How many of the patterns that are taken wholly are fixed at once; the others may find better company later. */
const wholeShare = 0.3;
/** A smaller program is set up once no more than this share of the sizes is left. */
const smallerAt = 0.7;

/** What all places of a dive have in common. */
export interface Dive extends Endgame {
	/** How many dead ends it may run into. */
	deadEnds: number;
	/** How many ways on are tried at one place. */
	readonly breadth: number;
	/** From 0 to 1: leads each dive another way. */
	readonly chance: () => number;
}

/** A place in the tree of choices. */
interface Place {
	readonly needs: Int32Array;
	/** Boards of each stock. */
	readonly left: Float64Array;
	/** Of the boards that are fixed. */
	cost: number;
	/** The boards that are fixed on the way here. */
	readonly fixed: Pattern[];
	/** Patterns that have been fixed next, to no avail. */
	readonly tried: Set<number>;
}

/** Several whole patterns of the relaxed plan at once. */
const wholeOnes = -1;

/**
 * Looks for a plan that costs no more than `limit`. Diving with limited backtracking and column generation at each place
 * (Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa, "Primal heuristics for branch and price: the assets of diving methods",
 * INFORMS Journal on Computing 31, 2019): patterns that the relaxed plan takes wholly are fixed, or else the one that it takes
 * most of; a place from which the relaxed plan cannot reach the limit is a dead end. What is left grows small quickly, and is
 * then looked at as a problem of its own. Undefined if there is none, or if it is not found.
 */
export function* dive(
	relaxation: Relaxation,
	limit: number,
	search: Dive,
): Generator<void, Pattern[] | undefined> {
	const { problem } = relaxation;
	const places: Place[] = [
		{
			needs: Int32Array.from(problem.demands),
			left: Float64Array.from(problem.stocks, ({ count }) => count),
			cost: 0,
			fixed: [],
			tried: new Set(),
		},
	];
	while (places.length > 0 && !search.steps.over) {
		const place = places.at(-1) as Place;
		if (place.tried.size >= search.breadth) {
			places.pop();
			continue;
		}
		yield;
		// Where a dive begins the ends have been tried already.
		if (place.tried.size === 0 && places.length > 1) {
			const rest = yield* finish(
				relaxation,
				place.needs,
				place.left,
				limit - place.cost,
				search,
			);
			if (rest === "none") {
				places.pop();
				if (--search.deadEnds < 0) return undefined;
				continue;
			}
			if (rest) return [...place.fixed, ...rest];
			if (hasShrunk(place)) {
				const found = yield* diveBelow(relaxation, place, limit, search);
				if (found) return [...place.fixed, ...found];
				if (search.deadEnds < 0) return undefined;
				places.pop();
				continue;
			}
		}
		yield* relaxation.demand(place.needs, place.left);
		if (!(yield* reaches(relaxation, limit - place.cost, search))) {
			places.pop();
			if (--search.deadEnds < 0) return undefined;
			continue;
		}
		const next = descend(relaxation, place, search);
		if (!next) places.pop();
		else if (next.needs.some((need) => need > 0)) places.push(next);
		else if (next.cost <= limit + 1e-9) return next.fixed;
	}
	return undefined;
}

/** Whether the relaxed plan costs no more than `most`: as few rounds as will tell. */
function* reaches(
	relaxation: Relaxation,
	most: number,
	{ whole, steps }: Dive,
): Generator<void, boolean> {
	for (;;) {
		if ((yield* relaxation.solve()) <= most + 1e-7) return true;
		const { bound, settled } = relaxation.price();
		const least = whole ? Math.ceil(bound - 1e-9) : bound;
		if (settled || least > most + 1e-9 || steps.over) return false;
		yield;
	}
}

function hasShrunk({ needs }: Place): boolean {
	let kinds = 0;
	for (const need of needs) if (need > 0) kinds++;
	return kinds <= smallerAt * needs.length;
}

/** The same search on what is left alone: fewer sizes, a smaller program. */
function* diveBelow(
	relaxation: Relaxation,
	place: Place,
	limit: number,
	search: Dive,
): Generator<void, Pattern[] | undefined> {
	const rest = restOf(relaxation.problem, place.needs, place.left);
	const below = new Relaxation(rest.problem, relaxation.costs, search.steps);
	for (const pattern of relaxation.patterns) {
		const now = narrowed(pattern, rest);
		if (now) below.add(now);
	}
	const found = yield* dive(below, limit - place.cost, search);
	return found?.map(rest.back);
}

/** What is left of a pattern, and what else fits in the gaps; undefined if nothing is left. */
function narrowed(
	{ stock, kinds, counts }: Pattern,
	{ indexOf, problem: { sizes, demands, stocks } }: Rest,
): Pattern | undefined {
	const now = new Int32Array(sizes.length);
	kinds.forEach((kind, k) => {
		const index = indexOf[kind] as number;
		if (index >= 0)
			now[index] = Math.min(counts[k] as number, demands[index] as number);
	});
	const used = lengthOf(patternFrom(stock, now), sizes);
	if (used === 0) return undefined;
	const { capacity } = stocks[stock] as { capacity: number };
	topUp(sizes, demands, 0, now, capacity - used);
	return patternFrom(stock, now);
}

/** The place below: some boards fixed that the relaxed plan takes wholly, or else the one that is nearest to it. */
function descend(
	relaxation: Relaxation,
	place: Place,
	{ chance }: Dive,
): Place | undefined {
	const { tried } = place;
	const next: Place = {
		needs: place.needs.slice(),
		left: place.left.slice(),
		cost: place.cost,
		fixed: place.fixed.slice(),
		tried: new Set(),
	};
	let best: number | undefined;
	let most = Number.NEGATIVE_INFINITY;
	let whole = false;
	for (const pattern of relaxation.basic()) {
		const share = relaxation.value(pattern);
		if (tried.size === 0 && chance() < wholeShare)
			for (let time = 1; time <= share + 1e-6; time++)
				if (fix(relaxation, pattern, next)) whole = true;
		if (share < 1e-6 || tried.has(pattern)) continue;
		const weight = Math.min(1, share) + wander * chance();
		if (weight > most) {
			most = weight;
			best = pattern;
		}
	}
	if (whole) {
		tried.add(wholeOnes);
		return next;
	}
	if (best === undefined) return undefined;
	tried.add(best);
	return fix(relaxation, best, next) ? next : undefined;
}

/** Fixes one board: each place takes its part, or the longest shorter one that is still needed; then what else fits. */
function fix(
	{ problem, patterns, costs }: Relaxation,
	index: number,
	place: Place,
): boolean {
	const { sizes, stocks } = problem;
	const { stock, kinds, counts } = patterns[index] as Pattern;
	if ((place.left[stock] as number) < 1) return false;
	const { capacity } = stocks[stock] as { capacity: number };
	const now = new Int32Array(sizes.length);
	let room = capacity;
	kinds.forEach((planned, k) => {
		let kind = planned;
		for (let one = 0; one < (counts[k] as number); one++) {
			while (
				kind < sizes.length &&
				(now[kind] as number) >= (place.needs[kind] as number)
			)
				kind++;
			if (kind === sizes.length) return;
			now[kind] = (now[kind] as number) + 1;
			room -= sizes[kind] as number;
		}
	});
	if (room === capacity) return false;
	topUp(sizes, place.needs, 0, now, room);
	for (let kind = 0; kind < sizes.length; kind++)
		place.needs[kind] = (place.needs[kind] as number) - (now[kind] as number);
	place.left[stock] = (place.left[stock] as number) - 1;
	place.cost += costs[stock] as number;
	place.fixed.push(patternFrom(stock, now));
	return true;
}
