// Pieces that stand, hang and tip: worked examples with their source, and the same reactions from a general matrix library.

import fc from "fast-check";
import { Matrix, pseudoInverse, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
	type CleatCase,
	hungForces,
	legForces,
	railForces,
} from "../../shared/mechanics/cleat-statics.ts";
import { footReactions, kickPulls } from "../../shared/mechanics/legs.ts";
import {
	reserve,
	tippingPull,
	tippingRatio,
} from "../../shared/mechanics/tipping.ts";
import { studsUnder, threadInWall } from "../../shared/mechanics/wall.ts";

const g = 9.80665;

/** Within 0.1 %, or of nothing within a thousandth of `scale`. */
function near(found: number, wanted: number, scale: number): void {
	expect(Math.abs(found - wanted)).toBeLessThanOrEqual(
		Math.max(0.001 * Math.abs(wanted), 1e-6 * scale),
	);
}

const within = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true });

describe("tipping", () => {
	it("30 kg, 400 mm between the feet, weight in the middle, pushed at 700 mm: 84.1 N (worked example, elementary statics)", () => {
		// 294.2 x 200 / 700
		const pull = tippingPull({ weight: 30 * g, behind: 200, outside: [] }, 700);
		expect(pull).toBeCloseTo(84.06, 1);
	});

	it("chest of 35 kg, 0.22 m behind the feet, 60 lb 0.35 m before them: ratio 0.81, it tips (weight of ASTM F2057-23, read)", () => {
		// 35 x 0.22 = 7.70 against 27.2 x 0.35 = 9.53
		const standing = {
			weight: 35 * g,
			behind: 220,
			outside: [{ force: 60 * 0.45359237 * g, before: 350 }],
		};
		expect(tippingRatio(standing, 0, 0)).toBeCloseTo(0.81, 2);
		expect(reserve(standing)).toBeLessThan(0);
		expect(tippingPull(standing, 900)).toBe(0);
	});

	it("is the pull at which the rear feet carry nothing, by a linear system", () => {
		fc.assert(
			fc.property(
				within(50, 2000),
				within(10, 500),
				within(10, 600),
				within(200, 2500),
				within(0, 300),
				within(0, 500),
				(weight, behind, extra, height, load, before) => {
					const depth = behind + extra;
					const standing = {
						weight,
						behind,
						outside: [{ force: load, before }],
					};
					if (reserve(standing) < 0.01 * weight * behind) return;
					// Unknown: front foot up, rear foot up, friction, the pull. The rear foot, at `depth` behind the front, is to be 0.
					const found = solve(
						new Matrix([
							[1, 1, 0, 0],
							[0, 0, 1, -1],
							[0, depth, 0, height],
							[0, 1, 0, 0],
						]),
						Matrix.columnVector([
							weight + load,
							0,
							weight * behind - load * before,
							0,
						]),
					);
					near(tippingPull(standing, height), found.get(3, 0), weight);
				},
			),
		);
	});
});

describe("a cabinet on a bevelled cleat", () => {
	// Worked example, elementary statics: 40 kg, weight 160 mm off the wall, bevel at 45 degrees, 18 mm strips, H 500, y 65, d 35.
	const cabinet: CleatCase = {
		weights: [{ force: 40 * g, fromWall: 160 }],
		contact: 9,
		rise: 500,
		slope: 1,
		contactUp: 65,
		screwsUp: 35,
	};

	it("alone: R 118.5 N, thrust to 392.3 N, pull on the screws from 320.9 to 829.4 N", () => {
		const found = hungForces(cabinet);
		expect(found.down).toBeCloseTo(392.3, 1);
		expect(found.lean).toBeCloseTo(118.5, 1);
		expect(found.thrust[0]).toBeCloseTo(118.5, 1);
		expect(found.thrust[1]).toBeCloseTo(392.3, 1);
		expect(found.pull[0]).toBeCloseTo(320.9, 1);
		expect(found.pull[1]).toBeCloseTo(829.4, 1);
		expect(found.climbs).toBe(false);
	});

	it("climbs out where (a - e) / H is more than tan of the bevel: at 45 degrees, where it is as far out as the hook is high", () => {
		expect(hungForces({ ...cabinet, rise: 152 }).climbs).toBe(false);
		expect(hungForces({ ...cabinet, rise: 150 }).climbs).toBe(true);
	});

	it("with two legs 280 mm off the wall: 218.6 N on them, 173.7 N on the hook, pull from 44.7 to 367.2 N", () => {
		const found = legForces(cabinet, 280);
		expect(found.legs).toBeCloseTo(218.6, 1);
		expect(found.down).toBeCloseTo(173.7, 1);
		expect(found.pull[0]).toBeCloseTo(44.7, 1);
		expect(found.pull[1]).toBeCloseTo(367.2, 1);
		expect(found.lifts).toBe(false);
	});

	it("lifts off where the legs stand behind the weight", () => {
		expect(legForces(cabinet, 161).lifts).toBe(false);
		expect(legForces(cabinet, 159).lifts).toBe(true);
	});

	it("has the reactions that equilibrium gives by a linear system, alone and on legs", () => {
		const weight = fc.record({
			force: within(20, 800),
			fromWall: within(30, 500),
		});
		fc.assert(
			fc.property(
				fc.array(weight, { minLength: 1, maxLength: 5 }),
				within(4, 20),
				within(60, 1500),
				within(0.3, 2),
				within(30, 100),
				within(15, 100),
				within(150, 600),
				(weights, contact, rise, slope, contactUp, screwsUp, legsAt) => {
					const given = {
						weights,
						contact,
						rise,
						slope,
						contactUp,
						screwsUp,
					};
					const total = weights.reduce((sum, { force }) => sum + force, 0);
					const about = weights.reduce(
						(sum, { force, fromWall }) => sum + force * fromWall,
						0,
					);
					// Alone. Unknown: V on the hook, N level at the hook, R at the lower line; about the point on the wall at the lower line.
					const hung = solve(
						new Matrix([
							[1, 0, 0],
							[0, 1, -1],
							[contact, rise, 0],
						]),
						Matrix.columnVector([total, 0, about]),
					);
					const found = hungForces(given);
					near(found.down, hung.get(0, 0), total);
					near(found.lean, hung.get(2, 0), total);
					near(found.thrust[0], hung.get(1, 0), total);
					// The strip on the wall. Unknown: pull T, bearing B at its lower edge, shear S; thrust Q and V known.
					const onStrip = (thrust: number, down: number): number =>
						solve(
							new Matrix([
								[1, -1, 0],
								[0, 0, 1],
								[screwsUp, 0, 0],
							]),
							Matrix.columnVector([
								thrust,
								down,
								thrust * contactUp + down * contact,
							]),
						).get(0, 0);
					for (const at of [0, 1] as const)
						near(
							found.pull[at],
							onStrip(found.thrust[at], hung.get(0, 0)),
							total,
						);
					// On legs. Unknown: V and F; about the wall.
					const legs = solve(
						new Matrix([
							[1, 1],
							[contact, legsAt],
						]),
						Matrix.columnVector([total, about]),
					);
					const standing = legForces(given, legsAt);
					near(standing.legs, legs.get(1, 0), total);
					near(standing.down, legs.get(0, 0), total);
					if (standing.lifts) return;
					near(
						standing.pull[1],
						onStrip(standing.down * slope, legs.get(0, 0)),
						total,
					);
				},
			),
		);
	});

	it("a rail is pulled by the moment over its height: 10 kg, 150 mm out, 300 mm over the lower edge: 49.0 N", () => {
		// 98.07 x 150 / 300
		const found = railForces([{ force: 10 * g, fromWall: 150 }], 300);
		expect(found.pull).toBeCloseTo(49.03, 1);
		expect(found.weight).toBeCloseTo(98.07, 1);
	});
});

describe("legs", () => {
	it("four feet under a weight in the middle carry a quarter each", () => {
		const feet = [0, 900].flatMap((x) => [0, 300].map((z) => ({ x, z })));
		for (const one of footReactions(feet, 400, { x: 450, z: 150 }) ?? [])
			expect(one).toBeCloseTo(100, 9);
	});

	it("two feet: the lever rule, F (1/2 +- x / B)", () => {
		// 200 N, 100 mm off the middle of 800 mm: 200 x (1/2 + 1/8) = 125 and 75.
		const found = footReactions(
			[
				{ x: 0, z: 280 },
				{ x: 800, z: 280 },
			],
			200,
			{ x: 500, z: 280 },
		);
		expect(found?.[0]).toBeCloseTo(75, 9);
		expect(found?.[1]).toBeCloseTo(125, 9);
	});

	it("feet on one point carry no moment", () => {
		const here = { x: 5, z: 5 };
		expect(footReactions([here], 90, here)).toEqual([90]);
		expect(footReactions([here, here], 90, here)).toBeUndefined();
		expect(footReactions([], 90, here)).toBeUndefined();
	});

	it("are the smallest reactions that balance, by the pseudo-inverse of the equilibrium equations", () => {
		const foot = fc.record({ x: within(-1000, 1000), z: within(-500, 500) });
		fc.assert(
			fc.property(
				fc.array(foot, { minLength: 3, maxLength: 8 }),
				within(50, 3000),
				foot,
				(feet, weight, at) => {
					const mx = feet.reduce((sum, { x }) => sum + x, 0) / feet.length;
					const mz = feet.reduce((sum, { z }) => sum + z, 0) / feet.length;
					// In metres about the middle, so that the rows are of one size.
					const rows = new Matrix([
						feet.map(() => 1),
						feet.map(({ x }) => (x - mx) / 1000),
						feet.map(({ z }) => (z - mz) / 1000),
					]);
					const area = feet.reduce(
						(least, { x, z }) => Math.max(least, Math.abs((x - mx) * (z - mz))),
						0,
					);
					const gram = rows.mmul(rows.transpose());
					const det =
						gram.get(1, 1) * gram.get(2, 2) - gram.get(1, 2) * gram.get(2, 1);
					// Feet all but in a row balance only what is on that row.
					if (det < 1e-3 || area < 1) return;
					const wanted = pseudoInverse(rows).mmul(
						Matrix.columnVector([
							weight,
							(weight * (at.x - mx)) / 1000,
							(weight * (at.z - mz)) / 1000,
						]),
					);
					const found = footReactions(feet, weight, at) ?? [];
					expect(found).toHaveLength(feet.length);
					for (const [i, one] of found.entries())
						near(one, wanted.get(i, 0), 1000 * weight);
				},
			),
		);
	});

	it("a kick of 200 N, 450 mm below the edge, two screws 50 and 125 mm from it: 248 and 621 N", () => {
		// 90 000 N mm over 50^2 + 125^2 = 18 125: 4.9655 N/mm; x 50 = 248.3, x 125 = 620.7
		const found = kickPulls(200, 450, [50, 125]);
		expect(found[0]).toBeCloseTo(248.3, 1);
		expect(found[1]).toBeCloseTo(620.7, 1);
		expect(kickPulls(200, 450, [-3, 0])).toEqual([Infinity, Infinity]);
	});

	it("the screws share a kick by the pseudo-inverse of the one equation of moments", () => {
		fc.assert(
			fc.property(
				within(20, 500),
				within(50, 900),
				fc.array(within(5, 300), { minLength: 1, maxLength: 6 }),
				(force, arm, distances) => {
					const wanted = pseudoInverse(new Matrix([distances])).mul(
						force * arm,
					);
					for (const [i, one] of kickPulls(force, arm, distances).entries())
						near(one, wanted.get(i, 0), force);
				},
			),
		);
	});
});

describe("the wall", () => {
	it("studs under a strip: floor(L / s), and one more if it is set so", () => {
		// Elementary; US studs 16 in, European ones 600 and 625 mm apart.
		expect(studsUnder(40 * 25.4, 406.4)).toEqual({ least: 2, most: 3 });
		expect(studsUnder(32 * 25.4, 406.4)).toEqual({ least: 2, most: 3 });
		expect(studsUnder(15 * 25.4, 406.4)).toEqual({ least: 0, most: 1 });
		expect(studsUnder(1300, 625)).toEqual({ least: 2, most: 3 });
		expect(studsUnder(600, 0)).toEqual({ least: 0, most: 0 });
	});

	it("is what trying every place along the wall finds", () => {
		fc.assert(
			fc.property(within(50, 3000), within(200, 700), (length, spacing) => {
				let least = Infinity;
				let most = 0;
				for (let step = 0; step < 500; step++) {
					const start = (step / 500) * spacing + 1e-7;
					const count =
						Math.floor((start + length) / spacing) -
						Math.floor(start / spacing);
					least = Math.min(least, count);
					most = Math.max(most, count);
				}
				const found = studsUnder(length, spacing);
				expect(least).toBeGreaterThanOrEqual(found.least);
				expect(most).toBeLessThanOrEqual(found.most);
				const part = (length / spacing) % 1;
				// Where no 500th of the spacing hides one.
				if (part > 0.01 && part < 0.99)
					expect([least, most]).toEqual([found.least, found.most]);
			}),
		);
	});

	it("a 3 in screw through 3/4 in strip and 1/2 in board reaches 1 3/4 in; its thread is two thirds (ASME B18.6.1)", () => {
		expect(threadInWall(76.2, 19.05, 12.7).reach).toBeCloseTo(44.45, 6);
		expect(threadInWall(76.2, 19.05, 12.7).thread).toBeCloseTo(44.45, 6);
		expect(threadInWall(76.2, 5, 0).thread).toBeCloseTo(50.8, 6);
		expect(threadInWall(20, 18, 12.5)).toEqual({ reach: 0, thread: 0 });
	});
});
