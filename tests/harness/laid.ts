// Hand-made and random layouts, for tests of what is drawn and sawn by them: no optimiser in between.

import type {
	LaidPart,
	LaidRegion,
	LaidSheet,
	LayoutKind,
	MaterialLayout,
} from "../../shared/layouts/types.ts";
import type { Display } from "../../shared/model/types.ts";
import { Rational } from "../../shared/units/rational.ts";
import { ply } from "./pieces.ts";

export const inch = 25_400;

export const inches: Display = { unit: "in", precision: Rational.of(1, 32) };
export const millimetres: Display = {
	unit: "mm",
	precision: Rational.of(1, 2),
};

export function laidPart(
	label: string,
	length: number,
	width: number,
	more: Partial<LaidPart> = {},
): LaidPart {
	return {
		label,
		id: `case.${label}`,
		path: label,
		piece: "case",
		pieceAt: 0,
		part: undefined,
		aid: undefined,
		share: undefined,
		length,
		width,
		...more,
	};
}

/** A tree without places: what `placed` gives its corners to. */
export type Sketch =
	| { readonly part: string; readonly size: number }
	| { readonly rest: number; readonly keep?: boolean }
	| {
			readonly size: number;
			readonly pieces: readonly Sketch[];
			readonly matched?: boolean;
	  };

/** `sketch.size` is along the axis of the cut above; its pieces are parted along the other. */
export function placed(
	sketch: Sketch,
	frame: { x: number; y: number; length: number; width: number },
	along: "x" | "y",
	kerf: number,
): LaidRegion {
	if ("part" in sketch)
		return {
			...frame,
			kind: "part",
			of: laidPart(sketch.part, frame.length, frame.width),
			turned: false,
		};
	if ("rest" in sketch)
		return { ...frame, kind: "remnant", keep: sketch.keep ?? false };
	let at = along === "x" ? frame.x : frame.y;
	const pieces = sketch.pieces.map((piece) => {
		const size = "rest" in piece ? piece.rest : piece.size;
		const one = placed(
			piece,
			along === "x"
				? { ...frame, x: at, length: size }
				: { ...frame, y: at, width: size },
			along === "x" ? "y" : "x",
			kerf,
		);
		at += size + kerf;
		return one;
	});
	return {
		...frame,
		kind: "cut",
		along,
		pieces,
		...(sketch.matched ? { matched: true } : {}),
	};
}

export function laidSheet(
	root: LaidRegion,
	more: Partial<LaidSheet> = {},
): LaidSheet {
	const trim = more.trim ?? 0;
	return {
		name: "96 x 48",
		length: root.length + 2 * trim,
		width: root.width + 2 * trim,
		onHand: false,
		price: Rational.of(92),
		trim,
		defects: [],
		root,
		...more,
	};
}

export function laidOut(
	sheets: readonly LaidSheet[],
	more: Partial<MaterialLayout> = {},
): MaterialLayout {
	return {
		stock: ply,
		kind: "sheets",
		display: inches,
		pieces: ["case"],
		kerf: inch / 8,
		sheets,
		sizes: [],
		missing: [],
		price: Rational.of(92 * sheets.length),
		leastPrice: Rational.of(92),
		leastSheets: 1,
		proven: false,
		offcuts: [],
		assumptions: [],
		...more,
	};
}

/** A number from 0 up to, not including, 1, each time another one: the same for the same seed (mulberry32). */
export function chance(seed: number): () => number {
	let state = seed;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** Sheets cut up at random, edge to edge: sizes repeat often, some blades run off the edge, some pieces belong together. */
export function randomLayout(
	seed: number,
	{
		sheets = 3,
		depth = 4,
		kind = "sheets" as LayoutKind,
		most = 5,
	}: {
		sheets?: number;
		depth?: number;
		kind?: LayoutKind;
		most?: number;
	} = {},
): MaterialLayout {
	const random = chance(seed);
	const whole = (below: number): number => Math.floor(random() * below);
	const kerf = [0, inch / 8, 3_000][whole(3)] as number;
	let count = 0;
	const parts = new Map<string, string>();
	const label = (length: number, width: number): string => {
		const key = `${length} ${width}`;
		const known = parts.get(key);
		if (known !== undefined) return known;
		count += 1;
		parts.set(key, `P${count}`);
		return `P${count}`;
	};
	const fill = (
		frame: { x: number; y: number; length: number; width: number },
		along: "x" | "y",
		left: number,
	): LaidRegion => {
		const extent = along === "x" ? frame.length : frame.width;
		const step = 2 * inch;
		if (left === 0 || random() < 0.15 || extent < 3 * step) {
			if (random() < 0.25)
				return { ...frame, kind: "remnant", keep: random() < 0.5 };
			return {
				...frame,
				kind: "part",
				of: laidPart(
					label(frame.length, frame.width),
					frame.length,
					frame.width,
				),
				turned: false,
			};
		}
		const pieces: LaidRegion[] = [];
		let at = along === "x" ? frame.x : frame.y;
		const end = at + extent;
		const choices = [1 + whole(4), 1 + whole(8)].map((n) => n * step);
		while (end - at > 0 && pieces.length < most) {
			let size = choices[whole(2)] as number;
			const last = end - at - size;
			// The blade may run off the edge, but not leave less than it takes.
			if (last < 0 || (last > kerf && last < kerf + inch)) size = end - at;
			if (pieces.length === most - 1) size = end - at;
			const one = fill(
				along === "x"
					? { ...frame, x: at, length: size }
					: { ...frame, y: at, width: size },
				along === "x" ? "y" : "x",
				left - 1,
			);
			pieces.push(one);
			at += size + kerf;
		}
		return {
			...frame,
			kind: "cut",
			along,
			pieces,
			...(random() < 0.1 ? { matched: true } : {}),
		};
	};
	return laidOut(
		Array.from({ length: sheets }, () => {
			const trim = [0, inch / 4][whole(2)] as number;
			const exact = random() < 0.5 ? 0 : kerf / 2;
			const root = fill(
				{
					x: trim,
					y: trim,
					length: 96 * inch - 2 * trim - Math.floor(exact),
					width: 48 * inch - 2 * trim,
				},
				random() < 0.5 ? "x" : "y",
				depth,
			);
			return laidSheet(root, {
				trim,
				defects:
					random() < 0.1 ? [{ x: 0, y: 0, length: 100, width: 100 }] : [],
			});
		}),
		{ kerf, kind },
	);
}
