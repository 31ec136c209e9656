// Laws of the formatter, tried on whole designs, on damaged ones and on random lines from the table's own examples.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contexts, parse } from "../../grammar/index.ts";
import { format } from "../../shared/format/format.ts";
import { sameMeaning } from "../../shared/format/same-meaning.ts";

const sample = readFileSync(
	new URL("../corpus/sample.rod", import.meta.url),
	"utf8",
);

const examples = Object.values(contexts).flatMap((rows) =>
	rows.map((row) => row.example),
);
const bits = [
	..."{}()[],;.=-+*/\"'#@½≤×\t",
	"{ a; b // c\n }",
	"// c\n",
	"/// d\n",
	"\n",
	"\r\n",
	"\n\n\n",
	"   ",
	"2-1/4",
	"5' 2\"",
	"x ",
	"- ",
	"in ",
	"\u00a0",
	"“",
	"📐",
];

/** A text with pieces cut out and others put in. */
const damaged = (text: fc.Arbitrary<string>): fc.Arbitrary<string> =>
	fc
		.tuple(
			text,
			fc.array(
				fc.tuple(
					fc.double({ min: 0, max: 1, noNaN: true }),
					fc.nat(6),
					fc.constantFrom("", ...bits),
				),
				{ maxLength: 6 },
			),
		)
		.map(([whole, changes]) =>
			changes.reduce((now, [place, cut, put]) => {
				const at = Math.floor(place * now.length);
				return now.slice(0, at) + put + now.slice(at + cut);
			}, whole),
		);

const sampleParts = fc
	.tuple(fc.nat(sample.length), fc.nat(2000))
	.map(([from, length]) => sample.slice(from, from + length));

const exampleLines = fc
	.array(
		fc.tuple(
			fc.constantFrom("", "  ", "\t", "      "),
			fc.constantFrom(...examples, "}", "{", "// c", "/// d", ""),
			fc.constantFrom("\n", "\n", " // c\n", "; ", "\n\n", "\r\n"),
		),
		{ maxLength: 25 },
	)
	.map((lines) => lines.map((line) => line.join("")).join(""));

const texts = fc.oneof(
	damaged(fc.constant(sample)),
	damaged(sampleParts),
	damaged(exampleLines),
	exampleLines,
	fc.string({ unit: "binary", maxLength: 200 }),
);

function comments(text: string): string[] {
	return parse(text).tree.comments.map((comment) => comment.text.trimEnd());
}

describe("the formatter", () => {
	test("never throws, is idempotent, keeps comments and meaning", () => {
		fc.assert(
			fc.property(texts, (text) => {
				const { text: once, refused } = format(text);
				if (refused) expect(once).toBe(text);
				expect(format(once).text).toBe(once);
				expect(comments(once)).toEqual(comments(text));
				expect(sameMeaning(parse(text).tree, parse(once).tree)).toBe(true);
			}),
			{ numRuns: 1500 },
		);
	});

	test("never refuses a text that has no faults", () => {
		fc.assert(
			fc.property(exampleLines, (text) => {
				fc.pre(parse(text).faults.every((one) => one.severity === "hint"));
				expect(format(text).refused).toBe(false);
			}),
			{ numRuns: 300 },
		);
	});

	test("does not care how a sound text was laid out", () => {
		const { text } = format(sample);
		const squeezed = sample.replace(/(\S) {2,}(?=[^ /])/g, "$1 ");
		const spread = text.replace(/^ +/gm, (blanks) =>
			"\t".repeat(blanks.length),
		);
		expect(squeezed).not.toBe(sample);
		expect(format(squeezed).text).toBe(text);
		expect(format(spread).text).toBe(text);
	});
});
