// Sizes that are no numbers, endless, huge or tiny neither crash nor hang any of the geometry.

import { expect, test } from "vitest";
import { randomSolid, sourceOf } from "../../tests/harness/random-solids.ts";
import { stretchesAlong } from "./along.ts";
import { boundsOf } from "./bounds.ts";
import { coverOf, roundEnvelope } from "./cover.ts";
import { measure } from "./measure.ts";
import { meetingOf, nearPairs, overlapOf } from "./overlap.ts";
import { shapeBlank } from "./profile.ts";
import type { Box, Solid, Vec3 } from "./solid.ts";
import { trianglesOf } from "./triangles.ts";

const odd = [Number.NaN, Infinity, -Infinity, 0, 1e300, -1e300, 1e-300, 1e9];

test("odd numbers anywhere are survived", () => {
	let answered = 0;
	for (let seed = 0; seed < 500; seed++) {
		const source = sourceOf(seed);
		const spoil = (value: number): number =>
			source.whole(0, 15) === 0
				? (odd[source.whole(0, odd.length - 1)] as number)
				: value;
		const spoilBox = (box: Box): Box => ({
			min: box.min.map(spoil) as unknown as Vec3,
			max: box.max.map(spoil) as unknown as Vec3,
		});
		const spoilt = (): Solid => {
			const solid = randomSolid(source, {
				outlines: [source.whole(0, 2), source.whole(0, 1), source.whole(0, 1)],
				cuts: 4,
			});
			return {
				box: spoilBox(solid.box),
				cuts: solid.cuts.map(spoilBox),
				outlines: solid.outlines.map((outline) => ({
					...outline,
					points: outline.points.map(([u, v]) => [spoil(u), spoil(v)] as const),
				})),
			};
		};
		const a = spoilt();
		const b = spoilt();
		measure(a);
		boundsOf(a);
		overlapOf(a, b);
		meetingOf(a, b);
		nearPairs([a.box, b.box]);
		trianglesOf(a);
		stretchesAlong(a, [spoil(1), spoil(2), 3], [spoil(1), spoil(1), 0]);
		coverOf(a, roundEnvelope([spoil(1), 2, 3], [4, spoil(5), 6], spoil(1)));
		shapeBlank({
			plane: "xy",
			length: spoil(300),
			width: spoil(50),
			low: {
				kind: "curve",
				stations: [
					{ height: spoil(0), cutIn: spoil(10) },
					{ height: spoil(100), cutIn: spoil(2) },
					{ height: spoil(200), cutIn: 0 },
				],
			},
			end: { angle: spoil(0.2), longPoint: "low" },
		});
		answered++;
	}
	expect(answered).toBe(500);
});
