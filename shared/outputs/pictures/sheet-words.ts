// Where words go on the picture of a sheet: as large as there is room for, along or across; else beside it with a line.

import type { Area } from "./sheet-frame.ts";
import { textWidth } from "./svg.ts";

/** A line of words: its beginning in bold. */
export interface Line {
	readonly bold: string;
	readonly plain: string;
}

/** A text in its place; `area` is what it covers, px. */
export interface Placed {
	readonly lines: readonly Line[];
	readonly size: number;
	readonly turned: boolean;
	readonly area: Area;
}

/** What to write on a thing: its label, and what may be left to the legend. */
export interface Wanted {
	readonly label: string;
	readonly more: string | undefined;
}

const margin = 2;
/** Numbers of cuts stand on the edges; words keep off them where they can. */
const numbered = 6.5;
export const leading = 1.2;
const largest = 13;
const smallest = 8;
/** A label alone may be a little smaller, and is not drawn large: it would look as if it said all. */
const alone = { smallest: 7.5, largest: 11 };

/** The middle of an area, or undefined where not even the label fits. */
export function placeWords(
	{ label, more }: Wanted,
	area: Area,
): Placed | undefined {
	const bold: Line = { bold: label, plain: "" };
	const all: readonly (readonly Line[])[] =
		more === undefined
			? [[bold]]
			: [
					[bold, { bold: "", plain: more }],
					[{ bold: label, plain: ` ${more}` }],
				];
	const ways: readonly [readonly (readonly Line[])[], number, number][] = [
		[all, smallest, largest],
		[[[bold]], alone.smallest, alone.largest],
	];
	for (const [forms, least, most] of ways)
		for (const [ends, sides] of keptFree) {
			const found = best(forms, area, ends, sides, least, most);
			if (found) return found;
		}
	return undefined;
}

/** At the ends of a line of words, and above and below it. */
const keptFree = [
	[numbered, numbered],
	[numbered, 0],
	[0, 0],
] as const;

function best(
	forms: readonly (readonly Line[])[],
	area: Area,
	ends: number,
	sides: number,
	least: number,
	most: number,
): Placed | undefined {
	let found: Placed | undefined;
	let worth = 0;
	for (const lines of forms)
		for (const turned of [false, true]) {
			const room = turned ? inset(area, sides, ends) : inset(area, ends, sides);
			const size = roomFor(lines, room, turned, most);
			// What lies is read more easily than what stands.
			const own = turned ? size * 0.8 : size;
			if (size < least || own < worth + 0.01) continue;
			worth = own;
			found = placedIn(area, lines, size, turned);
		}
	return found;
}

function inset(
	{ x, y, width, height }: Area,
	aside: number,
	above: number,
): Area {
	return {
		x: x + aside,
		y: y + above,
		width: width - 2 * aside,
		height: height - 2 * above,
	};
}

/** The largest font size, px; 0 if there is none. */
function roomFor(
	lines: readonly Line[],
	{ width, height }: Area,
	turned: boolean,
	most: number,
): number {
	const [along, across] = turned ? [height, width] : [width, height];
	const size = Math.min(
		most,
		(along - 2 * margin) / widest(lines, 1),
		(across - 1) / blockHeight(lines),
	);
	return Math.max(0, Math.floor(size * 4) / 4);
}

function placedIn(
	area: Area,
	lines: readonly Line[],
	size: number,
	turned: boolean,
): Placed {
	const along = widest(lines, size);
	const across = blockHeight(lines) * size;
	const [width, height] = turned ? [across, along] : [along, across];
	return {
		lines,
		size,
		turned,
		area: {
			x: area.x + (area.width - width) / 2,
			y: area.y + (area.height - height) / 2,
			width,
			height,
		},
	};
}

/** Of the size of the font: letters without what lies above and below all lines. */
function blockHeight(lines: readonly Line[]): number {
	return 1 + (lines.length - 1) * leading;
}

function widest(lines: readonly Line[], size: number): number {
	return Math.max(
		...lines.map(
			({ bold, plain }) => textWidth(bold, size, true) + textWidth(plain, size),
		),
	);
}

export function meet(one: Area, other: Area): boolean {
	return (
		one.x < other.x + other.width &&
		other.x < one.x + one.width &&
		one.y < other.y + other.height &&
		other.y < one.y + one.height
	);
}
