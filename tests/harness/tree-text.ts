// A syntax tree and its faults as short text, for expectations that can be read.

import { parse } from "../../grammar/parse.ts";
import type { Item, Statement, SyntaxFault } from "../../grammar/tree/nodes.ts";

/** One line a statement: items apart by blanks, structure in brackets, blocks in braces. */
export function treeText(text: string): string {
	return parse(text).tree.statements.map(statementText).join("\n");
}

export function statementText(statement: Statement): string {
	const items = statement.items.map(itemText).join(" ");
	if (!statement.block) return items;
	const inner = statement.block.statements.map(statementText).join("; ");
	return `${items} {${inner === "" ? "" : ` ${inner} `}}`.trimStart();
}

function itemText(item: Item): string {
	switch (item.kind) {
		case "measure": {
			const value =
				item.denominator === 1n
					? `${item.numerator}`
					: `${item.numerator}/${item.denominator}`;
			return item.unit === "none" ? value : `${value}[${item.unit}]`;
		}
		case "size-number":
			return `#${item.number}`;
		case "text":
			return JSON.stringify(item.value);
		case "path":
			return item.segments.map((segment) => segment.text).join(".");
		case "call":
			return `${item.callee.text}(${item.args.map(itemText).join(", ")})`;
		case "unary":
			return `(${item.operator}${itemText(item.operand)})`;
		case "binary":
		case "compare":
			return `(${itemText(item.left)} ${item.operator} ${itemText(item.right)})`;
		case "cross":
			return `<${item.sizes.map(itemText).join(" x ")}>`;
		case "list":
			return `[${item.elements.map(itemText).join(", ")}]`;
		case "group":
			return `group(${itemText(item.inner)})`;
		case "equals":
			return "=";
		case "bad":
			return "?";
	}
}

/** The text with each faulty place marked below its line, as `^^^ id: message`. */
export function faultText(text: string): string {
	const { faults } = parse(text);
	const out: string[] = [];
	let start = 0;
	for (const line of text.split("\n")) {
		out.push(line);
		const end = start + line.length;
		for (const fault of faults) {
			if (fault.span.start >= start && fault.span.start <= end) {
				out.push(markLine(line, fault, start));
			}
		}
		start = end + 1;
	}
	return out.join("\n");
}

function markLine(line: string, fault: SyntaxFault, start: number): string {
	const from = fault.span.start - start;
	const length = Math.max(
		1,
		Math.min(line.length, fault.span.end - start) - from,
	);
	const mark = `${line.slice(0, from).replace(/[^\t]/g, " ")}${"^".repeat(length)}`;
	return `${mark} ${fault.severity === "error" ? "" : `(${fault.severity}) `}${fault.id}: ${fault.message}`;
}

/** The text after the first fix that a fault of it offers. */
export function fixedText(text: string): string {
	const fault = parse(text).faults.find((one) => one.fix);
	return fault ? applyFix(text, fault) : text;
}

export function applyFix(text: string, fault: SyntaxFault): string {
	let fixed = text;
	const edits = [...(fault.fix?.edits ?? [])].sort(
		(a, b) => b.span.start - a.span.start,
	);
	for (const { span, text: replacement } of edits) {
		fixed = fixed.slice(0, span.start) + replacement + fixed.slice(span.end);
	}
	return fixed;
}

export function faultIds(text: string): string[] {
	return parse(text).faults.map((fault) => fault.id);
}

/**
 * Reads a text in which a line of carets and an id stands below each faulty place, and returns the text without these
 * lines, and once more with the marks as the parser would set them: equal to the input if all is as expected.
 */
export function remarked(marked: string): { text: string; marks: string } {
	const text = marked
		.split("\n")
		.filter((line) => !/^\s*\^+ [a-z-]+$/.test(line))
		.join("\n");
	const marks = faultText(text).replace(
		/^(\s*\^+) (?:\([a-z]+\) )?([a-z-]+): .*$/gm,
		"$1 $2",
	);
	return { text, marks };
}
