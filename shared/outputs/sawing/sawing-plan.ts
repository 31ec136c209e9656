// The sheets of a material as a person saws them up: every cut in order, with what is set, what comes off and what is left.

import type { Rectangle } from "../../cutting/index.ts";
import type {
	LaidPart,
	LaidRegion,
	LaidSheet,
	MaterialLayout,
} from "../../layouts/types.ts";
import { cutSizes, shownSize } from "../../model/cut-size.ts";
import type { Display, Piece } from "../../model/types.ts";
import { formatLength } from "../../units/format.ts";
import { Rational } from "../../units/rational.ts";
import {
	type Axis,
	type Blank,
	blanksOf,
	extentAlong,
	type Guide,
	otherAxis,
} from "./blanks.ts";
import { type Caution, cautionsAt, isLarge } from "./cautions.ts";
import { fewSettings, settingsIn, type Task, treeOrder } from "./order.ts";

/** Lengths are whole thousandths of a millimetre, as in the layout. */
export interface SawingPlan {
	readonly layout: MaterialLayout;
	/** What the cut list calls the sizes of a part as it is sawn first, by the id of the part. */
	readonly cutTexts: CutTexts;
	/** The sheets of the layout, their pieces in the order in which they are cut off: this is how to draw them. */
	readonly sheets: readonly LaidSheet[];
	readonly settings: readonly SawSetting[];
	/** How often something is set, trimming left out. */
	readonly changes: number;
	/** The same if each sheet were sawn up by itself, from the first cut of its tree to the last. */
	readonly changesInTreeOrder: number;
}

/** What is set once, and all that is cut with it. */
export interface SawSetting {
	readonly kind: "trim" | "cut";
	readonly guide: Guide;
	/** From the guide to the blade; of a trim what comes off. */
	readonly at: number;
	/** In the unit of the design, as in the cut list. */
	readonly text: string;
	/** Degrees from the face. */
	readonly bevel: number | undefined;
	readonly cuts: readonly SawCut[];
	readonly cautions: readonly Caution[];
}

export interface SawCut {
	/** From 1, through all sheets of the material. */
	readonly number: number;
	/** Index of the sheet. */
	readonly sheet: number;
	/** Along the grain of the sheet or across it; of a trim the edge. */
	readonly kind: "rip" | "crosscut" | "trim";
	/** What lies on the saw. */
	readonly blank: Rectangle;
	/** What the blade takes, as it is drawn. */
	readonly kerf: Rectangle;
	readonly length: number;
	/** In the unit of the design, as in the cut list. */
	readonly lengthText: string;
	/** Of a trim nothing that counts. */
	readonly off: SawnPiece | undefined;
	/** What is left on the saw, if it is the last cut of its blank, and not cut off to the edge. */
	readonly left: SawnPiece | undefined;
}

export interface SawnPiece {
	readonly region: LaidRegion;
	/** One of the two of a bevelled pair. */
	readonly part: LaidPart | undefined;
}

/** `pieces` are those of the layout: their cut sizes are what the fence is set by. */
export function sawingPlan(
	layout: MaterialLayout,
	pieces: readonly Piece[],
): SawingPlan {
	const cutTexts = cutTextsOf(pieces, layout.display);
	const sizeText: SizeText = (region, along) =>
		extentText(region, along, { layout, cutTexts });
	const blanks = blanksOf(layout);
	const facts = new Map<Task, CutFacts>();
	const tree = new Map(
		blanks.map((blank) => [blank, tasksOf(blank, layout, sizeText, facts)]),
	);
	const order = fewSettings(tree);
	const arranged = new Arrangement(layout, order, sizeText);
	const trims = layout.sheets.flatMap((sheet, index) =>
		trimsOf(sheet, index, layout.display),
	);
	const cuts = order.map((task) => ({ task, facts: facts.get(task) }));
	const settings: (Omit<SawSetting, "cuts"> & { cuts: SawCut[] })[] = [];
	if (trims.length > 0) settings.push(...trimSettings(trims, layout));
	let number = trims.length;
	let last: string | undefined;
	for (const { task, facts } of cuts) {
		if (!facts) throw new Error("A cut without its facts");
		if (task.setting !== last)
			settings.push({ ...facts.setting, cuts: [], cautions: [] });
		last = task.setting;
		number += 1;
		settings.at(-1)?.cuts.push(arranged.cut(task, number));
	}
	return {
		layout,
		cutTexts,
		sheets: arranged.sheets,
		settings: settings.map((setting) => ({
			...setting,
			cautions: [
				...new Set([
					...setting.cautions,
					...setting.cuts.flatMap(({ length, kind }) =>
						kind === "trim" ? [] : cautionsAt({ ...setting, length }),
					),
				]),
			],
		})),
		changes: settingsIn(order),
		changesInTreeOrder: settingsIn(treeOrder(tree)),
	};
}

interface CutFacts {
	readonly setting: Omit<SawSetting, "cuts" | "cautions">;
}

type SizeText = (region: LaidRegion, along: Axis) => string;

function tasksOf(
	blank: Blank,
	{ kind }: MaterialLayout,
	sizeText: SizeText,
	facts: Map<Task, CutFacts>,
): readonly Task[] {
	let rest = blank.extent;
	const count = blank.pieces.length - (blank.leavesPiece ? 1 : 0);
	return blank.pieces.slice(0, count).map((piece, index) => {
		const large = kind === "sheets" && isLarge(rest, blank.across);
		rest -= piece.size;
		const guide = guideOf(blank, piece.size, kind, large);
		const text =
			piece.pair === undefined
				? sizeText(piece.region, blank.along)
				: pairText(piece.region, sizeText);
		const setting = [
			guide,
			text,
			...(blank.bevel === undefined ? [] : [blank.bevel]),
			// A track is laid on marks, anew for every sheet.
			...(guide === "track" ? [blank.sheet] : []),
		].join(" ");
		const task: Task = { blank, piece: index, setting, large };
		facts.set(task, {
			setting: { kind: "cut", guide, at: piece.size, text, bevel: blank.bevel },
		});
		return task;
	});
}

function guideOf(
	blank: Blank,
	size: number,
	kind: MaterialLayout["kind"],
	large: boolean,
): Guide {
	if (kind === "veneer") return "knife";
	if (large) return "track";
	if (kind === "lengths") return "stop";
	// A piece that is shorter along the fence than away from it turns against it.
	return size > blank.across ? "stop" : "fence";
}

/** Where what is usable begins inside the sheet: a long edge first, a short one square to it, then the two others. */
function trimsOf(
	{ length, width, root }: LaidSheet,
	sheet: number,
	display: Display,
): readonly Omit<SawCut, "number">[] {
	const cuts: Omit<SawCut, "number">[] = [];
	let left: Rectangle = { x: 0, y: 0, length, width };
	const trim = (along: Axis, from: number, size: number): void => {
		if (size <= 0) return;
		const blank = left;
		const start = along === "x" ? blank.x : blank.y;
		const extent = extentAlong(blank, along);
		left = stretch(
			blank,
			along,
			from === start ? start + size : start,
			extent - size,
		);
		cuts.push({
			sheet,
			kind: "trim",
			blank,
			kerf: stretch(blank, along, from, size),
			length: extentAlong(blank, otherAxis(along)),
			lengthText: lengthOf(extentAlong(blank, otherAxis(along)), display),
			off: undefined,
			left: undefined,
		});
	};
	const endX = root.x + root.length;
	const endY = root.y + root.width;
	trim("y", 0, root.y);
	trim("x", 0, root.x);
	trim("y", endY, width - endY);
	trim("x", endX, length - endX);
	return cuts;
}

function trimSettings(
	trims: readonly Omit<SawCut, "number">[],
	{ display, sheets, kind }: MaterialLayout,
): (Omit<SawSetting, "cuts"> & { cuts: SawCut[] })[] {
	const settings: (Omit<SawSetting, "cuts"> & { cuts: SawCut[] })[] = [];
	trims.forEach((trim, index) => {
		const sheet = sheets[trim.sheet] as LaidSheet;
		const large = kind === "sheets" && isLarge(sheet.length, sheet.width);
		const guide: Guide =
			kind === "veneer"
				? "knife"
				: large
					? "track"
					: kind === "lengths"
						? "stop"
						: "fence";
		const known = settings.at(-1);
		if (known?.at !== sheet.trim || known.guide !== guide)
			settings.push({
				kind: "trim",
				guide,
				at: sheet.trim,
				text: lengthOf(sheet.trim, display),
				bevel: undefined,
				cuts: [],
				cautions: guide === "track" ? ["large"] : [],
			});
		settings.at(-1)?.cuts.push({ ...trim, number: index + 1 });
	});
	return settings;
}

/** The sheets with their pieces in the order of the cuts, and where each cut then lies. */
class Arrangement {
	readonly sheets: readonly LaidSheet[];
	/** The tasks of each blank, in order. */
	private readonly cuts = new Map<Blank, Task[]>();
	private readonly blankOf = new Map<LaidRegion, Blank>();
	private readonly placed = new Map<LaidRegion, LaidRegion>();
	private readonly kerf: number;
	private readonly sizeText: SizeText;

	constructor(
		layout: MaterialLayout,
		order: readonly Task[],
		sizeText: SizeText,
	) {
		this.kerf = layout.kerf;
		this.sizeText = sizeText;
		for (const task of order) {
			const known = this.cuts.get(task.blank);
			if (known) known.push(task);
			else this.cuts.set(task.blank, [task]);
			this.blankOf.set(task.blank.region, task.blank);
		}
		this.sheets = layout.sheets.map((sheet) => ({
			...sheet,
			root: this.place(sheet.root, sheet.root.x, sheet.root.y),
		}));
	}

	cut({ blank, piece: index }: Task, number: number): SawCut {
		const { along, region } = blank;
		const tasks = this.cuts.get(blank) ?? [];
		const at = tasks.findIndex(({ piece }) => piece === index);
		const whole = this.placed.get(region) ?? region;
		let start = along === "x" ? whole.x : whole.y;
		for (const task of tasks.slice(0, at))
			start += (blank.pieces[task.piece]?.size ?? 0) + this.kerf;
		const piece = blank.pieces[index];
		if (!piece) throw new Error("A cut that parts nothing");
		const end = (along === "x" ? whole.x : whole.y) + blank.extent;
		const blade = start + piece.size;
		const isLast = at === tasks.length - 1;
		const rest = blank.leavesPiece ? blank.pieces.at(-1) : undefined;
		const sawn = (one: typeof piece): SawnPiece => ({
			region: this.placed.get(one.region) ?? one.region,
			part:
				one.pair !== undefined && one.region.kind === "pair"
					? one.region.of[one.pair]
					: undefined,
		});
		return {
			number,
			sheet: blank.sheet,
			kind: along === "x" ? "crosscut" : "rip",
			blank: stretch(whole, along, start, end - start),
			kerf: stretch(whole, along, blade, Math.min(this.kerf, end - blade)),
			length: blank.across,
			lengthText: this.sizeText(region, otherAxis(along)),
			off: sawn(piece),
			left: isLast && rest ? sawn(rest) : undefined,
		};
	}

	private place(region: LaidRegion, x: number, y: number): LaidRegion {
		const placed = this.placedAt(region, x, y);
		this.placed.set(region, placed);
		return placed;
	}

	private placedAt(region: LaidRegion, x: number, y: number): LaidRegion {
		if (region.kind !== "cut") return { ...region, x, y };
		const { along } = region;
		const blank = this.blankOf.get(region);
		const tasks = (blank && this.cuts.get(blank)) ?? [];
		const inOrder = blank
			? [
					...tasks.map(({ piece }) => blank.pieces[piece]?.region),
					...(blank.leavesPiece ? [blank.pieces.at(-1)?.region] : []),
				].filter((piece) => piece !== undefined)
			: region.pieces.filter(({ length, width }) => length > 0 && width > 0);
		let at = along === "x" ? x : y;
		const pieces = inOrder.map((piece) => {
			const one =
				along === "x" ? this.place(piece, at, y) : this.place(piece, x, at);
			at += extentAlong(piece, along) + this.kerf;
			return one;
		});
		return { ...region, x, y, pieces };
	}
}

function stretch(
	{ x, y, length, width }: Rectangle,
	along: Axis,
	from: number,
	size: number,
): Rectangle {
	return along === "x"
		? { x: from, y, length: size, width }
		: { x, y: from, length, width: size };
}

export type CutTexts = ReadonlyMap<
	string,
	readonly {
		/** Thousandths of a millimetre. */
		readonly steps: number;
		readonly text: string;
	}[]
>;

/** A strip may be ripped from the edge of a board, so that it is as wide there as it is thick: all three sizes count. */
function cutTextsOf(pieces: readonly Piece[], display: Display): CutTexts {
	const texts = new Map<string, { steps: number; text: string }[]>();
	for (const piece of pieces) {
		const finals = cutSizes(piece);
		const same = piece.display.unit === display.unit;
		for (const part of piece.parts) {
			const [first = part] = part.stages;
			const final = finals.get(part.id);
			const sizes = [
				[first.length, final?.length],
				[first.width, final?.width],
				[first.thick, undefined],
			] as const;
			texts.set(
				part.id,
				sizes.map(([size, shown]) => {
					const cut =
						first === part && shown ? shown : shownSize(size, piece.display);
					return {
						steps: size.value.toNumber() * 1_000,
						text: same ? cut.text : formatLength(size.value, display).text,
					};
				}),
			);
		}
	}
	return texts;
}

/** What the size of a region is called: as the cut list calls the part that fills it, else as its own length. */
export function extentText(
	region: LaidRegion,
	along: Axis,
	{ layout, cutTexts }: Pick<SawingPlan, "layout" | "cutTexts">,
): string {
	const extent = extentAlong(region, along);
	return (
		partText(region, along, extent, cutTexts) ??
		lengthOf(extent, layout.display)
	);
}

/** Of the first part in a region that is as large as it, and laid out whole. */
function partText(
	region: LaidRegion,
	along: Axis,
	extent: number,
	texts: CutTexts,
): string | undefined {
	if (extentAlong(region, along) !== extent) return undefined;
	if (region.kind === "cut") {
		for (const piece of region.pieces) {
			const text = partText(piece, along, extent, texts);
			if (text !== undefined) return text;
		}
		return undefined;
	}
	if (region.kind !== "part") return undefined;
	const { of, turned } = region;
	const side = (along === "x") === turned ? "width" : "length";
	if (of.share !== undefined || !of.part || of[side] !== extent)
		return undefined;
	// Steps are rounded up.
	return texts
		.get(of.part.id)
		?.find(({ steps }) => Math.abs(steps - extent) <= 1)?.text;
}

/** The first of a pair is as wide as its broad face. */
function pairText(region: LaidRegion, sizeText: SizeText): string {
	if (region.kind !== "pair") return "";
	const { x, y, turned, upper } = region;
	const along: Axis = turned ? "x" : "y";
	return sizeText(
		{
			...stretch(region, along, along === "x" ? x : y, upper),
			kind: "part",
			of: region.of[0],
			turned,
		},
		along,
	);
}

/** Thousandths of a millimetre in the unit of the design, to its precision. */
export function lengthOf(steps: number, display: Display): string {
	return formatLength(Rational.of(Math.round(steps), 1_000), display).text;
}
