// What becomes of plain edits: laid out where they touch, tried, and not made where they break their word.

import { describe, expect, test } from "vitest";
import type { Edit } from "../../../grammar/index.ts";
import { askedAt } from "../../../tests/harness/refactoring.ts";
import { applyEdits } from "../../text/edits.ts";
import { finished } from "./finished-change.ts";
import type { Change } from "./refactoring.ts";

const uri = "/designs/main.rod";

/** The text after putting `put` in the place of `old`, which stands once; in words why not. */
function changed(
	text: string,
	old: string,
	put: string,
	more: Partial<Change> = {},
): string {
	const start = text.indexOf(old);
	const edit: Edit = { span: { start, end: start + old.length }, text: put };
	const asked = askedAt(new Map([[uri, text]]), uri, { start: 0, end: 0 });
	const made = finished(asked, { edits: [edit], ...more });
	return typeof made === "string"
		? made
		: applyEdits(
				text,
				made.edits.map(({ span, text: now }) => ({ ...span, text: now })),
			);
}

const design = `sheet ply { variant half { thick 1/2 } }

piece a {
  given w = 12  // wide
  part b { of ply.half; size w x 4 }
}
`;

describe("layout", () => {
	test("of a text in the one layout is kept in all of it: comments move along", () => {
		expect(
			changed(
				`${design.slice(0, -2)}  mark m = 3     // so\n  mark n = 1234  // or so\n}\n`,
				"1234",
				"12345",
				{ keeps: "nothing" },
			),
		).toContain("  mark m = 3      // so\n  mark n = 12345  // or so\n");
	});

	test("of another text is touched only where the change is", () => {
		const loose = design.replace("given w =", "given   w=");
		expect(changed(loose, "w x 4", "w   x 4")).toBe(loose);
		expect(
			changed(
				loose,
				"{ of ply.half; size w x 4 }",
				"{\nof ply.half;size w x 4 }",
			),
		).toContain("  given   w= 12  // wide\n  part b {\n    of ply.half\n");
	});

	test("takes the line ends of the text", () => {
		const windows = design.replaceAll("\n", "\r\n");
		const made = changed(
			windows,
			"{ of ply.half; size w x 4 }",
			"{\nof ply.half\nsize w x 4\n}",
		);
		expect(made).toContain(
			"  part b {\r\n    of ply.half\r\n    size w x 4\r\n  }",
		);
		expect(made.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
	});
});

describe("is not made", () => {
	test("where a part would be cut otherwise", () => {
		expect(changed(design, "w x 4", "w x 5")).toBe(
			"`b` would not be cut the same any more",
		);
		expect(changed(design, "w x 4", "12 x 4")).toContain("size 12 x 4");
	});

	test("where a comment would go", () => {
		expect(changed(design, "  // wide", "")).toBe("A comment would be lost");
	});

	test("where a line could not be read any more", () => {
		expect(changed(design, "w x 4", "w x")).toBe(
			"The lines could not be read any more",
		);
	});

	test("where a fault would come, unless that is told with it", () => {
		const more = "size w x 4 }\n  mark m = c";
		expect(changed(design, "size w x 4 }", more)).toMatch(
			/^The design would have one finding more: Nothing here is called `c`/,
		);
		expect(
			changed(design, "size w x 4 }", more, { keeps: "nothing" }),
		).toContain("mark m = c");
	});

	test("where two changes would meet", () => {
		const asked = askedAt(new Map([[uri, design]]), uri, { start: 0, end: 0 });
		const edit = (start: number, end: number): Edit => ({
			span: { start, end },
			text: "",
		});
		expect(finished(asked, { edits: [edit(0, 9), edit(5, 12)] })).toBe(
			"Two changes would meet in one place",
		);
	});
});

test("pieces that no change touches are not evaluated", () => {
	const two = `${design}piece other { part c { of ply.half; size 9 x 9 } }\n`;
	const texts = new Map([[uri, two]]);
	const asked = askedAt(texts, uri, { start: 0, end: 0 });
	const evaluated: string[] = [];
	const start = two.indexOf("w x 4");
	finished(
		{
			...asked,
			around: {
				...asked.around,
				evaluate: (text, file) => {
					evaluated.push(text);
					return asked.around.evaluate(text, file);
				},
			},
		},
		{ edits: [{ span: { start, end: start + 1 }, text: "12" }] },
	);
	expect(evaluated.map((text) => text.includes("piece other"))).toEqual([
		false,
		false,
	]);
	expect(evaluated[1]).toContain("size 12 x 4");
});
