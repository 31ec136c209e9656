// All places that mean the thing at an offset, in this file and in others.

import type { Span } from "../../grammar/index.ts";
import type { NameWorld } from "./support/names/name-world.ts";
import {
	type Occurrence,
	occurrences,
	subjectAt,
} from "./support/names/occurrences.ts";

export interface ReferencePlace {
	readonly uri: string;
	readonly span: Span;
	/**
	 * `declaration` brings it into being, `write` gives it another value (`set`, `measured`), `read` is any other mention.
	 */
	readonly kind: "declaration" | "write" | "read";
}

/** `uris` are the files in which it may be mentioned, its own among them. Undefined where nothing is named. */
export function references(
	world: NameWorld,
	uri: string,
	offset: number,
	uris: Iterable<string>,
): ReferencePlace[] | undefined {
	const subject = subjectAt(world, uri, offset);
	return subject && occurrences(world, subject.target, uris).map(placeOf);
}

function placeOf({ uri, node, mention }: Occurrence): ReferencePlace {
	return {
		uri,
		span: node.span,
		kind: !mention
			? "declaration"
			: mention.role === "set" ||
					(mention.role === "measured" && mention.segments.at(-1) === node)
				? "write"
				: "read",
	};
}
