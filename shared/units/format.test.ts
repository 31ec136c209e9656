import { describe, expect, test } from "vitest";
import { inch } from "./dimensions.ts";
import {
	decimalText,
	defaultPrecision,
	formatAngle,
	formatBoth,
	formatLength,
	formatMass,
	formatMoney,
	formatPercent,
	formatTemperature,
	type LengthFormat,
	lengthText,
	mixedText,
} from "./format.ts";
import { maxBits, Rational } from "./rational.ts";

const of = Rational.of;
const inches: LengthFormat = { unit: "in", precision: defaultPrecision.in };
const millimetres: LengthFormat = {
	unit: "mm",
	precision: defaultPrecision.mm,
};

/** A length in mm from inches. */
function fromInches(n: number, d = 1): Rational {
	return of(n, d).mul(inch);
}

describe("inches", () => {
	test.each([
		// 54 - 2 x 45/64 = 52 38/64
		["52 19/32", fromInches(54).sub(fromInches(2 * 45, 64))],
		["2 1/4", fromInches(9, 4)],
		["3/4", fromInches(3, 4)],
		["54", fromInches(54)],
		["0", Rational.ZERO],
		["-2 1/4", fromInches(-9, 4)],
		["-1/32", fromInches(-1, 32)],
		// 45/64 is a tie between 22/32 and 23/32.
		["23/32", fromInches(45, 64)],
		["0", fromInches(-1, 100)],
	])("%s", (text, mm) => {
		expect(lengthText(mm, inches)).toBe(text);
	});

	test("a decimal precision is written in decimals", () => {
		const format = { ...inches, precision: of(1, 100), suffix: true };
		expect(lengthText(fromInches(71, 100), format)).toBe("0.71 in");
		expect(lengthText(fromInches(7, 10), format)).toBe("0.7 in");
	});

	test("feet from a foot up", () => {
		const format = { ...inches, style: "feet" } as const;
		expect(lengthText(fromInches(62), format)).toBe("5 ft 2 in");
		expect(lengthText(fromInches(60), format)).toBe("5 ft");
		expect(lengthText(fromInches(-60), format)).toBe("-5 ft");
		expect(lengthText(fromInches(9, 4), format)).toBe("2 1/4 in");
		expect(lengthText(Rational.ZERO, format)).toBe("0 in");
		// Rounded before it is split: never 4 ft 12 in.
		expect(lengthText(fromInches(59_999, 1_000), format)).toBe("5 ft");
		expect(lengthText(of(1_000), { ...millimetres, style: "feet" })).toBe(
			"1000",
		);
	});
});

describe("millimetres", () => {
	test.each([
		["450 mm", of(450)],
		["450.5 mm", of(4_505, 10)],
		["-0.5 mm", of(-1, 2)],
		["1000000 mm", of(1_000_000)],
		// 52 19/32 x 25.4 = 1335.88125
		["1336 mm", fromInches(1_683, 32)],
	])("%s", (text, mm) => {
		expect(lengthText(mm, { ...millimetres, suffix: true })).toBe(text);
	});
});

describe("what rounding changed", () => {
	test("is told beside the text", () => {
		// 45/64 in is 17.859375 mm; 23/32 in is 18.25625 mm: up by 1/64 in.
		expect(formatLength(fromInches(45, 64), inches)).toEqual({
			text: "23/32",
			shown: fromInches(23, 32),
			exact: false,
			error: fromInches(1, 64),
		});
		const plain = formatLength(fromInches(3, 4), inches);
		expect(plain.exact).toBe(true);
		expect(plain.error).toEqual(Rational.ZERO);
	});

	test("is marked only on request, and only where it did", () => {
		const marked = { ...inches, approximately: true };
		expect(lengthText(fromInches(45, 64), marked)).toBe("~23/32");
		expect(lengthText(fromInches(3, 4), marked)).toBe("3/4");
		expect(lengthText(fromInches(-45, 64), marked)).toBe("~-23/32");
	});

	test("goes the way that was asked for", () => {
		const size = fromInches(45, 64);
		expect(lengthText(size, { ...inches, rounding: "down" })).toBe("11/16");
		expect(lengthText(size, { ...inches, rounding: "up" })).toBe("23/32");
	});
});

describe("both systems", () => {
	test.each([
		["52 19/32 in (~1335.9 mm)", fromInches(1_683, 32), inches],
		["1 in (25.4 mm)", fromInches(1), inches],
		// 1000 / 25.4 = 39.37008; 39 3/8 = 39.375
		["39 3/8 in (1000 mm; rounded up by 0.0049 in)", of(1_000), inches],
		["450 mm (~17 23/32 in)", of(450), millimetres],
		// 57.15 mm
		[
			"57 mm (2 1/4 in; rounded down by 0.15 mm)",
			fromInches(9, 4),
			millimetres,
		],
		[
			"1 in (~25.4 mm; rounded down by less than 0.0001 in)",
			fromInches(1).add(of(1, 1_000_000)),
			inches,
		],
	])("%s", (text, mm, format) => {
		expect(formatBoth(mm, format).text).toBe(text);
	});
});

test("weights, angles, temperatures, percentages, money", () => {
	// 30 lb x 0.45359237 = 13.6077711 kg
	const load = of(30).mul(of(45_359_237, 100_000_000));
	expect(formatMass(load, "in")).toBe("30.0 lb");
	expect(formatMass(load, "mm")).toBe("13.6 kg");
	expect(formatAngle(of(45))).toBe("45 deg");
	expect(formatAngle(of(-25, 2))).toBe("-12.5 deg");
	expect(formatTemperature(of(20), "in")).toBe("68 F");
	expect(formatTemperature(of(-35, 2), "mm")).toBe("-17.5 C");
	expect(formatPercent(of(2, 5))).toBe("40 %");
	expect(formatMoney(of(2_469, 2))).toBe("1234.50");
	expect(formatMoney(of(-1, 1_000))).toBe("0.00");
});

test("mixed numbers and decimals", () => {
	expect(mixedText(of(-19, 8))).toBe("-2 3/8");
	expect(decimalText(of(2, 3), 3)).toBe("0.667");
	expect(decimalText(of(-2, 3), 3)).toBe("-0.667");
	expect(decimalText(of(1, 2), 0)).toBe("1");
	expect(decimalText(of(100), 0)).toBe("100");
	expect(decimalText(of(1, 1_000), 2)).toBe("0");
	expect(decimalText(of(5), 2, true)).toBe("5.00");
});

test("a size at the edge of what can be computed still has a text", () => {
	const edge = Rational.fromBigints(2n ** BigInt(maxBits) - 1n, 3n);
	// 2^1000 / 3 = 3.572e300, over 25.4 = 1.406e299
	expect(formatLength(edge, inches)).toMatchObject({
		text: "~1.406e+299 in",
		exact: false,
	});
	expect(formatBoth(edge, inches).text).toContain("e+299 in (");
	expect(formatMass(edge, "in")).toBe("~7.874e+300 lb");
});

test("a precision that is no step is our own fault", () => {
	const precision = Rational.ZERO;
	expect(() => formatLength(of(1), { ...inches, precision })).toThrow(
		RangeError,
	);
});
