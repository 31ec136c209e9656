// The designs that are shipped: sound in every check, and between them every line that the language knows.

import { describe, expect, test } from "vitest";
import { parse, type Statement } from "../../grammar/index.ts";
import type { ContextId } from "../../grammar/table/construct.ts";
import { fill } from "../../grammar/table/fill.ts";
import type { Form, FormElement } from "../../grammar/table/form.ts";
import { constructAt, contexts, formsOf } from "../../grammar/table/index.ts";
import { format } from "../../shared/format/format.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Size } from "../../shared/model/size.ts";
import {
	allFindings,
	designOf,
	faultsIn,
	findingsOf,
	shippedDesigns,
	sourcesWith,
	textOf,
	uriOf,
} from "../harness/designs.ts";

/** What was written somewhere: by block and form, its slots and its plain words. */
type Uses = Map<string, Set<string>>;

/** A distance without its datum: read only to tell the maker what it could be measured from, so no design has it. */
const readToBeTold = ["<distance:length>"];

/** Blocks whose lines mean the same: what stands in one stands for the other. */
const alike: Partial<Record<ContextId, ContextId>> = {
	component: "piece",
	fasten: "join",
};

function keyOf(context: ContextId, head: string, { notation }: Form): string {
	return `${alike[context] ?? context}: ${head} ${notation}`;
}

function collect(
	statements: readonly Statement[],
	context: ContextId,
	uses: Uses,
): void {
	for (const statement of statements) {
		const construct = constructAt(context, statement.head);
		if (!construct) continue;
		const result = fill(statement, construct);
		if (!result.ok) continue;
		const { form, slots, words } = result.filled;
		const key = keyOf(context, construct.head, form);
		const known = uses.get(key) ?? new Set();
		for (const slot of slots.keys()) known.add(`<${slot}>`);
		for (const word of words) known.add(word);
		uses.set(key, known);
		if (construct.block && statement.block)
			collect(statement.block.statements, construct.block, uses);
	}
}

/** What may be left out in a form, each by the slot or the word that shows that it is there. */
function optionals(elements: readonly FormElement[], inside = false): string[] {
	return elements.flatMap((element) => {
		if (element.kind === "optional") return optionals(element.elements, true);
		if (!inside) return [];
		return [element.kind === "word" ? element.word : `<${element.slot}>`];
	});
}

/** A limit as the maker wrote it. */
function writtenText({ why }: Size): string {
	if (why.kind !== "written") throw new Error("A limit that is no figure");
	return why.text;
}

function used(): Uses {
	const uses: Uses = new Map();
	for (const path of shippedDesigns)
		collect(parse(textOf(path)).tree.statements, "file", uses);
	return uses;
}

describe("the shipped designs", () => {
	test("are there", () => {
		expect(shippedDesigns.length).toBeGreaterThanOrEqual(7);
		expect(
			shippedDesigns.flatMap((path) =>
				designOf(path).pieces.filter(({ kind }) => kind === "piece"),
			).length,
		).toBeGreaterThanOrEqual(9);
	});

	test.each([...shippedDesigns, "tests/corpus/half-hung-case.rod"])(
		"%s: no error, no warning",
		(path) => {
			expect(faultsIn(findingsOf(path))).toEqual([]);
		},
	);

	test.each([...shippedDesigns, "tests/corpus/half-hung-case.rod"])(
		"%s is laid out in the one style",
		(path) => {
			expect(format(textOf(path))).toEqual({
				text: textOf(path),
				refused: false,
			});
		},
	);

	const ends = shippedDesigns.flatMap((path) =>
		designOf(path).pieces.flatMap((piece) =>
			piece.givens.flatMap(({ declaration, low, high }) =>
				[low, high].flatMap((end) =>
					end ? [{ path, piece, given: declaration.name, end }] : [],
				),
			),
		),
	);

	test.each(ends)(
		"$path: $piece.name works with $given at the end of its range",
		({ path, piece, given, end }) => {
			const value = writtenText(end);
			const beside = "shared/designs/of-its-own.rod";
			const design =
				piece.kind === "piece"
					? compile(sourcesWith(path, textOf(path)), uriOf(path), {
							set: new Map([[given, value]]),
						})
					: compile(
							sourcesWith(
								beside,
								`use ${piece.name} from "./${path.split("/").at(-1)}"
piece of-its-own { unit ${piece.display.unit}; make one from ${piece.name} { set ${given} = ${value} } }`,
							),
							uriOf(beside),
						);
			expect(faultsIn(allFindings(design))).toEqual([]);
		},
	);

	test.each(shippedDesigns)("%s says for whom and why", (path) => {
		const silent = designOf(path)
			.declarations.filter(
				({ kind, origin }) =>
					(kind === "piece" || kind === "component") &&
					origin.uri.endsWith(path),
			)
			.filter(({ doc }) => doc.length < 40);
		expect(silent.map(({ name }) => name)).toEqual([]);
	});

	test("every given of a component is documented and has its range", () => {
		const bare = shippedDesigns.flatMap((path) =>
			designOf(path)
				.pieces.filter(({ kind }) => kind === "component")
				.flatMap(({ givens }) => givens)
				.filter(
					({ declaration, low, high }) => !declaration.doc || !low || !high,
				),
		);
		expect(bare.map(({ declaration }) => declaration.path)).toEqual([]);
	});

	test("hold every construct of the table, with everything that may be said in its line", () => {
		const uses = used();
		const missing: string[] = [];
		for (const [name, rows] of Object.entries(contexts))
			for (const row of rows)
				for (const form of formsOf(row)) {
					if (readToBeTold.includes(form.notation)) continue;
					const key = keyOf(name as ContextId, row.head, form);
					const known = uses.get(key);
					if (!known) missing.push(key);
					else
						for (const what of optionals(form.elements))
							if (!known.has(what)) missing.push(`${key} … ${what}`);
				}
		expect(missing).toEqual([]);
	});
});
