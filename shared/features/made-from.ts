// What a thing is made from, and what is made from it: components and the things made from them, materials and the parts
// cut from them.

import type { NameWorld } from "./support/names/name-world.ts";
import type { Mention, Named } from "./support/names/named.ts";
import { occurrences, subjectAt } from "./support/names/occurrences.ts";

/** The component of a thing made from one; the materials of a part, box, leg, trim, veneer or mount. Undefined where nothing is named. */
export function madeFrom(
	world: NameWorld,
	uri: string,
	offset: number,
): Named[] | undefined {
	const subject = subjectAt(world, uri, offset);
	if (!subject) return undefined;
	const { target } = subject;
	const named = target.kind === "named" ? target.named : target.of;
	const file = named && world.file(named.uri);
	if (!named || !file) return [];
	const found = new Set<Named>();
	for (const { mentions } of file.statements)
		for (const mention of mentions) {
			if (mention.holder?.statement !== named.statement) continue;
			const made = world.whole(mention);
			if (made?.kind === "named" && isMaking(mention, made.named))
				found.add(made.named);
		}
	return [...found];
}

/** The things that are made from a component, the things that are cut from a material or a variant of it. */
export function madeOf(
	world: NameWorld,
	uri: string,
	offset: number,
	uris: Iterable<string>,
): Named[] | undefined {
	const subject = subjectAt(world, uri, offset);
	if (!subject) return undefined;
	const { target } = subject;
	const named = target.kind === "named" ? target.named : undefined;
	const found = new Set<Named>();
	if (
		named?.kind === "component" ||
		named?.kind === "material" ||
		named?.kind === "variant"
	)
		for (const { mention } of occurrences(world, target, uris)) {
			const whole = mention && world.whole(mention);
			if (
				mention?.holder &&
				whole?.kind === "named" &&
				isMaking(mention, whole.named)
			)
				found.add(mention.holder);
		}
	return [...found];
}

/** The mention is what something is made from: `of ply.half`, `make foot from base`. */
function isMaking({ role, statement, holder }: Mention, named: Named): boolean {
	if (role !== "read") return false;
	if (named.kind === "component") return statement === holder?.statement;
	if (named.kind !== "variant" && named.kind !== "material") return false;
	return statement.items.some(
		(item) => item.kind === "path" && item.segments[0]?.text === "of",
	);
}
