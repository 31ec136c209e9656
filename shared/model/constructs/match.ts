// `match`: parts whose grain runs on from one into the next.

import { pathText } from "../meaning.ts";
import { type PieceContext, partsOf } from "../piece-context.ts";
import type { Row } from "../rows.ts";
import type { Part } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";

export const match: ConstructMeaning = {
	phase: 3,
	settle: (context, row) => {
		const parts = row.refs("parts").flatMap((ref) => {
			const named = partsOf(context, ref) ?? [];
			return named.filter((part) => isFree(context, row, ref.span, part));
		});
		const [first] = parts;
		if (!first) return;
		const other = parts.find((part) => part.stock !== first.stock);
		if (other) {
			context.evaluation.report(
				"cannot-match",
				row.headline,
				`\`${first.path}\` is of \`${first.stock.id}\`, \`${other.path}\` of \`${other.stock.id}\`: only parts of one material come from one strip`,
			);
			return;
		}
		const twice = parts.find((part, at) => parts.indexOf(part) !== at);
		if (twice) {
			context.evaluation.report(
				"cannot-match",
				row.headline,
				`\`${twice.path}\` stands twice in this line: take one away`,
			);
			return;
		}
		if (parts.length < 2) {
			context.evaluation.report(
				"cannot-match",
				row.headline,
				`\`${pathText(row.refs("parts")[0]?.segments ?? [])}\` alone has nothing to match: name the parts that its grain runs on into`,
			);
			return;
		}
		context.collected.matches.push({
			parts,
			way: row.word("way") === "across" ? "across" : "along",
			origin: row.headline,
		});
	},
};

/** A part comes from one strip only, and a panel of strips has no one figure. */
function isFree(
	context: PieceContext,
	row: Row,
	span: { readonly start: number; readonly end: number },
	part: Part,
): boolean {
	const before = context.collected.matches.find(({ parts }) =>
		parts.includes(part),
	);
	if (before) {
		context.evaluation.report(
			"cannot-match",
			row.at(span),
			`\`${part.path}\` is matched with other parts already: put them into one line`,
			{ related: [{ origin: before.origin, message: "The other line" }] },
		);
		return false;
	}
	if ((part.strips ?? 1) > 1) {
		context.evaluation.report(
			"cannot-match",
			row.at(span),
			`\`${part.path}\` is glued up from ${part.strips} strips: it has no one figure that could run on`,
		);
		return false;
	}
	return true;
}
