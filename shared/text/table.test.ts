import { expect, test } from "vitest";
import { textTable } from "./table.ts";

test("columns stand straight, numbers to the right, no blanks at line ends", () => {
	const rows = [
		["part", "n", "length"],
		["top", "1", "52 19/32"],
		["étagère 🪵", "12", "3/4"],
	];
	const layout = { align: ["left", "right", "right"], header: true } as const;
	expect(textTable(rows, layout)).toBe(
		[
			"part        n    length",
			"---------  --  --------",
			"top         1  52 19/32",
			"étagère 🪵  12       3/4",
			"",
		].join("\n"),
	);
});

test("rows may be short, cells empty, broken over lines", () => {
	expect(textTable([["a", "", "c"], ["b"], ["x\r\ny"]])).toBe(
		"a      c\nb\nx y\n",
	);
});

test("the gap is as wide as asked for", () => {
	expect(textTable([["a", "b"]], { gap: 1 })).toBe("a b\n");
});

test("no rows, no text", () => {
	expect(textTable([], { header: true })).toBe("");
});
