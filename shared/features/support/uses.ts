// Where a body of statements uses names, by the table: as a size, as a thing or face, or as a material. Read from the tree, so
// that it is there while other lines have errors.

import {
	type Block,
	type Construct,
	type ContextId,
	contexts,
	type Expression,
	expressionsOf,
	type FileNode,
	type FormElement,
	fill,
	formsOf,
	type PathNode,
	phraseWords,
	reservedNames,
	type SlotType,
	type SlotValue,
	type Statement,
	walk,
} from "../../../grammar/index.ts";
import { namesOf } from "./known-names.ts";
import { boxSides, readAround } from "./names/read-names.ts";
import { type PlacedStatement, placedIn } from "./place.ts";

export interface Use {
	readonly path: PathNode;
	/** `unread`: in a line that does not fit its row. */
	readonly as: "size" | "thing" | "material" | "unread";
	/** The line that it stands in. */
	readonly placed: PlacedStatement;
	/** Names that blocks around it declare: they hide those outside. */
	readonly hidden: ReadonlySet<string>;
}

const none: ReadonlySet<string> = new Set();

/** The uses of names in a statement, its block included. */
export function usesIn(
	statement: Statement,
	context: ContextId | undefined,
	hidden: ReadonlySet<string> = none,
): Use[] {
	const placed = placedIn(context, statement);
	const uses: Use[] = [...usesInLine(placed, hidden)];
	const { block } = statement;
	if (!block) return uses;
	const inner = new Set(hidden);
	const { construct } = placed;
	if (construct?.declares === "box") for (const one of boxSides) inner.add(one);
	if (construct?.declares === "box" || construct?.declares === "leg")
		for (const one of block.statements)
			for (const name of namesOf(one, construct.block)) inner.add(name);
	const isAround = construct?.block && readAround[construct.block];
	for (const one of block.statements)
		uses.push(
			...usesIn(one, construct?.block, isAround?.(one.head) ? hidden : inner),
		);
	return uses;
}

function usesInLine(
	placed: PlacedStatement,
	hidden: ReadonlySet<string>,
): Use[] {
	const { statement, construct } = placed;
	const result = construct && fill(statement, construct);
	const uses: Use[] = [];
	const add = (path: PathNode, as: Use["as"]): void => {
		uses.push({ path, as, placed, hidden });
	};
	if (!construct || !result?.ok) {
		for (const item of statement.items.slice(1))
			for (const one of expressionsOf(item))
				if (one.kind === "path") add(one, "unread");
		return uses;
	}
	for (const [slot, value] of result.filled.slots)
		for (const expression of expressionsIn(value)) {
			const type = slotType(construct, slot);
			if (value.kind === "refs" && expression.kind === "path")
				add(expression, type === "material" ? "material" : "thing");
			else
				for (const one of expressionsOf(expression))
					if (one.kind === "path") add(one, "size");
		}
	for (const value of result.filled.slots.values())
		if (value.kind === "position" && value.position.datum)
			add(value.position.datum, "thing");
	return uses;
}

/** The sizes that a slot holds, or the things that it names; the datum of a place aside. */
export function expressionsIn(value: SlotValue): readonly Expression[] {
	switch (value.kind) {
		case "expression":
			return [value.expression];
		case "position":
			return value.position.offsets;
		case "refs":
			return value.refs;
		case "names":
			return [];
	}
}

/** The type of a slot by its name; undefined for a choice of words. */
export function slotType(
	construct: Construct,
	slot: string,
): SlotType | undefined {
	const search = (elements: readonly FormElement[]): SlotType | undefined => {
		for (const element of elements) {
			if (element.kind === "slot" && element.slot === slot) return element.type;
			if (element.kind === "optional") {
				const found = search(element.elements);
				if (found) return found;
			}
		}
		return undefined;
	};
	for (const form of formsOf(construct)) {
		const found = search(form.elements);
		if (found) return found;
	}
	return undefined;
}

let words: ReadonlySet<string> | undefined;

/** Words that would be read as something else, or read badly, if they were names. */
function wordsOfLanguage(): ReadonlySet<string> {
	words ??= new Set([
		...reservedNames,
		...phraseWords(),
		...Object.values(contexts).flatMap((rows) => rows.map(({ head }) => head)),
		...boxSides,
		...["rear", "inside", "outside", "min", "max", "abs", "round"],
	]);
	return words;
}

/** Good as a head beside other sizes, and understood by everybody. */
const plainSizes: ReadonlySet<string> = new Set(["width", "height", "depth"]);

/** Every name that stands anywhere in a text, in any meaning. */
export function namesWritten(tree: FileNode | Block): Set<string> {
	const names = new Set<string>();
	walk(tree, (node) => {
		if (node.kind === "name") names.add(node.text);
	});
	return names;
}

/** The wanted name, with a number behind it where it is taken or a word of the language. */
export function freeName(wanted: string, taken: ReadonlySet<string>): string {
	const start =
		wordsOfLanguage().has(wanted) && !plainSizes.has(wanted)
			? `${wanted}-size`
			: wanted;
	for (let count = 1; ; count++) {
		const name = count === 1 ? start : `${start}-${count}`;
		if (!taken.has(name)) return name;
	}
}
