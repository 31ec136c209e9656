// A free-body sketch of a piece on its wall, seen from the side: what pulls and pushes on it, and where. Pure SVG text in
// colours that can be read on light and on dark ground.

import { escapeXml } from "./svg.ts";

export interface CleatPicture {
	/** From the wall's face and up from the lower edge of the piece, mm. */
	readonly depth: number;
	readonly height: number;
	/** The middle of the bevel, or the screws of a rail. */
	readonly hook: { readonly out: number; readonly up: number };
	/** Half of the wall strip's height and thickness, to draw it; undefined for a rail. */
	readonly strip:
		| { readonly height: number; readonly thick: number }
		| undefined;
	/** Slope of the bevel: rise over run. */
	readonly slope: number;
	/** The weight with its loads: how far out, and the words. */
	readonly weight: { readonly out: number; readonly label: string };
	/** What the hook carries, down and level. */
	readonly down: string;
	readonly level: string;
	/** At the lower edge, against the wall; undefined where legs stand instead. */
	readonly lean: string | undefined;
	/** Front legs; `length` from the floor to the lower edge, mm. */
	readonly legs:
		| { readonly out: number; readonly length: number; readonly label: string }
		| undefined;
	/** Pull on the wall screws. */
	readonly pull: string;
}

const width = 440;
const height = 240;
/** The face of the wall, px. */
const wall = 170;
const top = 26;

// Middle tones: each has a contrast of 3 to 1 or more against white and against a dark editor (#1e1e1e).
const ink = "#808080";
const wood = "#b3701f";
const force = "#3a86d0";
const heavy = "#d64545";

export function cleatForces(picture: CleatPicture): string {
	const { depth, hook, strip, weight, lean, legs } = picture;
	const legLength = legs ? Math.min(legs.length, 1.2 * picture.height) : 0;
	const scale = Math.min(
		(height - top - 34) / (picture.height + legLength),
		150 / depth,
	);
	const x = (out: number): number => wall + out * scale;
	const y = (up: number): number => top + (picture.height - up) * scale;
	const at = (px: number): string => px.toFixed(1);
	const floor = y(-legLength);
	const lowest = Math.max(y(0), floor);
	const parts = [
		`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
		`<path d="M${wall} ${top - 16}V${at(lowest + 12)}" stroke="${ink}" stroke-width="2"/>`,
		`<path d="${hatching(lowest + 12)}" stroke="${ink}" fill="none"/>`,
		`<rect x="${at(x(0))}" y="${at(y(picture.height))}" width="${at(depth * scale)}" height="${at(picture.height * scale)}" fill="none" stroke="${wood}" stroke-width="2"/>`,
	];
	if (legs) {
		parts.push(
			`<path d="M${at(x(legs.out))} ${at(y(0))}V${at(floor)}" stroke="${wood}" stroke-width="6"/>`,
			`<path d="M${wall} ${at(floor)}H${at(x(depth) + 20)}" stroke="${ink}"/>`,
		);
	}
	if (strip) {
		const low = hook.up - strip.height;
		const half = (strip.thick * picture.slope) / 2;
		const corners = [
			[0, low],
			[strip.thick, low],
			[strip.thick, hook.up + half],
			[0, hook.up - half],
		]
			.map(([out = 0, up = 0]) => `${at(x(out))},${at(y(up))}`)
			.join(" ");
		parts.push(
			`<polygon points="${corners}" fill="none" stroke="${wood}" stroke-width="1.5"/>`,
		);
	}
	const hookX = x(hook.out);
	const hookY = y(hook.up);
	const weightX = x(weight.out);
	const weightY = y(picture.height / 2);
	parts.push(
		arrow(weightX, weightY, 0, 34, heavy),
		`<circle cx="${at(weightX)}" cy="${at(weightY)}" r="3" fill="${heavy}"/>`,
		text(weightX + 8, weightY + 30, "start", heavy, weight.label),
		// On the piece: up and toward the wall.
		arrow(hookX, hookY + 28, 0, -26, force),
		text(hookX + 8, hookY + 24, "start", force, picture.down),
		arrow(hookX + 44, hookY, -34, 0, force),
		text(hookX + 50, hookY + 4, "start", force, picture.level),
		// On the screws: out of the wall.
		arrow(wall - 40, hookY, 34, 0, heavy),
		text(wall - 44, hookY + 4, "end", heavy, picture.pull),
	);
	if (lean !== undefined)
		parts.push(
			arrow(wall - 40, y(0) - 6, 36, 0, force),
			text(wall - 44, y(0) - 2, "end", force, lean),
		);
	if (legs)
		parts.push(
			arrow(x(legs.out), floor + 22, 0, -20, force),
			text(x(legs.out) + 8, floor + 20, "start", force, legs.label),
		);
	parts.push("</svg>");
	return parts.join("");
}

function hatching(to: number): string {
	let path = "";
	for (let at = top - 10; at < to; at += 12) path += `M${wall} ${at}l-8 8`;
	return path;
}

/** From a point by so much, with a head at the end. */
function arrow(
	x: number,
	y: number,
	dx: number,
	dy: number,
	colour: string,
): string {
	const [ux, uy] = [Math.sign(dx), Math.sign(dy)];
	const head = `m${-5 * ux - 4 * uy} ${-5 * uy - 4 * ux}L${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}l${-5 * ux + 4 * uy} ${-5 * uy + 4 * ux}`;
	return `<path d="M${x.toFixed(1)} ${y.toFixed(1)}l${dx} ${dy}${head}" fill="none" stroke="${colour}" stroke-width="2"/>`;
}

function text(
	x: number,
	y: number,
	anchor: "start" | "end",
	colour: string,
	words: string,
): string {
	return `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}" fill="${colour}">${escapeXml(words)}</text>`;
}
