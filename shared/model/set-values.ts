// Values of givens from outside: read as a maker writes them, in the unit of the piece.

import { parse } from "../../grammar/index.ts";
import type { SetValue } from "./constructs/sizes.ts";
import { Evaluation } from "./evaluation.ts";
import { evaluate } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { Scope } from "./meaning.ts";
import type { Row } from "./rows.ts";
import type { Size } from "./size.ts";

/** The values that a piece takes; one that cannot be read is told. Names that it takes are added to `used`. */
export function readSets(
	frame: Frame,
	set: ReadonlyMap<string, string>,
	piece: Row,
	used: Set<string>,
): Map<string, SetValue> {
	const sets = new Map<string, SetValue>();
	if (set.size === 0) return sets;
	const statements = piece.block?.statements ?? [];
	const word = (head: string): string | undefined => {
		const item = statements.find((one) => one.head === head)?.items[1];
		return item?.kind === "path" ? item.segments[0]?.text : undefined;
	};
	const own = word("unit");
	const unit = own === "mm" || own === "in" ? own : frame.unit;
	for (const statement of statements) {
		if (statement.head !== "given") continue;
		const item = statement.items[1];
		const name = item?.kind === "path" ? item.segments[0]?.text : undefined;
		const text = name === undefined ? undefined : set.get(name);
		if (name === undefined || text === undefined) continue;
		used.add(name);
		const origin = { uri: frame.uri, span: statement.span };
		const size = readValue({ ...frame, unit }, text);
		if (size) sets.set(name, { size, origin });
		else
			frame.evaluation.report(
				"bad-value",
				origin,
				`"${text}" is no value for \`${name}\`: write it as in the design, \`36\` or \`900 mm\``,
			);
	}
	return sets;
}

function readValue(frame: Frame, text: string): Size | undefined {
	const { tree, faults } = parse(`given value = ${text}`);
	const statement = tree.statements[0];
	const item = statement?.items[3];
	if (
		faults.length > 0 ||
		tree.statements.length !== 1 ||
		statement?.items.length !== 4 ||
		!item ||
		item.kind === "equals"
	)
		return undefined;
	// Values from outside may not name things of the design: they come before it.
	return evaluate(
		{ ...frame, scope: new Scope(), evaluation: new Evaluation() },
		item,
	);
}

/** A value for a given that no piece has is told: it would otherwise be dropped in silence. */
export function tellUnusedSets(
	evaluation: Evaluation,
	uri: string,
	set: ReadonlyMap<string, string>,
	used: ReadonlySet<string>,
): void {
	for (const name of set.keys()) {
		if (used.has(name)) continue;
		evaluation.report(
			"unknown-name",
			{ uri, span: { start: 0, end: 0 } },
			`No piece in this file has a given \`${name}\` that could be set`,
		);
	}
}
