// Strips that come out of one board on paper, but not with what the saw takes.

import { numberOf } from "../../../model/size.ts";
import type { Origin, Part, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { show } from "../../words.ts";

export const trimKerf = defineCheck({
	id: "trim-kerf",
	group: "shape",
	severity: "hint",
	summary: "Strips come out of one board only if the saw takes nothing",
	explanation: `
Strips are ripped side by side, and each cut between two of them takes the width of the saw. Where the strips of a trim, or those that a part
is glued up from, fill the widest board that is to be had, the kerfs push the last one out:

    strips x width <= board < strips x width + (strips - 1) x kerf

Strips whose width comes out of the thickness of the board are ripped off its edge by their own thickness. Strips that are short enough
lie behind each other. It is a hint: a second board mends it.`,
	source: "geometry; the kerf is the shop's own, 1/8 in if it is not said",
	figures: {},
	fires: `
piece frame {
  part seat {
    of oak.four-quarter
    size 60 x 9
    strips 3
    bottom at 16 from floor
  }
}`,
	silent: `
piece frame {
  part seat {
    of oak.four-quarter
    size 60 x 8 1/2
    strips 3
    bottom at 16 from floor
  }
}`,
	find: (piece) => [
		...piece.trims.flatMap((trim) =>
			told(
				piece,
				`\`${trim.path}\``,
				trim.origin,
				trim.strips.map(({ part }) => part),
				trim.strips.map(({ part }) => numberOf(part.length)),
			),
		),
		...piece.parts.flatMap((part) =>
			part.strips !== undefined && part.strips > 1 && part.role !== "aid"
				? told(
						piece,
						`\`${part.path}\``,
						part.declaration.origin,
						[part],
						Array.from({ length: Math.min(part.strips, 1000) }, () =>
							numberOf(part.length),
						),
					)
				: [],
		),
	],
});

/** Floating dust, mm. */
const grain = 1e-6;

/** How wide a strip is that is ripped for a part, mm. */
function ripped(part: Part): number {
	const width = numberOf(part.width) / (part.strips ?? 1);
	const board = part.stock.thick ? numberOf(part.stock.thick) : 0;
	// A slice off the edge: its width is the thickness of the board.
	return part.role === "trim" && width <= board + grain
		? numberOf(part.thick)
		: width;
}

function told(
	piece: Piece,
	name: string,
	origin: Origin,
	parts: readonly Part[],
	lengths: readonly number[],
): readonly Found[] {
	const [part] = parts;
	const widths = part?.stock.widths;
	if (!part || !widths || part.stock.kind !== "board") return [];
	const board = numberOf(widths.high);
	const kerf = numberOf(piece.shop.kerf);
	const longest = part.stock.lengths ? numberOf(part.stock.lengths.high) : 0;
	const width = Math.max(...parts.map(ripped));
	const strips = lanes(lengths, longest, kerf);
	const bare = strips * width;
	const whole = bare + (strips - 1) * kerf;
	if (strips < 2 || bare > board + grain || whole <= board + grain) return [];
	const { display } = piece;
	return [
		{
			origin,
			message: `${strips} strips of ${name}, each ${show(display, width)} wide, fill a board of ${show(display, board)}, but ${strips - 1} ${strips === 2 ? "kerf takes" : "kerfs take"} ${show(display, (strips - 1) * kerf)} more: they lack ${show(display, whole - board)}; take one of them from a second board`,
		},
	];
}

/** How many strips of the longest board they make, the longest first into the first that has room. */
function lanes(
	lengths: readonly number[],
	longest: number,
	kerf: number,
): number {
	const rooms: number[] = [];
	for (const length of lengths.toSorted((a, b) => b - a)) {
		const at = rooms.findIndex((room) => room >= length - grain);
		if (at < 0) rooms.push(longest - length - kerf);
		else rooms[at] = (rooms[at] as number) - length - kerf;
	}
	return rooms.length;
}
