// Files that come later than they are asked for: what is known when, which paths are followed, and one spelling of names.

import { expect, test } from "vitest";
import { EditorFiles } from "./editor-files.ts";

const at = (path: string): string => `vscode-vfs://shop/${path}`;

/** An editor that holds some files, answers when it is told to, and keeps what it was asked. */
function editorWith(files: Record<string, string>) {
	const asked: string[][] = [];
	const host = new EditorFiles({
		readFiles: async (uris) => {
			asked.push([...uris]);
			return uris.map((uri) => files[uri] ?? null);
		},
		listFiles: async () => Object.keys(files),
	});
	const arrived: string[][] = [];
	host.onArrived((uris) => arrived.push([...uris]));
	return { host, asked, arrived, files };
}

test("a file has no text until it has come, and is asked for once", async () => {
	const { host, asked, arrived } = editorWith({ [at("a.rod")]: "unit mm\n" });
	expect(host.read(at("a.rod"))).toBeUndefined();
	expect(host.read(at("a.rod"))).toBeUndefined();
	await host.whenArrived();
	expect(host.read(at("a.rod"))).toBe("unit mm\n");
	expect(host.whenArrived()).toBeUndefined();
	expect(asked).toEqual([[at("a.rod")]]);
	expect(arrived).toEqual([[at("a.rod")]]);
});

test("files that are wanted in one turn come together, and none that is not there is asked for twice", async () => {
	const { host, asked } = editorWith({ [at("a.rod")]: "" });
	host.read(at("a.rod"));
	host.read(at("b.rod"));
	await host.whenArrived();
	expect(host.read(at("a.rod"))).toBe("");
	expect(host.read(at("b.rod"))).toBeUndefined();
	expect(host.whenArrived()).toBeUndefined();
	expect(asked).toEqual([[at("a.rod"), at("b.rod")]]);
});

test("a file that changed keeps its old text until the new one has come", async () => {
	const { host, files } = editorWith({ [at("a.rod")]: "old" });
	host.read(at("a.rod"));
	await host.whenArrived();
	const before = host.stamp(at("a.rod"));
	files[at("a.rod")] = "new";
	host.forget(at("a.rod"));
	expect(host.read(at("a.rod"))).toBe("old");
	await host.whenArrived();
	expect(host.read(at("a.rod"))).toBe("new");
	expect(host.stamp(at("a.rod"))).not.toBe(before);
});

test("a file that went has no text once that is known", async () => {
	const { host, files } = editorWith({ [at("a.rod")]: "old" });
	host.read(at("a.rod"));
	await host.whenArrived();
	delete files[at("a.rod")];
	host.forget(at("a.rod"));
	host.read(at("a.rod"));
	await host.whenArrived();
	expect(host.read(at("a.rod"))).toBeUndefined();
	expect(host.stamp(at("a.rod"))).toBeUndefined();
});

test("an editor that cannot answer has no files", async () => {
	const host = new EditorFiles({
		readFiles: () => Promise.reject(new Error("gone")),
		listFiles: () => Promise.reject(new Error("gone")),
	});
	host.read(at("a.rod"));
	host.list(at(""));
	await host.whenArrived();
	expect(host.read(at("a.rod"))).toBeUndefined();
	expect(host.list(at(""))).toEqual([]);
	expect(host.whenArrived()).toBeUndefined();
});

test("paths beside the design, with blanks and dots", () => {
	const { host } = editorWith({});
	const design = at("benches/low/bench.rod");
	expect(host.resolve(design, "./my stock.rod")).toBe(
		at("benches/low/my%20stock.rod"),
	);
	expect(host.resolve(design, "../stock.rod")).toBe(at("benches/stock.rod"));
	expect(host.resolve(at("a.rod"), "../a.rod")).toBeUndefined();
});

test("a package from the nearest folder up, once it is known which", async () => {
	const { host } = editorWith({
		[at("node_modules/woods/oak.rod")]: "far",
		[at("benches/node_modules/woods/oak.rod")]: "near",
	});
	const design = at("benches/low/bench.rod");
	host.resolve(design, "woods/oak.rod");
	await host.whenArrived();
	expect(host.resolve(design, "woods/oak.rod")).toBe(
		at("benches/node_modules/woods/oak.rod"),
	);
	expect(host.resolve(at("a.rod"), "woods/oak.rod")).toBe(
		at("node_modules/woods/oak.rod"),
	);
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
	const { host } = editorWith({});
	expect(host.resolve(at("bench.rod"), path)).toBeUndefined();
});

test("nothing lies beside a document that has not been saved", () => {
	const { host, asked } = editorWith({});
	expect(host.resolve("untitled:Untitled-1", "./a.rod")).toBeUndefined();
	expect(host.read("untitled:Untitled-1")).toBeUndefined();
	expect(host.settingsFile("untitled:Untitled-1")).toBeUndefined();
	expect(asked).toEqual([]);
});

test("designs and folders in a folder, in order; no hidden ones, no packages", async () => {
	const { host } = editorWith({
		[at("b.rod")]: "",
		[at("a%20b.rod")]: "",
		[at(".storyrod.json")]: "",
		[at("deeper/c.rod")]: "",
		[at("node_modules/woods/oak.rod")]: "",
	});
	host.list(at(""));
	await host.whenArrived();
	expect(host.list(at(""))).toEqual([
		{ name: "a b.rod", isFolder: false },
		{ name: "b.rod", isFolder: false },
		{ name: "deeper", isFolder: true },
	]);
});

test("the nearest settings file above a design", async () => {
	const { host } = editorWith({
		[at(".storyrod.json")]: "{}",
		[at("benches/.storyrod.json")]: "{}",
		[at("racks/a.rod")]: "",
	});
	host.settingsFile(at("benches/low/a.rod"));
	await host.whenArrived();
	expect(host.settingsFile(at("benches/low/a.rod"))).toBe(
		at("benches/.storyrod.json"),
	);
	expect(host.settingsFile(at("racks/a.rod"))).toBe(at(".storyrod.json"));
});

test("one spelling of a uri", () => {
	const { host } = editorWith({});
	expect(host.canonical("vscode-vfs://shop/a/b%2Dc%20(1).rod")).toBe(
		host.canonical("vscode-vfs://shop/a/b-c%20%281%29.rod"),
	);
	expect(host.canonical("vscode-vfs://shop/a%zz.rod")).toBe(
		"vscode-vfs://shop/a%25zz.rod",
	);
	expect(host.canonical("untitled:Untitled-1")).toBe("untitled:Untitled-1");
});

test("the page of a check is where the client says", () => {
	const { host } = editorWith({});
	host.begin({ checksPage: "https://shop/CHECKS.md" });
	expect(host.checkPage("dado-loose")).toBe(
		"https://shop/CHECKS.md#dado-loose",
	);
	host.begin(undefined);
	host.begin({ checksPage: 3 });
	expect(host.checkPage("fit-gap")).toBe("https://shop/CHECKS.md#fit-gap");
});
