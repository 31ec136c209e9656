// Ways through the tree: everything in order, the path to an offset, the statement at an offset.

import type {
	Block,
	Expression,
	FileNode,
	Item,
	Node,
	Statement,
} from "./nodes.ts";

/** The direct children of a node, in order of place. */
export function children(node: Node): readonly Node[] {
	switch (node.kind) {
		case "file":
		case "block":
			return node.statements;
		case "statement":
			return node.block ? [...node.items, node.block] : node.items;
		case "path":
			return node.segments;
		case "call":
			return [node.callee, ...node.args];
		case "unary":
			return [node.operand];
		case "binary":
		case "compare":
			return [node.left, node.right];
		case "cross":
			return node.sizes;
		case "list":
			return node.elements;
		case "group":
			return [node.inner];
		default:
			return [];
	}
}

/** Visits a node and all below it, parents first, in order of place. `false` from `visit` leaves out what is below. */
export function walk(
	node: Node,
	// biome-ignore lint/suspicious/noConfusingVoidType: a visitor that returns nothing goes on.
	visit: (node: Node, parent: Node | undefined) => boolean | void,
	parent?: Node,
): void {
	if (visit(node, parent) === false) return;
	for (const child of children(node)) walk(child, visit, node);
}

/** All statements at any depth, in order of place. */
export function* allStatements(
	parent: FileNode | Block,
): Generator<Statement, void> {
	for (const statement of parent.statements) {
		yield statement;
		if (statement.block) yield* allStatements(statement.block);
	}
}

/** An item and the expressions below it, parents first. */
export function* expressionsOf(item: Item): Generator<Item, void> {
	yield item;
	for (const child of children(item)) {
		if (child.kind !== "name") yield* expressionsOf(child as Expression);
	}
}

/**
 * The nodes that hold an offset, from the file to the innermost. A node holds the offsets at both its ends, since a cursor
 * behind a word means that word; where two nodes touch, the one that begins at the offset is taken.
 */
export function nodeAt(file: FileNode, offset: number): Node[] {
	const path: Node[] = [];
	let node: Node | undefined = file;
	while (node) {
		path.push(node);
		node = childAt(children(node), offset);
	}
	return path;
}

/** The innermost statement that holds an offset, with the ones around it: outermost first, none if it stands outside all. */
export function statementsAt(file: FileNode, offset: number): Statement[] {
	return nodeAt(file, offset).filter((node) => node.kind === "statement");
}

/** The innermost statement that holds an offset. */
export function statementAt(
	file: FileNode,
	offset: number,
): Statement | undefined {
	return statementsAt(file, offset).at(-1);
}

/** The innermost block that an offset is inside of, between its braces; `undefined` for the file itself. */
export function blockAt(file: FileNode, offset: number): Block | undefined {
	return nodeAt(file, offset).findLast(
		(node): node is Block =>
			node.kind === "block" &&
			offset > node.span.start &&
			(offset < node.span.end || !node.closed),
	);
}

/** The last child that begins at or before the offset, if it reaches the offset. Children stand in order of place. */
function childAt(nodes: readonly Node[], offset: number): Node | undefined {
	let low = 0;
	let high = nodes.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((nodes[middle] as Node).span.start <= offset) low = middle + 1;
		else high = middle;
	}
	const found = nodes[low - 1];
	return found && offset <= found.span.end ? found : undefined;
}
