// What a new name may never change: the cut list, the findings, and the bytes once the old name is back. Any thing of the
// shipped designs gets any name, the ones that must be refused among them.

import fc from "fast-check";
import { expect, test } from "vitest";
import type { Edit } from "../../grammar/index.ts";
import { runChecks } from "../../shared/checks/index.ts";
import { references } from "../../shared/features/references.ts";
import { rename } from "../../shared/features/rename.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Design } from "../../shared/model/types.ts";
import { cutList } from "../../shared/outputs/cut-list.ts";
import { cutListCsv } from "../../shared/outputs/cut-list-csv.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { applyEdits } from "../../shared/text/edits.ts";
import { designTexts } from "../harness/design-texts.ts";
import { namedIn, nameWorld } from "../harness/name-world.ts";

type Texts = ReadonlyMap<string, string>;

/** The shipped designs, and one that has names made from names. */
const texts: Texts = new Map([
	...designTexts,
	[
		"/designs/made.rod",
		`use ply, oak, skins, birch from "./stock.rod"
component frame {
  given width = 20
  given depth = 9
  part left { of ply.half; size depth x 3; lies deep facing side }
  part right { of ply.half; size depth x 3; lies deep facing side; left at width right from left.left }
  part seat { of ply.half; size width x depth; bottom at left.top }
}
piece stool {
  mark wide-one = 24
  make foot from frame { set width = wide-one; bottom at 4 up from floor }
  part lid { of birch.twelve; size wide-one x 9; bottom at foot.seat.top }
  veneer face { on lid, foot.seat; faces both; of skins.ash; order lid, seat }
  trim edge { on lid.front; of oak.four-quarter; thick 1/4 }
  leg front-left, front-right handed {
    against under lid
    set-in 1 from lid.left
    set-back 1 from lid.front
    layer only of oak.eight-quarter 2 wide 1 1/2 thick from floor up to lid
  }
  part rail { of oak.four-quarter; size 10 x 2; left at foot.left.right; top at edge.lid.bottom }
  measured face.lid.thick 1/32
  must face.lid-inside.length <= face.seat.length + edge.lid.length
}
`,
	],
]);

const uris = [...texts.keys()];
const files = { uris, locked: () => undefined };
const world = nameWorld(texts);
const things = uris.flatMap((uri) => namedIn(world.file(uri)));

const known = [...new Set(things.map(({ name }) => name))];
const names = fc.oneof(
	{ weight: 4, arbitrary: fc.constantFrom("zest", "a-b", "p1", "würfel") },
	{ weight: 2, arbitrary: fc.constantFrom(...known) },
	{
		weight: 1,
		arbitrary: fc.constantFrom(
			...["top", "left", "right", "front", "width", "depth", "thick", "inside"],
			...["wide", "centred", "handed", "equal", "x", "from", "floor", "in"],
			...["min", "mm", "F", "1a", "a b", "a.b", "-", "a-", "é", "", "a{", '"'],
		),
	},
);

/** All that a design makes and finds, as texts in order. */
function told(design: Design): string[] {
	return [
		cutListCsv(design.pieces.map((piece) => cutList(piece))),
		...design.pieces.flatMap(({ parts, joints }) => [
			...parts.map(({ id, min, length, width, thick }) =>
				[id, ...min, length, width, thick]
					.map((one) => (typeof one === "string" ? one : one.value.toString()))
					.join(" "),
			),
			...joints.map(({ id, kind, fits }) =>
				[id, kind, ...fits.map(({ gap }) => gap.value.toString())].join(" "),
			),
		]),
		...[...design.findings, ...runChecks(design)].map(
			({ id, severity, message }) => `${id} ${severity} ${message}`,
		),
	];
}

const toldBefore = new Map<string, string[]>();
function toldOf(uri: string): string[] {
	const kept = toldBefore.get(uri) ?? told(compile(sourcesOf(texts), uri));
	toldBefore.set(uri, kept);
	return kept;
}

/** The same but for names: wherever they differ one has the old name and the other the new one. */
function isRenamed(a: string, b: string, old: string, now: string): boolean {
	const split = (text: string) =>
		text.match(/[\p{L}\d]+(?:-[\p{L}\d]+)*|\s+|[^\p{L}\d\s]/gu) ?? [];
	// A longer name moves the columns and breaks lines elsewhere.
	const words = (text: string) => split(text).filter((one) => one.trim());
	const left = words(a);
	const right = words(b);
	return (
		left.length === right.length &&
		left.every((word, at) => {
			const other = right[at] ?? "";
			return (
				word === other ||
				(word.startsWith(old) &&
					other === now + word.slice(old.length) &&
					/^(?:-inside)?$/.test(word.slice(old.length)))
			);
		})
	);
}

function edited(
	now: Texts,
	edits: ReadonlyMap<string, readonly Edit[]>,
): Texts {
	return new Map(
		[...now].map(([uri, text]) => [
			uri,
			applyEdits(
				text,
				(edits.get(uri) ?? []).map(({ span, text: put }) => ({
					start: span.start,
					end: span.end,
					text: put,
				})),
			),
		]),
	);
}

test("a new name changes nothing but names, and back again not even these", () => {
	let done = 0;
	let refused = 0;
	fc.assert(
		fc.property(fc.nat(things.length - 1), names, (which, name) => {
			const thing = things[which] as (typeof things)[number];
			const { uri, node } = thing;
			const answer = rename(world, uri, node.span.start, name, files);
			expect(answer).toBeDefined();
			if (!answer) return;
			if ("refused" in answer) {
				refused++;
				expect(answer.refused).toMatch(/^[^\n]+[^\n.]$/);
				return;
			}
			done++;
			const spans = (references(world, uri, node.span.start, uris) ?? []).map(
				(one) => `${one.uri} ${one.span.start} ${one.span.end}`,
			);
			if (name === thing.name) {
				expect(answer.edits.size).toBe(0);
				return;
			}
			expect(
				[...answer.edits].flatMap(([file, list]) =>
					list.map(({ span }) => `${file} ${span.start} ${span.end}`),
				),
			).toEqual(spans);

			const now = edited(texts, answer.edits);
			for (const file of uris) {
				if (now.get(file) === texts.get(file) && !file.includes("made"))
					continue;
				const before = toldOf(file);
				const after = told(compile(sourcesOf(now), file));
				expect(after.length).toBe(before.length);
				for (const [at, text] of before.entries())
					if (!isRenamed(text, after[at] ?? "", thing.name, name))
						expect(after[at], `${thing.name} -> ${name}`).toBe(text);
			}

			const again = nameWorld(now);
			const number = namedIn(world.file(uri)).indexOf(thing);
			const there = namedIn(again.file(uri))[number];
			expect(there?.name).toBe(name);
			const back = rename(
				again,
				uri,
				there?.node.span.start ?? -1,
				thing.name,
				files,
			);
			expect(back && "edits" in back ? edited(now, back.edits) : back).toEqual(
				texts,
			);
		}),
		{ numRuns: 60 },
	);
	expect(done).toBeGreaterThan(25);
	expect(refused).toBeGreaterThan(2);
});

test("in broken texts only names change, and back again not even these", () => {
	let done = 0;
	fc.assert(
		fc.property(
			fc.constantFrom(...uris.filter((uri) => !uri.includes("stock"))),
			fc.array(
				fc.record({
					at: fc.double({ min: 0, max: 1, noNaN: true }),
					takes: fc.nat(60),
					puts: fc.constantFrom("", "{", "}", '"', "\n", ",", " of ", "(", ";"),
				}),
				{ minLength: 1, maxLength: 4 },
			),
			fc.nat(),
			fc.constantFrom("zest", "lip", "top", "wide"),
			(uri, acts, which, name) => {
				const now = new Map(texts);
				for (const { at, takes, puts } of acts) {
					const text = now.get(uri) ?? "";
					const start = Math.floor(at * text.length);
					now.set(uri, text.slice(0, start) + puts + text.slice(start + takes));
				}
				const broken = nameWorld(now);
				const here = namedIn(broken.file(uri));
				const number = which % Math.max(1, here.length);
				const thing = here[number];
				if (!thing) return;
				const at = thing.node.span.start;
				const answer = rename(broken, uri, at, name, files);
				expect(answer).toBeDefined();
				if (!answer || "refused" in answer || name === thing.name) return;
				done++;
				for (const [file, edits] of answer.edits)
					for (const { span, text } of edits)
						expect(now.get(file)?.slice(span.start, span.end)).toBe(
							thing.name + text.slice(name.length),
						);
				const after = edited(now, answer.edits);
				const again = nameWorld(after);
				const there = namedIn(again.file(uri))[number];
				expect(there?.name).toBe(name);
				const back = rename(
					again,
					uri,
					there?.node.span.start ?? -1,
					thing.name,
					files,
				);
				if (back && "edits" in back)
					expect(edited(after, back.edits)).toEqual(now);
			},
		),
		{ numRuns: 60 },
	);
	expect(done).toBeGreaterThan(20);
});
