// Somebody who types at random: puts in, takes out, pastes from any design, changes a number, and undoes.

import type { Chance } from "./chance.ts";

/** Characters from `start` to `end` make way for `text`. */
export interface TypedEdit {
	readonly start: number;
	readonly end: number;
	readonly text: string;
}

const bits: readonly string[] = [
	..."{}()[],;.=-+*/\"'#x\t 0123456789abcdefgh",
	"\n",
	"\r\n",
	"\r",
	"\n\n",
	"// c\n",
	"/// d\n",
	"\n{\n",
	"\n}\n",
	" 3/4",
	"1/0",
	"99999999999999999999",
	"1e9",
	" mm",
	" in",
	"given spare = 5\n",
	"mark a = a\n",
	"\npiece more {\n  part p of ply.quarter 10 x 4\n}\n",
	"use oak from ",
	'use ply from "./stock.rod"\n',
	'use x from "./components.rod"\n',
	"from ",
	"\ufeff",
	"\u00a0",
	"🪵",
	"\ud83e",
	"\0",
	"__proto__",
	"constructor",
	".left",
	" of ",
	" every 1/64",
];

/** Longer texts only make the machine slower, not the faults more. */
const longest = 40_000;

export class Typist {
	text: string;
	private readonly chance: Chance;
	private readonly clippings: readonly string[];
	private readonly past: TypedEdit[] = [];

	/** `clippings`: texts that fragments are pasted from. */
	constructor(text: string, clippings: readonly string[], chance: Chance) {
		this.text = text;
		this.clippings = clippings;
		this.chance = chance;
	}

	/** Makes one edit and tells it. */
	type(): TypedEdit {
		const undone = this.chance.is(0.3) ? this.past.pop() : undefined;
		const edit = undone ?? this.invent();
		if (!undone)
			this.past.push({
				start: edit.start,
				end: edit.start + edit.text.length,
				text: this.text.slice(edit.start, edit.end),
			});
		this.text =
			this.text.slice(0, edit.start) + edit.text + this.text.slice(edit.end);
		return edit;
	}

	private invent(): TypedEdit {
		const { chance, text } = this;
		const start = chance.below(text.length + 1);
		const kind = chance.next();
		if (kind < 0.25) return { start, end: start, text: chance.of(bits) };
		if (kind < 0.5 || text.length > longest) {
			const length = chance.below(chance.of([2, 4, 30, 300]));
			return { start, end: Math.min(text.length, start + length), text: "" };
		}
		if (kind < 0.65) {
			const from = chance.of(this.clippings);
			const at = chance.below(from.length);
			const length = chance.below(chance.of([20, 100, 700]));
			return { start, end: start, text: from.slice(at, at + length) };
		}
		// The next number or name gets another value: the edit that may leave a design whole.
		const found = /\d+|[a-z][a-z-]*/.exec(text.slice(start, start + 400));
		if (!found) return { start, end: start, text: " " };
		const at = start + found.index;
		const from = chance.of(this.clippings);
		const other = /\d/.test(found[0])
			? chance.of(["0", "1", "2", "7", "70", "3/8", "12 1/2"])
			: (/[a-z][a-z-]*/.exec(from.slice(chance.below(from.length)))?.[0] ??
				"left");
		return { start: at, end: at + found[0].length, text: other };
	}
}
