// The wall that a piece hangs on, as its `wall` block tells.

import { countOf, positiveLength } from "../expressions.ts";
import { fastenerSize } from "../fastener-sizes.ts";
import type { PieceContext } from "../piece-context.ts";
import { type Row, readRows } from "../rows.ts";
import type { MountInfo } from "../types.ts";

export function readWall(
	context: PieceContext,
	row: Row | undefined,
): MountInfo["wall"] {
	if (!row?.block) return undefined;
	const { frame } = context;
	const rows = readRows(context.evaluation, frame.uri, row.block, "wall");
	const studs = rows.first("studs");
	const masonry = rows.first("masonry");
	const screw = rows.first("screw");
	return {
		studs: positiveLength(frame, studs?.expression("every"), "The spacing"),
		studKind: studs?.word("kind") === "metal" ? "metal" : "wood",
		drywall: positiveLength(
			frame,
			rows.first("drywall")?.expression("thick"),
			"A thickness",
		),
		masonry: masonry !== undefined,
		plaster: positiveLength(
			frame,
			masonry?.expression("plaster"),
			"A thickness",
		),
		screw: fastenerSize(frame, "screw", screw?.expression("size")),
		each: countOf(frame, screw?.expression("count"), 20) ?? 1,
		eachSpan: screw?.expression("count")?.span,
		origin: row.headline,
	};
}
