// The names of a fixture, as navigation looks at them.

import { parse } from "../../grammar/index.ts";
import {
	type FileNames,
	NameWorld,
} from "../../shared/features/support/names/name-world.ts";
import { resolveRelative } from "../../shared/sources/sources.ts";

/** Each text is read once. Paths resolve as in a folder tree. */
export function nameWorld(texts: ReadonlyMap<string, string>): NameWorld {
	const trees = new Map(
		[...texts].map(([uri, text]) => [uri, parse(text).tree] as const),
	);
	return new NameWorld({
		tree: (uri) => trees.get(uri),
		text: (uri) => texts.get(uri),
		resolve: resolveRelative,
	});
}

/** All that a file declares, in order of place. */
export function namedIn(file: FileNames | undefined) {
	return (file?.statements ?? []).flatMap(({ all }) => all);
}
