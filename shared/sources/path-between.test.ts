// Paths from one file to another: they lead back to where they were made for.

import { expect, test } from "vitest";
import { pathBetween } from "./path-between.ts";
import { resolveRelative } from "./sources.ts";

test.each([
	["file:///a/bench.rod", "file:///a/stock.rod", "./stock.rod"],
	["file:///a/bench.rod", "file:///a/b/stock.rod", "./b/stock.rod"],
	["file:///a/b/bench.rod", "file:///a/stock.rod", "../stock.rod"],
	["file:///a/b/bench.rod", "file:///c/d/s.rod", "../../c/d/s.rod"],
	["file:///a/bench.rod", "file:///a/my%20s%C3%A9.rod", "./my sé.rod"],
	["/a/bench.rod", "/a/b/stock.rod", "./b/stock.rod"],
	["vscode-vfs://shop/a/b.rod", "vscode-vfs://shop/c.rod", "../c.rod"],
])("%s to %s", (from, to, path) => {
	expect(pathBetween(from, to)).toBe(path);
	expect(resolveRelative(from, path)).toBe(to);
});

test("no path leads from one disk or editor to another", () => {
	expect(
		pathBetween("file:///a/b.rod", "vscode-vfs://x/b.rod"),
	).toBeUndefined();
	expect(pathBetween("untitled:Untitled-1", "file:///a/b.rod")).toBeUndefined();
	expect(
		pathBetween("untitled:Untitled-1", "untitled:Untitled-2"),
	).toBeUndefined();
});
