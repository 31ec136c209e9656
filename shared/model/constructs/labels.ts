// Names that have no shape: finishes, steps, aids. They can be named by other lines and are settled when all parts stand.

import type { Declares } from "../../../grammar/index.ts";
import { declareName, type PieceContext, pathIn } from "../piece-context.ts";
import type { Row } from "../rows.ts";
import type { Declaration } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { bind } from "./sizes.ts";

/** The meaning of a line whose name stands for itself; `settle` gets its declaration and its path. */
export function label(
	kind: Declares,
	settle: (
		context: PieceContext,
		row: Row,
		declaration: Declaration,
		path: string,
	) => void,
): ConstructMeaning {
	const declarations = new WeakMap<Row, Declaration>();
	return {
		declare: (context, row) => {
			const name = row.name("name");
			if (!name) return;
			const path = pathIn(context, name.text);
			const declaration = declareName(context, kind, name, row, path);
			declarations.set(row, declaration);
			bind(context, row, { declaration, meaning: () => ({ kind: "label" }) });
		},
		phase: 3,
		settle: (context, row) => {
			const declaration = declarations.get(row);
			if (declaration)
				settle(context, row, declaration, pathIn(context, declaration.name));
		},
	};
}
