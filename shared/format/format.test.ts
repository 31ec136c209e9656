// Layout and spelling, each rule by a text before and after.

import { describe, expect, test } from "vitest";
import { format } from "./format.ts";

function check(before: string, after: string): void {
	expect(format(before)).toEqual({ text: after, refused: false });
	expect(format(after).text).toBe(after);
}

describe("layout", () => {
	test("two blanks a level, one statement a line, single blanks", () => {
		check(
			"piece a{\n\t\tunit   mm ;precision 0.5\nbox  case\n{\noutside  1  x 2\n\t}\n   }",
			"piece a {\n  unit mm\n  precision 0.5\n  box case {\n    outside 1 x 2\n  }\n}\n",
		);
	});

	test("a block on one line stays on one line", () => {
		check(
			"join  a , b to c{glue;dowel 5/16 x 1 3/8   every 5}",
			"join a, b to c { glue; dowel 5/16 x 1 3/8 every 5 }\n",
		);
	});

	test("a block on one line that is wider than 100 is opened", () => {
		const lines = Array.from({ length: 12 }, (_, i) => `cut-in ${i} at floor`);
		check(
			`shape back { ${lines.join("; ")} }`,
			`shape back {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`,
		);
	});

	test("a block on several lines stays on several", () => {
		check("join a {\nglue }", "join a {\n  glue\n}\n");
	});

	test("an empty block is closed on its line", () => {
		check("join a {\n\n}", "join a { }\n");
	});

	test("a statement keeps its line breaks, indented by four", () => {
		check(
			"piece a {\n  use one,\n      two,\n   three from max(1,\n    2\n )\n}",
			"piece a {\n  use one,\n      two,\n      three from max(1,\n      2\n      )\n}\n",
		);
	});

	test("at most one blank line, none at the ends of a block", () => {
		check(
			"\n\nunit mm\n\n\n\npiece a {\n\n  unit in\n\n\n  precision 1\n\n}\n\n\n",
			"unit mm\n\npiece a {\n  unit in\n\n  precision 1\n}\n",
		);
	});

	test("calls touch their bracket, operators stand apart, signs touch", () => {
		check(
			"given a = max( 1,b ) + (c - -2)*3",
			"given a = max( 1,b ) + (c - -2)*3\n", // `*` without blanks is a fault: left as it stands
		);
		check(
			"given a = max( 1,b )  +  ( c  -  -2 )",
			"given a = max(1, b) + (c - -2)\n",
		);
	});

	test("line ends and the byte order mark of the file stay", () => {
		check("\ufeffunit  mm\r\nprecision 1", "\ufeffunit mm\r\nprecision 1\r\n");
	});

	test("an empty text stays empty", () => {
		check("", "");
		check(" \n\t\n", "");
	});
});

describe("comments", () => {
	test("behind a statement they stay there, in one column", () => {
		check(
			"thick 3/8 // follows the edge\nproud 1/64 on both   // sanded\ncorners mitred",
			"thick 3/8           // follows the edge\nproud 1/64 on both  // sanded\ncorners mitred\n",
		);
	});

	test("columns are of lines of one depth", () => {
		check(
			"leg a { // one\n  against outside b // two\n}",
			"leg a {  // one\n  against outside b  // two\n}\n",
		);
	});

	test("on lines of their own, at the end of a block, inside a statement", () => {
		check(
			"piece a {\n// one\nunit in\n      //two  \n}\n// three\nuse b, // four\n // five\n  c",
			"piece a {\n  // one\n  unit in\n  //two\n}\n// three\nuse b,  // four\n    // five\n    c\n",
		);
	});

	test("docs stay with what they describe", () => {
		check(
			"/// A bench.\n/// Low.\npiece a { }",
			"/// A bench.\n/// Low.\npiece a { }\n",
		);
	});

	test("before a brace on a line of its own the head stays as typed", () => {
		check(
			"box   case // why\n{\n unit   in }",
			"box   case // why\n{\n  unit in\n}\n",
		);
	});
});

describe("spelling", () => {
	test.each([
		["2-1/4", "2 1/4"],
		['2-1/4"', "2 1/4 in"],
		["5' 2\"", "5 ft 2 in"],
		["5'-2-1/2\"", "5 ft 2 1/2 in"],
		["450mm", "450 mm"],
		["40%", "40 %"],
		["18ga", "18ga"],
		["18 ga", "18ga"],
		["2½", "2 1/2"],
		["½ in", "1/2 in"],
		["45°", "45 deg"],
		["68°F", "68 F"],
		["0.710", "0.710"],
		["6/8", "6/8"],
	])("the size %s is written %s", (typed, written) => {
		check(`thick ${typed}`, `thick ${written}\n`);
	});

	test("a bare number before a name that could be a unit keeps its distance", () => {
		check("given a = 2  in", "given a = 2  in\n");
	});

	test("`×` is `x`, typographic signs are plain ones", () => {
		check("outside 1×2 × 3", "outside 1 x 2 x 3\n");
		check("must a − 1 ≤ 2 “why”", 'must a - 1 <= 2 "why"\n');
	});

	test("a head has its main spelling where the table knows it", () => {
		check(
			"piece a { join b { rebate 3/8 }; rebate 3/8 }",
			"piece a { join b { rabbet 3/8 }; rebate 3/8 }\n",
		);
	});
});

describe("faults", () => {
	test("a damaged statement stays as typed, its neighbours do not", () => {
		check(
			"box   a {\n  panels   top,,  left\n  caps     left\n}",
			"box a {\n  panels   top,,  left\n  caps left\n}\n",
		);
	});

	test("a block under a damaged head is laid out", () => {
		check("box  a @ {\ncaps     left\n}", "box  a @ {\n  caps left\n}\n");
	});

	test("an unbalanced piece stays, the next one is laid out", () => {
		check(
			"piece a {\n  box  b {\n    caps  left\n}\npiece   c {\n unit   mm\n}\n",
			"piece a {\n  box  b {\n    caps  left\n}\npiece c {\n  unit mm\n}\n",
		);
	});

	test("a stray brace is not lost", () => {
		check("unit   mm\n}\nprecision   1\n", "unit mm\n}\nprecision 1\n");
	});

	test("words behind a block stay behind it", () => {
		check(
			"join   a { glue } foo\nunit   mm",
			"join   a { glue } foo\nunit mm\n",
		);
	});
});

test("time grows with the text, not with its square: noise on one line", () => {
	const noise = (length: number): string =>
		Array.from({ length }, (_, i) =>
			String.fromCharCode(32 + ((i * 7919 + (i >> 3)) % 95)),
		).join("");
	const time = (text: string): number => {
		const start = performance.now();
		format(text);
		return performance.now() - start;
	};
	const [small, large] = [noise(100_000), noise(800_000)];
	time(small);
	const once = Math.max(5, time(small));
	// 8 times the text; a square would be 64 times the time.
	expect(time(large) / once).toBeLessThan(32);
});
