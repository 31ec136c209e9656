// `must`: the maker's own conditions.

import { formatLength, mixedText } from "../../units/format.ts";
import { compare } from "../expressions.ts";
import type { PieceContext } from "../piece-context.ts";
import type { Size } from "../size.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";

export const must: ConstructMeaning = {
	phase: 3,
	settle: (context, row) => {
		const condition = row.expression("condition");
		if (condition?.kind !== "compare") return;
		const result = compare(context.frame, condition);
		if (!result || result.holds) return;
		const reason = row.text("reason");
		context.evaluation.report(
			"must-fails",
			row.at(condition.span),
			`This does not hold: ${show(context, result.left)} ${condition.operator} ${show(context, result.right)}${reason ? ` (${reason})` : ""}`,
		);
	},
};

function show(context: PieceContext, size: Size): string {
	const { unit, precision } = context.display;
	return size.dimension === "length"
		? formatLength(size.value, { unit, precision, suffix: true }).text
		: mixedText(size.value);
}
