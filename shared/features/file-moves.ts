// Files and folders get other names or places: the paths behind `use … from` that must be written anew, in the files that
// use them as in those that move themselves.

import type { Edit } from "../../grammar/index.ts";
import { pathBetween } from "../sources/path-between.ts";
import type { NameWorld } from "./support/names/name-world.ts";

/** A file or a folder, without a slash at its end. */
export interface Move {
	readonly from: string;
	readonly to: string;
}

/** Where a file comes to lie; the same place if it does not move. The longest of several moves counts. */
export function movedTo(uri: string, moves: readonly Move[]): string {
	const move = moves
		.filter(({ from }) => uri === from || uri.startsWith(`${from}/`))
		.sort((a, b) => b.from.length - a.from.length)[0];
	return move ? move.to + uri.slice(move.from.length) : uri;
}

/** By file, as it is called before the move. Paths that still lead where they led stay as they are written. */
export function pathEdits(
	world: NameWorld,
	uris: Iterable<string>,
	moves: readonly Move[],
): Map<string, Edit[]> {
	const edits = new Map<string, Edit[]>();
	for (const uri of uris) {
		const here = movedTo(uri, moves);
		for (const { path } of world.file(uri)?.uses ?? []) {
			const target = world.resolve(uri, path.value);
			// A path into a package does not say where the package lies.
			if (target === undefined || !/^\.\.?\//.test(path.value)) continue;
			const there = movedTo(target, moves);
			if (here === uri && there === target) continue;
			const now = pathBetween(here, there);
			if (now === undefined || sameWay(now, path.value)) continue;
			const list = edits.get(uri) ?? [];
			edits.set(uri, list);
			const { start, end } = path.span;
			list.push({
				span: { start: start + 1, end: end - 1 },
				text: now.replaceAll(/[\\"]/g, "\\$&"),
			});
		}
	}
	return edits;
}

/** `./stock.rod` and `.//stock.rod`, `../shop/./a.rod`: the same steps. */
function sameWay(a: string, b: string): boolean {
	const steps = (path: string): string =>
		path
			.split("/")
			.filter((one) => one !== "." && one !== "")
			.join("/");
	return steps(a) === steps(b);
}
