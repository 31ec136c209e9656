// After any run of edits the answer is the one that reading everything anew gives, for trees as for whole designs.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse, reparse } from "../../grammar/index.ts";
import { runChecks } from "../../shared/checks/index.ts";
import { CompileCache, compile } from "../../shared/model/compile.ts";
import type { Design, Origin } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { largeDesign } from "../bench/large-design.ts";
import { designTexts } from "../harness/design-texts.ts";

const stockUri = "/designs/stock.rod";
const largeUri = "/designs/large.rod";
const texts: ReadonlyMap<string, string> = new Map([
	...designTexts,
	[largeUri, largeDesign(72)],
]);

const bits = [
	..."{}()[],;.=-+*/\"'#x\t",
	" ",
	"\n",
	"\r\n",
	"\n\n",
	"// c\n",
	"/// d\n",
	"  /// d\n",
	"\n// c",
	"{ a; b // c\n }",
	"\n{\n",
	"\n}\n",
	"\n)\n",
	"1",
	" 3/4",
	"given spare = 5\n",
	"\npiece more {\n  part p of ply.quarter 10 x 4\n}\n",
	"use oak from",
	"\ufeff",
	"\u00a0",
	"012",
];

/** One act at the keyboard; places are shares of the text as it stands then. */
type Act =
	| { readonly kind: "type"; readonly at: number; readonly text: string }
	| { readonly kind: "delete"; readonly at: number; readonly length: number }
	| {
			readonly kind: "paste";
			readonly at: number;
			readonly from: number;
			readonly length: number;
	  }
	| { readonly kind: "number"; readonly at: number; readonly text: string }
	| { readonly kind: "undo" };

const place = fc.double({ min: 0, max: 1, noNaN: true });
const acts: fc.Arbitrary<Act[]> = fc.array(
	fc.oneof(
		fc.record({
			kind: fc.constant("type" as const),
			at: place,
			text: fc.constantFrom(...bits),
		}),
		fc.record({
			kind: fc.constant("delete" as const),
			at: place,
			length: fc.oneof(fc.nat(3), fc.nat(60), fc.nat(900)),
		}),
		fc.record({
			kind: fc.constant("paste" as const),
			at: place,
			from: place,
			length: fc.nat(700),
		}),
		fc.record({
			kind: fc.constant("number" as const),
			at: place,
			text: fc.constantFrom("1", "2", "7", "70", "3/8"),
		}),
		fc.constant({ kind: "undo" as const }),
	),
	{ minLength: 1, maxLength: 12 },
);

/** The texts after each act. */
function statesOf(start: string, list: readonly Act[]): string[] {
	const past: string[] = [];
	let now = start;
	return list.map((act) => {
		if (act.kind === "undo") {
			now = past.pop() ?? now;
			return now;
		}
		past.push(now);
		const at = Math.floor(act.at * now.length);
		if (act.kind === "type") now = now.slice(0, at) + act.text + now.slice(at);
		else if (act.kind === "delete")
			now = now.slice(0, at) + now.slice(at + act.length);
		else if (act.kind === "paste") {
			const from = Math.floor(act.from * now.length);
			now =
				now.slice(0, at) + now.slice(from, from + act.length) + now.slice(at);
		} else {
			// The next number of the text gets another value: the edit that leaves a design whole.
			const found = /\b\d+\b/.exec(now.slice(at));
			if (found) {
				const start = at + found.index;
				now =
					now.slice(0, start) + act.text + now.slice(start + found[0].length);
			}
		}
		return now;
	});
}

describe("reading anew after an edit", () => {
	test("gives what reading the whole text gives", () => {
		fc.assert(
			fc.property(fc.constantFrom(...texts.values()), acts, (start, list) => {
				let last = { text: start, result: parse(start) };
				for (const text of statesOf(start, list)) {
					last = { text, result: reparse(last, text) };
					expect(last.result).toEqual(parse(text));
				}
			}),
			{ numRuns: 200 },
		);
	});

	test("knows a byte order mark that no longer stands first", () => {
		const marked = "\ufeff/// d\na b\n";
		const text = `\r\n${marked}`;
		const result = reparse({ text: marked, result: parse(marked) }, text);
		expect(result).toEqual(parse(text));
		expect(result.faults).not.toEqual([]);
	});

	test("gives it for lines of all sorts, too", () => {
		const lines = fc
			.array(
				fc.constantFrom(
					"a b",
					"  c",
					"d {",
					"}",
					"{",
					") e",
					"// c",
					"/// d",
					"  /// d",
					"",
					"f,",
					"  g",
					"é 1",
					"x 2",
					"(h",
					"i }",
					"{ j }",
					"k; l",
					'm "',
					"1,000",
					"\u00a0",
				),
				{ maxLength: 14 },
			)
			.chain((all) =>
				fc.constantFrom("\n", "\r\n", "\r").map((end) => all.join(end)),
			);
		fc.assert(
			fc.property(lines, acts, (start, list) => {
				let last = { text: start, result: parse(start) };
				for (const text of statesOf(start, list)) {
					last = { text, result: reparse(last, text) };
					expect(last.result).toEqual(parse(text));
				}
			}),
			{ numRuns: 2000 },
		);
	});

	test("keeps the statements that were not touched, also while a brace is missing", () => {
		const text = largeDesign(72);
		const at = text.indexOf("caps left", text.indexOf("bookcase-1"));
		for (const typed of ["9", "{", "}", '"']) {
			const before = parse(text);
			const { statements } = before.tree;
			const after = reparse(
				{ text, result: before },
				text.slice(0, at) + typed + text.slice(at),
			).tree.statements;
			expect(after[0]).toBe(statements[0]);
			expect(after[1]).toBe(statements[1]);
			expect(after[2]).not.toBe(statements[2]);
			expect(after.at(-1)).toBe(statements.at(-1));
		}
	});
});

const placeOf = ({ uri, span }: Origin) => `${uri} ${span.start} ${span.end}`;

/** All that a design says, its places in the text as numbers. */
function told(design: Design): unknown {
	return {
		findings: design.findings,
		checks: runChecks(design).map((one) => [
			one.id,
			one.severity,
			placeOf(one.origin),
			one.message,
			one.related.map(({ origin, message }) => [placeOf(origin), message]),
			one.fixes.map(({ title, edits }) => [
				title,
				edits.map(({ span, text }) => [span.start, span.end, text]),
			]),
		]),
		files: design.files,
		stocks: [...design.stocks.values()].map((stock) => [
			stock.id,
			stock.thick?.value.toString(),
			placeOf(stock.declaration.origin),
		]),
		declarations: design.declarations.map((one) => [
			one.path,
			one.kind,
			placeOf(one.origin),
			one.nameSpan,
			one.doc,
		]),
		references: design.references.map((one) => [
			placeOf(one.origin),
			one.declaration.path,
			placeOf(one.declaration.origin),
		]),
		sizesAt: design.sizesAt.map(({ origin, size }) => [
			placeOf(origin),
			size.value.toString(),
		]),
		pieces: design.pieces.map((piece) => ({
			name: piece.name,
			display: [piece.display.unit, piece.display.precision.toString()],
			origin: placeOf(piece.declaration.origin),
			givens: piece.givens.map((one) => [
				one.declaration.path,
				one.size.value.toString(),
				one.valueSpan,
				placeOf(one.declaration.origin),
			]),
			sizes: [...piece.sizes].map(([path, size]) => [
				path,
				size.value.toString(),
			]),
			parts: piece.parts.map((part) => [
				part.id,
				part.role,
				[part.length, part.width, part.thick, ...part.min].map((size) =>
					size.value.toString(),
				),
				part.notes,
				placeOf(part.declaration.origin),
				part.declaration.nameSpan,
			]),
			joints: piece.joints.map((joint) => [
				joint.id,
				joint.kind,
				placeOf(joint.origin),
				joint.fits.map((fit) => [
					fit.gap.value.toString(),
					placeOf(fit.origin),
					fit.written?.span,
				]),
				joint.fasteners.map((run) => [
					placeOf(run.origin),
					run.size.lengthSpan,
					run.size.numberSpan,
					run.lineSpan,
					run.points.length,
				]),
			]),
			trims: piece.trims.map((one) => [
				placeOf(one.origin),
				one.strips.map((strip) => strip.widthSpan),
			]),
			veneers: piece.veneers.map((one) => [
				placeOf(one.origin),
				one.overhangSpan,
				one.orderSpan,
				one.facesSpan,
				one.materialSpan,
				one.groundSpan,
			]),
			legs: piece.legs.map((leg) =>
				leg.shapes.map((one) => placeOf(one.origin)),
			),
			mounts: piece.mounts.map((one) => placeOf(one.origin)),
			loads: piece.loads.map((one) => placeOf(one.origin)),

			measured: piece.measured.map((one) => [
				placeOf(one.origin),
				one.readingSpan,
			]),
			cuts: piece.cuts.map((one) => placeOf(one.origin)),
			steps: piece.steps.map((one) => placeOf(one.declaration.origin)),
			aids: piece.aids.map((one) => placeOf(one.declaration.origin)),
			editions: piece.editions.map((one) => [one.number, placeOf(one.origin)]),
		})),
	};
}

describe("evaluating with what is kept from the run before", () => {
	const mains = [...texts.keys()].filter((uri) => uri !== stockUri);

	test("gives what evaluating everything gives", () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...mains),
				fc.array(fc.tuple(fc.boolean(), acts), { minLength: 1, maxLength: 3 }),
				(main, runs) => {
					const now = new Map(texts);
					const cache = new CompileCache();
					compile(sourcesOf(now), main, { cache });
					for (const [inUsed, list] of runs) {
						const uri = inUsed ? stockUri : main;
						for (const text of statesOf(now.get(uri) as string, list)) {
							now.set(uri, text);
							const kept = compile(sourcesOf(now), main, { cache });
							const fresh = compile(sourcesOf(now), main);
							expect(told(kept)).toEqual(told(fresh));
						}
					}
				},
			),
			{ numRuns: 100 },
		);
	}, 120_000);

	test("the large design has nothing to tell, so that what is timed on it is the work of a sound one", () => {
		const design = compile(
			sourcesOf(new Map([[largeUri, largeDesign(72)]])),
			largeUri,
		);
		expect([...design.findings, ...runChecks(design)]).toEqual([]);
	});

	test("keeps pieces that were not touched", () => {
		const text = largeDesign(72);
		const now = new Map([[largeUri, text]]);
		const cache = new CompileCache();
		const before = compile(sourcesOf(now), largeUri, { cache });
		const at = text.indexOf("equal bay", text.indexOf("piece bookcase-1"));
		now.set(largeUri, `${text.slice(0, at)} ${text.slice(at)}`);
		const after = compile(sourcesOf(now), largeUri, { cache });
		expect(after.pieces[0]).toBe(before.pieces[0]);
		expect(after.pieces[1]).not.toBe(before.pieces[1]);
		expect(after.pieces[2]).toBe(before.pieces[2]);
	});
});
