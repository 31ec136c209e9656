// Laws of refactorings, over the shipped designs and designs made at random: what does not say that it changes a size changes
// none, what says so tells how much, and nothing that is offered leaves a text worse than it was.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse, type Span, walk } from "../../grammar/index.ts";
import { refactorings } from "../../shared/features/refactorings.ts";
import type {
	Asked,
	Offer,
} from "../../shared/features/support/refactoring.ts";
import { format } from "../../shared/format/format.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Design, Part } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { toBase } from "../../shared/units/dimensions.ts";
import { Rational } from "../../shared/units/rational.ts";
import { designTexts } from "../harness/design-texts.ts";
import { allFindings } from "../harness/designs.ts";
import { generatedDesign } from "../harness/generated-designs.ts";
import { askedAt, type Done, done } from "../harness/refactoring.ts";

const generated = "/designs/generated.rod";

/** Places worth asking at: every statement, number and name; and selections of whole lines of pieces. */
function placesIn(text: string): Span[] {
	const { tree } = parse(text);
	const places: Span[] = [];
	walk(tree, ({ kind, span: { start } }) => {
		if (kind === "statement" || kind === "measure" || kind === "name")
			places.push({ start, end: start });
	});
	for (const { block } of tree.statements)
		block?.statements.forEach((from, index, all) => {
			for (const more of [0, 1, 4]) {
				const to = all[index + more];
				if (to) places.push({ start: from.span.start, end: to.span.end });
			}
		});
	return places;
}

/** One offer made at one place of a design. */
interface Case {
	readonly asked: Asked;
	readonly offer: Offer;
	readonly before: Design;
	readonly made: Done;
	readonly after: Design;
}

const shipped = [...designTexts.keys()];
const places = new Map(
	[...designTexts].map(([uri, text]) => [uri, placesIn(text)]),
);

/** Makes what is offered at a place, one by one, and looks at each. */
function eachOffer(
	uri: string,
	texts: ReadonlyMap<string, string>,
	span: Span,
	look: (one: Case) => void,
): void {
	const asked = askedAt(texts, uri, span, { wholeFile: span.start === 0 });
	for (const offer of refactorings(asked)) {
		if (offer.disabled !== undefined) continue;
		const made = done(asked, offer);
		if (typeof made === "string") continue;
		const change = offer.change();
		const newFile = typeof change === "string" ? undefined : change.newFile;
		const now = new Map([
			...texts,
			[uri, made.text],
			...(newFile ? [[newFile.uri, made.newFile ?? ""] as const] : []),
		]);
		look({
			asked,
			offer,
			made,
			before: asked.snapshot.design,
			after: compile(sourcesOf(now), uri),
		});
	}
}

/** What is cut for the pieces, in any order, whatever it is called. */
function cutsOf({ pieces }: Design): string[] {
	return pieces
		.filter(({ kind }) => kind === "piece")
		.flatMap(({ name, parts }) =>
			parts.map((part) =>
				[
					name,
					part.role,
					part.stock.id,
					part.cut.when,
					part.strips,
					...[part.length, part.width, part.thick, ...part.min].map(
						({ value }) => value,
					),
				].join(" "),
			),
		)
		.sort();
}

function faultCounts(design: Design): Map<string, number> {
	const counts = new Map<string, number>();
	for (const { id, severity } of allFindings(design))
		if (severity === "error" || severity === "warning")
			counts.set(id, (counts.get(id) ?? 0) + 1);
	return counts;
}

/** What syntax and evaluation found. */
function idsOf({ findings }: Design): string[] {
	return findings.map(({ id }) => id).sort();
}

/** So much may a part change, mm, as the title says it. */
function toldChange(title: string): Rational {
	const told = /by more than (\d+(?:\.\d+)?) (mm|in)/.exec(title);
	if (!told) return Rational.ZERO;
	const value = Rational.fromDecimalText(told[1] as string) as Rational;
	return toBase(value, told[2] === "in" ? "in" : "mm");
}

/** What may bring findings: placeholders to be filled in, a name whose thing has faults of its own, rounded sizes. */
const mayBring =
	/^(?:fill-required|add-import|fix-all|convert-unit (?!.* exactly$))/;

function holds({ asked, offer, before, made, after }: Case): void {
	const { text } = asked.snapshot;
	const label = `${offer.id} ${offer.title}`;
	// It can be read as well as before.
	const errors = (one: string): number =>
		parse(one).faults.filter(({ severity }) => severity === "error").length;
	expect(errors(made.text), label).toBeLessThanOrEqual(errors(text));
	expect(errors(made.newFile ?? ""), label).toBe(0);
	// It is laid out as well as before.
	if (format(text).text === text)
		expect(format(made.text).text, label).toBe(made.text);
	// Comments are kept; a pair of legs keeps one of two that say the same.
	if (offer.id !== "mirrored-pair") {
		const comments = (one: string): string[] =>
			parse(one).tree.comments.map((comment) => comment.text.trim());
		expect(
			[...comments(made.text), ...comments(made.newFile ?? "")].sort(),
			label,
		).toEqual(comments(text).sort());
	}
	if (!mayBring.test(offer.id)) {
		expect(cutsOf(after), label).toEqual(cutsOf(before));
		const known = faultCounts(before);
		// A component is looked at by itself as well, and sizes in the other unit for slips of units: that is told.
		if (!/^(?:extract-component|convert-unit)/.test(offer.id))
			for (const [id, count] of faultCounts(after))
				expect(count, `${label} ${id}`).toBeLessThanOrEqual(known.get(id) ?? 0);
		expect(idsOf(after), label).toEqual(idsOf(before));
	} else if (offer.id.startsWith("convert-unit")) {
		const most = toldChange(offer.title);
		for (const [one, other] of pairs(before, after)) {
			const sizes = ({ length, width, thick, min }: Part) => [
				length,
				width,
				thick,
				...min,
			];
			for (const [index, { value }] of sizes(one).entries())
				expect(
					value
						.sub(sizes(other)[index]?.value ?? Rational.ZERO)
						.abs()
						.cmp(most),
					`${label} ${one.path}`,
				).toBeLessThanOrEqual(0);
		}
	}
}

function pairs(before: Design, after: Design): [Part, Part][] {
	expect(after.pieces.map(({ name }) => name)).toEqual(
		before.pieces.map(({ name }) => name),
	);
	return before.pieces.flatMap((piece, index) =>
		piece.parts.map((part): [Part, Part] => [
			part,
			after.pieces[index]?.partByPath.get(part.path) as Part,
		]),
	);
}

describe("whatever is offered", () => {
	test("keeps its promises in shipped designs", () => {
		const made = new Map<string, number>();
		fc.assert(
			fc.property(
				fc.constantFrom(...shipped),
				fc.nat(1_000_000),
				(uri, draw) => {
					const all = places.get(uri) as Span[];
					const span = all[draw % all.length] as Span;
					eachOffer(uri, designTexts, span, (one) => {
						const [kind = ""] = one.offer.id.split(" ");
						made.set(kind, (made.get(kind) ?? 0) + 1);
						holds(one);
					});
				},
			),
			{ numRuns: 25 },
		);
		// The law is about something.
		expect(made.size).toBeGreaterThan(0);
	}, 60_000);

	test("keeps its promises in designs made at random", () => {
		const made = new Map<string, number>();
		fc.assert(
			fc.property(generatedDesign, fc.nat(1_000_000), (text, draw) => {
				const texts = new Map([...designTexts, [generated, text]]);
				const all = placesIn(text);
				const selections = all.filter(({ start, end }) => start < end);
				const head = text.indexOf("piece made");
				for (const span of [
					all[draw % all.length] as Span,
					selections[draw % selections.length] as Span,
					{ start: head, end: head },
				]) {
					eachOffer(generated, texts, span, (one) => {
						const [kind = ""] = one.offer.id.split(" ");
						made.set(kind, (made.get(kind) ?? 0) + 1);
						holds(one);
					});
				}
			}),
			{ numRuns: 25 },
		);
		expect(made.get("convert-unit")).toBeGreaterThan(20);
		expect(made.get("extract-component")).toBeGreaterThan(0);
	}, 60_000);

	test("keeps its promises in damaged designs", () => {
		fc.assert(
			fc.property(
				fc.constantFrom(...shipped),
				fc.double({ min: 0, max: 1, noNaN: true }),
				fc.oneof(fc.nat(3), fc.nat(60)),
				fc.nat(1_000_000),
				(uri, share, length, draw) => {
					const whole = designTexts.get(uri) as string;
					const at = Math.floor(share * whole.length);
					const text = whole.slice(0, at) + whole.slice(at + length);
					const texts = new Map([...designTexts, [uri, text]]);
					const near = placesIn(text).filter(
						({ start }) => Math.abs(start - at) < 400,
					);
					for (const turn of [0, 11]) {
						const span = near[(draw + turn) % Math.max(1, near.length)];
						if (span) eachOffer(uri, texts, span, holds);
					}
				},
			),
			{ numRuns: 20 },
		);
	}, 60_000);

	test("a whole design is converted, and what is shown holds", () => {
		for (const uri of [
			"/designs/record-bench.rod",
			"/designs/wall-cabinet.rod",
		])
			eachOffer(uri, designTexts, { start: 0, end: 0 }, holds);
	}, 60_000);
});

describe("there and back", () => {
	test("a given that is made of a number and given up again leaves every word as it was", () => {
		let rounds = 0;
		fc.assert(
			fc.property(generatedDesign, fc.nat(1_000_000), (text, draw) => {
				const before = format(text).text;
				const measures = [...before.matchAll(/(?<=[ (])\d[\d/. ]*(?=[ \n;])/g)];
				const start = measures[draw % measures.length]?.index ?? 0;
				const span: Span = { start, end: start };
				const texts = (now: string): Map<string, string> =>
					new Map([...designTexts, [generated, now]]);
				const asked = askedAt(texts(before), generated, span);
				const there = refactorings(asked).find(
					({ id }) => id === "number-to-given",
				);
				const made = there && done(asked, there);
				if (!made || typeof made === "string") return;
				const name = /a given `([^`]+)`/.exec(there.title)?.[1] as string;
				const at = made.text.indexOf(`given ${name} =`) + "given ".length;
				const again = askedAt(texts(made.text), generated, {
					start: at,
					end: at,
				});
				const back = refactorings(again).find(({ id }) => id === "inline-size");
				expect(back?.title).toBeDefined();
				const last = back && done(again, back);
				if (typeof last !== "object") throw new Error(last);
				expect(wordsOf(last.text)).toBe(wordsOf(before));
				rounds++;
			}),
			{ numRuns: 50 },
		);
		expect(rounds).toBeGreaterThan(10);
	}, 60_000);

	test("a piece in the other unit exactly, and back exactly, is cut the same", () => {
		fc.assert(
			fc.property(generatedDesign, (text) => {
				let now = text;
				const first = designIn(text);
				for (const _ of [0, 1]) {
					const at = now.indexOf("piece made");
					const asked = askedAt(
						new Map([...designTexts, [generated, now]]),
						generated,
						{ start: at, end: at },
					);
					const offer = refactorings(asked).find(({ id }) =>
						/^convert-unit made \w+ exactly$/.test(id),
					);
					expect(offer).toBeDefined();
					const made = offer && done(asked, offer);
					if (typeof made !== "object") throw new Error(made);
					now = made.text;
				}
				expect(cutsOf(designIn(now))).toEqual(cutsOf(first));
			}),
			{ numRuns: 12 },
		);
	}, 60_000);
});

/** A line that a longer name made too long stays broken when the name goes. */
function wordsOf(text: string): string {
	return text.replace(/[\s;]+/g, " ");
}

function designIn(text: string): Design {
	return compile(
		sourcesOf(new Map([...designTexts, [generated, text]])),
		generated,
	);
}
