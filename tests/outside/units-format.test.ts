// What is printed, read back by fraction.js: it says the rounded size exactly, and lies within half a step of the true one.

import fc from "fast-check";
import { Fraction } from "fraction.js";
import { expect, test } from "vitest";
import { formatLength, type LengthFormat } from "../../shared/units/format.ts";
import { Rational } from "../../shared/units/rational.ts";

const lengths = fc
	.tuple(
		fc.integer({ min: -10_000_000, max: 10_000_000 }),
		fc.constantFrom(1, 2, 5, 32, 64, 160, 320, 1_000, 1_016, 7, 999_983),
	)
	.map(([n, d]) => Rational.of(n, d));

const precisions = fc.constantFrom(
	Rational.of(1, 32),
	Rational.of(1, 64),
	Rational.of(1, 16),
	Rational.ONE,
	Rational.of(1, 2),
	Rational.of(1, 10),
	Rational.of(1, 1_000),
	Rational.of(5),
	Rational.of(1, 3),
);

const formats: fc.Arbitrary<LengthFormat> = fc.record({
	unit: fc.constantFrom("in", "mm"),
	precision: precisions,
	style: fc.constantFrom("plain", "feet"),
	suffix: fc.boolean(),
});

/** Millimetres of `52 19/32`, `-4 ft 4 19/32 in`, `450.5 mm`: 25.4 mm to the inch, 12 in to the foot. */
function read(text: string, unit: "in" | "mm"): Fraction {
	const match = /^(-?)(?:(\d+) ft)? ?(?:(\d[\d ./]*?)(?: (in|mm))?)?$/.exec(
		text,
	);
	if (match === null) throw new Error(`Not a length: ${text}`);
	const [, sign = "", feet = "0", number = "0", word = unit] = match;
	const size = new Fraction(number).add(new Fraction(feet).mul(12));
	const mm = word === "in" ? size.mul(new Fraction(254, 10)) : size;
	return sign === "-" ? mm.neg() : mm;
}

function outside(value: Rational): Fraction {
	return new Fraction(value.numerator, value.denominator);
}

test("the printed size lies within half a step of the true one", () => {
	fc.assert(
		fc.property(lengths, formats, (mm, format) => {
			const { text, shown, exact, error } = formatLength(mm, format);
			const printed = read(text, format.unit);
			expect(printed.equals(outside(shown))).toBe(true);

			const off = printed.sub(outside(mm));
			expect(off.equals(outside(error))).toBe(true);
			expect(off.equals(0)).toBe(exact);
			const unit = new Fraction(format.unit === "in" ? "25.4" : "1");
			const halfStep = outside(format.precision).mul(unit).div(2);
			expect(off.abs().lte(halfStep)).toBe(true);
		}),
		{ numRuns: 5_000, seed: 1 },
	);
});

test("members round down and openings up, never the other way", () => {
	fc.assert(
		fc.property(
			lengths,
			formats,
			fc.constantFrom("down", "up"),
			(mm, format, rounding) => {
				const { text } = formatLength(mm, { ...format, rounding });
				const order = read(text, format.unit).compare(outside(mm));
				if (rounding === "down") expect(order).toBeLessThanOrEqual(0);
				else expect(order).toBeGreaterThanOrEqual(0);
			},
		),
		{ numRuns: 2_000, seed: 2 },
	);
});

test("what is shown, shown again, is the same text", () => {
	fc.assert(
		fc.property(lengths, formats, (mm, format) => {
			const first = formatLength(mm, format);
			const second = formatLength(first.shown, format);
			expect(second.text).toBe(first.text);
			expect(second.exact).toBe(true);
		}),
		{ numRuns: 2_000, seed: 3 },
	);
});
