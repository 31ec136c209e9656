// `coats` lines: how many of what, on a face or on the ground under a veneer.

import type { PathNode } from "../../../grammar/index.ts";
import { countOf } from "../expressions.ts";
import { nearest, pathText } from "../meaning.ts";
import { resolve } from "../names.ts";
import type { PieceContext } from "../piece-context.ts";
import type { Rows } from "../rows.ts";
import type { FinishCoat, FinishInfo, Stock } from "../types.ts";

export function readCoats(context: PieceContext, rows: Rows): FinishCoat[] {
	return rows.every("coats").flatMap((row): FinishCoat[] => {
		const coats = countOf(context.frame, row.expression("coats"), 100);
		const ref = row.ref("coating");
		if (coats === undefined || !ref) return [];
		return [
			{
				coats,
				coating: pathText(ref.segments),
				stock: coatingOf(context, ref),
				origin: row.headline,
			},
		];
	});
}

export function readSanding(
	context: PieceContext,
	rows: Rows,
): FinishInfo["sanding"] {
	return rows.every("sand").flatMap((row) => {
		const grit = countOf(context.frame, row.expression("grit"));
		const when = row.word("when");
		return grit === undefined || when === undefined ? [] : [{ grit, when }];
	});
}

/** A coating may be named that no stock file knows: then only how much of it is wanted stays open. */
function coatingOf(context: PieceContext, ref: PathNode): Stock | undefined {
	const { scope, evaluation, uri } = context.frame;
	const first = ref.segments[0]?.text ?? "";
	const origin = { uri, span: ref.span };
	if (!scope.find(first)) {
		const coatings = [...scope.all()]
			.filter(([, { declaration }]) => declaration.kind === "material")
			.map(([name]) => name);
		const near = nearest(first, coatings);
		if (near)
			evaluation.report(
				"unknown-coating",
				origin,
				`No coating here is called \`${first}\`: did you mean \`${near}\`?`,
				{
					severity: "information",
					fix: {
						title: `Change to \`${near}\``,
						edits: [{ span: ref.span, text: near }],
					},
				},
			);
		return undefined;
	}
	const meaning = resolve(context.frame, ref);
	if (!meaning) return undefined;
	if (meaning.kind === "stock" && meaning.stock.kind === "coating")
		return meaning.stock;
	evaluation.report(
		"not-a-material",
		origin,
		`\`${pathText(ref.segments)}\` is no coating: declare it with \`coating ${first} { … }\``,
	);
	return undefined;
}
