// What `on`, `after` or `for` lines name: the paths of things, parts, steps.

import type { PathNode } from "../../../grammar/index.ts";
import { type Meaning, pathText } from "../meaning.ts";
import { resolve } from "../names.ts";
import { type PieceContext, pathIn } from "../piece-context.ts";
import type { Part } from "../types.ts";

/** The part that a name means: a face is of its part. */
export function partBehind(meaning: Meaning): Part | undefined {
	switch (meaning.kind) {
		case "part":
			return meaning.part;
		case "face":
			return meaning.face.part;
		default:
			return undefined;
	}
}

/** Paths of the things, parts and steps that are named; what has no path (a size, the floor) is told and left away. */
export function pathsOf(
	context: PieceContext,
	refs: readonly PathNode[],
): string[] {
	return refs.flatMap((ref) => {
		const meaning = resolve(context.frame, ref);
		if (!meaning) return [];
		const path = pathOf(context, ref, meaning);
		if (path !== undefined) return [path];
		context.evaluation.report(
			"not-a-thing",
			{ uri: context.frame.uri, span: ref.span },
			`\`${pathText(ref.segments)}\` is nothing that work is done to: name a part, a box, leg or trim, or a step`,
		);
		return [];
	});
}

function pathOf(
	context: PieceContext,
	ref: PathNode,
	meaning: Meaning,
): string | undefined {
	if (meaning.kind === "thing") return meaning.thing.path;
	if (meaning.kind === "label") return pathIn(context, pathText(ref.segments));
	return partBehind(meaning)?.path;
}
