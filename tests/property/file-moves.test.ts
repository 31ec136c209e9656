// Designs that move keep what they use: after any moves of files and folders every path leads to the file that it led to.

import fc from "fast-check";
import { expect, test } from "vitest";
import { movedTo, pathEdits } from "../../shared/features/file-moves.ts";
import { compile } from "../../shared/model/compile.ts";
import { resolveRelative, sourcesOf } from "../../shared/sources/sources.ts";
import { applyEdits } from "../../shared/text/edits.ts";
import { nameWorld } from "../harness/name-world.ts";

const root = "file:///shop";
const folders = ["", "/a", "/a/b", "/my%20parts"];

/** Files that use each other at random, in folders. */
const workspace = fc
	.array(
		fc.record({
			folder: fc.constantFrom(...folders),
			uses: fc.array(fc.nat(), { maxLength: 3 }),
		}),
		{ minLength: 2, maxLength: 7 },
	)
	.map((files) => {
		const uris = files.map(
			({ folder }, index) => `${root}${folder}/f${index}.rod`,
		);
		return new Map(
			files.map(({ uses }, index): [string, string] => {
				const from = uris[index] as string;
				const lines = [...new Set(uses.map((one) => one % files.length))]
					.filter((one) => one !== index)
					.map(
						(one) =>
							`use m${one} from "${pathTo(from, uris[one] as string)}"\n`,
					);
				return [from, `${lines.join("")}coating m${index} { kind glue }\n`];
			}),
		);
	});

/** By way of the topmost folder: never the shortest path, but a right one. */
function pathTo(from: string, to: string): string {
	const up = from
		.slice(root.length)
		.split("/")
		.slice(2)
		.map(() => "..");
	return [
		...(up.length > 0 ? up : ["."]),
		decodeURIComponent(to.slice(root.length + 1)),
	].join("/");
}

test("every path leads where it led", () => {
	let edited = 0;
	fc.assert(
		fc.property(
			workspace,
			fc.array(
				fc.oneof(
					fc.record({
						file: fc.nat(),
						to: fc.constantFrom(...folders, "/new", "/a/new"),
					}),
					fc.record({
						folder: fc.constantFrom("/a", "/a/b", "/my%20parts"),
						to: fc.constantFrom("/c", "/d/%C3%A9"),
					}),
				),
				{ minLength: 1, maxLength: 2 },
			),
			(texts, acts) => {
				const uris = [...texts.keys()];
				const moves = acts.map((act, index) => {
					if ("folder" in act)
						return {
							from: root + act.folder,
							to: `${root}${act.to}${index}`,
						};
					const from = uris[act.file % uris.length] as string;
					return {
						from,
						to: `${root}${act.to}/moved${index}.rod`,
					};
				});
				const places = new Map(uris.map((uri) => [uri, movedTo(uri, moves)]));
				const world = nameWorld(texts);
				const edits = pathEdits(world, uris, moves);
				edited += edits.size;
				const after = new Map(
					[...texts].map(([uri, text]) => [
						places.get(uri) as string,
						applyEdits(
							text,
							(edits.get(uri) ?? []).map(({ span, text: put }) => ({
								...span,
								text: put,
							})),
						),
					]),
				);
				const there = nameWorld(after);
				for (const uri of uris) {
					const place = places.get(uri) as string;
					const leads = (file: typeof world, from: string) =>
						(file.file(from)?.uses ?? []).map(({ path }) =>
							resolveRelative(from, path.value),
						);
					expect(leads(there, place)).toEqual(
						leads(world, uri).map((one) => places.get(one ?? "")),
					);
					expect(compile(sourcesOf(after), place).findings).toHaveLength(
						compile(sourcesOf(texts), uri).findings.length,
					);
				}
			},
		),
		{ numRuns: 150 },
	);
	expect(edited).toBeGreaterThan(100);
});
