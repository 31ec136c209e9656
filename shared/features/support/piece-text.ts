// A piece in two lines: how large it is, what it weighs.

import type { Piece } from "../../model/types.ts";
import { overallText } from "../../outputs/overall.ts";
import { weightOf } from "../../outputs/weight.ts";
import { escapeMarkdown } from "../../text/markdown.ts";
import { formatMass } from "../../units/format.ts";
import { Rational } from "../../units/rational.ts";

export function pieceText(piece: Piece): string | undefined {
	const overall = overallText(piece);
	if (overall === "") return undefined;
	const { total, unknown } = weightOf(piece);
	// To the gram: weights are floating figures from volumes.
	const mass = formatMass(Rational.near(total, 1000), piece.display.unit);
	const left =
		unknown.length === 0
			? ""
			: ` without ${unknown.length} ${unknown.length === 1 ? "part" : "parts"} of unknown density`;
	return escapeMarkdown(
		total > 0 ? `${overall}; ${mass} of wood${left}.` : `${overall}.`,
	);
}
