// Behind a line of fasteners how many it makes in all joints together.

import {
	type FileNode,
	type Span,
	statementsAt,
} from "../../../../grammar/index.ts";
import type { FastenerRun, Piece } from "../../../model/types.ts";
import { codeSpan } from "../../../text/markdown.ts";
import { headlineEnd } from "../place.ts";
import type { Hint } from "./hint.ts";

export function fastenerHints(
	piece: Piece,
	tree: FileNode,
	uri: string,
	range: Span,
): Hint[] {
	return [...runsByLine(piece, uri, range)].flatMap(([start, runs]) => {
		const line = statementsAt(tree, start).find(
			({ span }) => span.start === start,
		);
		const all = runs.reduce((sum, { points }) => sum + points.length, 0);
		if (!line || all === 0) return [];
		return [
			{
				kind: "totals" as const,
				offset: headlineEnd(line),
				label: `${all} in all`,
				about: `${start - piece.declaration.origin.span.start}`,
			},
		];
	});
}

/** In which joints they are; `about` as the hint has it. */
export function fastenerStory(
	piece: Piece,
	uri: string,
	about: string,
): string | undefined {
	const start = piece.declaration.origin.span.start + Number(about);
	const runs = runsByLine(piece, uri, { start, end: start }).get(start);
	if (!runs) return undefined;
	return runs
		.map(
			({ points, size, through, into }) =>
				`- ${points.length} ${size.kind}${points.length === 1 ? "" : "s"}: ${codeSpan(through.path)} to ${codeSpan(into.path)}`,
		)
		.join("\n");
}

/** By where their lines begin. */
function runsByLine(
	piece: Piece,
	uri: string,
	range: Span,
): Map<number, FastenerRun[]> {
	const lines = new Map<number, FastenerRun[]>();
	const { span: own } = piece.declaration.origin;
	for (const { fasteners } of piece.joints) {
		for (const run of fasteners) {
			const { start } = run.origin.span;
			if (run.origin.uri !== uri || start < own.start || start > own.end)
				continue;
			if (start < range.start || start > range.end) continue;
			const known = lines.get(start);
			if (known) known.push(run);
			else lines.set(start, [run]);
		}
	}
	return lines;
}
