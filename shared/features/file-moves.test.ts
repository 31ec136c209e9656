// Paths after files and folders were moved: as a reader of the files would have written them there.

import { expect, test } from "vitest";
import { nameWorld } from "../../tests/harness/name-world.ts";
import { applyEdits } from "../text/edits.ts";
import { pathEdits } from "./file-moves.ts";

const texts = new Map([
	[
		"file:///w/bench.rod",
		'use ply from "./stock.rod"\nuse base from "./parts/base.rod"\n',
	],
	["file:///w/stock.rod", "sheet ply { }\n"],
	[
		"file:///w/parts/base.rod",
		'use ply from "../stock.rod"\nuse rail from "./rail.rod"\n',
	],
	[
		"file:///w/parts/rail.rod",
		'use oak from "woods/oak.rod"\nuse no from "./missing.rod"\n',
	],
]);

function moved(...moves: [from: string, to: string][]): string[] {
	const world = nameWorld(texts);
	const edits = pathEdits(
		world,
		texts.keys(),
		moves.map(([from, to]) => ({
			from: `file:///w/${from}`,
			to: `file:///w/${to}`,
		})),
	);
	return [...edits].flatMap(([uri, list]) => {
		const old = texts.get(uri) ?? "";
		const now = applyEdits(
			old,
			list.map(({ span, text }) => ({ ...span, text })),
		);
		return now
			.split("\n")
			.filter((line, at) => line !== old.split("\n")[at])
			.map((line) => `${uri.replace("file:///w/", "")}: ${line}`);
	});
}

test("a file that others use gets another name, or another folder", () => {
	expect(moved(["stock.rod", "lager.rod"])).toEqual([
		'bench.rod: use ply from "./lager.rod"',
		'parts/base.rod: use ply from "../lager.rod"',
	]);
	expect(moved(["stock.rod", "parts/stock.rod"])).toEqual([
		'bench.rod: use ply from "./parts/stock.rod"',
		'parts/base.rod: use ply from "./stock.rod"',
	]);
	expect(moved(["stock.rod", "my%20stock/%22a%22.rod"])).toEqual([
		'bench.rod: use ply from "./my stock/\\"a\\".rod"',
		'parts/base.rod: use ply from "../my stock/\\"a\\".rod"',
	]);
});

test("a file that moves keeps the files that it uses, missing ones too", () => {
	expect(moved(["parts/base.rod", "deep/er/base.rod"])).toEqual([
		'bench.rod: use base from "./deep/er/base.rod"',
		'deep/er/base.rod: use ply from "../../stock.rod"'.replace(
			"deep/er",
			"parts",
		),
		'parts/base.rod: use rail from "../../parts/rail.rod"',
	]);
	expect(moved(["parts/rail.rod", "rail.rod"])).toEqual([
		'parts/base.rod: use rail from "../rail.rod"',
		'parts/rail.rod: use no from "./parts/missing.rod"',
	]);
});

test("a folder moves: paths within it stay as they are", () => {
	expect(moved(["parts", "lib/made"])).toEqual([
		'bench.rod: use base from "./lib/made/base.rod"',
		'parts/base.rod: use ply from "../../stock.rod"',
	]);
});

test("several at once, which may follow each other", () => {
	expect(
		moved(["stock.rod", "all/stock.rod"], ["bench.rod", "all/bench.rod"]),
	).toEqual([
		'bench.rod: use base from "../parts/base.rod"',
		'parts/base.rod: use ply from "../all/stock.rod"',
	]);
	expect(moved(["parts", "lib"], ["parts/rail.rod", "rail.rod"])).toEqual([
		'bench.rod: use base from "./lib/base.rod"',
		'parts/base.rod: use rail from "../rail.rod"',
		'parts/rail.rod: use no from "./lib/missing.rod"',
	]);
	expect(moved(["nothing.rod", "else.rod"])).toEqual([]);
});
