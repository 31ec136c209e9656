// The form of the line at hand while it is typed, and what of it comes next; in a `set` line the givens of the component.

import {
	type Construct,
	constructAt,
	expectedAfter,
	type Form,
	type FormElement,
	formsOf,
	showForm,
	slotTypeLabels,
} from "../../grammar/index.ts";
import { exactText } from "../model/explain.ts";
import type { Given, Piece } from "../model/types.ts";
import { escapeMarkdown } from "../text/markdown.ts";
import { type Place, placeAt } from "./support/place.ts";
import type { Snapshot } from "./support/snapshot.ts";
import {
	isInCommentOrText,
	readBefore,
	statementBefore,
	type Word,
	wordBefore,
} from "./support/typing.ts";

export interface Signature {
	readonly label: string;
	/** Markdown. */
	readonly documentation: string;
	readonly parameters: readonly Parameter[];
	/** Index of what stands, or comes, at the cursor; undefined where nothing more belongs. */
	readonly active: number | undefined;
}

export interface Parameter {
	/** Its place in the label. */
	readonly start: number;
	readonly end: number;
	/** Markdown. */
	readonly documentation: string;
}

export interface SignatureHelp {
	readonly signatures: readonly Signature[];
	/** Index of the one that fits what is typed. */
	readonly active: number;
}

export function signatureHelp(
	snapshot: Snapshot,
	offset: number,
): SignatureHelp | undefined {
	const { text, result } = snapshot;
	if (isInCommentOrText(snapshot, offset)) return undefined;
	const word = wordBefore(text, offset);
	const place = placeAt(result.tree, offset);
	const statement = statementBefore(text, place, word.start);
	if (statement === "new" || statement === "none") return undefined;
	const row = place.context && constructAt(place.context, statement.head);
	if (!row) return undefined;
	const beginning = text.slice(statement.span.start, word.start);
	if (place.context === "make" && row.head === "set") {
		const named = statement.items[1];
		const name =
			named?.kind === "path" && named.span.start < offset
				? named.segments[0]?.text
				: undefined;
		const component = componentOf(snapshot, place);
		if (component) return ofComponent(component, name, settled(place));
	}
	return ofRow(row, beginning, word);
}

/** One signature for each form of the row. */
function ofRow(
	row: Construct,
	beginning: string,
	word: Word,
): SignatureHelp | undefined {
	const { items, list, wantsOperand } = readBefore(beginning);
	// Inside an expression, and behind a comma, what is typed goes on with the same thing.
	const before = wantsOperand
		? readBefore(upToOperator(beginning)).items.slice(0, -1)
		: items;
	const expected = new Set(expectedAfter(before, row));
	const forms = formsOf(row).filter(({ elements }) => elements.length > 0);
	if (forms.length === 0) return undefined;
	const documentation = [
		`${row.help}.`,
		...(row.defaults ? [`Left out: ${row.defaults}.`] : []),
		`For example: \`${row.example}\``,
	].join("\n\n");
	const signatures = forms.map((form) => {
		const parameters = parametersOf(row, form);
		return {
			label: showForm(row.head, form),
			documentation,
			parameters: parameters.map(({ start, end, element }) => ({
				start,
				end,
				documentation: wordsFor(element),
			})),
			active: activeOf(
				parameters.map(({ element }) => element),
				expected,
				list ? "" : word.last,
			),
		};
	});
	const active = signatures.findIndex((one) => one.active !== undefined);
	return { signatures, active: Math.max(0, active) };
}

/** `12 + (w -` without what is still open: the items that are whole. */
function upToOperator(beginning: string): string {
	return beginning.replace(/[\s(+*/<>=-]+$/, "").replace(/\sx$/, "");
}

interface Shown {
	readonly start: number;
	readonly end: number;
	readonly element: FormElement;
}

/** The elements of a form with their places behind its head. */
function parametersOf({ head }: Construct, { elements }: Form): Shown[] {
	let at = head.length;
	return elements.map((element) => {
		const shown = showForm("", { notation: "", elements: [element] }).trim();
		const start = at + 1;
		at = start + shown.length;
		return { start, end: at, element };
	});
}

/** Of what may come next: what begins like the word that is typed, what is begun, what must come, else the first that may. */
function activeOf(
	elements: readonly FormElement[],
	expected: ReadonlySet<FormElement>,
	typed: string,
): number | undefined {
	const open = elements.flatMap((element, index) =>
		leavesOf(element).some((leaf) => expected.has(leaf)) ? [index] : [],
	);
	const begins = open.find((index) =>
		leavesOf(elements[index] as FormElement).some(
			(leaf) =>
				expected.has(leaf) &&
				typed !== "" &&
				wordsIn(leaf).some((one) => one.startsWith(typed)),
		),
	);
	// `dado` could be a name, too: where a group is begun, it goes on.
	const begun = open.find((index) => {
		const [first, ...rest] = leavesOf(elements[index] as FormElement);
		return rest.some((leaf) => expected.has(leaf)) && first?.kind === "word";
	});
	const must = open.find((index) => elements[index]?.kind !== "optional");
	return begins ?? begun ?? must ?? open[0];
}

function leavesOf(element: FormElement): readonly FormElement[] {
	return element.kind === "optional"
		? element.elements.flatMap(leavesOf)
		: [element];
}

function wordsIn(element: FormElement): readonly string[] {
	if (element.kind === "word") return [element.word];
	return element.kind === "choice" ? element.words : [];
}

function wordsFor(element: FormElement): string {
	switch (element.kind) {
		case "word":
			return "";
		case "slot":
			return `${element.slot.replaceAll("-", " ")}: ${slotTypeLabels[element.type]}`;
		case "choice":
			return `${element.many ? "one or more of" : "one of"} ${element.words.map((word) => `\`${word}\``).join(", ")}`;
		case "optional":
			return `May be left out. ${element.elements.map(wordsFor).filter(Boolean).join(", ")}`.trim();
	}
}

function componentOf(
	{ design }: Snapshot,
	{ around }: Place,
): Piece | undefined {
	const from = around.at(-1)?.statement.items.at(-1);
	const name = from?.kind === "path" ? from.segments.at(-1)?.text : undefined;
	return design.pieces.find(
		(piece) => piece.kind === "component" && piece.name === name,
	);
}

/** Givens that the block sets already. */
function settled({ body }: Place): ReadonlySet<string> {
	return new Set(
		body.statements.flatMap(({ head, items }) => {
			const named = items[1];
			return head === "set" && named?.kind === "path" && items.length > 2
				? [named.segments[0]?.text ?? ""]
				: [];
		}),
	);
}

/** `base { width = 30 from 20 to 40; depth = 12 }`, each given a parameter. */
function ofComponent(
	{ name, display, givens, declaration }: Piece,
	named: string | undefined,
	set: ReadonlySet<string>,
): SignatureHelp | undefined {
	if (givens.length === 0) return undefined;
	let label = `${name} { `;
	const parameters: Parameter[] = givens.map((given, index) => {
		if (index > 0) label += "; ";
		const start = label.length;
		label += givenText(given, display.unit);
		return {
			start,
			end: label.length,
			documentation: escapeMarkdown(given.declaration.doc),
		};
	});
	label += " }";
	const names = givens.map((given) => given.declaration.name);
	const at = names.findIndex((one) =>
		named === undefined ? !set.has(one) : one === named,
	);
	return {
		signatures: [
			{
				label,
				documentation: escapeMarkdown(declaration.doc),
				parameters,
				active: at < 0 ? undefined : at,
			},
		],
		active: 0,
	};
}

function givenText(
	{ declaration, size, low, high }: Given,
	unit: "in" | "mm",
): string {
	const range =
		low && high
			? ` from ${exactText(low, unit)} to ${exactText(high, unit)}`
			: "";
	return `${declaration.name} = ${exactText(size, unit)}${range}`;
}
