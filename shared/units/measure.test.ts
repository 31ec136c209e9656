import { expect, test } from "vitest";
import type { MeasureNode, Unit } from "../../grammar/tree/nodes.ts";
import { bareLength, readMeasure } from "./measure.ts";
import { Rational, TooLargeError } from "./rational.ts";

function literal(
	numerator: bigint,
	denominator: bigint,
	unit: Unit,
): MeasureNode {
	const span = { start: 0, end: 0 };
	return { kind: "measure", span, numerator, denominator, unit, text: "" };
}

test.each([
	// 2 1/4 x 25.4 = 57.15
	["2 1/4 in", literal(9n, 4n, "in"), "length", Rational.of(5_715, 100)],
	["5 ft 2 in", literal(62n, 1n, "ft-in"), "length", Rational.of(15_748, 10)],
	["45 deg", literal(45n, 1n, "deg"), "angle", Rational.of(45)],
	["68 F", literal(68n, 1n, "F"), "temperature", Rational.of(20)],
	["40 %", literal(40n, 1n, "percent"), "ratio", Rational.of(2, 5)],
	["18ga", literal(18n, 1n, "gauge"), "gauge", Rational.of(18)],
	["0.71", literal(71n, 100n, "none"), "number", Rational.of(71, 100)],
	[
		"2/4, not in lowest terms",
		literal(2n, 4n, "mm"),
		"length",
		Rational.of(1, 2),
	],
] as const)("%s", (_, node, dimension, value) => {
	expect(readMeasure(node)).toEqual({ dimension, value });
});

test("a bare number takes the file's unit where a length is wanted", () => {
	expect(bareLength(Rational.of(3, 4), "in")).toEqual(Rational.of(1_905, 100));
	expect(bareLength(Rational.of(18), "mm")).toEqual(Rational.of(18));
});

test("a literal of hundreds of digits is refused", () => {
	const node = literal(10n ** 400n, 1n, "mm");
	expect(() => readMeasure(node)).toThrow(TooLargeError);
});
