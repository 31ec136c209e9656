// Looks a layout over as a maker would with a tape: nothing outside, nothing on another thing, every cut one kerf wide.

import type { Rectangle } from "../../shared/cutting/index.ts";
import {
	type LaidRegion,
	type MaterialLayout,
	partsIn,
} from "../../shared/layouts/index.ts";

/** What is wrong with it, a line each; empty if nothing is. */
export function faultsOfLayout(layout: MaterialLayout): readonly string[] {
	const faults: string[] = [];
	const turns = layout.stock.kind === "sheet" && !layout.stock.grain;
	for (const [at, sheet] of layout.sheets.entries()) {
		const tell = (fault: string): void => {
			faults.push(`${layout.stock.id}, sheet ${at + 1}: ${fault}`);
		};
		const whole = { x: 0, y: 0, length: sheet.length, width: sheet.width };
		if (!isInside(sheet.root, whole)) tell("the root is outside");
		if (sheet.root.x < sheet.trim || sheet.root.y < sheet.trim)
			tell("the edges are not trimmed");
		walk(sheet.root, layout.kerf, tell);
		const placed = partsIn(sheet.root);
		for (const { of, place } of placed) {
			const region = partAt(sheet.root, place);
			const turned = region?.kind === "part" && region.turned;
			if (turned && !turns) tell(`${of.id} lies across the grain`);
			const [length, width] = turned
				? [place.width, place.length]
				: [place.length, place.width];
			if (
				layout.kind === "lengths"
					? length < of.length
					: length < of.length || width < of.width
			)
				tell(`${of.id} is smaller than it should be`);
			for (const defect of sheet.defects)
				if (meet(place, defect)) tell(`${of.id} lies on a defect`);
		}
	}
	return faults;
}

/** How often each part or share of one lies on the sheets, by id. */
export function countsOf(
	layouts: readonly MaterialLayout[],
): ReadonlyMap<string, number> {
	const counts = new Map<string, number>();
	for (const { root } of layouts.flatMap(({ sheets }) => sheets))
		for (const { of } of partsIn(root))
			counts.set(of.id, (counts.get(of.id) ?? 0) + 1);
	return counts;
}

function walk(
	region: LaidRegion,
	kerf: number,
	tell: (fault: string) => void,
): void {
	if (region.length <= 0 || region.width <= 0) tell("a piece has no size");
	if (region.kind !== "cut") return;
	const isX = region.along === "x";
	let at = isX ? region.x : region.y;
	for (const [index, piece] of region.pieces.entries()) {
		const start = isX ? piece.x : piece.y;
		if (start !== at) tell(`piece ${index + 1} begins at ${start}, not ${at}`);
		if (!isInside(piece, region)) tell(`piece ${index + 1} sticks out`);
		const across = isX
			? piece.y === region.y && piece.width === region.width
			: piece.x === region.x && piece.length === region.length;
		if (!across) tell(`piece ${index + 1} is not cut edge to edge`);
		at = start + (isX ? piece.length : piece.width) + kerf;
		walk(piece, kerf, tell);
	}
}

function isInside(inner: Rectangle, outer: Rectangle): boolean {
	return (
		inner.x >= outer.x &&
		inner.y >= outer.y &&
		inner.x + inner.length <= outer.x + outer.length &&
		inner.y + inner.width <= outer.y + outer.width
	);
}

function meet(a: Rectangle, b: Rectangle): boolean {
	return (
		a.x < b.x + b.length &&
		b.x < a.x + a.length &&
		a.y < b.y + b.width &&
		b.y < a.y + a.width
	);
}

function partAt(region: LaidRegion, place: Rectangle): LaidRegion | undefined {
	if (region.kind === "cut")
		return region.pieces.flatMap((piece) => partAt(piece, place) ?? [])[0];
	return region.x === place.x && region.y === place.y ? region : undefined;
}
