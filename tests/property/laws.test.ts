// Laws of a design's meaning: what must not change it does not, and no damage to a text makes anything throw.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	type Block,
	type ContextId,
	constructAt,
	type FileNode,
	parse,
	type Statement,
} from "../../grammar/index.ts";
import { runChecks } from "../../shared/checks/index.ts";
import { compile } from "../../shared/model/compile.ts";
import { asLength } from "../../shared/model/expressions.ts";
import { roughAllowances } from "../../shared/model/rough-sizes.ts";
import type { Size } from "../../shared/model/size.ts";
import type { Design, Piece } from "../../shared/model/types.ts";

import { cutList } from "../../shared/outputs/cut-list.ts";
import { cutListJson } from "../../shared/outputs/cut-list-json.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { boughtAtOnce } from "../harness/bought.ts";
import { designTexts } from "../harness/design-texts.ts";
import { inMillimetres } from "../harness/in-millimetres.ts";

const uris = [...designTexts.keys()];

function designOf(uri: string, texts = designTexts): Design {
	return compile(sourcesOf(texts), uri);
}

/** All that comes out of a design, as the command line would write it. */
function outputsOf(design: Design): string {
	return JSON.stringify({
		findings: [...design.findings, ...runChecks(design)],
		cutList: cutListJson(
			design.pieces.map((piece) => ({
				file: design.uri,
				list: cutList(piece),
			})),
		),
	});
}

/** The model without its places in the text, in an order that does not come from the text. */
function modelOf(design: Design): unknown {
	return design.pieces
		.map((piece) => ({
			name: piece.name,
			kind: piece.kind,
			sizes: sorted(
				[...piece.sizes].map(([path, size]) => `${path} ${lengthOf(size)}`),
			),
			givens: sorted(
				piece.givens.map(
					(one) => `${one.declaration.path} ${lengthOf(one.size)}`,
				),
			),
			parts: sorted(piece.parts.map((part) => partText(part, piece.display))),
			joints: sorted(piece.joints.map((joint) => jointText(joint))),
		}))
		.sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** A bare number as the length that it stands for. */
function lengthOf(size: Size): string {
	return asLength(size).value.toString();
}

function sorted(lines: string[]): string[] {
	return lines.sort();
}

function partText(
	part: Piece["parts"][number],
	{ unit }: Piece["display"],
): string {
	const exact = [
		part.length,
		part.width,
		part.thick,
		...part.min,
		...part.max,
	].map((size) => size.value.toString());
	const housings = sorted(
		part.housings.map((one) =>
			[
				one.kind,
				one.takes,
				one.at.value,
				one.width.value,
				one.depth.value,
			].join(" "),
		),
	);
	const stages = part.stages.map((one) => {
		// What a rough board is larger by is a round figure of the unit: 1 in or 25 mm. The rest does not hang on the unit.
		const { longer, wider } = roughAllowances[unit];
		const rough = one.stage === "rough";
		return [
			one.stage,
			rough ? one.length.value.sub(longer.value) : one.length.value,
			rough ? one.width.value.sub(wider.value) : one.width.value,
			one.thick.value,
		].join(" ");
	});
	return JSON.stringify([
		part.id,
		part.role,
		part.stock.id,
		part.cut.when,
		exact,
		housings,
		stages,
	]);
}

function jointText(joint: Piece["joints"][number]): string {
	const pair = sorted([joint.host.path, joint.member.path]);
	const fits = sorted(
		joint.fits.map((fit) =>
			[fit.gap.value, fit.low, fit.high].map(String).join(" "),
		),
	);
	const fasteners = sorted(
		joint.fasteners.map((run) =>
			[
				run.size.kind,
				run.size.length.value.toString(),
				run.points.length,
				run.through.path,
				run.into.path,
			].join(" "),
		),
	);
	return JSON.stringify([pair, joint.kind, joint.glue, fits, fasteners]);
}

/** Blocks whose lines have no order; in others it means something: layers of a leg, coats and sanding, points of a curve. */
const unordered: ReadonlySet<ContextId> = new Set<ContextId>([
	"file",
	"sheet",
	"board",
	"veneer-stock",
	"fastener",
	"sheet-variant",
	"board-variant",
	"veneer-variant",
	"on-hand",
	"fastener-variant",
	"piece",
	"component",
	"box",
	"part",
	"make",
	"trim",
	"veneer",
	"mount",
	"room",
	"shop",
	"step",
	"aid",
]);

/** The text with the lines of its blocks in another order; `next(n)` draws one of n. */
function shuffled(text: string, next: (n: number) => number): string {
	const write = (statement: Statement, context: ContextId): string => {
		const { span, block } = statement;
		const inner = constructAt(context, statement.head)?.block;
		if (!block || !inner) return text.slice(span.start, span.end);
		return (
			text.slice(span.start, block.span.start) +
			writeAll(block, block.span, inner)
		);
	};
	const writeAll = (
		{ statements }: Block | FileNode,
		span: { readonly start: number; readonly end: number },
		context: ContextId,
	): string => {
		const order = statements.map((_, index) => index);
		if (unordered.has(context))
			for (let i = order.length - 1; i > 0; i--) {
				const j = next(i + 1);
				[order[i], order[j]] = [order[j] as number, order[i] as number];
			}
		let out = "";
		let at = span.start;
		statements.forEach((statement, index) => {
			out += text.slice(at, statement.span.start);
			out += write(statements[order[index] as number] as Statement, context);
			at = statement.span.end;
		});
		return out + text.slice(at, span.end);
	};
	const { tree } = parse(text);
	return writeAll(tree, tree.span, "file");
}

describe("the model of a design", () => {
	test("does not hang on the order of its declarations", () => {
		const expected = new Map(uris.map((uri) => [uri, modelOf(designOf(uri))]));
		fc.assert(
			fc.property(
				fc.constantFrom(...uris),
				fc.infiniteStream(fc.nat(1_000_000)),
				(uri, numbers) => {
					const next = (n: number) => (numbers.next().value as number) % n;
					const now = new Map(designTexts);
					for (const one of new Set([uri, "/designs/stock.rod"]))
						now.set(one, shuffled(now.get(one) as string, next));
					expect(modelOf(designOf(uri, now))).toEqual(expected.get(uri));
				},
			),
			{ numRuns: 60 },
		);
	});

	const converted = new Map(
		uris.map((uri) => [uri, inMillimetres(designTexts.get(uri) as string)]),
	);

	test.each(uris)("is the same in inches and in millimetres: %s", (uri) => {
		const inches = designOf(uri);
		const metric = designOf(uri, converted);
		expect(converted.get(uri)).not.toBe(designTexts.get(uri));
		expect(metric.findings.map((one) => one.id)).toEqual(
			inches.findings.map((one) => one.id),
		);
		expect(modelOf(metric)).toEqual(modelOf(inches));
	});

	test.each(uris)("gives the same output each time: %s", (uri) => {
		expect(outputsOf(designOf(uri))).toBe(outputsOf(designOf(uri)));
	});
});

describe("a damaged text", () => {
	/** Everything that can be asked of a design, so that nothing hides behind being lazy. */
	const askAll = (uri: string, text: string): void => {
		const design = designOf(uri, new Map([...designTexts, [uri, text]]));
		const found = [...design.findings, ...runChecks(design)];
		for (const { origin, message } of found) {
			expect(message).not.toMatch(/undefined|NaN|\[object/);
			if (origin.uri === uri) {
				expect(origin.span.start).toBeGreaterThanOrEqual(0);
				expect(origin.span.end).toBeGreaterThanOrEqual(origin.span.start);
				expect(origin.span.end).toBeLessThanOrEqual(text.length);
			}
		}
		for (const piece of design.pieces) {
			cutListJson([{ file: uri, list: cutList(piece) }]);
			boughtAtOnce(piece, design.stocks);
			for (const part of piece.parts) void part.volume;
		}
	};

	test.each(uris)(
		"never makes anything throw: %s",
		(uri) => {
			const text = designTexts.get(uri) as string;
			const place = fc.double({ min: 0, max: 1, noNaN: true });
			fc.assert(
				fc.property(
					place,
					fc.oneof(
						fc.record({ kind: fc.constantFrom("before", "behind") }),
						fc.record({
							kind: fc.constant("window"),
							length: fc.oneof(fc.nat(4), fc.nat(40), fc.nat(1500)),
						}),
					),
					(share, cut) => {
						const at = Math.floor(share * text.length);
						if (cut.kind === "before") askAll(uri, text.slice(0, at));
						else if (cut.kind === "behind") askAll(uri, text.slice(at));
						else {
							const length = "length" in cut ? cut.length : 0;
							askAll(uri, text.slice(0, at) + text.slice(at + length));
						}
					},
				),
				{ numRuns: 60 },
			);
		},
		120_000,
	);

	test("without any one of its lines never makes anything throw", () => {
		const uri = "/designs/sample.rod";
		const lines = (designTexts.get(uri) as string).split("\n");
		for (const index of lines.keys())
			askAll(uri, lines.toSpliced(index, 1).join("\n"));
	}, 120_000);
});
