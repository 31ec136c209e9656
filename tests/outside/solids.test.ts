// Random solids, built a second time in Manifold (an independent solid modeller), must have the same volume and centre.

import type { Manifold } from "manifold-3d";
import { describe, expect, test } from "vitest";
import { boundsOf } from "../../shared/geometry/bounds.ts";
import { measure } from "../../shared/geometry/measure.ts";
import { meetingOf, overlapOf } from "../../shared/geometry/overlap.ts";
import { solidToWorld } from "../../shared/geometry/place.ts";
import {
	type Box,
	commonSolid,
	type Solid,
} from "../../shared/geometry/solid.ts";
import { modelled, modelledCentre } from "../harness/modeller.ts";
import {
	inRandomPlace,
	randomSolid,
	type Source,
	sourceOf,
} from "../harness/random-solids.ts";

function boxVolume(box: Box): number {
	return (
		(box.max[0] - box.min[0]) *
		(box.max[1] - box.min[1]) *
		(box.max[2] - box.min[2])
	);
}

function diagonal(box: Box): number {
	return Math.hypot(
		box.max[0] - box.min[0],
		box.max[1] - box.min[1],
		box.max[2] - box.min[2],
	);
}

/** Compares one solid; returns its volume so that a test can see that enough of them were not empty. */
function compare(solid: Solid, name: string): number {
	const ours = measure(solid);
	const theirs = modelled(solid);
	const whole = boxVolume(solid.box);
	const difference = Math.abs(ours.volume - theirs.volume());
	expect(difference / whole, `${name}: volume`).toBeLessThan(1e-9);
	if (ours.volume < 1e-3 * whole) {
		theirs.delete();
		return ours.volume;
	}
	expect(difference / ours.volume, `${name}: volume`).toBeLessThan(1e-6);
	const centre = modelledCentre(theirs);
	const bounds = boundsOf(solid);
	const around = theirs.boundingBox();
	const scale = diagonal(solid.box);
	for (const k of [0, 1, 2] as const) {
		expect(
			Math.abs(ours.centre[k] - centre[k]) / scale,
			`${name}: centre along axis ${k}`,
		).toBeLessThan(1e-6);
		expect(
			Math.abs((bounds?.min[k] ?? Number.NaN) - around.min[k]) / scale,
			`${name}: low bound along axis ${k}`,
		).toBeLessThan(1e-7);
		expect(
			Math.abs((bounds?.max[k] ?? Number.NaN) - around.max[k]) / scale,
			`${name}: high bound along axis ${k}`,
		).toBeLessThan(1e-7);
	}
	theirs.delete();
	return ours.volume;
}

const families: readonly (readonly [string, (source: Source) => Solid])[] = [
	["boxes with cuts", (s) => randomSolid(s, { outlines: [0, 0, 0] })],
	["one outline", (s) => randomSolid(s, { outlines: oneOf(s) })],
	["two outlines in one plane", (s) => randomSolid(s, { outlines: twoOf(s) })],
	[
		"outlines in two planes",
		(s) => randomSolid(s, { outlines: oneOf(s, true) }),
	],
	["outlines in all planes", (s) => randomSolid(s, { outlines: [1, 1, 1] })],
	[
		"two outlines in every plane",
		(s) => randomSolid(s, { outlines: [2, 2, 2] }),
	],
];

function oneOf(source: Source, others = false): [number, number, number] {
	const counts: [number, number, number] = others ? [1, 1, 1] : [0, 0, 0];
	counts[source.whole(0, 2)] = others ? 0 : 1;
	return counts;
}

function twoOf(source: Source): [number, number, number] {
	const counts: [number, number, number] = [0, 0, 0];
	counts[source.whole(0, 2)] = 2;
	return counts;
}

describe("Volume, centre of gravity and bounds agree with Manifold", () => {
	families.forEach(([name, make], family) => {
		test(name, () => {
			let full = 0;
			for (let i = 0; i < 60; i++) {
				const solid = make(sourceOf(1000 * family + i));
				if (compare(solid, `${name} ${i}`) > 0) full++;
			}
			expect(full).toBeGreaterThan(30);
		});
	});
});

describe("Two solids in the world agree with Manifold", () => {
	test("volume and place of what they share", () => {
		let deep = 0;
		for (let i = 0; i < 300; i++) {
			const source = sourceOf(20_000 + i);
			const pair = [0, 1].map(() =>
				solidToWorld(
					inRandomPlace(source),
					randomSolid(source, {
						outlines: [
							source.whole(0, 1),
							source.whole(0, 1),
							source.whole(0, 1),
						],
					}),
				),
			) as [Solid, Solid];
			const [a, b] = pair;
			const shared = modelled(a).intersect(modelled(b));
			const theirs = shared.volume();
			const ours = measure(commonSolid(a, b)).volume;
			const scale = Math.min(boxVolume(a.box), boxVolume(b.box));
			expect(Math.abs(ours - theirs) / scale, `pair ${i}`).toBeLessThan(1e-9);
			const overlap = overlapOf(a, b);
			if (overlap === undefined) {
				// Nothing, or no deeper than contact: a sheet of that thickness over the largest face.
				expect(theirs).toBeLessThan(0.02 * diagonal(a.box) ** 2);
				continue;
			}
			deep++;
			expect(overlap.volume).toBeCloseTo(ours, 6);
			const around = shared.boundingBox();
			for (const k of [0, 1, 2] as const) {
				expect(overlap.box.min[k]).toBeGreaterThan(around.min[k] - 1e-3);
				expect(overlap.box.max[k]).toBeLessThan(around.max[k] + 1e-3);
			}
		}
		expect(deep).toBeGreaterThan(40);
	});

	test("solids said to be apart share nothing when moved by less than the gap", () => {
		let apart = 0;
		for (let i = 0; i < 60; i++) {
			const source = sourceOf(30_000 + i);
			const a = randomSolid(source, { outlines: [1, 0, 0] });
			const b = solidToWorld(
				{ origin: [source.real(500, 900), 0, 0], axes: ["+x", "+y", "+z"] },
				randomSolid(source, { outlines: [0, 0, 1] }),
			);
			const meeting = meetingOf(a, b);
			if (meeting?.kind !== "apart" || meeting.direction !== "+x") continue;
			apart++;
			const pushed = (by: number): Manifold =>
				modelled(a).intersect(modelled(b).translate(-by, 0, 0));
			const before = pushed(meeting.gap - 0.01);
			if (before.volume() > 1e-9) {
				// Only a point or an edge is in already, no wider than the tolerance.
				const around = before.boundingBox();
				const width = Math.min(
					around.max[1] - around.min[1],
					around.max[2] - around.min[2],
				);
				expect(width).toBeLessThan(0.02);
			}
			expect(pushed(meeting.gap + 0.1).volume()).toBeGreaterThan(0);
		}
		expect(apart).toBeGreaterThan(20);
	});
});
