// The reader of marks itself, since all feature tests lean on it.

import { expect, test } from "vitest";
import { placeOf, readFixture } from "./fixture.ts";

test("cursors and selections are taken out", () => {
	const { main, cursor } = readFixture("unit <|>in\n<|box|> a { }<|>\n");
	expect(main.text).toBe("unit in\nbox a { }\n");
	expect(main.cursors).toEqual([5, 17]);
	expect(main.selections).toEqual([{ start: 8, end: 11 }]);
	expect(cursor).toEqual({ file: main, offset: 5 });
});

test("several files", () => {
	const { files, texts } = readFixture(
		"//- a.rod\nunit in\n//- b.rod\nunit mm\n",
	);
	expect(files.map((file) => file.uri)).toEqual([
		"file:///shop/a.rod",
		"file:///shop/b.rod",
	]);
	expect(texts.get("file:///shop/b.rod")).toBe("unit mm\n");
});

test("carets mark the line above, also under other carets", () => {
	const { main } = readFixture(
		"box case {\n//  ^^^^ one\n//<^ two\n// ^ file three\n}\n",
	);
	const [one, two, three] = main.marks;
	expect(one && main.text.slice(one.span.start, one.span.end)).toBe("case");
	expect(one?.label).toBe("one");
	expect(two && main.text.slice(two.span.start, two.span.end)).toBe("box ");
	expect(three).toEqual({
		span: { start: 0, end: main.text.length },
		label: "three",
		wholeFile: true,
	});
});

test("a place is told by a text that stands there once", () => {
	expect(placeOf("unit in", "in")).toBe(5);
	expect(() => placeOf("in in", "in")).toThrow();
	expect(() => placeOf("unit mm", "in")).toThrow();
});
