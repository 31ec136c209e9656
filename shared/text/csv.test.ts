import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csv } from "./csv.ts";

/** Reads by the grammar of RFC 4180, section 2: quoted and plain fields, every record closed by CRLF. */
function readCsv(text: string): string[][] {
	const rows: string[][] = [];
	let row: string[] = [];
	const token = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n)/gy;
	while (token.lastIndex < text.length) {
		const match = token.exec(text);
		if (match === null) throw new Error("Not by RFC 4180");
		const [, raw = "", end] = match;
		const quoted = raw.startsWith('"');
		row.push(quoted ? raw.slice(1, -1).replaceAll('""', '"') : raw);
		if (end === ",") continue;
		rows.push(row);
		row = [];
	}
	return rows;
}

describe("RFC 4180", () => {
	test("quotes where they are needed, CRLF at each end", () => {
		expect(
			csv([
				["part", "note"],
				["top", 'a "b", c'],
				["x\ny", ""],
			]),
		).toBe('part,note\r\ntop,"a ""b"", c"\r\n"x\ny",\r\n');
		expect(csv([])).toBe("");
	});

	test("any cells come back, a formula with its apostrophe", () => {
		const cell = fc
			.array(
				fc.constantFrom('"', ",", "\r", "\n", "=", "-", "@", "a", " ", "1"),
			)
			.map((parts) => parts.join(""));
		const rows = fc
			.integer({ min: 1, max: 3 })
			.chain((n) => fc.array(fc.array(cell, { minLength: n, maxLength: n })));
		fc.assert(
			fc.property(rows, (cells) => {
				const read = readCsv(csv(cells));
				expect(read.map((row) => row.length)).toEqual(
					cells.map((row) => row.length),
				);
				read.flat().forEach((value, i) => {
					const cell = cells.flat()[i];
					expect([cell, `'${cell}`]).toContain(value);
				});
			}),
			{ seed: 1, numRuns: 2_000 },
		);
	});
});

describe("formulas", () => {
	test.each([
		"=1+1",
		"+1+1",
		"-1+1",
		"@SUM(A1)",
		"\t=1",
		"\r=1",
		"  =1",
		"-",
		"-a",
		"\uff1d1",
		"-1/4/2",
	])("%j becomes text", (value) => {
		expect(readCsv(csv([[value]]))).toEqual([[`'${value}`]]);
	});

	test.each(["-3/4", "-2 1/4", "+0.5", "-450.5", "2 1/4", "a=b", "'x", ""])(
		"%j stays as it is",
		(value) => {
			expect(readCsv(csv([[value]]))).toEqual([[value]]);
		},
	);
});
