// The edges that a trim covers: what its `on` line names, edge by edge.

import type { PathNode } from "../../../grammar/index.ts";
import { type Meaning, type PanelEdge, pathText } from "../meaning.ts";
import { resolve, thicknessAxis } from "../names.ts";
import { thingAround } from "../owners.ts";
import type { PieceContext } from "../piece-context.ts";
import type { Row } from "../rows.ts";

/** Edges in the order in which they are named; one that is named twice is taken once. */
export function readEdges(
	context: PieceContext,
	row: Row | undefined,
): PanelEdge[] {
	const edges: PanelEdge[] = [];
	for (const ref of row?.refs("edges") ?? []) {
		// All parts of the box must stand: an edge is only covered where it shows.
		thingAround(context, ref)?.parts();
		const meaning = resolve(context.frame, ref);
		if (!meaning) continue;
		for (const edge of edgesNamed(context, ref, meaning)) {
			const known = edges.some(
				(one) =>
					one.part === edge.part &&
					one.axis === edge.axis &&
					one.outward === edge.outward,
			);
			if (!known) edges.push(edge);
		}
	}
	return edges;
}

function edgesNamed(
	context: PieceContext,
	ref: PathNode,
	meaning: Meaning,
): readonly PanelEdge[] {
	if (meaning.kind === "edges") {
		if (meaning.edges.length === 0) tellNoEdge(context, ref, undefined);
		return meaning.edges;
	}
	if (meaning.kind === "face") {
		const { part, axis, outward } = meaning.face;
		const edges = meaning.face.edges?.();
		if (edges && edges.length > 0) return edges;
		if (part && axis !== thicknessAxis(part))
			return [{ part, axis, outward, side: frameSide(part) }];
		tellNoEdge(
			context,
			ref,
			part ? `is a broad face of \`${part.name}\`` : undefined,
		);
		return [];
	}
	tellNoEdge(
		context,
		ref,
		meaning.kind === "part" ? "is a part with four edges" : undefined,
	);
	return [];
}

/** The place of a panel in the frame of its box. */
function frameSide(part: PanelEdge["part"]): PanelEdge["side"] {
	if (part.role !== "panel") return undefined;
	return (["top", "bottom", "left", "right"] as const).find(
		(side) => side === part.name,
	);
}

function tellNoEdge(
	context: PieceContext,
	ref: PathNode,
	what: string | undefined,
): void {
	const label = pathText(ref.segments);
	context.evaluation.report(
		"not-an-edge",
		{ uri: context.frame.uri, span: ref.span },
		`\`${label}\` ${what ?? "has no edge of a panel"}: name one edge (\`${what ? label.split(".").slice(0, 2).join(".") : "case.top"}.front\`), or all of a side (\`case.front.edges\`)`,
	);
}
