// What a thing depends on, and what depends on it: step by step, by the names in the text.

import type { Span } from "../../grammar/index.ts";
import { shownText } from "../model/explain.ts";
import type { Design } from "../model/types.ts";
import type { NameWorld } from "./support/names/name-world.ts";
import type { Named, Target } from "./support/names/named.ts";
import { occurrences, subjectAt } from "./support/names/occurrences.ts";

/** One step between two things, with the names in the text that make it. */
export interface Dependency {
	readonly named: Named;
	/** In the file of the thing that depends on the other, in order of place. */
	readonly spans: readonly Span[];
}

/** The thing at an offset: of a size or face that comes with a thing, that thing. */
export function dependentAt(
	world: NameWorld,
	uri: string,
	offset: number,
): Named | undefined {
	const subject = subjectAt(world, uri, offset);
	return subject && thingOf(subject.target);
}

/** What a size comes to, what a part measures: `13 7/32 x 15 3/4 x 45/64`. Undefined for other things, and where nothing is worked out. */
export function measureOf(design: Design, named: Named): string | undefined {
	let top = named;
	while (top.holder) top = top.holder;
	const piece = design.pieces.find(
		({ name, declaration: { origin } }) =>
			name === top.name && origin.uri === top.uri,
	);
	if (!piece) return undefined;
	const { display } = piece;
	if (named.kind === "size") {
		const size = piece.sizes.get(named.name);
		return size && shownText(size, display);
	}
	const part = piece.parts.find(
		({ declaration: { nameSpan, origin } }) =>
			origin.uri === named.uri && nameSpan.start === named.node.span.start,
	);
	return (
		part &&
		[part.length, part.width, part.thick]
			.map((size) => shownText(size, display))
			.join(" x ")
	);
}

/** What the text of a thing names, in order of its first mention; what stands in the thing itself is left out. */
export function dependsOn(world: NameWorld, named: Named): Dependency[] {
	const file = world.file(named.uri);
	const found = new Map<Named, Span[]>();
	for (const statement of file?.statements ?? []) {
		for (const mention of statement.mentions) {
			if (!isWithin(mention.holder, named)) continue;
			// `foot.rail.top` depends on the rail.
			for (let index = mention.segments.length - 1; index >= 0; index--) {
				const target = world.target({ mention, index });
				const other = target && thingOf(target);
				if (!other) continue;
				if (!isWithin(other, named)) add(found, other, mention.path.span);
				break;
			}
		}
	}
	return listed(found);
}

/** Whose texts name a thing, in the order of the files and of place. */
export function dependents(
	world: NameWorld,
	named: Named,
	uris: Iterable<string>,
): Dependency[] {
	const found = new Map<Named, Span[]>();
	const target: Target = { kind: "named", named, suffix: "", mirrored: false };
	for (const { mention } of occurrences(world, target, uris)) {
		const holder = mention?.holder;
		if (holder && !isWithin(holder, named))
			add(found, holder, mention.path.span);
	}
	return listed(found);
}

function thingOf(target: Target): Named | undefined {
	return target.kind === "named" ? target.named : target.of;
}

/** Both of a pair of legs have the same text. */
function isWithin(inner: Named | undefined, outer: Named): boolean {
	for (let at = inner; at; at = at.holder)
		if (at.statement === outer.statement) return true;
	return false;
}

function add(found: Map<Named, Span[]>, named: Named, span: Span): void {
	const spans = found.get(named) ?? [];
	found.set(named, spans);
	spans.push(span);
}

function listed(found: ReadonlyMap<Named, readonly Span[]>): Dependency[] {
	return [...found].map(([named, spans]) => ({ named, spans }));
}
