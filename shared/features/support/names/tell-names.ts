// Names and their places in words, for messages: "the trim at line 12 of wall-rack.rod".

import type { Span } from "../../../../grammar/index.ts";
import type { NameWorld } from "./name-world.ts";
import type { Named, Target } from "./named.ts";

/** What a name is, in the word that its line begins with: `trim`, `shelf`. */
export function wordFor({ construct: { head } }: Named): string {
	return head === "make" ? "thing made" : head;
}

/** `the trim at line 12 of wall-rack.rod`. */
export function tellNamed(world: NameWorld, named: Named): string {
	return `the ${wordFor(named)} at ${tellPlace(world, named.uri, named.node.span)}`;
}

/** `line 12 of wall-rack.rod`. */
export function tellPlace(world: NameWorld, uri: string, span: Span): string {
	const line = world
		.text(uri)
		.slice(0, span.start)
		.split(/\r\n|\r|\n/).length;
	return `line ${line} of ${fileName(uri)}`;
}

/** `the trim at line 12 of wall-rack.rod`, ``the `left` of `case` ``. */
export function tellTarget(world: NameWorld, target: Target): string {
	if (target.kind === "named") return tellNamed(world, target.named);
	const { of, words } = target;
	return of
		? `the \`${words.join(".")}\` of \`${of.name}\``
		: `the ${words.join(".")}`;
}

/** The last name of a uri as people read it. */
export function fileName(uri: string): string {
	const name = uri.slice(uri.lastIndexOf("/") + 1);
	try {
		return decodeURIComponent(name);
	} catch {
		return name;
	}
}
