// What holds for every text: reading never throws, spans are finite, inside the text and nested, and time grows linearly.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { treeText } from "../tests/harness/tree-text.ts";
import { faultSeverities } from "./errors.ts";
import { lex } from "./lexer.ts";
import { faultLimit, parse } from "./parse.ts";
import type { Node, ParseResult } from "./tree/nodes.ts";
import { children, nodeAt, walk } from "./tree/walk.ts";

const sample = readFileSync(
	new URL("../tests/corpus/sample.rod", import.meta.url),
	"utf8",
);

function isSound(text: string, { tree, faults }: ParseResult): void {
	walk(tree, (node, parent) => {
		const { start, end } = node.span;
		const within = parent?.span ?? { start: 0, end: text.length };
		if (
			!Number.isInteger(start) ||
			!Number.isInteger(end) ||
			start > end ||
			start < within.start ||
			end > within.end
		) {
			throw new Error(
				`${node.kind} ${start}-${end} not in ${parent?.kind} ${within.start}-${within.end}`,
			);
		}
		inOrder(children(node));
		if (node.kind === "measure" && node.denominator <= 0n) {
			throw new Error("denominator");
		}
	});
	let last = 0;
	for (const fault of faults) {
		const { start, end } = fault.span;
		if (!(start >= 0 && start <= end && end <= text.length)) {
			throw new Error(`fault ${fault.id} ${start}-${end}`);
		}
		if (start < last) throw new Error("faults out of order");
		last = start;
		for (const { span } of fault.fix?.edits ?? []) {
			if (
				!(span.start >= 0 && span.start <= span.end && span.end <= text.length)
			) {
				throw new Error(`fix of ${fault.id} ${span.start}-${span.end}`);
			}
		}
		// The statement grammar is total: the parser itself refuses nothing.
		if (fault.id === "unexpected")
			throw new Error("the parser refused a token");
		if (!(fault.id in faultSeverities)) throw new Error(fault.id);
	}
	if (faults.length > faultLimit + 1) throw new Error("too many faults");
}

function inOrder(nodes: readonly Node[]): void {
	for (let i = 1; i < nodes.length; i++) {
		const before = nodes[i - 1] as Node;
		const node = nodes[i] as Node;
		if (node.span.start < before.span.end) {
			throw new Error(`${before.kind} and ${node.kind} overlap`);
		}
	}
}

const scraps = [
	..."{}()[],.;x×=+-*/<>\"'#%:\\ \t\n\r½″’°é€😀\ufeff\u00a0",
	"  ",
	"\n  ",
	"\n    ",
	"a",
	"case",
	"2 1/4",
	"5 ft 2 in",
	"18ga",
	"1e400",
	"042",
	"1,000",
	"//",
	"/// d",
	"\r\n",
	"<=",
	"#8-32",
	"42x30",
];

const scrapText = fc
	.array(fc.constantFrom(...scraps), { maxLength: 60 })
	.map((parts) => parts.join(""));

test("any text is read: random characters", () => {
	fc.assert(
		fc.property(fc.string({ unit: "binary", maxLength: 200 }), (text) =>
			isSound(text, parse(text)),
		),
		{ numRuns: 1000 },
	);
});

test("any text is read: random scraps of the language", () => {
	fc.assert(
		fc.property(scrapText, (text) => isSound(text, parse(text))),
		{ numRuns: 5000 },
	);
});

test("any text is read: the sample cut short at either end", () => {
	fc.assert(
		fc.property(fc.nat(sample.length), fc.nat(sample.length), (a, b) => {
			const text = sample.slice(Math.min(a, b), Math.max(a, b));
			isSound(text, parse(text));
		}),
		{ numRuns: 500 },
	);
});

test("any text is read: the sample after random edits", () => {
	const edit = fc.record({
		at: fc.nat(sample.length),
		cut: fc.nat(20),
		put: scrapText,
	});
	fc.assert(
		fc.property(fc.array(edit, { minLength: 1, maxLength: 5 }), (edits) => {
			let text = sample;
			for (const { at, cut, put } of edits) {
				text = text.slice(0, at) + put + text.slice(at + cut);
			}
			isSound(text, parse(text));
		}),
		{ numRuns: 500 },
	);
});

test("the tokens and what lies between them are the whole text", () => {
	fc.assert(
		fc.property(scrapText, (text) => {
			const { tokens, comments, oddBlanks } = lex(text);
			const all = [...tokens, ...comments, ...oddBlanks].sort(
				(a, b) => a.startOffset - b.startOffset,
			);
			let at = 0;
			for (const token of all) {
				expect(text.slice(at, token.startOffset)).toMatch(/^[ \t]*$/);
				at = token.startOffset + token.image.length;
				expect(text.slice(token.startOffset, at)).toBe(token.image);
			}
			expect(text.slice(at)).toMatch(/^[ \t]*$/);
		}),
		{ numRuns: 2000 },
	);
});

test("CRLF reads as LF", () => {
	fc.assert(
		fc.property(scrapText, (text) => {
			const unix = text.replaceAll("\r", "");
			expect(treeText(unix.replaceAll("\n", "\r\n"))).toBe(treeText(unix));
		}),
		{ numRuns: 1000 },
	);
});

test("reading twice gives the same", () => {
	fc.assert(
		fc.property(scrapText, (text) => {
			expect(parse(text)).toEqual(parse(text));
		}),
		{ numRuns: 200 },
	);
});

test("the nodes at an offset lie in each other and hold it", () => {
	const { tree } = parse(sample);
	for (let offset = 0; offset <= sample.length; offset++) {
		const path = nodeAt(tree, offset);
		for (const [i, node] of path.entries()) {
			expect(node.span.start).toBeLessThanOrEqual(offset);
			expect(node.span.end).toBeGreaterThanOrEqual(offset);
			if (i > 0) expect(children(path[i - 1] as Node)).toContain(node);
		}
	}
});

const many = 100_000;

test.each([
	["nested blocks", "a {".repeat(many) + "}".repeat(many), "nested-too-deep"],
	["blocks never closed", "a {".repeat(many), "more-faults"],
	["lines of blocks never closed", "a {\n".repeat(many), "more-faults"],
	["closing braces", "}\n".repeat(many), "more-faults"],
	[
		"nested brackets",
		`a ${"(".repeat(many)}1${")".repeat(many)}`,
		"brackets-too-deep",
	],
	["open brackets", `a ${"(".repeat(many)}`, "brackets-too-deep"],
	["nested calls", `a ${"f(".repeat(many)}`, "brackets-too-deep"],
	["signs", `a ${"-".repeat(many)}1`, "brackets-too-deep"],
	["a long sum", `a 1${" + 1".repeat(many)}`, "brackets-too-deep"],
	[
		"long sums in nested brackets",
		`a ${"(".repeat(190)}1${`${" + 1".repeat(190)})`.repeat(190)}`,
		"brackets-too-deep",
	],
	["one number", `a ${"9".repeat(many)}`, "number-too-large"],
	["open texts", '"a\n'.repeat(many), "more-faults"],
	["guillemets", "«".repeat(many), "stray-sign"],
	[
		"a stair of open blocks",
		Array.from({ length: 2000 }, (_, i) => `${" ".repeat(i)}a {`).join("\n"),
		"more-faults",
	],
])(
	"a text of nothing but %s is read and walked without exhausting anything",
	(_name, text, id) => {
		const result = parse(text);
		expect(result.faults.at(-1)?.id).toBe(id);
		isSound(text, result);
	},
);

test("a long list, a long path and many sizes are no fault", () => {
	expect(parse(`a 1${", 1".repeat(many)}`).faults).toEqual([]);
	expect(parse(`a b${".c".repeat(many)}`).faults).toEqual([]);
	expect(parse(`a 1${" x 1".repeat(many)}`).faults).toEqual([]);
});

test("ten megabytes of noise are read in linear time", () => {
	const size = 10_000_000;
	const alphabet = "abcxyz {}()[],.;=+-*/<>\"'#0123456789 \n\t½é€";
	const characters = new Array<string>(size);
	let state = 1;
	for (let i = 0; i < size; i++) {
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		characters[i] = alphabet[(state >>> 0) % alphabet.length] as string;
	}
	const text = characters.join("");
	const time = (part: string) => {
		const from = performance.now();
		const { faults } = parse(part);
		expect(faults).toHaveLength(faultLimit + 1);
		expect(faults.at(-1)?.id).toBe("more-faults");
		return performance.now() - from;
	};
	const tenth = time(text.slice(0, size / 10));
	const whole = time(text);
	// Ten times the text, room for the memory to be tidied; quadratic time would be a hundred times.
	expect(whole).toBeLessThan(Math.max(40 * tenth, 5000));
	expect(whole).toBeLessThan(30_000);
});
