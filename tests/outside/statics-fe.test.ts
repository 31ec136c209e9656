// An independent path for statics: two-node beam elements (Euler-Bernoulli, cubic shape functions) assembled and solved by a
// general matrix library over random beams; sections are worked out by slices instead of formulas.

import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
	type Beam,
	type BeamLoad,
	type BeamSupport,
	bend,
} from "../../shared/mechanics/beams.ts";
import {
	composite,
	type SectionLayer,
} from "../../shared/mechanics/sections.ts";

/** A small generator with a fixed seed (mulberry32), so that every run tries the same beams. */
function chance(seed: number): () => number {
	let state = seed;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** E I by slices 1/2000 of the height thick: sum of E y^2 dA about the axis where sum of E y dA vanishes. */
function sliced(layers: readonly SectionLayer[]): number {
	const slices = layers.flatMap(({ elasticity, width, height, bottom }) =>
		Array.from({ length: 2000 }, (_, i) => ({
			weight: (elasticity * width * height) / 2000,
			y: bottom + (height * (i + 0.5)) / 2000,
		})),
	);
	const total = slices.reduce((sum, { weight }) => sum + weight, 0);
	const axis =
		slices.reduce((sum, { weight, y }) => sum + weight * y, 0) / total;
	return slices.reduce(
		(sum, { weight, y }) => sum + weight * (y - axis) ** 2,
		0,
	);
}

interface Solved {
	readonly nodes: readonly number[];
	readonly deflections: readonly number[];
	readonly forces: readonly number[];
	readonly moments: readonly number[];
}

/** Downward deflections at the nodes, and the supports' upward forces and moments. */
function finiteElements(beam: Beam): Solved {
	const marks = [
		0,
		beam.length,
		...beam.supports.map(({ at }) => at),
		...beam.loads.flatMap((load) =>
			load.kind === "point" ? [load.at] : [load.from, load.to],
		),
	];
	const nodes = [...new Set(marks)]
		.sort((a, b) => a - b)
		.flatMap((at, i, all) => {
			const next = all[i + 1];
			return next === undefined
				? [at]
				: Array.from({ length: 4 }, (_, k) => at + ((next - at) * k) / 4);
		});
	const size = nodes.length * 2;
	const k = Matrix.zeros(size, size);
	const f = Matrix.zeros(size, 1);
	for (let e = 0; e + 1 < nodes.length; e++) {
		const from = nodes[e] as number;
		const h = (nodes[e + 1] as number) - from;
		const local = [
			[12, 6 * h, -12, 6 * h],
			[6 * h, 4 * h * h, -6 * h, 2 * h * h],
			[-12, -6 * h, 12, -6 * h],
			[6 * h, 2 * h * h, -6 * h, 4 * h * h],
		];
		for (let i = 0; i < 4; i++)
			for (let j = 0; j < 4; j++)
				k.set(
					2 * e + i,
					2 * e + j,
					k.get(2 * e + i, 2 * e + j) +
						((local[i]?.[j] as number) * beam.stiffness) / h ** 3,
				);
		for (const load of beam.loads) {
			if (load.kind !== "uniform") continue;
			const middle = from + h / 2;
			if (middle < load.from || middle > load.to) continue;
			const q = load.perLength;
			const consistent = [
				(q * h) / 2,
				(q * h * h) / 12,
				(q * h) / 2,
				(-q * h * h) / 12,
			];
			consistent.forEach((value, i) => {
				f.set(2 * e + i, 0, f.get(2 * e + i, 0) + value);
			});
		}
	}
	for (const load of beam.loads) {
		if (load.kind !== "point") continue;
		const row = 2 * nodes.indexOf(load.at);
		f.set(row, 0, f.get(row, 0) + load.force);
	}
	const held = beam.supports.flatMap(({ at, kind }) => {
		const row = 2 * nodes.indexOf(at);
		return kind === "fixed" ? [row, row + 1] : [row];
	});
	const free = Array.from({ length: size }, (_, i) => i).filter(
		(i) => !held.includes(i),
	);
	const moved = solve(k.selection(free, free), f.selection(free, [0]));
	const u = Matrix.zeros(size, 1);
	free.forEach((row, i) => {
		u.set(row, 0, moved.get(i, 0));
	});
	const rest = k.mmul(u).sub(f);
	return {
		nodes,
		deflections: nodes.map((_, i) => u.get(2 * i, 0)),
		forces: beam.supports.map(({ at }) => -rest.get(2 * nodes.indexOf(at), 0)),
		moments: beam.supports.map(({ at, kind }) =>
			kind === "fixed" ? rest.get(2 * nodes.indexOf(at) + 1, 0) : 0,
		),
	};
}

/** A shelf as one might be: one to six spans, ends pinned, fixed or free, three loads, a section of up to three layers. */
function randomBeam(seed: number): {
	readonly beam: Beam;
	readonly layers: readonly SectionLayer[];
} {
	const next = chance(seed);
	const between = (low: number, high: number): number =>
		low + (high - low) * next();
	// On a grid of 5 mm: an element of a hundredth of a millimetre spoils the elements' own figures.
	const place = (low: number, high: number): number =>
		Math.round(between(low, high) / 5) * 5;
	const layers = Array.from({ length: 1 + Math.floor(next() * 3) }, () => ({
		elasticity: between(1500, 14000),
		width: between(6, 400),
		height: between(6, 60),
		bottom: between(-30, 30),
	}));
	const supports: BeamSupport[] = [];
	let at = next() < 0.5 ? 0 : place(50, 300);
	const spans = 1 + Math.floor(next() * 6);
	const pick = (): "pinned" | "fixed" => (next() < 0.3 ? "fixed" : "pinned");
	for (let i = 0; i <= spans; i++) {
		supports.push({
			at,
			kind: i === 0 || i === spans ? pick() : "pinned",
		});
		if (i < spans) at += place(200, 1200);
	}
	const length = next() < 0.5 ? at : at + place(50, 300);
	const loads: BeamLoad[] = [
		{ kind: "uniform", from: 0, to: length, perLength: between(0.05, 2) },
		{ kind: "point", at: place(0, length), force: between(50, 1500) },
	];
	const from = place(0, length * 0.6);
	loads.push({
		kind: "uniform",
		from,
		to: place(from + 10, length),
		perLength: between(0.05, 2),
	});
	const { stiffness } = composite(layers);
	return { beam: { length, stiffness, supports, loads }, layers };
}

/** Agreement asked for, of the largest value of the beam. */
const share = 0.001;

describe("random beams, twice", () => {
	it.each(Array.from({ length: 120 }, (_, i) => i + 1))("beam %i", (seed) => {
		const { beam, layers } = randomBeam(seed);
		const stiffness = sliced(layers);
		expect(Math.abs(beam.stiffness / stiffness - 1)).toBeLessThan(share);
		const bent = bend(beam);
		const elements = finiteElements({ ...beam, stiffness });
		const most = Math.max(...elements.deflections.map(Math.abs));
		expect(most).toBeGreaterThan(0);
		elements.nodes.forEach((node, i) => {
			const off =
				(bent?.deflectionAt(node) ?? Number.NaN) -
				(elements.deflections[i] as number);
			expect(Math.abs(off), `at ${node}`).toBeLessThan(share * most);
		});
		const force = Math.max(...elements.forces.map(Math.abs));
		const moment = Math.max(...elements.moments.map(Math.abs), 1);
		beam.supports.forEach((_, i) => {
			const own = bent?.reactions[i];
			expect(
				Math.abs((own?.force ?? Number.NaN) - (elements.forces[i] as number)),
			).toBeLessThan(share * force);
			expect(
				Math.abs((own?.moment ?? Number.NaN) - (elements.moments[i] as number)),
			).toBeLessThan(share * moment);
		});
	});
});

it("tells a beam that is one part in a hundred off", () => {
	const { beam } = randomBeam(3);
	const elements = finiteElements({
		...beam,
		stiffness: beam.stiffness * 1.01,
	});
	const bent = bend(beam);
	const most = Math.max(...elements.deflections.map(Math.abs));
	const off = elements.nodes.map((node, i) =>
		Math.abs(
			(bent?.deflectionAt(node) ?? 0) - (elements.deflections[i] as number),
		),
	);
	expect(Math.max(...off)).toBeGreaterThan(share * most);
});
