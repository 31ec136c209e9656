// Where the numbers of the cuts stand: on the line of their cut, beside the words and beside one another.

import type { SawCut } from "../sawing/sawing-plan.ts";
import type { Area, Frame } from "./sheet-frame.ts";
import { meet } from "./sheet-words.ts";
import { textWidth } from "./svg.ts";

export interface Numbers {
	readonly placed: readonly { readonly text: string; readonly area: Area }[];
	/** For which there was no room. */
	readonly unnumbered: readonly string[];
}

/** `taken` is what words cover. `crowded` are the places of numbers that had to be drawn together or left out. */
export function placeNumbers(
	cuts: readonly SawCut[],
	frame: Frame,
	words: readonly Area[],
): Numbers & { readonly crowded: readonly Area[] } {
	const taken = [...words];
	const placed: { text: string; area: Area }[] = [];
	const unnumbered: string[] = [];
	const crowded: Area[] = [];
	const put = (text: string, cut: SawCut): boolean => {
		const area = placeNumber(text, frame.at(cut.kerf), taken);
		if (!area) return false;
		taken.push(area);
		placed.push({ text, area });
		return true;
	};
	// Short lines leave the least choice.
	const runs = runsOf(cuts)
		.map((run) => ({ run, length: run[0]?.length ?? 0 }))
		.sort((a, b) => a.length - b.length);
	for (const { run } of runs) {
		const mark = [taken.length, placed.length] as const;
		const [first] = run as [SawCut];
		// Trimming is one operation, whatever its numbers.
		if (first.kind !== "trim") {
			const bad = run.find((cut) => !put(`${cut.number}`, cut));
			if (!bad) continue;
			crowded.push(around(frame.at(bad.kerf)));
		}
		taken.length = mark[0];
		placed.length = mark[1];
		const last = run.at(-1) as SawCut;
		const text =
			first === last ? `${first.number}` : `${first.number}–${last.number}`;
		if (!run.some((cut) => put(text, cut))) unnumbered.push(text);
	}
	unnumbered.sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10));
	return { placed, unnumbered, crowded };
}

/** What a number on a line may cover. */
function around({ x, y, width, height }: Area): Area {
	const by = numberHeight;
	return {
		x: x - by,
		y: y - by,
		width: width + 2 * by,
		height: height + 2 * by,
	};
}

/** Cuts of one strip whose numbers follow one another; all that is trimmed. */
function runsOf(cuts: readonly SawCut[]): readonly (readonly SawCut[])[] {
	const runs: SawCut[][] = [];
	for (const cut of cuts) {
		const last = runs.at(-1)?.at(-1);
		if (last && last.number + 1 === cut.number && inOneStrip(last, cut))
			runs.at(-1)?.push(cut);
		else runs.push([cut]);
	}
	return runs;
}

function inOneStrip(one: SawCut, other: SawCut): boolean {
	if (one.kind !== other.kind) return false;
	if (one.kind === "trim") return true;
	return one.kind === "rip"
		? one.kerf.x === other.kerf.x && one.length === other.length
		: one.kerf.y === other.kerf.y && one.length === other.length;
}

/** Size of the numbers of cuts, px. */
export const numberSize = 8;
export const numberHeight = 10.5;

export function numberWidth(text: string): number {
	return Math.max(numberHeight, textWidth(text, numberSize, true) + 4);
}

/**
 * Where a number stands on the line of its cut without lying on words or on another number: as near to the middle of
 * one of its ends as can be. Undefined where there is no such place.
 */
export function placeNumber(
	text: string,
	line: Area,
	taken: readonly Area[],
): Area | undefined {
	const width = numberWidth(text);
	const lying = line.width >= line.height;
	const length = lying ? line.width : line.height;
	const own = lying ? width : numberHeight;
	const middle = lying ? line.y + line.height / 2 : line.x + line.width / 2;
	const room = length - own;
	const step = own / 2 + 1;
	const starts: number[] = [];
	for (let at = 3; at <= room - 3; at += step) starts.push(at);
	if (starts.length === 0) starts.push(room / 2);
	for (const start of starts) {
		const area: Area = lying
			? {
					x: line.x + start,
					y: middle - numberHeight / 2,
					width,
					height: numberHeight,
				}
			: {
					x: middle - width / 2,
					y: line.y + start,
					width,
					height: numberHeight,
				};
		if (!taken.some((other) => meet(area, other))) return area;
	}
	return undefined;
}
