// Which files the host reads, and which paths it follows.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { nodeHost } from "./node-host.ts";

let folder: string;
const uri = (...names: string[]): string =>
	pathToFileURL(join(folder, ...names)).href;

beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), "rod host-"));
	mkdirSync(join(folder, "shop"));
	mkdirSync(join(folder, "node_modules", "woods"), { recursive: true });
	writeFileSync(join(folder, "shop", "my stock.rod"), "unit mm\n");
	writeFileSync(join(folder, "node_modules", "woods", "oak.rod"), "unit in\n");
});

afterAll(() => rmSync(folder, { recursive: true }));

test("files beside the design, with blanks and dots in their paths", () => {
	const design = uri("shop", "bench.rod");
	const found = nodeHost.resolve(design, "./my stock.rod");
	expect(found).toBe(uri("shop", "my stock.rod"));
	expect(found && nodeHost.read(found)).toBe("unit mm\n");
	expect(nodeHost.resolve(design, "../shop/my stock.rod")).toBe(found);
});

test("files of an installed package, from the nearest folder up", () => {
	const design = uri("shop", "bench.rod");
	expect(nodeHost.resolve(design, "woods/oak.rod")).toBe(
		uri("node_modules", "woods", "oak.rod"),
	);
	expect(nodeHost.resolve(design, "woods/ash.rod")).toBeUndefined();
});

test.each([
	"/etc/passwd",
	"file:///etc/passwd",
	"https://example.org/a.rod",
	"woods/../../secret.rod",
	"stock.rod",
	"",
	"./a\0b.rod",
	"./.npmrc",
	"../secret.txt",
])("the path %j is not followed", (path) => {
	expect(nodeHost.resolve(uri("bench.rod"), path)).toBeUndefined();
});

test("what is no file has no text", () => {
	expect(nodeHost.read(uri("nothing.rod"))).toBeUndefined();
	expect(nodeHost.read(uri("shop"))).toBeUndefined();
	expect(nodeHost.read("untitled:Untitled-1")).toBeUndefined();
	expect(nodeHost.read("file://[bad")).toBeUndefined();
	expect(nodeHost.resolve("untitled:Untitled-1", "./a.rod")).toBeUndefined();
});

test("files that only the editor has stand beside each other", () => {
	const virtual = "vscode-vfs://host/shop/a.rod";
	expect(nodeHost.resolve(virtual, "./b.rod")).toBe(
		"vscode-vfs://host/shop/b.rod",
	);
	expect(nodeHost.resolve(virtual, "../../../b.rod")).toBeUndefined();
	expect(nodeHost.resolve(virtual, "woods/oak.rod")).toBeUndefined();
	expect(nodeHost.resolve("memfs:/a.rod", "./b.rod")).toBe("memfs:/b.rod");
});

test("a file that changes has another stamp", () => {
	const file = join(folder, "stamped.rod");
	expect(nodeHost.stamp(uri("stamped.rod"))).toBeUndefined();
	writeFileSync(file, "unit mm\n");
	const before = nodeHost.stamp(uri("stamped.rod"));
	expect(before).toBe(nodeHost.stamp(uri("stamped.rod")));
	writeFileSync(file, "unit in\n\n");
	expect(nodeHost.stamp(uri("stamped.rod"))).not.toBe(before);
});

test("designs and folders in a folder, in order", () => {
	mkdirSync(join(folder, "many", "deeper"), { recursive: true });
	for (const name of ["b.rod", "a b.rod", "notes.txt", ".hidden.rod"])
		writeFileSync(join(folder, "many", name), "");
	mkdirSync(join(folder, "many", "node_modules"));
	expect(nodeHost.list?.(`${uri("many")}/`)).toEqual([
		{ name: "a b.rod", isFolder: false },
		{ name: "b.rod", isFolder: false },
		{ name: "deeper", isFolder: true },
	]);
	expect(nodeHost.list?.(`${uri("none")}/`)).toBeUndefined();
	expect(nodeHost.list?.("untitled:a/")).toBeUndefined();
});

test("the nearest settings file, not above a folder with .git", () => {
	mkdirSync(join(folder, "set", "repo", ".git"), { recursive: true });
	mkdirSync(join(folder, "set", "own"));
	writeFileSync(join(folder, "set", ".storyrod.json"), "{}");
	expect(nodeHost.settingsFile(uri("set", "own", "a.rod"))).toBe(
		uri("set", ".storyrod.json"),
	);
	expect(nodeHost.settingsFile(uri("set", "repo", "a.rod"))).toBeUndefined();
	expect(nodeHost.settingsFile("untitled:Untitled-1")).toBeUndefined();
});

test("a byte order mark is not part of the text", () => {
	writeFileSync(join(folder, "marked.rod"), "\ufeffunit mm\n");
	expect(nodeHost.read(uri("marked.rod"))).toBe("unit mm\n");
});

test("one spelling of a uri", () => {
	expect(nodeHost.canonical("file:///a/b%2Dc.rod")).toBe("file:///a/b-c.rod");
	expect(nodeHost.canonical("untitled:Untitled-1")).toBe("untitled:Untitled-1");
});

test("the page of a check is a file of the package", () => {
	const page = new URL(nodeHost.checkPage("dado-loose"));
	expect(page.hash).toBe("#dado-loose");
	page.hash = "";
	expect(nodeHost.read(page.href)).toContain("# The checks");
	expect(fileURLToPath(page)).toMatch(/shared.checks.CHECKS\.md$/);
});
