// The way to a cursor, marked `<|>` in the text.

import { expect, test } from "vitest";
import { parse } from "../parse.ts";
import {
	allStatements,
	blockAt,
	expressionsOf,
	nodeAt,
	statementAt,
	statementsAt,
	walk,
} from "./walk.ts";

function at(marked: string) {
	const offset = marked.indexOf("<|>");
	const text = marked.replace("<|>", "");
	const { tree } = parse(text);
	return { tree, offset, text };
}

function kinds(marked: string): string {
	const { tree, offset } = at(marked);
	return nodeAt(tree, offset)
		.map((node) => node.kind)
		.join(" ");
}

test("the path leads from the file to the innermost node", () => {
	expect(kinds("a { b case.fro<|>nt + 2 }")).toBe(
		"file statement block statement binary path name",
	);
	expect(kinds("a max(1, <|>2)")).toBe("file statement call measure");
	expect(kinds("a b, <|>")).toBe("file");
});

test("a cursor behind a word means that word, between two that touch the second", () => {
	expect(kinds("a case<|>")).toBe("file statement path name");
	expect(kinds("a <|>case")).toBe("file statement path name");
	const { tree, offset } = at("a 5<|>(b) c");
	expect(nodeAt(tree, offset).map((node) => node.kind)).toEqual([
		"file",
		"statement",
		"group",
	]);
});

test("behind a dot without a name stands the path, for completion", () => {
	expect(kinds("a case.<|>")).toBe("file statement path");
});

test("statements at an offset, outermost first", () => {
	const { tree, offset } = at("a { b { c <|>d } }");
	expect(statementsAt(tree, offset).map((one) => one.head)).toEqual([
		"a",
		"b",
		"c",
	]);
	expect(statementAt(tree, offset)?.head).toBe("c");
	const outside = at("a b\n<|>\nc");
	expect(statementAt(outside.tree, outside.offset)).toBeUndefined();
});

test("the block around an offset, between its braces", () => {
	const inner = at("a { b {<|> } }");
	expect(blockAt(inner.tree, inner.offset)?.span).toEqual({ start: 6, end: 9 });
	const behind = at("a { b { }<|> }");
	expect(blockAt(behind.tree, behind.offset)?.span.start).toBe(2);
	const before = at("a <|>{ b }");
	expect(blockAt(before.tree, before.offset)).toBeUndefined();
	const open = at("a {\n  b\n  <|>");
	expect(blockAt(open.tree, open.offset)?.closed).toBe(false);
});

test("walking visits parents first and leaves out what it is told to", () => {
	const { tree } = parse("a 1 + 2 { b c }");
	const seen: string[] = [];
	walk(tree, (node) => {
		seen.push(node.kind);
		return node.kind !== "block";
	});
	expect(seen).toEqual([
		"file",
		"statement",
		"path",
		"name",
		"binary",
		"measure",
		"measure",
		"block",
	]);
});

test("all statements and all expressions of an item", () => {
	const { tree } = parse("a (b + 1) { c; d { e } }");
	expect([...allStatements(tree)].map((one) => one.head)).toEqual([
		"a",
		"c",
		"d",
		"e",
	]);
	const item = tree.statements[0]?.items[1];
	expect(item && [...expressionsOf(item)].map((one) => one.kind)).toEqual([
		"group",
		"binary",
		"path",
		"measure",
	]);
});
