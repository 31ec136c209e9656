// Every unit against the published figure for it.

import { describe, expect, test } from "vitest";
import {
	areaUnits,
	boardFoot,
	cubicInch,
	gravity,
	poundForce,
	poundPerFoot,
	psi,
	volumeUnits,
} from "../../shared/units/derived.ts";
import { fromBase, toBase, units } from "../../shared/units/dimensions.ts";
import { Rational } from "../../shared/units/rational.ts";

function decimal(text: string): Rational {
	const value = Rational.fromDecimalText(text);
	if (value === undefined) throw new Error(`No decimal: ${text}`);
	return value;
}

describe("exact by definition", () => {
	test.each([
		// International yard and pound agreement, 1959: the yard is 0.9144 m, the pound 0.453 592 37 kg.
		["36 in, a yard", toBase(Rational.of(36), "in"), "914.4"],
		["3 ft, a yard", toBase(Rational.of(3), "ft"), "914.4"],
		["1 lb", toBase(Rational.ONE, "lb"), "0.45359237"],
		// Avoirdupois ounce, 1/16 lb: 28.349 523 125 g (NIST SP 811 B.8, from memory).
		["1 oz", toBase(Rational.ONE, "oz"), "0.028349523125"],
		["5 ft 2 in = 62 in", toBase(Rational.of(62), "ft-in"), "1574.8"],
		["1.2 m", toBase(decimal("1.2"), "m"), "1200"],
		["45 cm", toBase(Rational.of(45), "cm"), "450"],
		["14 g", toBase(Rational.of(14), "g"), "0.014"],
		["40 %", toBase(Rational.of(40), "percent"), "0.4"],
		// Fixed points of the Fahrenheit scale: water freezes at 32 F, boils at 212 F; -40 is the same on both.
		["32 F", toBase(Rational.of(32), "F"), "0"],
		["212 F", toBase(Rational.of(212), "F"), "100"],
		["-40 F", toBase(Rational.of(-40), "F"), "-40"],
		["18 ga stays 18", toBase(Rational.of(18), "gauge"), "18"],
		// Residential Structural Design Guide, appendix B: 16.387064 cm3; square foot 0.09290304 m2.
		["cubic inch", cubicInch, "16387.064"],
		["square foot", areaUnits.ft2, "92903.04"],
		// Standard gravity, 3rd CGPM 1901: 9.80665 m/s2; the pound-force that follows: 4.448 221 615 260 5 N (from memory).
		["standard gravity", gravity, "9.80665"],
		["pound-force", poundForce, "4.4482216152605"],
		// Gallon of 231 cubic inches: 3.785 411 784 l (from memory).
		["gallon", volumeUnits.gallon, "3785411.784"],
	])("%s", (_, value, expected) => {
		expect(value).toEqual(decimal(expected));
	});
});

describe("published to seven digits", () => {
	test.each([
		// Residential Structural Design Guide, appendix B.
		["pound, kg", units.lb.factor, 0.453_592_4],
		["gallon, l", volumeUnits.gallon.div(volumeUnits.litre), 3.785_412],
		["pound-force, N", poundForce, 4.448_222],
		["psi, MPa", psi, 0.006_894_757],
		// NIST SP 811 B.8, from memory.
		["pound per foot, kg/mm", poundPerFoot, 1.488_164e-3],
		["quart, mm3", volumeUnits.quart, 9.463_529e5],
		["pint, mm3", volumeUnits.pint, 4.731_765e5],
		["board foot, mm3", boardFoot, 2.359_737e6],
	])("%s", (_, value, expected) => {
		expect(Number(value.toNumber().toPrecision(7))).toBe(expected);
	});

	test("a cubic metre is 423.776 board feet", () => {
		// 1 / (144 x 0.0254^3) = 423.776 (computed with the reference figures for lumber measure).
		const cubicMetre = Rational.of(1_000_000_000);
		expect(cubicMetre.div(boardFoot).toNumber()).toBeCloseTo(423.776, 3);
	});
});

test("every unit comes back from its base exactly", () => {
	const value = Rational.of(1_683, 32);
	for (const unit of Object.keys(units) as (keyof typeof units)[]) {
		expect(fromBase(toBase(value, unit), unit)).toEqual(value);
	}
});
