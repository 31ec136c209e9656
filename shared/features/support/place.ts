// Where an offset is in the terms of the table: in which block, in which statement, and what row that is.

import {
	type Block,
	type Construct,
	type ContextId,
	constructAt,
	type FileNode,
	type Statement,
} from "../../../grammar/index.ts";

/** A statement with the row of the table that it is read by. */
export interface PlacedStatement {
	readonly statement: Statement;
	/** Undefined where the table does not know the head. */
	readonly construct: Construct | undefined;
	/** Of the block in which it stands. */
	readonly context: ContextId | undefined;
}

export interface Place {
	/** The statements whose blocks hold the offset, outermost first. */
	readonly around: readonly PlacedStatement[];
	/** The innermost block or the file. */
	readonly body: FileNode | Block;
	readonly context: ContextId | undefined;
	/** The statement whose items hold the offset, its ends included. */
	readonly statement: PlacedStatement | undefined;
}

export function placeAt(tree: FileNode, offset: number): Place {
	const around: PlacedStatement[] = [];
	let body: FileNode | Block = tree;
	let context: ContextId | undefined = "file";
	for (;;) {
		const statement = lastBefore(body.statements, offset);
		const placed: PlacedStatement | undefined =
			statement && placedIn(context, statement);
		const block = statement?.block;
		if (!placed || !block || !isInside(block, offset)) {
			return {
				around,
				body,
				context,
				statement:
					placed && offset <= headlineEnd(placed.statement)
						? placed
						: undefined,
			};
		}
		around.push(placed);
		body = block;
		context = placed.construct?.block;
	}
}

export function placedIn(
	context: ContextId | undefined,
	statement: Statement,
): PlacedStatement {
	return {
		statement,
		construct: context && constructAt(context, statement.head),
		context,
	};
}

/** Behind the last item: where a block begins, or the end of the statement. */
export function headlineEnd(statement: Statement): number {
	return statement.items.at(-1)?.span.end ?? statement.span.start;
}

/** Every statement of a tree with its row, in order of place; `false` from `visit` leaves out what is in its block. */
export function visitPlaced(
	body: FileNode | Block,
	context: ContextId | undefined,
	visit: (placed: PlacedStatement, depth: number) => boolean,
	depth = 0,
): void {
	for (const statement of body.statements) {
		const placed = placedIn(context, statement);
		if (visit(placed, depth) && statement.block) {
			visitPlaced(statement.block, placed.construct?.block, visit, depth + 1);
		}
	}
}

function isInside(block: Block, offset: number): boolean {
	return (
		offset > block.span.start &&
		(block.closed ? offset < block.span.end : offset <= block.span.end)
	);
}

/** The last statement that begins at or before the offset. They stand in order of place. */
function lastBefore(
	statements: readonly Statement[],
	offset: number,
): Statement | undefined {
	let low = 0;
	let high = statements.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((statements[middle] as Statement).span.start <= offset) {
			low = middle + 1;
		} else high = middle;
	}
	return statements[low - 1];
}
