// Paths behind `use … from` lead to their files.

import type { Span } from "../../grammar/index.ts";
import type { NameWorld } from "./support/names/name-world.ts";

export interface DocumentLink {
	/** The path without its quotes. */
	readonly span: Span;
	/** The file that it means. */
	readonly uri: string;
}

/** Of the paths that lead to a file that is there. */
export function documentLinks(world: NameWorld, uri: string): DocumentLink[] {
	const file = world.file(uri);
	return (file?.uses ?? []).flatMap(({ path: { span, value } }) => {
		const target = world.resolve(uri, value);
		return target !== undefined && world.file(target)
			? [{ span: { start: span.start + 1, end: span.end - 1 }, uri: target }]
			: [];
	});
}
