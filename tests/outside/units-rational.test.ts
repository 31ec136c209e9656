// Exact arithmetic against fraction.js, which computes with bigints throughout, and doubles against their own bits.

import fc from "fast-check";
import { Fraction } from "fraction.js";
import { describe, expect, test } from "vitest";
import { Rational, type Rounding } from "../../shared/units/rational.ts";

type Tree =
	| { readonly op: "leaf"; readonly n: number; readonly d: number }
	| { readonly op: "neg" | "abs" | "floor" | "ceil"; readonly of: Tree }
	| {
			readonly op:
				| "add"
				| "sub"
				| "mul"
				| "div"
				| "min"
				| "max"
				| "round"
				| "down"
				| "up";
			readonly left: Tree;
			readonly right: Tree;
	  };

const maxSafe = Number.MAX_SAFE_INTEGER;

/** Sizes of a shop, and the places where a plain number stops being enough. */
const wholes = fc.oneof(
	{ weight: 4, arbitrary: fc.integer({ min: -4_000, max: 4_000 }) },
	{ weight: 1, arbitrary: fc.integer({ min: -(2 ** 31), max: 2 ** 31 }) },
	{ weight: 1, arbitrary: fc.maxSafeInteger() },
	{
		weight: 1,
		arbitrary: fc.constantFrom(
			maxSafe,
			-maxSafe,
			2 ** 52,
			2 ** 31,
			2 ** 31 - 1,
			-(2 ** 31),
		),
	},
);
const denominators = fc.oneof(
	{ weight: 4, arbitrary: fc.constantFrom(1, 2, 4, 5, 8, 10, 16, 32, 64, 160) },
	{ weight: 1, arbitrary: fc.integer({ min: 1, max: 100_000 }) },
	{ weight: 1, arbitrary: fc.integer({ min: 1, max: maxSafe }) },
);
const leaf = fc.record({
	op: fc.constant("leaf" as const),
	n: wholes,
	d: denominators,
});

/** At most eight leaves, so that no result comes near the bound on growth. */
const trees: fc.Arbitrary<Tree> = [1, 2, 3].reduce<fc.Arbitrary<Tree>>(
	(below) =>
		fc.oneof(
			{ weight: 1, arbitrary: below },
			{
				weight: 1,
				arbitrary: fc.record({
					op: fc.constantFrom("neg", "abs", "floor", "ceil"),
					of: below,
				}),
			},
			{
				weight: 6,
				arbitrary: fc.record({
					op: fc.constantFrom(
						"add",
						"sub",
						"mul",
						"div",
						"min",
						"max",
						"round",
						"down",
						"up",
					),
					left: below,
					right: below,
				}),
			},
		),
	leaf,
);

/** Undefined where something is divided by zero or rounded to a step that is not positive. */
function ours(tree: Tree): Rational | undefined {
	if (tree.op === "leaf") return Rational.of(tree.n, tree.d);
	if ("of" in tree) {
		const value = ours(tree.of);
		return value?.[tree.op]();
	}
	const a = ours(tree.left);
	const b = ours(tree.right);
	if (a === undefined || b === undefined) return undefined;
	switch (tree.op) {
		case "div":
			return b.isZero() ? undefined : a.div(b);
		case "round":
			return b.sign() > 0 ? a.roundTo(b, "nearest") : undefined;
		case "down":
		case "up":
			return b.sign() > 0 ? a.roundTo(b, tree.op) : undefined;
		default:
			return a[tree.op](b);
	}
}

function theirs(tree: Tree): Fraction | undefined {
	if (tree.op === "leaf") return new Fraction(tree.n, tree.d);
	if ("of" in tree) {
		const value = theirs(tree.of);
		return value?.[tree.op]();
	}
	const a = theirs(tree.left);
	const b = theirs(tree.right);
	if (a === undefined || b === undefined) return undefined;
	const positive = b.compare(0) > 0;
	switch (tree.op) {
		case "div":
			return b.equals(0) ? undefined : a.div(b);
		case "min":
			return a.lte(b) ? a : b;
		case "max":
			return a.gte(b) ? a : b;
		case "round":
			return positive ? a.roundTo(b) : undefined;
		case "down":
			return positive ? a.div(b).floor().mul(b) : undefined;
		case "up":
			return positive ? a.div(b).ceil().mul(b) : undefined;
		default:
			return a[tree.op](b);
	}
}

describe("against fraction.js 5", () => {
	test("random expressions give the same fraction in lowest terms", () => {
		fc.assert(
			fc.property(trees, (tree) => {
				const mine = ours(tree);
				const other = theirs(tree);
				expect(mine === undefined).toBe(other === undefined);
				if (mine === undefined || other === undefined) return;
				expect(mine.numerator).toBe(other.s * other.n);
				expect(mine.denominator).toBe(other.d);
			}),
			{ numRuns: 20_000, seed: 1 },
		);
	});

	test("random pairs are ordered the same way, near ones among them", () => {
		const near = fc
			.tuple(wholes, denominators, fc.integer({ min: -1, max: 1 }))
			.map(([n, d, by]): [Tree, Tree] => [
				{ op: "leaf", n, d },
				{
					op: "add",
					left: { op: "leaf", n, d },
					right: { op: "leaf", n: by, d: maxSafe },
				},
			]);
		fc.assert(
			fc.property(fc.oneof(fc.tuple(trees, trees), near), ([left, right]) => {
				const [a, b] = [ours(left), ours(right)];
				const [x, y] = [theirs(left), theirs(right)];
				if (!a || !b || !x || !y) return;
				expect(a.cmp(b)).toBe(Math.sign(x.compare(y)));
				expect(a.eq(b)).toBe(x.equals(y));
			}),
			{ numRuns: 10_000, seed: 2 },
		);
	});

	test("decimal texts are read the same way", () => {
		fc.assert(
			fc.property(
				fc.stringMatching(/^[+-]?[0-9]{1,40}(\.[0-9]{1,40})?$/),
				(text) => {
					const mine = Rational.fromDecimalText(text);
					const other = new Fraction(text);
					expect(mine?.numerator).toBe(other.s * other.n);
					expect(mine?.denominator).toBe(other.d);
				},
			),
			{ numRuns: 2_000, seed: 3 },
		);
	});
});

describe("as doubles", () => {
	/** What a double says exactly, from its IEEE 754 bits: significand x 2^exponent. */
	function exactly(value: number): { n: bigint; d: bigint } {
		const view = new DataView(new ArrayBuffer(8));
		view.setFloat64(0, Math.abs(value));
		const bits = view.getBigUint64(0);
		const exponent = Number(bits >> 52n);
		const fraction = bits & ((1n << 52n) - 1n);
		const significand = exponent === 0 ? fraction : fraction | (1n << 52n);
		const power = Math.max(exponent, 1) - 1075;
		const signed = value < 0 ? -significand : significand;
		return power < 0
			? { n: signed, d: 1n << BigInt(-power) }
			: { n: signed << BigInt(power), d: 1n };
	}

	/** The doubles beside a finite one that is not zero. */
	function neighbours(value: number): [number, number] {
		const view = new DataView(new ArrayBuffer(8));
		view.setFloat64(0, value);
		const bits = view.getBigUint64(0);
		view.setBigUint64(0, bits + 1n);
		const outward = view.getFloat64(0);
		view.setBigUint64(0, bits - 1n);
		return [view.getFloat64(0), outward];
	}

	function distance(n: bigint, d: bigint, value: number): Fraction {
		const double = exactly(value);
		return new Fraction(n, d).sub(new Fraction(double.n, double.d)).abs();
	}

	test("no other double lies nearer, and the tie goes to the even one (IEEE 754, roundTiesToEven)", () => {
		const size = fc.integer({ min: 1, max: 990 });
		const big = size.chain((bits) =>
			fc.bigInt({ min: 1n, max: (1n << BigInt(bits)) - 1n }),
		);
		// Halfway between two doubles, and a hair to each side.
		const ties = fc
			.tuple(
				fc.bigInt({ min: 1n << 52n, max: (1n << 53n) - 1n }),
				fc.integer({ min: 1, max: 900 }),
				fc.bigInt({ min: -1n, max: 1n }),
			)
			.map(([significand, shift, by]): [bigint, bigint] => [
				(((significand << 1n) + 1n) << BigInt(shift)) + by,
				1n,
			]);
		fc.assert(
			fc.property(
				fc.oneof(fc.tuple(big, big), ties),
				fc.boolean(),
				([size, d], negative) => {
					const n = negative ? -size : size;
					const value = Rational.fromBigints(n, d).toNumber();
					expect(Number.isFinite(value)).toBe(true);
					const here = distance(n, d, value);
					for (const other of neighbours(value)) {
						const there = distance(n, d, other);
						expect(here.lte(there)).toBe(true);
						if (here.equals(there)) expect(exactly(value).n % 2n).toBe(0n);
					}
				},
			),
			{ numRuns: 5_000, seed: 4 },
		);
	});

	test("a double comes back as the nearest fraction with the denominator asked for", () => {
		fc.assert(
			fc.property(
				fc.double({ min: -1e6, max: 1e6, noNaN: true }),
				fc.constantFrom(1, 32, 1_000, 1_000_000),
				(value, denominator) => {
					const near = Rational.near(value, denominator);
					// Half a step, and what a double of this size cannot tell apart.
					const slack = 0.5 / denominator + Math.abs(value) * 2 ** -50;
					expect(Math.abs(near.toNumber() - value)).toBeLessThanOrEqual(slack);
					expect(BigInt(denominator) % near.denominator).toBe(0n);
				},
			),
			{ numRuns: 2_000, seed: 5 },
		);
	});
});

describe("rounding laws", () => {
	test.each<Rounding>(["nearest", "down", "up"])(
		"%s gives a multiple of the step, within its bounds",
		(mode) => {
			fc.assert(
				fc.property(wholes, denominators, denominators, (n, d, parts) => {
					const value = Rational.of(n, d);
					const step = Rational.of(1, parts);
					const rounded = value.roundTo(step, mode);
					expect(rounded.div(step).isInteger()).toBe(true);
					const error = rounded.sub(value);
					if (mode === "down") expect(error.sign()).not.toBe(1);
					if (mode === "up") expect(error.sign()).not.toBe(-1);
					const bound = mode === "nearest" ? Rational.of(1, 2) : Rational.ONE;
					expect(error.abs().cmp(step.mul(bound))).not.toBe(1);
				}),
				{ numRuns: 2_000, seed: 6 },
			);
		},
	);
});
