// Builds a solid a second time in Manifold, an independent solid modeller.

import Module, { type Manifold } from "manifold-3d";
import type { Box, Outline, Solid, Vec3 } from "../../shared/geometry/solid.ts";

const modeller = await Module();
modeller.setup();

/** The same solid by boolean operations on meshes. */
export function modelled(solid: Solid): Manifold {
	let result = modelledBox(solid.box);
	for (const outline of solid.outlines) {
		result = result.intersect(modelledPrism(outline, solid.box));
	}
	for (const cut of solid.cuts) {
		result = result.subtract(modelledBox(cut));
	}
	return result;
}

function modelledBox(box: Box): Manifold {
	const size: [number, number, number] = [
		box.max[0] - box.min[0],
		box.max[1] - box.min[1],
		box.max[2] - box.min[2],
	];
	return modeller.Manifold.cube(size).translate(
		box.min[0],
		box.min[1],
		box.min[2],
	);
}

function modelledPrism(outline: Outline, box: Box): Manifold {
	// Long enough to stand out of the box at both ends along every axis.
	const reach =
		10 + Math.max(...box.min.map(Math.abs), ...box.max.map(Math.abs));
	const polygon = outline.points.map((p): [number, number] => [p[0], p[1]]);
	const upright = modeller.Manifold.extrude([polygon], 2 * reach).translate(
		0,
		0,
		-reach,
	);
	if (outline.plane === "xy") return upright;
	// Columns: where u, v and the extrusion go.
	const columns =
		outline.plane === "yz"
			? [0, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 1]
			: [1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1];
	return upright.transform(columns as Parameters<Manifold["transform"]>[0]);
}

/** Centre of gravity from the mesh by the divergence theorem; its points have single precision. */
export function modelledCentre(solid: Manifold): Vec3 {
	const mesh = solid.getMesh();
	const point = (corner: number): Vec3 => {
		const at = (mesh.triVerts[corner] as number) * mesh.numProp;
		return [
			mesh.vertProperties[at] as number,
			mesh.vertProperties[at + 1] as number,
			mesh.vertProperties[at + 2] as number,
		];
	};
	const origin = point(0);
	let volume = 0;
	const moment: [number, number, number] = [0, 0, 0];
	for (let i = 0; i < mesh.triVerts.length; i += 3) {
		const [a, b, c] = [point(i), point(i + 1), point(i + 2)].map(
			(p): Vec3 => [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]],
		) as [Vec3, Vec3, Vec3];
		const six =
			a[0] * (b[1] * c[2] - b[2] * c[1]) +
			a[1] * (b[2] * c[0] - b[0] * c[2]) +
			a[2] * (b[0] * c[1] - b[1] * c[0]);
		volume += six / 6;
		for (const k of [0, 1, 2] as const) {
			moment[k] += (six / 24) * (a[k] + b[k] + c[k]);
		}
	}
	return [
		origin[0] + moment[0] / volume,
		origin[1] + moment[1] / volume,
		origin[2] + moment[2] / volume,
	];
}
