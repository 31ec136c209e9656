// Two legs that mirror each other, in one statement.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

const seat = `//- main.rod
use ply, oak from "./stock.rod"

piece a {
  part seat { of ply.quarter; size 30 x 12; top at 20 from floor }

`;
const leg = (name: string, side: string, more = ""): string => `  leg ${name} {
    against under seat
    set-in 2 from seat.${side}${more}
    set-back 2 from seat.front
    layer only of oak.six-quarter 2 wide from floor up to seat
    end bottom { angled 3 deg; falls outward; long-point outside }
  }
`;

test("the left one stays as it is written, the right one goes", () => {
	const expected = `use ply, oak from "./stock.rod"

piece a {
  part seat { of ply.quarter; size 30 x 12; top at 20 from floor }

${leg("l, r handed", "left")}
  load 3 kg on seat
}
`;
	for (const [one, other] of [
		[leg("l<|>", "left"), leg("r", "right")],
		[leg("l", "left"), leg("r<|>", "right")],
	] as const) {
		const { titles, text } = tried(
			`${seat}${one}\n${other}\n  load 3 kg on seat\n}\n${shopFiles}`,
		);
		expect(titles).toContain("Make `l` and `r` a handed pair");
		expect(text("mirrored-pair")).toBe(expected);
	}
});

test("also where the right one is written first", () => {
	expect(
		tried(
			`${seat}${leg("r<|>", "right")}${leg("l", "left")}}\n${shopFiles}`,
		).text("mirrored-pair"),
	).toContain(
		"  leg l, r handed {\n    against under seat\n    set-in 2 from seat.left\n",
	);
});

test("what is said of the right one alone is kept", () => {
	expect(
		tried(
			`${seat}${leg("l<|>", "left", "  // from the left end")}${leg("r", "right", "  // clear of the pipe")}}\n${shopFiles}`,
		).text("mirrored-pair"),
	).toContain(`  // clear of the pipe
  leg l, r handed {
    against under seat
    set-in 2 from seat.left  // from the left end
`);
});

describe("is not offered", () => {
	const none = (legs: string): void =>
		expect(
			tried(`${seat}${legs}}\n${shopFiles}`).titles.filter((one) =>
				one.includes("handed"),
			),
		).toEqual([]);

	test("where they differ in more than the side", () =>
		none(leg("l<|>", "left") + leg("r", "right").replace("2 wide", "3 wide")));

	test("where they stand on one side", () =>
		none(leg("l<|>", "left") + leg("r", "left")));

	test("where they are a pair already", () =>
		none(leg("l<|>, r handed", "left")));
});
