// Straight beams of one section on any number of supports: reactions, moments and deflections, exact to floating rounding.
// Singularity functions (W. H. Macaulay, "Note on the deflection of beams", 1919): the moment is one sum of <x - a>^n over
// the whole beam, so two integrations with two constants give the deflection of every span at once.

import { solveLinear } from "./linear.ts";

/** What holds the beam: `pinned` takes a force, `fixed` a force and a moment. */
export interface BeamSupport {
	/** From the left end, mm. */
	readonly at: number;
	readonly kind: "pinned" | "fixed";
}

/** Downward. */
export type BeamLoad =
	| {
			readonly kind: "uniform";
			readonly from: number;
			readonly to: number;
			/** N/mm. */
			readonly perLength: number;
	  }
	| {
			readonly kind: "point";
			readonly at: number;
			/** N. */
			readonly force: number;
	  };

export interface Beam {
	/** mm. */
	readonly length: number;
	/** E I, N mm2. */
	readonly stiffness: number;
	/** From left to right, no two at one place. */
	readonly supports: readonly BeamSupport[];
	readonly loads: readonly BeamLoad[];
}

export interface BentBeam {
	/** One for each support: upward force in N, moment on the beam in N mm (of a fixed one; positive where it bends the beam downward beyond). */
	readonly reactions: readonly {
		readonly force: number;
		readonly moment: number;
	}[];
	/** Downward, mm, at a distance from the left end. */
	readonly deflectionAt: (x: number) => number;
	/** N mm; positive where the underside is stretched. */
	readonly momentAt: (x: number) => number;
}

/** <x>^n: nothing before the place. */
function after(x: number, power: number): number {
	if (x < 0) return 0;
	return power === 0 ? 1 : x ** power;
}

/**
 * Small deflections of an Euler-Bernoulli beam, without shear. Undefined where the supports do not hold it (fewer than two pins
 * and no fixed end) or a figure is not a finite number above zero.
 */
export function bend(beam: Beam): BentBeam | undefined {
	const { length, stiffness, supports, loads } = beam;
	if (!(length > 0 && stiffness > 0)) return undefined;
	const fixed = supports.filter(({ kind }) => kind === "fixed");
	if (supports.length < 2 && fixed.length === 0) return undefined;
	// In lengths of the beam, so that the equations are of one size; forces stay in N, moments are N times the length.
	const places = supports.map(({ at }) => at / length);
	const clamps = fixed.map(({ at }) => at / length);
	const own = loads.map((load) => withinBeam(load, length));
	const loadSum = (x: number, order: 0 | 1 | 2 | 3): number =>
		own.reduce((sum, load) => sum + loadTerm(load, x, order), 0);

	// Unknown: the forces, the moments, then the two constants of integration.
	const count = places.length + clamps.length + 2;
	const rows: number[][] = [];
	const right: number[] = [];
	const deflectionRow = (x: number): number[] => [
		...places.map((at) => after(x - at, 3) / 6),
		...clamps.map((at) => after(x - at, 2) / 2),
		x,
		1,
	];
	const slopeRow = (x: number): number[] => [
		...places.map((at) => after(x - at, 2) / 2),
		...clamps.map((at) => after(x - at, 1)),
		1,
		0,
	];
	for (const at of places) {
		rows.push(deflectionRow(at));
		right.push(loadSum(at, 3));
	}
	for (const at of clamps) {
		rows.push(slopeRow(at));
		right.push(loadSum(at, 2));
	}
	// Beyond the right end there is neither shear nor moment.
	rows.push([...places.map(() => 1), ...clamps.map(() => 0), 0, 0]);
	right.push(loadSum(1, 0));
	rows.push([...places.map((at) => 1 - at), ...clamps.map(() => 1), 0, 0]);
	right.push(loadSum(1, 1));
	const found = solveLinear(rows, right);
	if (!found || found.length !== count) return undefined;

	const dot = (row: readonly number[]): number =>
		row.reduce((sum, value, i) => sum + value * (found[i] as number), 0);
	const scale = length ** 3 / stiffness;
	let clamp = places.length;
	return {
		reactions: supports.map(({ kind }, i) => ({
			force: found[i] as number,
			moment: kind === "fixed" ? (found[clamp++] as number) * length : 0,
		})),
		deflectionAt: (x) => {
			const t = x / length;
			return (loadSum(t, 3) - dot(deflectionRow(t))) * scale;
		},
		momentAt: (x) => {
			const t = x / length;
			const up = dot([
				...places.map((at) => after(t - at, 1)),
				...clamps.map((at) => after(t - at, 0)),
				0,
				0,
			]);
			return (up - loadSum(t, 1)) * length;
		},
	};
}

/** The part of a load that stands on the beam, in lengths of the beam and N. */
function withinBeam(load: BeamLoad, length: number): BeamLoad {
	if (load.kind === "point") return { ...load, at: load.at / length };
	const from = Math.max(0, load.from / length);
	const to = Math.min(1, load.to / length);
	return {
		kind: "uniform",
		from,
		to: Math.max(from, to),
		perLength: load.perLength * length,
	};
}

/** What a load adds to the sums of forces (0), moments (1), and once and twice integrated moments (2, 3), at x. */
function loadTerm(load: BeamLoad, x: number, order: 0 | 1 | 2 | 3): number {
	const factorial = [1, 1, 2, 6, 24] as const;
	if (load.kind === "point")
		return (load.force * after(x - load.at, order)) / factorial[order];
	const next = (order + 1) as 1 | 2 | 3 | 4;
	return (
		(load.perLength * (after(x - load.from, next) - after(x - load.to, next))) /
		factorial[next]
	);
}

/** Where a beam bends most between two places. */
export interface MostBent {
	/** Downward, mm; below zero where it is lifted. */
	readonly deflection: number;
	/** From the left end, mm. */
	readonly at: number;
}

/** The largest deflection, up or down, from `from` to `to`, mm. */
export function mostBent(bent: BentBeam, from: number, to: number): MostBent {
	const steps = 32;
	const step = (to - from) / steps;
	let best = 0;
	const values: number[] = [];
	for (let i = 0; i <= steps; i++) {
		values.push(bent.deflectionAt(from + i * step));
		if (Math.abs(values[i] as number) > Math.abs(values[best] as number))
			best = i;
	}
	// A parabola through the highest three finds the top between two of them.
	const [a, b, c] = [
		values[best - 1],
		values[best] as number,
		values[best + 1],
	];
	const curve = a === undefined || c === undefined ? 0 : a - 2 * b + c;
	const at =
		from +
		(best + (curve === 0 ? 0 : ((a as number) - (c as number)) / (2 * curve))) *
			step;
	const deflection = bent.deflectionAt(at);
	return Math.abs(deflection) >= Math.abs(b)
		? { deflection, at }
		: { deflection: b, at: from + best * step };
}
