// Which settings hold for which design.

import { expect, test } from "vitest";
import type { Host } from "./host.ts";
import { Settings } from "./settings.ts";

const files = new Map([
	["file:///shop/.storyrod.json", '{ "severity": { "flush": "off" } }'],
]);
let looked = 0;
const host: Host = {
	read: (uri) => files.get(uri),
	stamp: (uri) => files.get(uri),
	resolve: () => undefined,
	settingsFile: (uri) => {
		looked += 1;
		return uri.startsWith("file:///shop/")
			? "file:///shop/.storyrod.json"
			: undefined;
	},
	canonical: (uri) => uri,
	later: (task) => task(),
	checkPage: (anchor) => anchor,
};
let folder: string | undefined;
const made = (): Settings => new Settings(host, host.read, () => folder);

test("a design that is in no file yet belongs to the open folder", () => {
	const settings = made();
	expect(settings.optionsFor("untitled:Untitled-1").severity).toBeUndefined();
	folder = "file:///shop/";
	settings.forgetPlaces();
	expect(settings.optionsFor("untitled:Untitled-1").severity).toEqual({
		flush: "off",
	});
});

test("the same object as long as nothing changes, and the file is looked for once", () => {
	const settings = made();
	const uri = "file:///shop/a.rod";
	const first = settings.optionsFor(uri);
	const before = looked;
	expect(settings.optionsFor(uri)).toBe(first);
	expect(looked).toBe(before);
	expect(settings.optionsFor("file:///shop/b.rod")).toBe(first);
	settings.setEditor({ severity: { flush: "hint" } });
	expect(settings.optionsFor(uri).severity).toEqual({ flush: "hint" });
	expect(settings.optionsFor("file:///other/a.rod").severity).toEqual({
		flush: "hint",
	});
});
