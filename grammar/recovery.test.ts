// A damaged place costs its own statement: all others of the sample are found unchanged, in the block where they belong.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { statementText } from "../tests/harness/tree-text.ts";
import { endOf, lex } from "./lexer.ts";
import { parse } from "./parse.ts";
import { tokens } from "./tokens.ts";
import type { Statement } from "./tree/nodes.ts";

const sample = readFileSync(
	new URL("../tests/corpus/sample.rod", import.meta.url),
	"utf8",
);

/** Every statement with its depth, its block left out. */
function outline(text: string): string[] {
	const lines: string[] = [];
	const visit = (statements: readonly Statement[], path: string) => {
		for (const statement of statements) {
			const own = statementText({ ...statement, block: undefined });
			lines.push(`${path}${own}`);
			const block = statement.block?.statements ?? [];
			visit(block, `${path}> `);
		}
	};
	visit(parse(text).tree.statements, "");
	return lines;
}

const whole = outline(sample);
const count = whole.length;

/** How many statements of the sample are still there, unchanged and in their place. */
function survivors(text: string): number {
	const left = new Map<string, number>();
	for (const line of outline(text)) left.set(line, (left.get(line) ?? 0) + 1);
	let found = 0;
	for (const line of whole) {
		const more = left.get(line) ?? 0;
		if (more > 0) {
			found++;
			left.set(line, more - 1);
		}
	}
	return found;
}

const places = lex(sample).tokens.filter(
	(token) => token.tokenType !== tokens.Newline,
);

function lineEnd(at: number): number {
	const end = sample.indexOf("\n", at);
	return end < 0 ? sample.length : end;
}

/** Survivors after each damage, the mean and the worst. */
function damage(make: (start: number, end: number) => string) {
	let sum = 0;
	let worst = count;
	let worstText = "";
	for (const token of places) {
		const text = make(token.startOffset, endOf(token));
		const found = survivors(text);
		sum += found;
		if (found < worst) {
			worst = found;
			worstText = text;
		}
	}
	return { mean: sum / places.length, worst, worstText };
}

const inserted = (what: string) => (_start: number, end: number) =>
	`${sample.slice(0, end)}${what}${sample.slice(end)}`;

test("the sample reads without fault", () => {
	expect(parse(sample).faults).toEqual([]);
	expect(parse(sample).tree.statements.map((one) => one.head)).toEqual([
		"use",
		"piece",
		"piece",
	]);
	expect(parse(sample).tree.statements.map((one) => one.doc)).toEqual([
		"",
		"A low bench for records: an oak-veneered case on four shaped legs.",
		"The rack above it, in millimetres, hung on a cleat.",
	]);
});

test("line ends of either kind give the same tree", () => {
	expect(outline(sample.replaceAll("\n", "\r\n"))).toEqual(whole);
	expect(outline(sample.replaceAll("\n", "\r"))).toEqual(whole);
	expect(parse(sample.replaceAll("\n", "\r\n")).faults).toEqual([]);
});

test.each([
	[
		"a token deleted",
		(start: number, end: number) => sample.slice(0, start) + sample.slice(end),
	],
	[
		"a line cut after a token",
		(_start: number, end: number) =>
			sample.slice(0, end) + sample.slice(lineEnd(end)),
	],
	["a quote", inserted('"')],
	["an opening bracket", inserted(" ( ")],
	["a closing bracket", inserted(" ) ")],
	["an opening brace", inserted(" { ")],
	["a closing brace", inserted(" } ")],
	["a comma", inserted(",")],
	["a dot", inserted(".")],
	["an `x`", inserted(" x ")],
	["an operator", inserted(" + ")],
])("after %s the other statements survive", (_name, make) => {
	const { mean, worst, worstText } = damage(make);
	// The damaged statement itself is nearly always lost. On a line of many, or at a header, a few go with it.
	expect(mean).toBeGreaterThan(count - 2);
	expect(worst, worstText).toBeGreaterThanOrEqual(count - 8);
});

test.each([
	"shelf a at case.",
	"join top,",
	"divider mid {",
	"a (b",
	'a "b',
	"top +",
])("a half-typed line `%s` costs no neighbour", (line) => {
	const lines = sample.split("\n");
	for (let i = 0; i < lines.length; i++) {
		const indent = /^ */.exec(lines[i] as string)?.[0] ?? "";
		if ((lines[i] as string).trim() === "") continue;
		const text = [
			...lines.slice(0, i),
			`${/^\s*\}/.test(lines[i] as string) ? `${indent}  ` : indent}${line}`,
			...lines.slice(i),
		].join("\n");
		expect(survivors(text), text).toBe(count);
	}
});

test("every text that begins like the sample keeps the statements before its end", () => {
	for (let end = 0; end < sample.length; end += 7) {
		const text = sample.slice(0, end);
		const complete = outline(text.slice(0, text.lastIndexOf("\n") + 1));
		const found = outline(text);
		for (const [i, line] of complete.slice(0, -1).entries()) {
			expect(found[i]).toBe(line);
		}
	}
});
