// Board feet against worked examples in print.

import { describe, expect, test } from "vitest";
import { boardFeet, tallyBoardFeet } from "../../shared/units/board-foot.ts";
import { formatBoardFeet } from "../../shared/units/format.ts";
import { Rational } from "../../shared/units/rational.ts";

const of = Rational.of;

describe("exact board feet", () => {
	test.each([
		// Magazine tip on board feet, http://woodworkingtips.com/etips/etip04.html
		["1 x 9 x 96 in", of(1), of(9), of(96), "6.00"],
		["1 1/2 x 9 x 96 in", of(3, 2), of(9), of(96), "9.00"],
		// US Navy, Engineering Aid Basic, chapter 6: T x W x L / 12 on nominal thickness, under 1 in counts as 1 in.
		["8/4 x 9 1/4 in x 6 ft", of(2), of(37, 4), of(72), "9.25"],
		["3/4 in x 6 in x 8 ft", of(3, 4), of(6), of(96), "4.00"],
		// 2 x 4 x 14 / 12 = 9.33
		["2 x 4 x 14 ft", of(2), of(4), of(168), "9.33"],
	])("%s", (_, thick, width, length, expected) => {
		expect(formatBoardFeet(boardFeet(thick, width, length))).toBe(expected);
	});

	test("5/4 x 7 1/2 in x 10 ft is 7.8125", () => {
		// 1.25 x 7.5 x 10 / 12 = 7.8125, by the same rule.
		expect(boardFeet(of(5, 4), of(15, 2), of(120)).toNumber()).toBe(7.8125);
	});
});

describe("yard tally", () => {
	// Dealer's glossary stating the NHLA rule, http://goodwoodcorp.com/HardWoodTerminology.asp
	test.each([
		// 10 x 7.5 / 12 = 6.25, 6 ft of surface; 6 x 1.25 = 7.5
		["5/4 x 7 1/2 in x 10 ft", of(5, 4), of(15, 2), of(120), 7.5],
		// The length is cut down to 10 ft first: the same.
		["5/4 x 7 1/2 in x 10 ft 11 in", of(5, 4), of(15, 2), of(131), 7.5],
		// 8 x 6 / 12 = 4; under 1 in counts as 1 in.
		["3/4 x 6 in x 8 ft", of(3, 4), of(6), of(96), 4],
		// 8 x 6.75 / 12 = 4.5, a half: up to 5, our choice.
		["4/4 x 6 3/4 in x 8 ft", of(1), of(27, 4), of(96), 5],
	])("%s", (_, thick, width, length, expected) => {
		expect(tallyBoardFeet(thick, width, length).toNumber()).toBe(expected);
	});
});
