// What stands still while a line is typed: texts with hints as `«…»`, first as they were, then as they would be anew, then as they
// are shown.

import { expect, test } from "vitest";
import { indexLines } from "../../../text/line-index.ts";
import type { Hint } from "./hint.ts";
import { type Shown, stillShown } from "./typed-line.ts";

function read(marked: string): { text: string; hints: Hint[] } {
	const hints: Hint[] = [];
	let text = "";
	for (const part of marked.split(/(«[^»]*»)/)) {
		if (part.startsWith("«"))
			hints.push({
				kind: "sizes",
				offset: text.length,
				label: part.slice(1, -1),
				about: "",
			});
		else text += part;
	}
	return { text, hints };
}

/** Each state as it would be anew; the answer is how each is shown. */
function shownAs(...states: readonly string[]): string[] {
	let before: Shown | undefined;
	return states.map((state) => {
		const { text, hints } = read(state);
		const lines = indexLines(text);
		const still = stillShown(before, text, lines, hints, 0, lines.lineCount);
		before = still.shown;
		let marked = text;
		for (const { offset, label } of still.hints.toReversed())
			marked = `${marked.slice(0, offset)}«${label}»${marked.slice(offset)}`;
		return marked;
	});
}

test("at first everything is shown", () => {
	expect(shownAs("part a«9» of oak«3»\n")).toEqual(["part a«9» of oak«3»\n"]);
});

test("a line that cannot be read keeps its hints, and has them anew when it can be", () => {
	expect(
		shownAs(
			"part a«9» of oak«3»\nb«1»",
			"part a of oak inset \nb«1»",
			"part a«8» of oak«3» inset 1\nb«2»",
		),
	).toEqual([
		"part a«9» of oak«3»\nb«1»",
		"part a«9» of oak«3» inset \nb«1»",
		"part a«8» of oak«3» inset 1\nb«2»",
	]);
});

test("a hint whose word is gone goes", () => {
	expect(shownAs("part a«9» of oak«3»\n", "part a of oa\n")[1]).toBe(
		"part a«9» of oa\n",
	);
});

test("no new hint comes up before the line is left", () => {
	expect(
		shownAs(
			"unit in\n\nb«1»",
			"unit in\npart a of oak\nb«1»",
			"unit in\npart a«9» of oak«3» i\nb«1»",
			"unit in\npart a«9» of oak«3» i\n\nb«1»",
		).slice(2),
	).toEqual([
		"unit in\npart a of oak i\nb«1»",
		"unit in\npart a«9» of oak«3» i\n\nb«1»",
	]);
});

test("equal words are told apart", () => {
	expect(shownAs("a a«1» a«2»\n", "a a a x\n")[1]).toBe("a a«1» a«2» x\n");
});

test("an edit elsewhere shows the line as it is", () => {
	expect(shownAs("a«1»\nb«2»\n", "a x\nb«2»\n", "a x\nb«2» y\n")[2]).toBe(
		"a x\nb«2» y\n",
	);
});

test("asked twice, it answers the same", () => {
	const [, first, second] = shownAs("a«1»\n", "a x\n", "a x\n");
	expect(first).toBe("a«1» x\n");
	expect(second).toBe(first);
});
