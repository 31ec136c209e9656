// Names are found in the tree without evaluating anything: over all designs and examples they mean what the evaluation says.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Target } from "../../shared/features/support/names/named.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Declaration, Origin } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { designTexts } from "../harness/design-texts.ts";
import { nameWorld } from "../harness/name-world.ts";

const root = new URL("../../", import.meta.url);

const texts: ReadonlyMap<string, string> = new Map([
	...designTexts,
	...["faults", "sound"].flatMap((folder) =>
		readdirSync(new URL(`tests/corpus/${folder}/`, root))
			.filter((name) => name.endsWith(".rod"))
			.sort()
			.map((name): [string, string] => {
				const path = `tests/corpus/${folder}/${name}`;
				return [
					`/designs/${folder}/${name}`,
					readFileSync(new URL(path, root), "utf8").replaceAll(
						/"(?:\.\.\/)+[^"]*\/([^"/]+\.rod)"/g,
						'"../$1"',
					),
				];
			}),
	),
]);

const world = nameWorld(texts);

function shown({ uri, span }: Origin): string {
	return `${uri}:${span.start} ${texts.get(uri)?.slice(span.start, span.end)}`;
}

test.each([...texts.keys()])("%s", (uri) => {
	const design = compile(sourcesOf(texts), uri);
	for (const { kind, origin, nameSpan } of design.declarations) {
		const at = world.at(origin.uri, nameSpan.start);
		expect(
			at && "kind" in at.is ? at.is.kind : undefined,
			shown({ uri: origin.uri, span: nameSpan }),
		).toBe(kind);
	}
	for (const { origin, declaration } of design.references) {
		const at = world.at(origin.uri, origin.span.start);
		const target = at && !("kind" in at.is) ? world.target(at.is) : undefined;
		// A name that cannot be found is declared by the line that takes it.
		if (declaration.kind === "import") {
			expect(target, shown(origin)).toBeUndefined();
			continue;
		}
		expect(target && shown(placeOf(target, declaration)), shown(origin)).toBe(
			shown({ uri: declaration.origin.uri, span: declaration.nameSpan }),
		);
	}
});

/** Panels that a box has by itself are declared where its `panels` line names them: in the text of the box. */
function placeOf(
	target: Target,
	{ name, origin, nameSpan }: Declaration,
): Origin {
	if (target.kind === "named")
		return { uri: target.named.uri, span: target.named.node.span };
	const { of, words } = target;
	if (!of) return { uri: "floor", span: { start: 0, end: 0 } };
	const isPanel =
		of.kind === "box" &&
		words[0] === name &&
		of.uri === origin.uri &&
		of.statement.span.start <= nameSpan.start &&
		nameSpan.end <= of.statement.span.end;
	return { uri: of.uri, span: isPanel ? nameSpan : of.node.span };
}
