// The same design written in millimetres: each bare size of an inch block becomes its exact number of millimetres.

import {
	type Construct,
	type ContextId,
	constructAt,
	type Expression,
	type FormElement,
	fill,
	type MeasureNode,
	parse,
	type SlotType,
	type Statement,
} from "../../grammar/index.ts";

interface Change {
	readonly start: number;
	readonly end: number;
	readonly text: string;
}

type DisplayUnit = "in" | "mm";

const lengthSlots: ReadonlySet<SlotType> = new Set<SlotType>([
	"length",
	"lengths",
	"value",
	"sizes2",
	"sizes3",
	"sizes2-3",
	"fastener",
	"condition",
]);

/** The text with all that was written in inches written in millimetres; explicit units stay as they are. */
export function inMillimetres(text: string): string {
	const { statements } = parse(text).tree;
	const changes: Change[] = [];
	const own = unitLine(statements);
	if (!own) changes.push({ start: 0, end: 0, text: "unit mm\n" });
	convertAll(statements, "file", unitOf(own, "in"), changes);
	return changes
		.sort((a, b) => b.start - a.start)
		.reduce(
			(now, { start, end, text: put }) =>
				now.slice(0, start) + put + now.slice(end),
			text,
		);
}

function unitLine(statements: readonly Statement[]): Statement | undefined {
	return statements.find((one) => one.head === "unit");
}

function unitOf(line: Statement | undefined, around: DisplayUnit): DisplayUnit {
	const item = line?.items[1];
	if (item?.kind !== "path") return around;
	return item.segments[0]?.text === "mm" ? "mm" : "in";
}

function convertAll(
	statements: readonly Statement[],
	context: ContextId,
	unit: DisplayUnit,
	changes: Change[],
): void {
	if (unit === "mm" && context !== "file") return;
	for (const statement of statements) {
		const construct = constructAt(context, statement.head);
		if (!construct) continue;
		if (construct.head === "unit") {
			const { span } = statement;
			changes.push({ start: span.start, end: span.end, text: "unit mm" });
		} else if (unit === "in") convertLine(statement, construct, changes);
		const { block } = statement;
		if (block && construct.block)
			convertAll(
				block.statements,
				construct.block,
				unitOf(unitLine(block.statements), unit),
				changes,
			);
	}
}

function convertLine(
	statement: Statement,
	construct: Construct,
	changes: Change[],
): void {
	const result = fill(statement, construct);
	if (!result.ok) return;
	const { form, slots, words } = result.filled;
	// The one size that is another one in each unit when it is left to the language: it is written out.
	if (
		construct.head === "back" &&
		slots.has("material") &&
		!slots.has("clearance") &&
		!words.has("applied")
	) {
		const { end } = statement.headline;
		const letIn = slots.has("rabbet") || slots.has("groove");
		const text = ` clearance ${letIn ? "3/32" : "1/16"} in`;
		changes.push({ start: end, end, text });
	}
	for (const [slot, value] of slots) {
		if (value.kind === "position")
			for (const offset of value.position.offsets) convert(offset, changes);
		if (
			value.kind === "expression" &&
			lengthSlots.has(typeOf(form.elements, slot))
		)
			convert(value.expression, changes);
	}
}

function typeOf(elements: readonly FormElement[], slot: string): SlotType {
	for (const element of elements) {
		if (element.kind === "slot" && element.slot === slot) return element.type;
		if (element.kind === "optional") {
			const type = typeOf(element.elements, slot);
			if (type !== "text") return type;
		}
	}
	return "text";
}

/** Of a product the first bare number is the count, of a quotient the second. */
function convert(expression: Expression, changes: Change[]): void {
	switch (expression.kind) {
		case "measure":
			if (expression.unit === "none")
				changes.push({ ...expression.span, text: millimetres(expression) });
			break;
		case "unary":
			convert(expression.operand, changes);
			break;
		case "group":
			convert(expression.inner, changes);
			break;
		case "binary":
			if (expression.operator !== "*" || expression.left.kind !== "measure")
				convert(expression.left, changes);
			if (expression.operator !== "/") convert(expression.right, changes);
			break;
		case "compare":
			convert(expression.left, changes);
			convert(expression.right, changes);
			break;
		case "cross":
			for (const one of expression.sizes) convert(one, changes);
			break;
		case "list":
			for (const one of expression.elements) convert(one, changes);
			break;
		case "call":
			for (const one of expression.args) convert(one, changes);
			break;
	}
}

/** 1 in = 25.4 mm, exact: international yard and pound agreement of 1959 (NIST SP 811, appendix B.8). */
function millimetres({ numerator, denominator }: MeasureNode): string {
	return `${numerator * 254n}/${denominator * 10n}`;
}
