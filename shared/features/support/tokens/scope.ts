// Which names are in force where, read from the tree alone: enough to colour them, without waiting for the evaluation.

import {
	type Block,
	type Construct,
	type ContextId,
	constructAt,
	type Declares,
	type FileNode,
	fill,
	type NameNode,
	type Statement,
} from "../../../../grammar/index.ts";
import { modifierBits, type TokenTypeName, typeOfDeclared } from "./legend.ts";

export interface Named {
	readonly kind: Declares;
	readonly type: TokenTypeName;
	/** Bits, without that of the declaration. */
	readonly modifiers: number;
	/** What stands behind a dot. */
	readonly members: Scope | undefined;
}

const readOnly = modifierBits("readonly");

export type Scope = ReadonlyMap<string, Named>;

const panel: Named = {
	kind: "part",
	type: "part",
	modifiers: 0,
	members: undefined,
};
const panels: Scope = new Map(
	["top", "bottom", "left", "right", "back"].map((name) => [name, panel]),
);

/** Names that a body declares, those of the things in it as their members. The first of equal names holds. */
export function scopeOf(
	body: FileNode | Block,
	context: ContextId | undefined,
): Scope {
	const scope = new Map<string, Named>();
	if (context) {
		for (const statement of body.statements) declare(scope, statement, context);
	}
	return scope;
}

function declare(
	scope: Map<string, Named>,
	statement: Statement,
	context: ContextId,
): void {
	const construct = constructAt(context, statement.head);
	if (!construct?.declares) return;
	const names = declaredNames(statement, construct);
	if (names.length === 0) return;
	const named = {
		...namedBy(construct, context),
		members: membersOf(statement, construct),
	};
	for (const { text } of names) {
		if (!scope.has(text)) scope.set(text, named);
	}
}

/** What the names of a line are; a given of a component is what its user may set. Throws for a line that declares nothing. */
export function namedBy(construct: Construct, context: ContextId): Named {
	const { declares: kind, head } = construct;
	if (!kind) throw new Error(`\`${head}\` declares nothing`);
	return {
		kind,
		type:
			kind === "import"
				? "variable"
				: head === "given" && context === "component"
					? "parameter"
					: typeOfDeclared[kind],
		modifiers: head === "mark" ? readOnly : 0,
		members: undefined,
	};
}

function membersOf(
	{ block }: Statement,
	{ declares, block: inner }: Construct,
): Scope | undefined {
	// The names of a piece are its own, nobody reaches them by a dot.
	if (!block || declares === "piece" || declares === "component")
		return undefined;
	const own = scopeOf(block, inner);
	return declares === "box" ? new Map([...panels, ...own]) : own;
}

/** The names that a line brings into being; of a half-typed line what stands where they do. */
export function declaredNames(
	statement: Statement,
	construct: Construct,
): readonly NameNode[] {
	const result = fill(statement, construct);
	if (result.ok) {
		const { slots } = result.filled;
		const slot = slots.get("names") ?? slots.get("name");
		return slot?.kind === "names" ? slot.names : [];
	}
	const second = statement.items[1];
	const elements = second?.kind === "list" ? second.elements : [second];
	return elements.flatMap((one) =>
		one?.kind === "path" && one.segments.length === 1 ? one.segments : [],
	);
}
