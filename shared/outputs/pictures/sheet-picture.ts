// The page of one sheet or board: what it is, how it is sawn up, and a legend. Readable in print without colour, on a phone,
// and on light and dark ground, as it brings its own paper.

import type { LaidRegion, LaidSheet } from "../../layouts/types.ts";
import type { SawingPlan } from "../sawing/sawing-plan.ts";
import {
	counted,
	partLabel,
	sheetName,
	sizeOf,
} from "../sawing/sawing-words.ts";
import { callouts } from "./sheet-callouts.ts";
import { type Drawing, drawSheet } from "./sheet-drawing.ts";
import { type Frame, frameOf } from "./sheet-frame.ts";
import { escapeXml, px, textWidth, wrapToWidth } from "./svg.ts";

const edge = 12;
/** What a phone shows without shrinking much, px; then what takes a larger page. */
const widths = [420, 640, 960] as const;

/** One sheet of the plan; empty text if there is no such sheet. */
export function sheetPicture(plan: SawingPlan, index: number): string {
	const sheet = plan.sheets[index];
	if (!sheet) return "";
	const { frame, drawing, width } = roomiest(plan, sheet, index);
	const title = `${plan.layout.stock.id}, ${sheetName(plan, index)} of ${plan.sheets.length}`;
	const head = heading(title, plan, sheet, frame, width);
	const notes = callouts(drawing.unlabelled, frame, {
		left: edge,
		right: width - edge,
	});
	const down = head.height + notes.above;
	const bottom = down + frame.area.height + notes.below + 8;
	const foot = legend(plan, sheet, frame, drawing, notes.untold, {
		top: bottom,
		width,
	});
	return svgOf(width, foot.bottom, title, [
		head.svg,
		`<g transform="translate(0 ${px(down)})">${drawing.svg}${notes.svg}</g>`,
		foot.svg,
	]);
}

/** The smallest drawing on which every part has its label and every cut its number, or a larger one if that is near it. */
function roomiest(
	plan: SawingPlan,
	sheet: LaidSheet,
	index: number,
): { frame: Frame; drawing: Drawing; width: number } {
	const slim =
		plan.layout.kind === "boards" ||
		plan.layout.kind === "lengths" ||
		sheet.length > 6 * sheet.width;
	const ways = widths.flatMap((width) => [
		{ width, upright: false },
		...(!slim && sheet.length > 1.2 * sheet.width
			? [{ width, upright: true }]
			: []),
	]);
	const drawn = (one: (typeof ways)[number]) => {
		const frame = frameOf(sheet, {
			left: edge,
			top: 0,
			width: one.width - 2 * edge,
			height: 2.4 * one.width,
			upright: one.upright,
			stretch: slim,
		});
		const drawing = drawSheet(plan, index, frame, {
			numbers: true,
			sizes: true,
		});
		return { frame, drawing, width: one.width };
	};
	let best: ReturnType<typeof drawn> | undefined;
	let least = Number.POSITIVE_INFINITY;
	for (const [larger, one] of ways.entries()) {
		const next = drawn(one);
		// What is larger is harder to read on a phone: it must be worth it.
		const cost = faults(next.drawing) + larger;
		if (!best || cost < least) [best, least] = [next, cost];
		if (faults(next.drawing) === 0) break;
	}
	return best as ReturnType<typeof drawn>;
}

/** A label that is not on its part weighs more than a number that must be looked up. */
function faults({ unlabelled, unnumbered }: Drawing): number {
	return 3 * unlabelled.length + 2 * unnumbered.length;
}

function heading(
	title: string,
	plan: SawingPlan,
	sheet: LaidSheet,
	{ upright }: Frame,
	width: number,
): { svg: string; height: number } {
	const lines = wrapToWidth(title, width - 2 * edge, 13, true);
	const svg = lines.map((line, at) =>
		words(line, edge, 18 + at * 16, 13, true),
	);
	let y = 18 + lines.length * 16;
	const facts = [
		`${withUnit(sheet.name, plan)}${sheet.onHand ? ", on hand" : ""}`,
		...(sheet.trim > 0 ? ["dashed: edges trimmed first"] : []),
	].join("; ");
	const arrow = plan.layout.stock.grain;
	const room = width - 2 * edge - (arrow ? 90 : 0);
	for (const line of wrapToWidth(facts, room, 11)) {
		svg.push(words(line, edge, y, 11));
		y += 14;
	}
	if (arrow) svg.push(grainArrow(width - edge, y - 18, upright));
	return { svg: svg.join(""), height: y };
}

/** A size of another unit than that of the design brings its own. */
function withUnit(name: string, { layout }: SawingPlan): string {
	return /[a-z]{2}/.test(name) ? name : `${name} ${layout.display.unit}`;
}

function grainArrow(right: number, y: number, upright: boolean): string {
	const path = upright
		? `M${px(right - 8)} ${px(y - 15)}v30m-4 -6l4 6l4 -6m-8 -18l4 -6l4 6`
		: `M${px(right - 36)} ${px(y)}h36m-6 -4l6 4l-6 4m-24 -8l-6 4l6 4`;
	const from = right - (upright ? 16 : 42);
	return `<path d="${path}" stroke-width="1.2" class="line"/><text x="${px(from)}" y="${px(y + 4)}" font-size="11" text-anchor="end" class="ink">grain</text>`;
}

function legend(
	plan: SawingPlan,
	sheet: LaidSheet,
	frame: Frame,
	drawing: Drawing,
	untold: readonly string[],
	{ top, width }: { readonly top: number; readonly width: number },
): { svg: string; bottom: number } {
	const size = 11;
	const svg: string[] = [];
	let y = top + 8;
	const rows = rowsOf(sheet.root, plan);
	const indent = Math.min(
		90,
		Math.max(0, ...rows.map(({ label }) => textWidth(label, size, true))) + 8,
	);
	for (const { label, text } of rows) {
		const lines = wrapToWidth(text, width - 2 * edge - indent, size);
		const labels = wrapToWidth(label, indent, size, true);
		for (let at = 0; at < Math.max(lines.length, labels.length); at += 1) {
			svg.push(words(labels[at] ?? "", edge, y, size, true));
			svg.push(words(lines[at] ?? "", edge + indent, y, size));
			y += 15;
		}
	}
	const told = [
		...(hasKept(sheet.root) ? ["Hatched: offcuts worth keeping."] : []),
		...(hasPair(sheet.root)
			? ["Dash and dot: a bevelled rip, drawn where it meets the upper face."]
			: []),
		...(sheet.defects.length > 0 ? ["Crossed out: defects."] : []),
		...(frame.wider > 1.05
			? [`Drawn ${Number(frame.wider.toFixed(1))} times as wide as it is.`]
			: []),
		...(drawing.unnumbered.length > 0
			? [
					`No room for the numbers ${drawing.unnumbered.join(", ")} of cuts: see their list.`,
				]
			: []),
		...(untold.length > 0 ? [`No room for ${untold.join(", ")}.`] : []),
	];
	for (const line of told.flatMap((one) =>
		wrapToWidth(one, width - 2 * edge, size),
	)) {
		svg.push(words(line, edge, y, size));
		y += 15;
	}
	return { svg: svg.join(""), bottom: y - 3 };
}

/** A row for each label and size: how many, how large, which parts. */
function rowsOf(
	root: LaidRegion,
	plan: SawingPlan,
): readonly { readonly label: string; readonly text: string }[] {
	const rows = new Map<
		string,
		{ label: string; size: string; count: number; paths: Set<string> }
	>();
	const add = (label: string, size: string, path: string): void => {
		const key = JSON.stringify([label, size]);
		const row = rows.get(key) ?? { label, size, count: 0, paths: new Set() };
		row.count += 1;
		row.paths.add(path);
		rows.set(key, row);
	};
	const walk = (region: LaidRegion): void => {
		if (region.kind === "part") {
			const { of } = region;
			const share = partLabel(of).slice(of.label.length);
			add(of.label, sizeOf(region, plan), `${of.path}${share}`);
		}
		if (region.kind === "pair")
			for (const one of region.of)
				add(one.label, `from one strip ${sizeOf(region, plan)}`, one.path);
		if (region.kind === "cut") region.pieces.forEach(walk);
	};
	walk(root);
	return [...rows.values()].map(({ label, size, count, paths }) => ({
		label,
		text: `${count > 1 ? `${count} of ` : ""}${size}: ${[...paths].join(", ")}`,
	}));
}

function some(region: LaidRegion, is: (one: LaidRegion) => boolean): boolean {
	return (
		is(region) ||
		(region.kind === "cut" && region.pieces.some((piece) => some(piece, is)))
	);
}

function hasKept(root: LaidRegion): boolean {
	return some(root, (one) => one.kind === "remnant" && one.keep);
}

function hasPair(root: LaidRegion): boolean {
	return some(root, ({ kind }) => kind === "pair");
}

/**
 * Small pictures of all sheets of a material one below the other, equal ones once, with labels alone: for a hover.
 * `most` of them; what is left out is said.
 */
export function layoutGlance(plan: SawingPlan, most = 3): string {
	const width = 400;
	const kinds = new Map<string, { index: number; count: number }>();
	plan.sheets.forEach((sheet, index) => {
		const key = JSON.stringify([
			sheet.name,
			sheet.length,
			sheet.width,
			likeness(sheet.root),
		]);
		const known = kinds.get(key);
		if (known) known.count += 1;
		else kinds.set(key, { index, count: 1 });
	});
	if (kinds.size === 0) return "";
	const svg: string[] = [];
	let y = 16;
	const shown = [...kinds.values()].slice(0, most);
	for (const { index, count } of shown) {
		const sheet = plan.sheets[index] as LaidSheet;
		const name = `${count > 1 ? `${count} x ` : ""}${sheet.name}${sheet.onHand ? ", on hand" : ""}`;
		for (const line of wrapToWidth(name, width - 2 * edge, 11)) {
			svg.push(words(line, edge, y, 11));
			y += 14;
		}
		const frame = frameOf(sheet, {
			left: edge,
			top: y - 8,
			width: width - 2 * edge,
			height: 200,
			stretch: sheet.length > 6 * sheet.width,
		});
		svg.push(
			drawSheet(plan, index, frame, { numbers: false, sizes: false }).svg,
		);
		y += frame.area.height + 12;
	}
	const left = kinds.size - shown.length;
	if (left > 0) {
		svg.push(words(`and ${counted(left, "more layout")}`, edge, y, 11));
		y += 14;
	}
	return svgOf(width, y - 6, `How ${plan.layout.stock.id} is sawn up`, svg);
}

/** What shows of a tree: where what lies. */
function likeness(region: LaidRegion): unknown {
	const { kind, x, y, length, width } = region;
	const place = [kind, x, y, length, width];
	switch (region.kind) {
		case "part":
			return [...place, region.of.label];
		case "pair":
			return [...place, ...region.of.map(({ label }) => label)];
		case "remnant":
			return [...place, region.keep];
		case "cut":
			return [...place, region.pieces.map(likeness)];
	}
}

function words(
	text: string,
	x: number,
	y: number,
	size: number,
	bold = false,
): string {
	if (text === "") return "";
	return `<text x="${px(x)}" y="${px(y)}" font-size="${size}"${bold ? ' font-weight="bold"' : ""} class="ink">${escapeXml(text)}</text>`;
}

/** Dark on a dark screen; black on white in print and where a reader of SVG knows no styles. */
const style =
	".paper{fill:#fff}.wood{fill:#f1e6d2}.ink{fill:#111}.line{stroke:#111}.faint{stroke:#666}" +
	"@media screen and (prefers-color-scheme:dark){.paper{fill:#1e1e1e}.wood{fill:#3a3226}.ink{fill:#eee}.line{stroke:#ddd}.faint{stroke:#999}}";

function svgOf(
	width: number,
	height: number,
	title: string,
	parts: readonly string[],
): string {
	const size = `width="${width}" height="${px(height)}"`;
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${width} ${px(height)}" font-family="sans-serif" role="img">`,
		`<title>${escapeXml(title)}</title><style>${style}</style>`,
		`<rect width="${width}" height="${px(height)}" fill="#fff" class="paper"/>`,
		`<g fill="none" stroke-width="0.8">${parts.join("")}</g></svg>\n`,
	].join("");
}
