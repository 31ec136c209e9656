// Volume and centre of gravity of a solid, exact to floating rounding.

import { disjointBoxes } from "./cells.ts";
import { clippedSection, sectionAt, walk } from "./sections.ts";
import {
	type Axis,
	type Box,
	commonBox,
	isEmpty,
	normalOf,
	type Outline,
	planeAxes,
	type Solid,
	type Vec3,
} from "./solid.ts";

/** Volume in cubic mm and centre of gravity in mm (uniform density). */
export interface Measure {
	readonly volume: number;
	/** The middle of the box where the solid is empty. */
	readonly centre: Vec3;
}

/** Volume and first moments (volume times coordinate) about the origin. */
interface Moments {
	volume: number;
	x: number;
	y: number;
	z: number;
}

/** Volume and centre of gravity of a solid. */
export function measure(solid: Solid): Measure {
	const { box, outlines, cuts } = solid;
	const sum: Moments = { volume: 0, x: 0, y: 0, z: 0 };
	const whole: Moments = { volume: 0, x: 0, y: 0, z: 0 };
	addMoments(box, outlines, whole);
	add(sum, whole, 1);
	if (cuts.length > 0) {
		const inside = cuts.map((cut) => commonBox(box, cut));
		for (const cut of disjointBoxes(inside)) {
			const part: Moments = { volume: 0, x: 0, y: 0, z: 0 };
			addMoments(cut, outlines, part);
			add(sum, part, -1);
		}
	}
	// What is left of subtraction alone is nothing.
	if (!(sum.volume > whole.volume * 1e-13)) {
		return Number.isNaN(sum.volume)
			? { volume: sum.volume, centre: middleOf(box) }
			: { volume: 0, centre: middleOf(box) };
	}
	return {
		volume: sum.volume,
		centre: [sum.x / sum.volume, sum.y / sum.volume, sum.z / sum.volume],
	};
}

/** Volume of a solid, cubic mm. */
export function volumeOf(solid: Solid): number {
	return measure(solid).volume;
}

/** Volume of the part of a box that lies within every outline, cubic mm. */
export function shapedVolume(box: Box, outlines: readonly Outline[]): number {
	const sum: Moments = { volume: 0, x: 0, y: 0, z: 0 };
	addMoments(box, outlines, sum);
	return sum.volume;
}

function add(sum: Moments, part: Moments, sign: 1 | -1): void {
	sum.volume += sign * part.volume;
	sum.x += sign * part.x;
	sum.y += sign * part.y;
	sum.z += sign * part.z;
}

function middleOf(box: Box): Vec3 {
	return [
		(box.min[0] + box.max[0]) / 2,
		(box.min[1] + box.max[1]) / 2,
		(box.min[2] + box.max[2]) / 2,
	];
}

function addMoments(
	box: Box,
	outlines: readonly Outline[],
	sum: Moments,
): void {
	if (isEmpty(box)) return;
	const first = outlines[0];
	if (first === undefined) {
		const volume =
			(box.max[0] - box.min[0]) *
			(box.max[1] - box.min[1]) *
			(box.max[2] - box.min[2]);
		addAt(sum, volume, middleOf(box));
		return;
	}
	if (outlines.length === 1) {
		addPrism(box, first, sum);
		return;
	}
	addStrips(box, outlines, sum);
}

function addAt(sum: Moments, volume: number, centre: Vec3): void {
	sum.volume += volume;
	sum.x += volume * centre[0];
	sum.y += volume * centre[1];
	sum.z += volume * centre[2];
}

function addPrism(box: Box, outline: Outline, sum: Moments): void {
	const [u, v] = planeAxes[outline.plane];
	const w = normalOf(outline.plane);
	const section = clippedSection(
		outline.points,
		box.min[u],
		box.max[u],
		box.min[v],
		box.max[v],
	);
	const thickness = box.max[w] - box.min[w];
	const moment: [number, number, number] = [0, 0, 0];
	moment[u] = section.u * thickness;
	moment[v] = section.v * thickness;
	moment[w] = (section.area * thickness * (box.min[w] + box.max[w])) / 2;
	sum.volume += section.area * thickness;
	sum.x += moment[0];
	sum.y += moment[1];
	sum.z += moment[2];
}

/** Gauss-Legendre points of order two on 0 to 1: exact to the third degree, which is what the moments have. */
const gaussPoints = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];

function addStrips(box: Box, outlines: readonly Outline[], sum: Moments): void {
	const axis = walkingAxis(outlines);
	const [u, v]: readonly [Axis, Axis] =
		axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
	const moment: [number, number, number] = [0, 0, 0];
	walk(box, outlines, axis, (strip) => {
		const half = (strip.to - strip.from) / 2;
		for (const t of gaussPoints) {
			const section = sectionAt(strip, t);
			const s = strip.from + (strip.to - strip.from) * t;
			sum.volume += section.area * half;
			moment[axis] += section.area * s * half;
			moment[u] += section.u * half;
			moment[v] += section.v * half;
		}
		return true;
	});
	sum.x += moment[0];
	sum.y += moment[1];
	sum.z += moment[2];
}

/** The axis across which stand the fewest outline points: none with one or two shaped planes. */
export function walkingAxis(outlines: readonly Outline[]): Axis {
	const points: [number, number, number] = [0, 0, 0];
	for (const outline of outlines) {
		points[normalOf(outline.plane)] += outline.points.length;
	}
	const least = Math.min(...points);
	return points.indexOf(least) as Axis;
}
