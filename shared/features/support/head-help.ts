// What the table says about a head word, as Markdown and as a snippet.

import {
	type Construct,
	type FormElement,
	fill,
	formsOf,
	parse,
	type SlotValue,
	showForm,
	slotTypeLabels,
} from "../../../grammar/index.ts";
import { codeBlock } from "../../text/markdown.ts";

/** Help, forms, defaults and an example. All of it is our own text, so nothing is escaped. */
export function headHelp(construct: Construct): string {
	const { head, help, defaults, example, aliases, block } = construct;
	const tail = block ? (construct.blockOptional ? " [{ … }]" : " { … }") : "";
	const forms = formsOf(construct).map((form) => showForm(head, form) + tail);
	return [
		`${help}.`,
		codeBlock(forms.join("\n"), "text"),
		...(defaults ? [`Left out: ${defaults}.`] : []),
		...(aliases
			? [`Also read: ${aliases.map((one) => `\`${one}\``).join(", ")}.`]
			: []),
		"For example:",
		codeBlock(example, "storyrod"),
	].join("\n\n");
}

/** The head with its required words and, as places to fill in, the values of the example. */
export function headSnippet(construct: Construct): string {
	const [form] = formsOf(construct);
	const [statement] = parse(construct.example).tree.statements;
	const result = statement && fill(statement, construct);
	const values = result?.ok ? result.filled.slots : undefined;
	let stop = 0;
	const parts = [escapeSnippet(construct.head)];
	for (const element of form?.elements ?? []) {
		if (element.kind === "optional") continue;
		if (element.kind === "word") {
			parts.push(escapeSnippet(element.word));
			continue;
		}
		stop++;
		parts.push(
			element.kind === "choice" && !element.many
				? `\${${stop}|${element.words.map(escapeChoice).join(",")}|}`
				: `\${${stop}:${escapeSnippet(placeholder(element, construct, values))}}`,
		);
	}
	if (construct.block && !construct.blockOptional) {
		parts.push("{\n  $0\n}");
	}
	return parts.join(" ");
}

function placeholder(
	element: FormElement,
	construct: Construct,
	values: ReadonlyMap<string, SlotValue> | undefined,
): string {
	if (element.kind === "choice") return element.words.join(", ");
	if (element.kind !== "slot") return "";
	const value = values?.get(element.slot);
	const span = value && spanOf(value);
	return span
		? construct.example.slice(span.start, span.end)
		: slotTypeLabels[element.type].replace(/[`(].*$/, "").trim();
}

function spanOf(value: SlotValue): { start: number; end: number } | undefined {
	switch (value.kind) {
		case "expression":
			return value.expression.span;
		case "position":
			return value.position.span;
		case "names":
		case "refs": {
			const nodes = value.kind === "names" ? value.names : value.refs;
			const first = nodes[0];
			const last = nodes.at(-1);
			return first && last
				? { start: first.span.start, end: last.span.end }
				: undefined;
		}
	}
}

function escapeSnippet(text: string): string {
	return text.replace(/[\\$}]/g, "\\$&");
}

function escapeChoice(text: string): string {
	return text.replace(/[\\$},|]/g, "\\$&");
}
