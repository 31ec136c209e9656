// `aid`: a spacer, shim, pattern, stop or caul made from offcuts.

import { positiveLength } from "../expressions.ts";
import { stockOf } from "../piece-context.ts";
import { readRows } from "../rows.ts";
import { label } from "./labels.ts";
import { pathsOf } from "./named-refs.ts";

export const aid = label("aid", (context, row, declaration, path) => {
	const { frame } = context;
	const rows = readRows(context.evaluation, frame.uri, row.block, "aid", {
		label: `\`${declaration.name}\``,
		origin: row.headline,
	});
	const size = rows.first("size")?.expression("size");
	const written = size?.kind === "cross" ? size.sizes : [];
	const length = positiveLength(frame, written[0], "A length");
	const width = positiveLength(frame, written[1], "A width");
	const thick = positiveLength(frame, written[2], "A thickness");
	const stock = stockOf(context, rows.first("of")?.ref("material"), [
		"sheet",
		"board",
	]);
	const serves = pathsOf(context, rows.first("for")?.refs("parts") ?? []);
	const kind = rows.first("kind")?.word("kind");
	if (!length || !width || !kind) return;
	context.collected.aids.push({
		name: path,
		declaration,
		kind,
		length,
		width,
		thick: thick ?? stock?.thick,
		stock,
		serves,
	});
});
