// Refactorings as an editor asks for them, over a fixture or over files of a test: what is offered, and the texts after.

import { parse, type Span } from "../../grammar/index.ts";
import { allFindings } from "../../shared/checks/index.ts";
import { refactorings } from "../../shared/features/refactorings.ts";
import { finished } from "../../shared/features/support/finished-change.ts";
import type {
	Asked,
	Offer,
} from "../../shared/features/support/refactoring.ts";
import { compile } from "../../shared/model/compile.ts";
import { resolveRelative, sourcesOf } from "../../shared/sources/sources.ts";
import { applyEdits } from "../../shared/text/edits.ts";
import { readFixture } from "./fixture.ts";

export interface AskedFor {
	readonly wholeFile?: boolean;
	readonly canCreate?: boolean;
}

/** What an editor would ask at a span of a file; the files beside it are those of the same folder. */
export function askedAt(
	texts: ReadonlyMap<string, string>,
	uri: string,
	span: Span,
	{ wholeFile = false, canCreate = true }: AskedFor = {},
): Asked {
	const text = texts.get(uri) as string;
	const design = compile(sourcesOf(texts), uri);
	const folder = uri.slice(0, uri.lastIndexOf("/") + 1);
	return {
		snapshot: { uri, text, result: parse(text), design },
		span,
		findings: allFindings(design),
		around: {
			files: () =>
				[...texts]
					.filter(([one]) => one !== uri)
					.map(([one, other]) => ({
						uri: one,
						path: `./${one.slice(folder.length)}`,
						mentions: (word: string) => other.includes(word),
						tree: parse(other).tree,
					})),
			resolve: (path, from = uri) => resolveRelative(from, path),
			evaluate: (now, newFile) =>
				compile(
					sourcesOf(
						new Map([
							...texts,
							[uri, now],
							...(newFile ? [[newFile.uri, newFile.text] as const] : []),
						]),
					),
					uri,
				),
			canCreate,
			wholeFile,
		},
	};
}

export interface Done {
	readonly text: string;
	readonly newFile: string | undefined;
	readonly caution: string | undefined;
}

/** The texts after an offer; in words why there is none. */
export function done(asked: Asked, offer: Offer): Done | string {
	const change = offer.disabled ?? offer.change();
	if (typeof change === "string") return change;
	const made = finished(asked, change);
	if (typeof made === "string") return made;
	return {
		text: applyEdits(
			asked.snapshot.text,
			made.edits.map(({ span, text }) => ({ ...span, text })),
		),
		newFile: made.newFile?.text,
		caution: made.caution,
	};
}

export interface Tried {
	readonly asked: Asked;
	readonly offers: readonly Offer[];
	/** Titles, a reason behind those that cannot be had. */
	readonly titles: readonly string[];
	/** What comes of the first offer whose id begins so; fails if there is none. */
	readonly after: (id: string) => Done | string;
	/** The text alone. */
	readonly text: (id: string) => string;
}

/** Tries a fixture with a cursor or a selection. */
export function tried(source: string, options: AskedFor = {}): Tried {
	const fixture = readFixture(source);
	const file =
		fixture.files.find(
			({ cursors, selections }) => cursors.length + selections.length > 0,
		) ?? fixture.main;
	const [cursor = 0] = file.cursors;
	const span = file.selections[0] ?? { start: cursor, end: cursor };
	const asked = askedAt(fixture.texts, file.uri, span, options);
	const offers = refactorings(asked);
	const after = (id: string): Done | string => {
		const offer = offers.find((one) => one.id.startsWith(id));
		if (!offer)
			throw new Error(
				`Not offered: ${id}, only ${titlesOf(offers).join("; ")}`,
			);
		return done(asked, offer);
	};
	return {
		asked,
		offers,
		titles: titlesOf(offers),
		after,
		text: (id) => {
			const made = after(id);
			return typeof made === "string" ? made : made.text;
		},
	};
}

function titlesOf(offers: readonly Offer[]): string[] {
	return offers.map(({ title, disabled }) =>
		disabled === undefined ? title : `${title} -- ${disabled}`,
	);
}

/** A stock file for fixtures: a sheet, a board, a component. */
export const shopFiles = `//- stock.rod
unit in
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
  variant quarter { sold-as 1/4; thick 13/64 }
}
board oak {
  species "white oak"
  variant six-quarter { rough 1 1/2; planed 1 1/4 }
}
//- components.rod
use ply from "./stock.rod"

component base {
  unit in
  given width = 30 from 12 to 95.5
  mark inner = width - 2
  part rail { of ply.three-quarter; size inner x 4 }
}
`;
