import { describe, expect, test } from "vitest";
import { maxBits, Rational, TooLargeError } from "./rational.ts";

const maxSafe = Number.MAX_SAFE_INTEGER;

describe("normal form", () => {
	test("lowest terms, positive denominator, one zero", () => {
		expect(Rational.of(6, -8).toString()).toBe("-3/4");
		expect(Rational.of(-6, -8).toString()).toBe("3/4");
		expect(Rational.of(0, -5)).toEqual(Rational.ZERO);
		expect(Rational.of(-0)).toEqual(Rational.ZERO);
		expect(Rational.fromBigints(-10n, -4n).toString()).toBe("5/2");
	});

	test("no operation leaves a negative zero behind", () => {
		const zeros = [
			Rational.ZERO.neg(),
			Rational.ZERO.mul(Rational.of(-3)),
			Rational.of(-3).mul(Rational.ZERO),
			Rational.ZERO.sub(Rational.ZERO),
			Rational.ZERO.div(Rational.of(-3, 7)),
			Rational.of(-1, 4).add(Rational.of(1, 4)),
			Rational.of(-1, 4).roundTo(Rational.ONE, "nearest"),
			Rational.of(-1, 4).ceil(),
		];
		for (const zero of zeros) {
			expect(Object.is(zero.toNumber(), 0)).toBe(true);
			expect(zero).toEqual(Rational.ZERO);
		}
	});

	test("equal values are equal objects, wherever they come from", () => {
		const throughBig = Rational.of(maxSafe)
			.mul(Rational.of(maxSafe))
			.div(Rational.of(maxSafe));
		expect(throughBig).toEqual(Rational.of(maxSafe));
		const one = Rational.of(1, 3).add(Rational.of(2, 3));
		expect(one).toEqual(Rational.ONE);
	});
});

describe("where plain numbers end", () => {
	test("sums and products go on exactly", () => {
		const top = Rational.of(maxSafe);
		expect(top.add(Rational.ONE).toString()).toBe("9007199254740992");
		expect(top.neg().sub(Rational.ONE).toString()).toBe("-9007199254740992");
		// (2^53 - 1)^2 = 2^106 - 2^54 + 1
		expect(top.mul(top).numerator).toBe(2n ** 106n - 2n ** 54n + 1n);
		expect(top.add(Rational.ONE).sub(Rational.ONE)).toEqual(top);
	});

	test("a term that is no safe integer, while the other and the sum are", () => {
		// 3 x (2^51 + 1) - 5 x (2^51 + 3) = -2^52 - 12, over 15; five times 2^51 + 3 is odd and above 2^53.
		const a = Rational.of(2 ** 51 + 1, 5);
		const b = Rational.of(2 ** 51 + 3, 3);
		const difference = Rational.fromBigints(-(2n ** 52n) - 12n, 15n);
		expect(a.sub(b)).toEqual(difference);
		expect(b.neg().add(a)).toEqual(difference);
		expect(b.sub(a)).toEqual(difference.neg());
		expect(a.neg().add(b)).toEqual(difference.neg());
	});

	test("a tie that only exact comparison can tell", () => {
		// Both round to the same double.
		const a = Rational.of(maxSafe - 1, maxSafe);
		const b = Rational.fromBigints(
			BigInt(maxSafe) ** 2n - 1n,
			BigInt(maxSafe) ** 2n,
		);
		const c = b.sub(Rational.fromBigints(1n, BigInt(maxSafe) ** 3n));
		expect(a.cmp(b)).toBe(-1);
		expect(b.toNumber()).toBe(c.toNumber());
		expect(b.cmp(c)).toBe(1);
		expect(c.cmp(b)).toBe(-1);
		expect(b.min(c)).toBe(c);
		expect(b.max(c)).toBe(b);
	});
});

describe("rounding", () => {
	const half = Rational.of(1, 2);
	test.each([
		["5/4 to halves, a tie", 5, 4, "nearest", 3, 2],
		["-5/4 to halves, a tie", -5, 4, "nearest", -3, 2],
		["5/4 down", 5, 4, "down", 1, 1],
		["-5/4 down", -5, 4, "down", -3, 2],
		["5/4 up", 5, 4, "up", 3, 2],
		["-5/4 up", -5, 4, "up", -1, 1],
		["what is a multiple already", 7, 2, "up", 7, 2],
	] as const)("%s", (_, n, d, mode, toN, toD) => {
		expect(Rational.of(n, d).roundTo(half, mode)).toEqual(
			Rational.of(toN, toD),
		);
	});

	test("a tie among big numbers, too, goes away from zero", () => {
		// (2^60 + 1) / 2, to whole numbers: 2^59 + 1/2 becomes 2^59 + 1.
		const tie = Rational.fromBigints(2n ** 60n + 1n, 2n);
		const up = Rational.fromBigints(2n ** 59n + 1n);
		expect(tie.roundTo(Rational.ONE, "nearest")).toEqual(up);
		expect(tie.neg().roundTo(Rational.ONE, "nearest")).toEqual(up.neg());
	});

	test("a step whose product with the denominator is no safe integer", () => {
		// Twice n is 3 x 2^52 + 8, under 3 x step = 3 x 2^52 + 9, which a double would hold as 3 x 2^52 + 8: a tie.
		const step = Rational.of(2 ** 52 + 3);
		const under = Rational.of(3 * 2 ** 51 + 4, 3);
		expect(under.roundTo(step, "nearest")).toEqual(Rational.ZERO);
	});

	test("floor and ceil", () => {
		expect(Rational.of(-7, 2).floor()).toEqual(Rational.of(-4));
		expect(Rational.of(-7, 2).ceil()).toEqual(Rational.of(-3));
	});

	test("a quotient that a double would round up to the next whole number", () => {
		// (2^53 - 1) / 2 is no double.
		expect(Rational.of(maxSafe, 2).floor()).toEqual(
			Rational.of((maxSafe - 1) / 2),
		);
	});
});

describe("refusals", () => {
	test("division by zero and steps that are none", () => {
		expect(() => Rational.ONE.div(Rational.ZERO)).toThrow(RangeError);
		expect(() => Rational.of(1, 0)).toThrow(RangeError);
		expect(() => Rational.fromBigints(1n, 0n)).toThrow(RangeError);
		expect(() => Rational.ONE.roundTo(Rational.ZERO, "down")).toThrow(
			RangeError,
		);
		expect(() => Rational.ONE.roundTo(Rational.of(-1), "up")).toThrow(
			RangeError,
		);
	});

	test("what is no whole number is our own fault", () => {
		for (const bad of [0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53]) {
			expect(() => Rational.of(bad)).toThrow(RangeError);
			expect(() => Rational.of(1, bad)).toThrow(RangeError);
		}
		expect(() => Rational.near(Number.NaN, 10)).toThrow(RangeError);
		expect(() => Rational.near(1, 0)).toThrow(RangeError);
		expect(() => Rational.near(1, 0.5)).toThrow(RangeError);
	});

	test("growth ends at the bound, exactly", () => {
		const edge = Rational.fromBigints(2n ** BigInt(maxBits) - 1n);
		expect(() => edge.add(Rational.ONE)).toThrow(TooLargeError);
		expect(edge.sub(Rational.ONE).cmp(edge)).toBe(-1);
		const fine = Rational.ONE.div(edge);
		expect(() => fine.div(Rational.of(2))).toThrow(TooLargeError);
		// Doubling 1/odd is fine: the numerator grows.
		expect(fine.add(fine).numerator).toBe(2n);
	});

	test("repeated squaring is stopped within a dozen steps", () => {
		let value = Rational.of(3, 2);
		const square = () => {
			for (let i = 0; i < 12; i += 1) value = value.mul(value);
		};
		expect(square).toThrow(TooLargeError);
		expect(Number.isFinite(value.toNumber())).toBe(true);
	});

	test("a literal of many digits is stopped before it costs time", () => {
		const digits = "9".repeat(100_000);
		expect(() => Rational.fromDecimalText(digits)).toThrow(TooLargeError);
		expect(() => Rational.fromBigints(1n << 100_000n, 3n)).toThrow(
			TooLargeError,
		);
	});
});

describe("decimal texts", () => {
	test("are read exactly", () => {
		expect(Rational.fromDecimalText("0.71")?.toString()).toBe("71/100");
		expect(Rational.fromDecimalText("-1.50")?.toString()).toBe("-3/2");
		expect(Rational.fromDecimalText("+12")?.toString()).toBe("12");
	});

	test.each(["", ".5", "2.", "1e3", "1/2", "0x10", " 1", "1 ", "--1", "١"])(
		"%j is none",
		(text) => {
			expect(Rational.fromDecimalText(text)).toBeUndefined();
		},
	);
});

test("goes into JSON as text, big or small", () => {
	const big = Rational.of(maxSafe).add(Rational.ONE);
	expect(JSON.stringify([Rational.of(1, 2), big])).toBe(
		'["1/2","9007199254740992"]',
	);
});
