// How far a shelf sags, in words and as a small picture, for the hover on it.

import { figuresOf } from "../../checks/options.ts";
import { sag } from "../../checks/rules/strength/sag.ts";
import {
	type Sagging,
	sagFiguresOf,
	sagOf,
	standingOn,
} from "../../checks/sagging/sag.ts";
import { perLengthText, standingText } from "../../checks/sagging/words.ts";
import { show, showFine } from "../../checks/words.ts";
import type { Part, Piece } from "../../model/types.ts";
import {
	exaggeration,
	type ShelfPicture,
	shelfDeflection,
} from "../../outputs/pictures/shelf-deflection.ts";
import { base64 } from "../../text/base64.ts";
import { escapeMarkdown } from "../../text/markdown.ts";

/** The figures of the check, as they are without a setting. */
const usualFigures = sagFiguresOf(figuresOf(sag, {}));

/** Undefined for a part that carries nothing and is no shelf, or whose supports or stiffness are not known. */
export function sagOfPartText(part: Part, piece: Piece): string | undefined {
	const figures = usualFigures;
	const standing = standingOn(piece, part);
	const asked = standing.length === 0;
	if (asked && part.role !== "shelf") return undefined;
	const sagging = sagOf(
		piece,
		part,
		asked ? [{ mass: figures.books, perLength: true }] : standing,
		figures,
	);
	if (!sagging) return undefined;
	const { display } = piece;
	const under = asked
		? `books (${perLengthText(display, figures.books)}; no load is given)`
		: standingText(piece, part, sagging.mass);
	return [
		escapeMarkdown(words(piece, sagging, under)),
		picture(piece, sagging, under),
	].join("\n\n");
}

function words({ display }: Piece, sagging: Sagging, under: string): string {
	const { worst, creep, used, trimmed } = sagging;
	const where = worst.overhang
		? `where it runs ${show(display, worst.to - worst.from)} past its support`
		: `over a span of ${show(display, worst.to - worst.from)}`;
	const edge = trimmed.length > 0 ? ", its edging counted in" : "";
	const verdict = used > 1 ? "more than a limit" : "within both limits";
	return `Sags ${showFine(display, worst.sag)} ${where} under ${under} and its own weight${edge}, at most ${showFine(display, worst.limit)} at first; ${showFine(display, worst.sag * creep)} over the years, at most ${showFine(display, worst.limitYears)}: ${verdict}.`;
}

function picture(
	{ display }: Piece,
	{ beam, worst, creep, used, deflectionAt, part }: Sagging,
	under: string,
): string {
	const drawn: ShelfPicture = {
		length: beam.length,
		supports: beam.supports.map(({ at }) => at),
		deflectionAt,
		creep,
		worst: {
			at: worst.at,
			label: `${showFine(display, worst.sag)}, later ${showFine(display, worst.sag * creep)}`,
		},
		span: {
			from: worst.from,
			to: worst.to,
			label: show(display, worst.to - worst.from),
		},
		load: under,
		tooMuch: used > 1,
	};
	const alt = escapeMarkdown(
		`${part.path} as it sags, drawn ${exaggeration(drawn)} times as deep`,
	);
	return `![${alt}](data:image/svg+xml;base64,${base64(shelfDeflection(drawn))})`;
}
