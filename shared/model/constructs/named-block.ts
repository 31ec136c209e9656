// The start that most things share: a name, its declaration, and the lines of the block behind it.

import type { Declares } from "../../../grammar/index.ts";
import { declareName, type PieceContext, pathIn } from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import type { Declaration } from "../types.ts";

export interface NamedBlock {
	readonly name: string;
	/** Within the piece, groups before it. */
	readonly path: string;
	readonly declaration: Declaration;
	readonly rows: Rows;
}

/** Books the name and reads the block; undefined where the line has no name, which has been told. */
export function readNamedBlock(
	context: PieceContext,
	row: Row,
	kind: Declares & ("box" | "part" | "trim" | "veneer" | "mount"),
): NamedBlock | undefined {
	const name = row.name("name");
	if (!name) return undefined;
	const path = pathIn(context, name.text);
	const declaration = declareName(context, kind, name, row, path);
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		kind,
		{ label: `\`${name.text}\``, origin: row.headline },
	);
	return { name: name.text, path, declaration, rows };
}
