// Laws of what the editor shows beside the text, on the shipped designs and on texts that were edited at random.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse, reparse } from "../../grammar/index.ts";
import { tokenEdits } from "../../server/convert/semantic-tokens.ts";
import { selectionRanges } from "../../shared/features/selection-ranges.ts";
import {
	declaredKinds,
	type ImportKind,
	numbersPerToken,
	semanticTokens,
	type TokenGroup,
	tokensWithin,
} from "../../shared/features/semantic-tokens.ts";
import { format } from "../../shared/format/format.ts";
import { formatRange } from "../../shared/format/format-range.ts";
import { indentLine } from "../../shared/format/indent-line.ts";
import { sameMeaning } from "../../shared/format/same-meaning.ts";
import { applyEdits } from "../../shared/text/edits.ts";
import { designTexts } from "../harness/design-texts.ts";

const texts = [...designTexts.values()];
const stock = parse(designTexts.get("/designs/stock.rod") ?? "").tree;
const importKind: ImportKind = (name) => declaredKinds(stock).get(name);

const place = fc.double({ min: 0, max: 1, noNaN: true });
const bits = [
	...'{}(),;.=-+x"\t',
	" ",
	"\n",
	"\r\n",
	"// c\n",
	"/// d\n",
	"\n{\n",
	"\n}\n",
	"1",
	" 3/4 in",
	"given spare = 5\n",
	"\npiece more {\n  part p of ply.quarter 10 x 4\n}\n",
	"use oak from",
	"📐",
];

/** Cuts and insertions, at shares of the text as it stands then. */
const edits = fc.array(
	fc.record({
		at: place,
		cut: fc.oneof(fc.nat(2), fc.nat(40)),
		put: fc.constantFrom("", ...bits),
	}),
	{ minLength: 1, maxLength: 8 },
);

function edited(
	text: string,
	{ at, cut, put }: { at: number; cut: number; put: string },
): string {
	const start = Math.floor(at * text.length);
	return text.slice(0, start) + put + text.slice(start + cut);
}

/** Whole texts after some edits. */
const damaged = fc
	.tuple(fc.constantFrom(...texts), edits)
	.map(([text, list]) => list.reduce(edited, text));

/** Offset, length, type and modifiers of all tokens. */
function flat(groups: readonly TokenGroup[]): number[][] {
	return groups.flatMap(({ start, tokens }) =>
		Array.from({ length: tokens.length / numbersPerToken }, (_one, index) => {
			const [offset = 0, ...rest] = tokens.slice(
				index * numbersPerToken,
				(index + 1) * numbersPerToken,
			);
			return [start + offset, ...rest];
		}),
	);
}

describe("coloured words", () => {
	test("what is kept from before an edit is what reading anew gives", () => {
		fc.assert(
			fc.property(fc.constantFrom(...texts), edits, (start, list) => {
				let last = { text: start, result: parse(start) };
				semanticTokens(last.result.tree, importKind);
				for (const edit of list) {
					const text = edited(last.text, edit);
					last = { text, result: reparse(last, text) };
					expect(flat(semanticTokens(last.result.tree, importKind))).toEqual(
						flat(semanticTokens(parse(text).tree, importKind)),
					);
				}
			}),
			{ numRuns: 60 },
		);
	});

	test("stand in order, apart, each on one line and not empty; a part of the text has those that meet it", () => {
		fc.assert(
			fc.property(damaged, place, place, (text, a, b) => {
				const groups = semanticTokens(parse(text).tree, importKind);
				const tokens = flat(groups);
				let end = 0;
				for (const [start = 0, length = 0] of tokens) {
					expect(start).toBeGreaterThanOrEqual(end);
					expect(length).toBeGreaterThan(0);
					end = start + length;
					expect(text.slice(start, end)).not.toMatch(/[\r\n]/);
				}
				expect(end).toBeLessThanOrEqual(text.length);
				const from = Math.floor(Math.min(a, b) * text.length);
				const to = Math.floor(Math.max(a, b) * text.length);
				expect(flat(tokensWithin(groups, { start: from, end: to }))).toEqual(
					tokens.filter(
						([start = 0, length = 0]) => start < to && start + length > from,
					),
				);
			}),
			{ numRuns: 60 },
		);
	});

	test("the edits that are sent lead from the old numbers to the new ones", () => {
		const numbers = fc.array(fc.nat(3), { maxLength: 40 });
		fc.assert(
			fc.property(numbers, numbers, (before, after) => {
				const now = [...before];
				for (const { start, deleteCount, data = [] } of tokenEdits(
					Uint32Array.from(before),
					Uint32Array.from(after),
				)) {
					now.splice(start, deleteCount, ...data);
				}
				expect(now).toEqual(after);
			}),
		);
	});
});

test("selections hold the place, and each lies in the next", () => {
	fc.assert(
		fc.property(damaged, place, (text, share) => {
			const offset = Math.floor(share * text.length);
			const spans = selectionRanges(text, parse(text).tree, offset);
			expect(spans.at(-1)).toEqual({ start: 0, end: text.length });
			spans.forEach(({ start, end }, index) => {
				expect(start <= offset && offset <= end).toBe(true);
				const outer = spans[index + 1];
				if (!outer) return;
				expect(outer.start <= start && end <= outer.end).toBe(true);
				expect(outer.end - outer.start).toBeGreaterThan(end - start);
			});
		}),
		{ numRuns: 150 },
	);
});

describe("laying out a part", () => {
	test("of the whole text is laying out the text", () => {
		fc.assert(
			fc.property(damaged, (text) => {
				const edits = formatRange(text, { start: 0, end: text.length });
				expect(applyEdits(text, edits)).toBe(format(text).text);
			}),
			{ numRuns: 60 },
		);
	});

	test("keeps the meaning, and all that lies on other lines", () => {
		fc.assert(
			fc.property(damaged, place, fc.nat(200), (text, share, length) => {
				const start = Math.floor(share * text.length);
				const end = Math.min(text.length, start + length);
				const edits = formatRange(text, { start, end });
				const now = applyEdits(text, edits);
				expect(sameMeaning(parse(text).tree, parse(now).tree)).toBe(true);
				// Laid out line by line, the text ends where laying it out at once does.
				expect(format(now).text).toBe(format(text).text);
			}),
			{ numRuns: 100 },
		);
	});

	test("leaves a text that is laid out alone", () => {
		fc.assert(
			fc.property(fc.constantFrom(...texts), place, place, (base, a, b) => {
				const { text } = format(base);
				const [start = 0, end = 0] = [a, b]
					.map((share) => Math.floor(share * text.length))
					.sort((one, other) => one - other);
				expect(formatRange(text, { start, end })).toEqual([]);
			}),
			{ numRuns: 40 },
		);
	});
});

describe("the indentation of a line that is typed", () => {
	test("touches nothing but the blanks before its words, and keeps the meaning", () => {
		fc.assert(
			fc.property(
				damaged,
				place,
				fc.constantFrom("}" as const, "\n" as const),
				(base, share, typed) => {
					const at = Math.floor(share * base.length);
					const text = base.slice(0, at) + typed + base.slice(at);
					const result = parse(text);
					const edit = indentLine(text, result, at + 1, typed);
					if (!edit) return;
					expect(text.slice(edit.start, edit.end)).toMatch(/^[ \t]*$/);
					expect(edit.text).toMatch(/^[ \t]*$/);
					const lineStart =
						Math.max(
							text.lastIndexOf("\n", at - (typed === "}" ? 0 : -1)),
							text.lastIndexOf("\r", at - (typed === "}" ? 0 : -1)),
						) + 1;
					expect(edit.start).toBe(lineStart);
					const now = parse(applyEdits(text, [edit]));
					// A line that goes on after a comma is read as going on once it is indented: that is what it is for.
					const goesOn = result.faults.some(({ span }) => span.start < at);
					if (!goesOn) expect(sameMeaning(result.tree, now.tree)).toBe(true);
				},
			),
			{ numRuns: 200 },
		);
	});

	test("a line broken in two reads as before where a blank stood", () => {
		fc.assert(
			fc.property(fc.constantFrom(...texts), place, (text, share) => {
				const comma = text.indexOf(", ", Math.floor(share * text.length));
				fc.pre(comma >= 0);
				const { comments } = parse(text).tree;
				fc.pre(
					!comments.some(
						({ span }) => span.start <= comma && comma <= span.end,
					),
				);
				const before = text.slice(0, comma + 1);
				// Inside a text in quotes no line may end.
				fc.pre(
					(/[^\n]*$/.exec(before)?.[0].match(/"/g) ?? []).length % 2 === 0,
				);
				const broken = `${before}\n${text.slice(comma + 2)}`;
				const edit = indentLine(broken, parse(broken), comma + 2, "\n");
				const now = edit ? applyEdits(broken, [edit]) : broken;
				expect(sameMeaning(parse(text).tree, parse(now).tree)).toBe(true);
			}),
			{ numRuns: 60 },
		);
	});
});
