// `finish`: coats on faces.

import { readRows } from "../rows.ts";
import type { FinishInfo } from "../types.ts";
import { readCoats, readSanding } from "./coats.ts";
import { label } from "./labels.ts";
import { pathsOf } from "./named-refs.ts";

export const finish = label("finish", (context, row, declaration, path) => {
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"finish",
		{ label: `\`${declaration.name}\``, origin: row.headline },
	);
	const on = rows.first("on");
	// The finish of a component is on that alone.
	const whole = context.prefix ? [context.prefix] : [];
	context.collected.finishes.push({
		name: path,
		declaration,
		faces: (rows.first("faces")?.word("faces") ?? "all") as FinishInfo["faces"],
		on: on ? pathsOf(context, on.refs("things")) : whole,
		coats: readCoats(context, rows),
		sanding: readSanding(context, rows),
	});
});
