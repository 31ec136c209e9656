// Lines and characters against the reference document of the language server protocol.

import fc from "fast-check";
import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { applyEdits } from "../../shared/text/edits.ts";
import { indexLines } from "../../shared/text/line-index.ts";

const texts = fc
	.array(
		fc.constantFrom("\n", "\r\n", "\r", "a", "bc", "é", "🪵", " ", "\u2028"),
	)
	.map((parts) => parts.join(""));

function documentOf(text: string): TextDocument {
	return TextDocument.create("mem:/a.rod", "storyrod", 1, text);
}

test("every offset, also outside the text, has the same line and character", () => {
	fc.assert(
		fc.property(texts, (text) => {
			const index = indexLines(text);
			const document = documentOf(text);
			expect(index.lineCount).toBe(document.lineCount);
			for (let offset = -1; offset <= text.length + 1; offset += 1) {
				expect(index.positionAt(offset)).toEqual(document.positionAt(offset));
			}
		}),
		{ numRuns: 1_000, seed: 1 },
	);
});

test("every position, also outside the text, has the same offset", () => {
	fc.assert(
		fc.property(
			texts,
			fc.integer({ min: -2, max: 12 }),
			fc.integer({ min: -2, max: 12 }),
			(text, line, character) => {
				expect(indexLines(text).offsetAt({ line, character })).toBe(
					documentOf(text).offsetAt({ line, character }),
				);
			},
		),
		{ numRuns: 5_000, seed: 2 },
	);
});

test("edits that do not overlap give the same text", () => {
	fc.assert(
		fc.property(
			fc.string({ maxLength: 20 }),
			fc.array(fc.tuple(fc.nat(20), fc.string({ maxLength: 3 }))),
			(text, cuts) => {
				// Neighbouring cuts bound one edit each; equal ones make an insertion.
				const places = cuts
					.map(([at]) => Math.min(at, text.length))
					.sort((a, b) => a - b);
				const edits = places.slice(1).map((end, i) => ({
					start: places[i] ?? 0,
					end,
					text: cuts[i]?.[1] ?? "",
				}));
				const document = documentOf(text);
				const expected = TextDocument.applyEdits(
					document,
					edits.map((edit) => ({
						range: {
							start: document.positionAt(edit.start),
							end: document.positionAt(edit.end),
						},
						newText: edit.text,
					})),
				);
				expect(applyEdits(text, edits)).toBe(expected);
			},
		),
		{ numRuns: 2_000, seed: 3 },
	);
});
