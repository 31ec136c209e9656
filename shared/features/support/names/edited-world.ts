// The world of names as it would be after an edit that only changes names: statements at the top of a file that the edit does
// not touch are those of the world before.

import {
	type Edit,
	type FileNode,
	parse,
	type Statement,
} from "../../../../grammar/index.ts";
import { applyEdits } from "../../../text/edits.ts";
import { type FileNames, NameWorld } from "./name-world.ts";
import { namesIn } from "./read-names.ts";

/**
 * Spans of the statements that are read anew count from an offset of their own: this world is for comparing, not for telling
 * places. Edits are in order of place and do not overlap. Yields between files, so that others can come in between.
 */
export function* editedWorld(
	world: NameWorld,
	edits: ReadonlyMap<string, readonly Edit[]>,
): Generator<void, NameWorld> {
	const trees = new Map<string, FileNode>();
	for (const [uri, list] of edits) {
		const file = world.file(uri);
		if (file) trees.set(uri, editedTree(file, world.text(uri), list));
		yield;
	}
	return new NameWorld({
		tree: (uri) => trees.get(uri) ?? world.file(uri)?.tree,
		text: (uri) => world.text(uri),
		resolve: (from, path) => world.resolve(from, path),
	});
}

function editedTree(
	{ uri, tree }: FileNames,
	text: string,
	edits: readonly Edit[],
): FileNode {
	// Each statement that changes is read twice: of many, the whole text is quicker.
	if (2 * countChanged(tree, edits) > tree.statements.length)
		return wholeTree(text, edits);
	const statements: Statement[] = [];
	let next = 0;
	for (const statement of tree.statements) {
		const { start, end } = statement.span;
		const first = next;
		while (next < edits.length && (edits[next] as Edit).span.start < end)
			next++;
		if (next === first) {
			statements.push(statement);
			continue;
		}
		const slice = text.slice(start, end);
		const changed = applyEdits(
			slice,
			edits.slice(first, next).map(({ span, text: put }) => ({
				start: span.start - start,
				end: span.end - start,
				text: put,
			})),
		);
		// A statement that ends where its braces do not reads in another way without what stands around it.
		if (!readsAlone(uri, statement, slice)) return wholeTree(text, edits);
		statements.push(...parse(changed).tree.statements);
	}
	return { ...tree, statements };
}

function countChanged(
	{ statements }: FileNode,
	edits: readonly Edit[],
): number {
	let count = 0;
	let next = 0;
	for (const { span } of statements) {
		const first = next;
		while (next < edits.length && (edits[next] as Edit).span.start < span.end)
			next++;
		if (next > first) count++;
	}
	return count;
}

function readsAlone(uri: string, statement: Statement, slice: string): boolean {
	const { tree, balanced } = parse(slice);
	const [alone, ...others] = tree.statements;
	return (
		balanced &&
		others.length === 0 &&
		alone !== undefined &&
		namesIn(uri, alone).mentions.length ===
			namesIn(uri, statement).mentions.length
	);
}

function wholeTree(text: string, edits: readonly Edit[]): FileNode {
	return parse(
		applyEdits(
			text,
			edits.map(({ span: { start, end }, text: put }) => ({
				start,
				end,
				text: put,
			})),
		),
	).tree;
}
