// What the floor pushes under a leg, by the weights and the lever rule.

import { expect, test } from "vitest";
import { compile } from "../../model/compile.ts";
import { sourcesOf } from "../../sources/sources.ts";
import { footText } from "./foot-text.ts";

const stool = (lines: string): string => `board pine {
  species "eastern white pine"
  density 400 kg per m3
  variant thick { planed 40 mm }
}
piece stool {
  unit mm
  part seat { of pine.thick; size 1000 x 400; bottom at 400 up from floor }
  leg a, b handed {
    against under seat
    set-in 100 from seat.left
    set-back 50 from seat.front
    layer post of pine.thick 40 wide from floor up to seat
  }
  leg c, d handed {
    against under seat
    set-in 100 from seat.left
    set-back 50 from seat.back
    layer post of pine.thick 40 wide from floor up to seat
  }
${lines}
}`;

function told(lines: string, path: string): string | undefined {
	const design = compile(
		sourcesOf(new Map([["/a.rod", stool(lines)]])),
		"/a.rod",
	);
	expect(design.findings).toEqual([]);
	const piece = design.pieces[0];
	const leg = piece?.legs.find((one) => one.path === path);
	return piece && leg && footText(piece, leg);
}

test("four feet under the middle bear a fourth each", () => {
	// Seat 1 x 0.4 x 0.04 m and four legs 0.04 x 0.04 x 0.4 m at 400 kg/m3: 6.4 + 1.024 kg; / 4 x 9.80665 = 18.2 N.
	for (const path of ["a", "b", "c", "d"])
		expect(told("", path)).toMatch(/^The floor pushes 18 N under its foot \(/);
});

test("a load at the front edge goes to the front feet, by the lever rule", () => {
	// 40 kg, half of it on the left pair. Feet stand 70 and 330 mm from the front, the load at 0: the front foot bears
	// 20 x 330 / 260 = 25.4 kg and 18.2 N of its own, 267 N; the back one 20 x -70 / 260 = -5.4 kg, -35 N: it lifts.
	expect(told("  load 40 kg on seat.front", "a")).toContain(
		"267 N with its loads",
	);
	expect(told("  load 40 kg on seat.front", "c")).toContain(
		"lifts off with its loads: 35 N are missing",
	);
});
