// Pointers from parts that have no room for their label to words beside the sheet.

import type { Drawing } from "./sheet-drawing.ts";
import type { Frame } from "./sheet-frame.ts";
import { escapeXml, px, textWidth } from "./svg.ts";

/** Pointers from what has no room to words in a row above or below the sheet; what does not go in there is left out. */
export function callouts(
	things: Drawing["unlabelled"],
	frame: Frame,
	{ left, right }: { readonly left: number; readonly right: number },
): {
	readonly svg: string;
	/** px that are needed above and below the sheet. */
	readonly above: number;
	readonly below: number;
	readonly untold: readonly string[];
} {
	const size = 9;
	const gap = 6;
	const { area } = frame;
	const untold: string[] = [];
	const side = (above: boolean): { svg: string; rows: number } => {
		const own = things
			.filter(
				(one) =>
					one.area.y + one.area.height / 2 < area.y + area.height / 2 === above,
			)
			.map((one) => ({
				...one,
				wide: textWidth(one.text, size, true) + gap,
				at: one.area.x + one.area.width / 2,
			}))
			.sort((a, b) => a.at - b.at);
		const ends: number[] = [];
		const svg = own.map(({ text, wide, at, area: of }) => {
			const wanted = Math.max(left, Math.min(right - wide, at - wide / 2));
			const row = ends.findIndex(
				(end) => Math.max(end, wanted) + wide <= right,
			);
			const line = row >= 0 ? row : ends.length;
			if (line >= 4) {
				untold.push(text);
				return "";
			}
			const start = Math.max(ends[line] ?? left, wanted);
			ends[line] = start + wide;
			const y = above
				? area.y - 8 - line * 12
				: area.y + area.height + 14 + line * 12;
			const x = start + wide / 2;
			const foot = above ? y + 2 : y - size;
			const dot = of.y + of.height / 2;
			// Straight up or down, if it can be.
			const end = Math.max(of.x + 2, Math.min(of.x + of.width - 2, x));
			return `<path d="M${px(x)} ${px(foot)}L${px(end)} ${px(dot)}" stroke-width="0.6" class="line"/><circle cx="${px(end)}" cy="${px(dot)}" r="1.5" class="ink" stroke="none"/><text x="${px(x)}" y="${px(y)}" font-size="${size}" font-weight="bold" text-anchor="middle" class="ink">${escapeXml(text)}</text>`;
		});
		return { svg: svg.join(""), rows: ends.length };
	};
	const [up, down] = [side(true), side(false)];
	return {
		svg: up.svg + down.svg,
		above: up.rows > 0 ? 8 + up.rows * 12 : 0,
		below: down.rows > 0 ? 8 + down.rows * 12 : 0,
		untold,
	};
}
