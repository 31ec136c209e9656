// A little drawing of a shelf that sags: what it stands on, what stands on it, how it bends at first and over the years. Pure SVG
// text in colours that can be read on light and on dark ground.

import { escapeXml } from "./svg.ts";

export interface ShelfPicture {
	/** mm. */
	readonly length: number;
	/** From the left end, mm. */
	readonly supports: readonly number[];
	/** Downward, mm, at a place from the left end. */
	readonly deflectionAt: (x: number) => number;
	/** Over the years / at first. */
	readonly creep: number;
	/** Where it sags most, mm from the left end, and the words to write there. */
	readonly worst: { readonly at: number; readonly label: string };
	/** The span that is told, and the words for it. */
	readonly span: {
		readonly from: number;
		readonly to: number;
		readonly label: string;
	};
	/** What stands on it. */
	readonly load: string;
	/** Farther than a limit. */
	readonly tooMuch: boolean;
}

const width = 380;
const height = 130;
const left = 24;
const right = width - 24;
const level = 52;
/** The most that the line over the years is drawn down, px. */
const deepest = 34;

// Middle tones: each has a contrast of 3 to 1 or more against white and against a dark editor (#1e1e1e).
const ink = "#808080";
const wood = "#b3701f";
const ok = "#2e9152";
const bad = "#d64545";
const force = "#3a86d0";

/** How many times the sag is drawn larger than it is, for a drawing as long as the shelf. */
export function exaggeration(picture: ShelfPicture): number {
	const { scaleX, scaleY } = scalesOf(picture);
	const times = scaleY / scaleX;
	return times >= 10 ? Math.round(times / 5) * 5 : Math.round(times);
}

export function shelfDeflection(picture: ShelfPicture): string {
	const { length, supports, deflectionAt, creep, worst, span } = picture;
	const { scaleX, scaleY } = scalesOf(picture);
	const x = (mm: number): string => (left + mm * scaleX).toFixed(1);
	const y = (mm: number, lift = 0): string =>
		(level + mm * scaleY - lift).toFixed(1);
	const steps = 48;
	const curve = (factor: number): string =>
		Array.from({ length: steps + 1 }, (_, i) => {
			const at = (length * i) / steps;
			return `${x(at)},${y(deflectionAt(at) * factor)}`;
		}).join(" ");
	const arrows = Array.from({ length: 11 }, (_, i) => {
		const at = left + 6 + ((right - left - 12) * i) / 10;
		return `M${at.toFixed(1)} 26v12m-3 -4l3 4l3 -4`;
	}).join("");
	const feet = supports
		.map((at) => `M${x(at)} ${level + 5}l-6 11h12z`)
		.join("");
	const below = height - 14;
	const middle = (span.from + span.to) / 2;
	const colour = picture.tooMuch ? bad : ok;
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
		`<path d="${arrows}" fill="none" stroke="${force}" stroke-width="1.5"/>`,
		`<text x="${width / 2}" y="17" text-anchor="middle" fill="${force}">${escapeXml(picture.load)}</text>`,
		`<path d="M${left} ${level}H${right}" stroke="${ink}" stroke-dasharray="3 3"/>`,
		`<path d="${feet}" fill="${ink}"/>`,
		`<polyline points="${curve(creep)}" fill="none" stroke="${wood}" stroke-width="1.5" stroke-dasharray="5 3"/>`,
		`<polyline points="${curve(1)}" fill="none" stroke="${wood}" stroke-width="5" stroke-linejoin="round"/>`,
		`<circle cx="${x(worst.at)}" cy="${y(deflectionAt(worst.at))}" r="3" fill="${colour}"/>`,
		`<text x="${clamp(left + worst.at * scaleX, 70)}" y="${(level + Math.max(0, deflectionAt(worst.at)) * creep * scaleY + 16).toFixed(1)}" text-anchor="middle" fill="${colour}">${escapeXml(worst.label)}</text>`,
		`<path d="M${x(span.from)} ${below}H${x(span.to)}M${x(span.from)} ${below - 4}v8M${x(span.to)} ${below - 4}v8" stroke="${ink}" fill="none"/>`,
		`<text x="${clamp(left + middle * scaleX, 40)}" y="${below + 12}" text-anchor="middle" fill="${ink}">${escapeXml(span.label)}</text>`,
		"</svg>",
	].join("");
}

/** px for a mm, along and down. */
function scalesOf({ length, deflectionAt, creep }: ShelfPicture): {
	readonly scaleX: number;
	readonly scaleY: number;
} {
	let most = 0;
	for (let i = 0; i <= 48; i++)
		most = Math.max(most, Math.abs(deflectionAt((length * i) / 48)) * creep);
	return {
		scaleX: (right - left) / length,
		scaleY: most > 0 ? deepest / most : 0,
	};
}

/** A place for the middle of a text, so far from both sides. */
function clamp(at: number, margin: number): string {
	return Math.min(width - margin, Math.max(margin, at)).toFixed(1);
}
