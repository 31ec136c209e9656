// `step`: what the maker wants in the build, on which parts, behind and before what.

import { evaluateAs } from "../expressions.ts";
import { type PieceContext, partsOf } from "../piece-context.ts";
import { type Row, readRows } from "../rows.ts";
import { numberOf } from "../size.ts";
import { label } from "./labels.ts";
import { pathsOf } from "./named-refs.ts";

const minutes: Readonly<Record<string, number>> = {
	minutes: 1,
	hours: 60,
	days: 24 * 60,
};

/** Longer waits are slips: ten years, in minutes. */
const longestWait = 10 * 366 * 24 * 60;

export const step = label("step", (context, row, declaration, path) => {
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"step",
		{ label: `\`${declaration.name}\``, origin: row.headline },
	);
	context.collected.steps.push({
		name: path,
		declaration,
		what: rows.first("do")?.text("what") ?? "",
		with: (rows.first("with")?.refs("parts") ?? []).flatMap((ref) =>
			(partsOf(context, ref) ?? []).map((part) => part.path),
		),
		after: pathsOf(context, rows.first("after")?.refs("things") ?? []),
		before: pathsOf(context, rows.first("before")?.refs("things") ?? []),
		waitMinutes: waitOf(context, rows.first("wait")),
	});
});

function waitOf(context: PieceContext, row: Row | undefined): number {
	const time = evaluateAs(context.frame, row?.expression("time"), "number");
	if (!row || !time) return 0;
	const wait = numberOf(time) * (minutes[row.word("unit") ?? ""] ?? 0);
	if (wait >= 0 && wait <= longestWait) return wait;
	context.evaluation.report(
		"bad-wait",
		row.origin,
		wait < 0
			? "A wait cannot be less than 0"
			: "A wait of more than ten years is a slip",
	);
	return 0;
}
