// Lays a `.rod` text out in the one style of the language.
//
// - Two blanks of indentation for each block; one statement a line; `{` on the line of its head.
// - A block that was written on one line stays there if the line is at most 100 wide, as `{ a; b }`.
// - One blank between words, none before a comma or inside brackets. Heads are not lined up in columns, so that a change
//   to one line never touches its neighbours.
// - A statement keeps the line breaks that its maker gave it; the lines that go on are indented by four blanks.
// - Blank lines stay, at most one in a row, none at the beginning or the end of a block.
// - A comment behind a statement stays behind it; those of lines of one depth that follow one another begin in one
//   column, two blanks behind the longest of these lines. Comments on lines of their own are indented like statements.
// - Sizes are spelled in one way (`2 1/4`, `5 ft 2 in`, `450 mm`), `×` is `x`, and a head has its main spelling.
//
// What could not be read stays as it was typed. There are no options.

import { type ParseResult, parse } from "../../grammar/index.ts";
import { damageIn } from "./damage.ts";
import { Layout } from "./layout.ts";
import { sameMeaning } from "./same-meaning.ts";

export interface Formatted {
	readonly text: string;
	/** Nothing was changed: the text is so broken that a new layout could change how it is read. */
	readonly refused: boolean;
}

/** Never throws; keeps every comment and the meaning of every statement. */
export function format(text: string): Formatted {
	const result = parse(text);
	const damage = damageIn(text, result);
	const formatted = new Layout(text, result.tree, damage).run();
	if (formatted === text) return { text, refused: false };
	const again = parse(formatted);
	if (
		!sameMeaning(result.tree, again.tree) ||
		(damage.guessed && !isSettled(formatted, again))
	) {
		return { text, refused: true };
	}
	return { text: formatted, refused: false };
}

/** Where braces are guessed from the indentation, the new indentation could lead to another guess. */
function isSettled(text: string, result: ParseResult): boolean {
	const damage = damageIn(text, result);
	return new Layout(text, result.tree, damage).run() === text;
}
