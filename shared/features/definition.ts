// From a name to where it is declared, in this file or in one that it uses.

import { nodeAt, type Span } from "../../grammar/index.ts";
import type { Declaration, Origin, Reference } from "../model/types.ts";
import type { Snapshot } from "./support/snapshot.ts";

export interface Target {
	/** What was asked about. */
	readonly from: Span;
	readonly uri: string;
	/** The whole declaration, and the name in it. */
	readonly span: Span;
	readonly nameSpan: Span;
}

/** `resolve` tells which file a path behind `use … from` means. */
export function definition(
	snapshot: Snapshot,
	offset: number,
	resolve: (path: string) => string | undefined,
): Target | undefined {
	const found = declarationAt(snapshot, offset);
	if (found) {
		const { declaration, span } = found;
		return {
			from: span,
			uri: declaration.origin.uri,
			span: declaration.origin.span,
			nameSpan: declaration.nameSpan,
		};
	}
	return usedFile(snapshot, offset, resolve);
}

interface Named {
	readonly declaration: Declaration;
	readonly span: Span;
}

/** The declaration that the name at an offset means or makes; of several that hold the offset the narrowest. */
function declarationAt(
	{ design, uri }: Snapshot,
	offset: number,
): Named | undefined {
	const named: Named[] = [];
	for (const { origin, declaration } of design.references as Reference[]) {
		if (holds(origin, uri, offset))
			named.push({ declaration, span: origin.span });
	}
	for (const declaration of design.declarations) {
		const origin = { uri: declaration.origin.uri, span: declaration.nameSpan };
		if (holds(origin, uri, offset))
			named.push({ declaration, span: origin.span });
	}
	return named.reduce<Named | undefined>(
		(best, one) => (!best || width(one.span) < width(best.span) ? one : best),
		undefined,
	);
}

function usedFile(
	{ result }: Snapshot,
	offset: number,
	resolve: (path: string) => string | undefined,
): Target | undefined {
	const [, statement, item] = nodeAt(result.tree, offset);
	if (statement?.kind !== "statement" || statement.head !== "use")
		return undefined;
	if (item?.kind !== "text") return undefined;
	const uri = resolve(item.value);
	const start = { start: 0, end: 0 };
	return uri === undefined
		? undefined
		: { from: item.span, uri, span: start, nameSpan: start };
}

function holds(origin: Origin, uri: string, offset: number): boolean {
	return (
		origin.uri === uri &&
		origin.span.start <= offset &&
		offset <= origin.span.end
	);
}

function width(span: Span): number {
	return span.end - span.start;
}
