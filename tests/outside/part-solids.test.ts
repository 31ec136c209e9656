// Volume and centre of gravity of every part of every shipped design, against Manifold (an independent solid modeller).

import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { compile } from "../../shared/model/compile.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { modelled, modelledCentre } from "../harness/modeller.ts";

const folders = ["../../shared/designs/", "../corpus/"].map((path) =>
	fileURLToPath(new URL(path, import.meta.url)),
);

const texts = new Map(
	folders.flatMap((folder) =>
		readdirSync(folder)
			.filter((name) => name.endsWith(".rod"))
			.map((name): [string, string] => [
				`/${name}`,
				readFileSync(`${folder}${name}`, "utf8"),
			]),
	),
);

const parts = [...texts.keys()].flatMap((uri) =>
	compile(sourcesOf(texts), uri).pieces.flatMap((piece) => piece.parts),
);

it("has parts to look at, shaped ones among them", () => {
	expect(parts.length).toBeGreaterThan(60);
	expect(
		parts.filter((part) => part.solid.outlines.length > 0).length,
	).toBeGreaterThan(8);
	expect(
		parts.filter((part) => part.solid.cuts.length > 0).length,
	).toBeGreaterThan(10);
});

it.each(parts.map((part) => [part.id, part] as const))(
	"%s weighs and balances as the modeller says",
	(_, part) => {
		const other = modelled(part.solid);
		const volume = other.volume();
		expect(volume).toBeGreaterThan(0);
		expect(Math.abs(part.volume - volume) / volume).toBeLessThan(1e-6);
		const centre = modelledCentre(other);
		const { min, max } = part.solid.box;
		// Relative to the part's own size: the modeller's mesh has single precision.
		const size = Math.max(
			...[0, 1, 2].map((i) => (max[i] ?? 0) - (min[i] ?? 0)),
		);
		for (const axis of [0, 1, 2] as const)
			expect(Math.abs(part.centre[axis] - centre[axis]) / size).toBeLessThan(
				1e-6,
			);
	},
);
