// The outline, shown as an indented list.

import { expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import { type OutlineEntry, outline } from "./outline.ts";

function show(text: string): string {
	const lines: string[] = [];
	const add = (entries: readonly OutlineEntry[], depth: number): void => {
		for (const entry of entries) {
			const { start, end } = entry.nameSpan;
			expect(entry.span.start <= start && end <= entry.span.end).toBe(true);
			lines.push(
				`${"  ".repeat(depth)}${entry.kind} ${entry.name} (${entry.detail})`,
			);
			add(entry.children, depth + 1);
		}
	};
	add(outline(text, parse(text).tree), 0);
	return lines.join("\n");
}

test("things with their sizes, panels and layers", () => {
	expect(
		show(`use oak, ply from "./stock.rod"
piece bench {
  given width = 54 from 40 to 66
  mark half = width / 2
  box case {
    panels top, bottom of ply.a
    divider middle of ply.a centred
    shelf one, two of ply.a equal
    join top to middle { glue }
  }
  leg front-left, front-right handed {
    layer inner of oak.b 2 wide from floor up to case.bottom
  }
}`),
	).toMatchInlineSnapshot(`
		"import oak, ply (use)
		piece bench (piece)
		  size width (given 54)
		  size half (mark width / 2)
		  box case (box)
		    part middle (divider)
		    part one, two (shelf)
		  leg front-left, front-right (leg)
		    layer inner (layer)"
	`);
});

test("a text with faults has its outline", () => {
	expect(
		show(`piece bench {
  given
  given width =
  box case {
    divider
    shelf one of
  piece rack {
    @ box
    trim lip { on case.
  }`),
	).toMatchInlineSnapshot(`
		"piece bench (piece)
		  size width (given)
		  box case (box)
		    part one (shelf)"
	`);
});

test("nothing in nothing", () => {
	expect(show("")).toBe("");
});
