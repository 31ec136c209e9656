// `cut`: parts that exist already, with the size and the stage that they have.

import { positiveLength } from "./expressions.ts";
import { type PieceContext, partsOf } from "./piece-context.ts";
import type { Row } from "./rows.ts";
import type { CutInfo, StageName } from "./types.ts";

export function cutInfos(
	context: PieceContext,
	rows: readonly Row[],
): CutInfo[] {
	return rows.flatMap((row) => {
		const size = row.expression("size");
		if (size?.kind !== "cross") return [];
		const length = positiveLength(context.frame, size.sizes[0], "A length");
		const width = positiveLength(context.frame, size.sizes[1], "A width");
		if (!length || !width) return [];
		const stage = (row.word("stage") ?? "final") as StageName;
		return row
			.refs("parts")
			.flatMap((ref) => partsOf(context, ref) ?? [])
			.map((part) => ({ part, length, width, stage, origin: row.headline }));
	});
}
