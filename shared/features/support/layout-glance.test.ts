// How a material is sawn up, in the hover on it.

import { Buffer } from "node:buffer";
import { describe, expect, test } from "vitest";
import { snap } from "../../../tests/harness/snapshot.ts";
import { hover } from "../hover.ts";

const shelves = (count: number, last: string): string => `
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32; price 70 }
  variant quarter { sold-as 1/4; thick 7/32; price 40 }
}

piece rack {
  unit in
${Array.from(
	{ length: count },
	(_, at) =>
		`  part s${at} { of ply.half; size 30 x 11; bottom at ${2 * at} up from floor }`,
).join("\n")}
  ${last}
}
`;

function told(source: string): string {
	const { snapshot, offset } = snap(source);
	return hover(snapshot, offset)?.markdown.replaceAll("\\", "") ?? "";
}

const pictures = (text: string): readonly string[] =>
	[
		...text.matchAll(/!\[([^\]]*)\]\(data:image\/svg\+xml;base64,([^)]*)\)/g),
	].map(([, , svg = ""]) => Buffer.from(svg, "base64").toString("utf8"));

describe("a material", () => {
	test("where it is used: sheets, how full, the price, what is proven, a picture", () => {
		// 13 x 30 x 11 = 4290 of 2 x 96 x 48 = 9216: 47 %. Twelve go on one sheet: 3 by 4, with kerfs 90 1/4 x 44 3/8.
		const text = told(
			shelves(
				12,
				"part last { of ply.h<|>alf; size 30 x 11; left at 40 right from s0.right }",
			),
		);
		expect(text).toContain(
			"`ply.half` for `rack`: 2 sheets of 96 x 48, 140.00; 47 % of them becomes parts. No plan needs fewer than 2 sheets: this is the least.",
		);
		const [svg, ...more] = pictures(text);
		expect(more).toEqual([]);
		expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" /);
		expect(svg?.match(/>A<\/tspan>/g)).toHaveLength(13);
	});

	test("where it is declared: each variant that is used", () => {
		const source = shelves(
			2,
			"part last { of ply.quarter; size 30 x 11; left at 40 right from s0.right }",
		);
		const text = told(source.replace("sheet ply {", "sheet p<|>ly {"));
		expect(pictures(text)).toHaveLength(2);
		expect(text).toContain("`ply.quarter` for `rack`: 1 sheet of 96 x 48");
	});

	test("nothing of one that is not used, or has no size", () => {
		expect(
			pictures(
				told(shelves(2, "").replace("variant quarter", "variant qu<|>arter")),
			),
		).toEqual([]);
		expect(
			pictures(
				told(
					shelves(2, "")
						.replace("  size 96 x 48\n", "")
						.replace("variant half", "variant ha<|>lf"),
				),
			),
		).toEqual([]);
	});
});
