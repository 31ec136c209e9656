// Finds things by what is typed of their names, in many files.

import type { Declares, Span } from "../../grammar/index.ts";
import { compareStrings } from "../text/compare.ts";
import { fuzzyDistance } from "../text/fuzzy.ts";
import type { FileNames } from "./support/names/name-world.ts";
import type { Named } from "./support/names/named.ts";

export interface NamedThing {
	readonly name: string;
	readonly kind: Declares;
	/** The names of what it stands in, from the outside, with dots; empty at the top of a file. */
	readonly container: string;
	readonly uri: string;
	/** The name. */
	readonly span: Span;
}

/** All that a file declares, in order of place. */
export function thingsIn({ statements, uri }: FileNames): NamedThing[] {
	return statements.flatMap(({ all }) =>
		all.map((named) => ({
			name: named.name,
			kind: named.kind,
			container: pathOf(named.holder),
			uri,
			span: { start: named.node.span.start, end: named.node.span.end },
		})),
	);
}

function pathOf(named: Named | undefined): string {
	if (!named) return "";
	const outer = pathOf(named.holder);
	return outer === "" ? named.name : `${outer}.${named.name}`;
}

/**
 * Those that fit, the best first, at most `most`. The query may say where it stands, too: `bench lip`, `case.middle`.
 * Without a query what stands at the top of the files.
 */
export function findThings<T extends NamedThing>(
	query: string,
	things: Iterable<T>,
	most = 500,
): T[] {
	const found: { readonly thing: T; readonly distance: number }[] = [];
	for (const thing of things) {
		const distance = distanceOf(query.trim(), thing);
		if (distance !== undefined) found.push({ thing, distance });
	}
	return found
		.sort(
			(a, b) =>
				a.distance - b.distance ||
				compareStrings(a.thing.name, b.thing.name) ||
				compareStrings(a.thing.uri, b.thing.uri) ||
				a.thing.span.start - b.thing.span.start,
		)
		.slice(0, most)
		.map(({ thing }) => thing);
}

function distanceOf(
	query: string,
	{ name, container }: NamedThing,
): number | undefined {
	if (query === "") return container === "" ? 1 : undefined;
	const alone = fuzzyDistance(query, name);
	if (alone !== undefined) return alone;
	// Only where it is asked for: nearly every letter occurs in a long path.
	if (!/[\s.]/.test(query) || container === "") return undefined;
	const last = /[^\s.]+$/.exec(query)?.[0] ?? "";
	const within = fuzzyDistance(last, name);
	const around = fuzzyDistance(
		query.slice(0, query.length - last.length),
		container,
	);
	return within === undefined || around === undefined
		? undefined
		: 10 + within + around;
}
