// Positions in bytes and in characters, against what the platform's own encoder counts.

import { expect, test } from "vitest";
import { indexLines } from "./line-index.ts";
import { encodedLines } from "./position-encoding.ts";

const text = "a é 🪵 ½\r\n📐= 3/4\n";
const lines = indexLines(text);
const bytes = (part: string): number => new TextEncoder().encode(part).length;
const characters = (part: string): number => [...part].length;

test.each([
	["utf-8", bytes],
	["utf-32", characters],
	["utf-16", (part: string) => part.length],
] as const)(
	"%s counts as its encoder does, there and back",
	(encoding, count) => {
		const index = encodedLines(text, lines, encoding);
		for (let at = 0; at <= text.length; at++) {
			// The middle of a pair, and of a line break, is no place of its own.
			if (/[\udc00-\udfff]/.test(text[at] ?? "")) continue;
			const { line, character } = index.positionAt(at);
			const start = lines.lineStart(line);
			const end = Math.min(at, lines.lineEnd(line));
			expect(character).toBe(count(text.slice(start, end)));
			expect(index.offsetAt({ line, character })).toBe(end);
		}
	},
);

test("a byte inside a character means its start, and a place outside the nearest one", () => {
	const index = encodedLines(text, lines, "utf-8");
	const log = text.indexOf("🪵");
	const { line, character } = index.positionAt(log);
	for (const inside of [1, 2, 3])
		expect(index.offsetAt({ line, character: character + inside })).toBe(log);
	expect(index.offsetAt({ line, character: 999 })).toBe(lines.lineEnd(0));
	expect(index.offsetAt({ line, character: -1 })).toBe(0);
	expect(index.offsetAt({ line, character: Number.NaN })).toBe(0);
	expect(index.offsetAt({ line: 99, character: 0 })).toBe(text.length);
	expect(index.offsetAt({ line: -1, character: 5 })).toBe(0);
});

test("an edited text keeps its counting", () => {
	const at = text.indexOf("½");
	const now = `${text.slice(0, at)}🪵${text.slice(at)}`;
	const index = encodedLines(text, lines, "utf-8").edited(now, at, at);
	expect(index.positionAt(now.indexOf("½")).character).toBe(bytes("a é 🪵 🪵"));
});
