// One sheet or board as it is sawn up, to scale: parts with their words, kerfs as lines with the numbers of the cuts.

import type { LaidRegion } from "../../layouts/types.ts";
import type { SawCut, SawingPlan } from "../sawing/sawing-plan.ts";
import { sizeOf } from "../sawing/sawing-words.ts";
import type { Area, Frame } from "./sheet-frame.ts";
import { type Numbers, numberSize, placeNumbers } from "./sheet-numbers.ts";
import {
	leading,
	meet,
	type Placed,
	placeWords,
	type Wanted,
} from "./sheet-words.ts";
import { escapeXml, px } from "./svg.ts";

export interface Drawing {
	readonly svg: string;
	/** Parts that have no room for their label: equal ones that lie side by side together. */
	readonly unlabelled: readonly {
		readonly text: string;
		readonly area: Area;
	}[];
	/** Numbers of cuts for which there was no room. */
	readonly unnumbered: readonly string[];
}

export function drawSheet(
	plan: SawingPlan,
	index: number,
	frame: Frame,
	{ numbers, sizes }: { readonly numbers: boolean; readonly sizes: boolean },
): Drawing {
	const sheet = plan.sheets[index];
	if (!sheet) return { svg: "", unlabelled: [], unnumbered: [] };
	const cuts = plan.settings.flatMap(({ kind, bevel, cuts }) =>
		cuts
			.filter((cut) => cut.sheet === index)
			.map((cut) => ({ cut, kind, bevel })),
	);
	const { things, marks } = numbers
		? withNumbers(
				thingsIn(sheet.root, frame, plan, sizes),
				cuts.map(({ cut }) => cut),
				frame,
			)
		: {
				things: thingsIn(sheet.root, frame, plan, sizes),
				marks: { placed: [], unnumbered: [] },
			};
	const words = wordsOf(things);
	const lines = cuts
		.filter(({ kind }) => kind === "cut")
		.map(({ cut, bevel }) => kerfLine(frame.at(cut.kerf), bevel));
	const { area } = frame;
	return {
		svg: [
			rect(area, 'class="paper"'),
			...things
				.filter(({ kind }) => kind === "part")
				.map((thing) => rect(thing.area, 'class="wood" stroke="none"')),
			...things
				.filter(({ kind }) => kind === "keep")
				.map((thing) => `<path d="${hatching(thing.area)}" class="faint"/>`),
			...sheet.defects.map((defect) => cross(frame.at(defect))),
			...(area.width > frame.at(sheet.root).width + 0.2
				? [rect(frame.at(sheet.root), 'stroke-dasharray="4 2" class="line"')]
				: []),
			...lines,
			rect(area, 'stroke-width="1.6" class="line"'),
			...things
				.filter(({ kind, placed }) => kind === "keep" && placed)
				.map(({ placed }) =>
					rect((placed as Placed).area, 'class="paper" stroke="none"'),
				),
			...words.map(text),
			...marks.placed.map(number),
		].join(""),
		unlabelled: together(things.filter(({ placed }) => !placed)),
		unnumbered: marks.unnumbered,
	};
}

/** Where a number has no place beside a size, the size is left to the legend. */
function withNumbers(
	things: readonly Thing[],
	cuts: readonly SawCut[],
	frame: Frame,
): { readonly things: readonly Thing[]; readonly marks: Numbers } {
	const taken = wordsOf(things).map(({ area }) => area);
	const marks = placeNumbers(cuts, frame, taken);
	const inTheWay = ({ placed, wanted }: Thing): boolean =>
		placed !== undefined &&
		wanted.more !== undefined &&
		marks.crowded.some((line) => meet(line, placed.area));
	if (!things.some(inTheWay)) return { things, marks };
	const fewer = things.map((thing) => {
		if (!inTheWay(thing)) return thing;
		const wanted = { ...thing.wanted, more: undefined };
		return { ...thing, wanted, placed: placeWords(wanted, thing.area) };
	});
	return withNumbers(fewer, cuts, frame);
}

function wordsOf(things: readonly Thing[]): readonly Placed[] {
	return things.flatMap(({ placed }) => (placed ? [placed] : []));
}

/** A thing on the sheet that has words. */
interface Thing {
	readonly kind: "part" | "keep";
	readonly wanted: Wanted;
	readonly area: Area;
	readonly placed: Placed | undefined;
	/** Things of one parent that lie side by side share it. */
	readonly group: LaidRegion;
}

function thingsIn(
	root: LaidRegion,
	frame: Frame,
	plan: SawingPlan,
	sizes: boolean,
): readonly Thing[] {
	const things: Thing[] = [];
	const add = (
		kind: Thing["kind"],
		wanted: Wanted,
		area: Area,
		group: LaidRegion,
	): void => {
		const placed = placeWords(wanted, area);
		// An offcut without words is hatched all the same: the legend tells what that means.
		things.push({ kind, wanted, area, placed, group });
	};
	const walk = (region: LaidRegion, above: LaidRegion): void => {
		switch (region.kind) {
			case "part":
				add(
					"part",
					{
						label: region.of.label,
						more: sizes ? sizeOf(region, plan) : undefined,
					},
					frame.at(region),
					above,
				);
				break;
			case "pair":
				region.of.forEach((one, at) => {
					const area = halfOf(region, at, frame);
					add("part", { label: one.label, more: undefined }, area, region);
				});
				break;
			case "remnant":
				if (region.keep)
					add(
						"keep",
						{ label: "keep", more: sizes ? sizeOf(region, plan) : undefined },
						frame.at(region),
						above,
					);
				break;
			case "cut":
				for (const piece of region.pieces) walk(piece, region);
		}
	};
	walk(root, root);
	return things;
}

/** Of a bevelled pair: from its edge to the middle of the bevel. */
function halfOf(
	region: LaidRegion & { readonly kind: "pair" },
	at: number,
	frame: Frame,
): Area {
	const { upper, turned } = region;
	const whole = turned ? region.length : region.width;
	const [start, size] = at === 0 ? [0, upper] : [upper, whole - upper];
	return frame.at(
		turned
			? { ...region, x: region.x + start, length: size }
			: { ...region, y: region.y + start, width: size },
	);
}

/** Equal neighbours share one pointer. */
function together(
	things: readonly Thing[],
): readonly { readonly text: string; readonly area: Area }[] {
	const groups: { label: string; group: LaidRegion; all: Area[] }[] = [];
	for (const { kind, wanted, group, area } of things) {
		if (kind !== "part") continue;
		const { label } = wanted;
		const known = groups.at(-1);
		if (known?.group === group && known.label === label) known.all.push(area);
		else groups.push({ label, group, all: [area] });
	}
	return groups.map(({ label, all }) => {
		const x = Math.min(...all.map((one) => one.x));
		const y = Math.min(...all.map((one) => one.y));
		return {
			text: all.length > 1 ? `${all.length} x ${label}` : label,
			area: {
				x,
				y,
				width: Math.max(...all.map((one) => one.x + one.width)) - x,
				height: Math.max(...all.map((one) => one.y + one.height)) - y,
			},
		};
	});
}

export function rect(
	{ x, y, width, height }: Area,
	attributes: string,
): string {
	return `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" ${attributes}/>`;
}

/** As broad as the blade, but neither too thin to be seen nor a black bar. */
function kerfLine(area: Area, bevel: number | undefined): string {
	const lying = area.width >= area.height;
	const broad = Math.min(2.5, Math.max(1, lying ? area.height : area.width));
	const path = lying
		? `M${px(area.x)} ${px(area.y + area.height / 2)}h${px(area.width)}`
		: `M${px(area.x + area.width / 2)} ${px(area.y)}v${px(area.height)}`;
	const dashes = bevel === undefined ? "" : ' stroke-dasharray="6 2 1 2"';
	return `<path d="${path}" stroke-width="${px(broad)}"${dashes} class="line"/>`;
}

/** Lines at 45 degrees, 7 px apart. */
function hatching({ x, y, width, height }: Area): string {
	let path = "";
	for (let at = 7; at < width + height; at += 7) {
		const from = { x: x + Math.min(at, width), y: y + Math.max(0, at - width) };
		const to = { x: x + Math.max(0, at - height), y: y + Math.min(at, height) };
		path += `M${px(from.x)} ${px(from.y)}L${px(to.x)} ${px(to.y)}`;
	}
	return path;
}

function cross(area: Area): string {
	const { x, y, width, height } = area;
	return `${rect(area, 'class="line"')}<path d="M${px(x)} ${px(y)}l${px(width)} ${px(height)}M${px(x)} ${px(y + height)}l${px(width)} ${px(-height)}" class="line"/>`;
}

function text({ lines, size, turned, area }: Placed): string {
	const x = area.x + area.width / 2;
	const y = area.y + area.height / 2;
	const turn = turned ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : "";
	const step = leading * size;
	const rows = lines.map(({ bold, plain }, at) => {
		const down = y + (at - (lines.length - 1) / 2) * step + 0.35 * size;
		const start =
			bold === "" ? "" : `<tspan font-weight="bold">${escapeXml(bold)}</tspan>`;
		return `<text x="${px(x)}" y="${px(down)}" font-size="${px(size)}" text-anchor="middle"${turn} class="ink">${start}${escapeXml(plain)}</text>`;
	});
	return rows.join("");
}

function number({
	text,
	area,
}: {
	readonly text: string;
	readonly area: Area;
}): string {
	const x = area.x + area.width / 2;
	const y = area.y + area.height / 2 + 0.36 * numberSize;
	return `${rect(area, `rx="${px(area.height / 2)}" stroke-width="0.7" class="paper line"`)}<text x="${px(x)}" y="${px(y)}" font-size="${numberSize}" text-anchor="middle" class="ink">${escapeXml(text)}</text>`;
}
