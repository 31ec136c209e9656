/** Matches the items of a statement against the forms of its row: which slot holds what, or what is wrong. */
import type {
	Expression,
	Item,
	NameNode,
	PathNode,
	Span,
	Statement,
} from "../tree/nodes.ts";
import { spanOver } from "../tree/spans.ts";
import type { Construct } from "./construct.ts";
import {
	type DirectionWord,
	directionWords,
	joiningWords,
} from "./directions.ts";
import {
	type Form,
	type FormElement,
	type SlotType,
	showForm,
	slotTypeLabels,
} from "./form.ts";
import { formsOf } from "./index.ts";

/** Where something is: an offset in a direction from a datum, or the datum itself. */
export interface Position {
	readonly span: Span;
	/** One offset; several only where the slot takes `positions`. None: the datum itself. */
	readonly offsets: readonly Expression[];
	readonly direction: DirectionWord | undefined;
	/** `above` and `below` are clear of the datum: from its upper or its lower face. `at` = the datum itself. */
	readonly relation: "from" | "above" | "below" | "at";
	/** Absent when the maker named none: a fault for whoever needs it. */
	readonly datum: PathNode | undefined;
}

export type SlotValue =
	| { readonly kind: "expression"; readonly expression: Expression }
	| { readonly kind: "names"; readonly names: readonly NameNode[] }
	| { readonly kind: "refs"; readonly refs: readonly PathNode[] }
	| { readonly kind: "position"; readonly position: Position };

/** A statement read by its row. */
export interface Filled {
	readonly construct: Construct;
	readonly statement: Statement;
	readonly form: Form;
	readonly slots: ReadonlyMap<string, SlotValue>;
	/** Plain words of the form that stand in the statement (`applied`, `centred`). */
	readonly words: ReadonlySet<string>;
}

export interface Misfit {
	readonly span: Span;
	readonly message: string;
	/** What could stand at that place, for completion. */
	readonly expected: readonly FormElement[];
}

export type FillResult =
	| { readonly ok: true; readonly filled: Filled }
	| { readonly ok: false; readonly misfit: Misfit };

const joining: ReadonlySet<string> = new Set(joiningWords);

/** Reads a statement by its row. The head itself is not matched again. */
export function fill(statement: Statement, construct: Construct): FillResult {
	const items = statement.items.slice(1);
	let best: Attempt | undefined;
	for (const form of formsOf(construct)) {
		const attempt = new Attempt(items, form);
		if (attempt.run()) {
			return {
				ok: true,
				filled: {
					construct,
					statement,
					form,
					slots: attempt.slots,
					words: attempt.words,
				},
			};
		}
		if (!best || attempt.farthest > best.farthest) best = attempt;
	}
	return {
		ok: false,
		misfit: misfitOf(statement, construct, best as Attempt),
	};
}

/** What could stand after the items given, by the forms of the row: for completion. */
export function expectedAfter(
	items: readonly Item[],
	construct: Construct,
): FormElement[] {
	const expected: FormElement[] = [];
	for (const form of formsOf(construct)) {
		const attempt = new Attempt(items, form);
		attempt.run();
		if (attempt.consumedAll || attempt.farthest >= items.length)
			expected.push(...attempt.expected);
	}
	return expected;
}

function misfitOf(
	statement: Statement,
	construct: Construct,
	attempt: Attempt,
): Misfit {
	const items = statement.items.slice(1);
	const item = items[attempt.farthest];
	const wanted = [...new Set(attempt.expected.map(describe))];
	const forms = formsOf(construct)
		.map((form) => `\`${showForm(construct.head, form)}\``)
		.join(" or ");
	if (!item) {
		return {
			span: statement.items.at(-1)?.span ?? statement.headSpan,
			message: `\`${construct.head}\` is not complete: it wants ${wanted.join(" or ") || "more"} here, as in \`${construct.example}\``,
			expected: attempt.expected,
		};
	}
	const bareCall =
		construct.forms.length === 1 && construct.forms[0] === "block";
	return {
		span: item.span,
		message: bareCall
			? `Nothing stands between \`${construct.head}\` and its block, as in \`${construct.example}\``
			: wanted.length > 0
				? `This does not fit \`${construct.head}\`: it wants ${wanted.join(" or ")} here (${forms})`
				: `\`${construct.head}\` ends before this (${forms})`,
		expected: attempt.expected,
	};
}

function describe(element: FormElement): string {
	switch (element.kind) {
		case "word":
			return `\`${element.word}\``;
		case "slot":
			return slotTypeLabels[element.type];
		case "choice":
			return element.words.map((word) => `\`${word}\``).join(", ");
		case "optional":
			return element.elements[0] ? describe(element.elements[0]) : "";
	}
}

class Attempt {
	readonly slots = new Map<string, SlotValue>();
	readonly words = new Set<string>();
	/** Index of the first item that did not fit. */
	farthest = 0;
	/** What was wanted there. */
	expected: FormElement[] = [];
	consumedAll = false;
	private readonly items: readonly Item[];
	private readonly form: Form;

	constructor(items: readonly Item[], form: Form) {
		this.items = items;
		this.form = form;
	}

	run(): boolean {
		const end = this.sequence(this.form.elements, 0);
		this.consumedAll = end === this.items.length;
		return this.consumedAll;
	}

	private want(at: number, element: FormElement): void {
		if (at > this.farthest) {
			this.farthest = at;
			this.expected = [];
		}
		if (at === this.farthest) this.expected.push(element);
	}

	/** The index after the sequence, or -1. */
	private sequence(elements: readonly FormElement[], start: number): number {
		let at = start;
		for (let index = 0; index < elements.length; index++) {
			const element = elements[index] as FormElement;
			if (element.kind !== "optional") {
				at = this.one(element, at);
				if (at < 0) return -1;
				continue;
			}
			const group: (FormElement & { kind: "optional" })[] = [];
			while (elements[index]?.kind === "optional")
				group.push(elements[index++] as FormElement & { kind: "optional" });
			index--;
			at = this.anyOrder(group, at);
		}
		return at;
	}

	/** Optional neighbours come in any order, each at most once. */
	private anyOrder(
		group: readonly (FormElement & { kind: "optional" })[],
		start: number,
	): number {
		const left = [...group];
		let at = start;
		for (;;) {
			let took = false;
			for (let index = 0; index < left.length; index++) {
				const optional = left[index] as FormElement & { kind: "optional" };
				const end = this.sequence(optional.elements, at);
				if (end > at) {
					at = end;
					left.splice(index, 1);
					took = true;
					break;
				}
			}
			if (!took) return at;
		}
	}

	private one(element: FormElement, at: number): number {
		const item = this.items[at];
		if (item) {
			if (element.kind === "word" && wordOf(item) === element.word) {
				this.words.add(element.word);
				return at + 1;
			}
			if (element.kind === "choice") {
				const chosen = this.choice(element, item);
				if (chosen) {
					this.slots.set(element.slot, { kind: "names", names: chosen });
					return at + 1;
				}
			}
			if (element.kind === "slot") {
				const end = this.slot(element.slot, element.type, at);
				if (end > at) return end;
			}
		}
		this.want(at, element);
		return -1;
	}

	private choice(
		element: FormElement & { kind: "choice" },
		item: Item,
	): NameNode[] | undefined {
		const names = (
			item.kind === "list" && element.many ? item.elements : [item]
		).map((part) =>
			part.kind === "path" && part.segments.length === 1
				? part.segments[0]
				: undefined,
		);
		if (names.every((name) => name && element.words.includes(name.text)))
			return names as NameNode[];
		return undefined;
	}

	private slot(slot: string, type: SlotType, at: number): number {
		if (type === "position" || type === "positions")
			return this.position(slot, type === "positions", at);
		const value = slotValue(type, this.items[at] as Item);
		if (!value) return -1;
		this.slots.set(slot, value);
		return at + 1;
	}

	/** `up 2 from front`, `2 up from front`, `190 above bottom`, `floor`. */
	private position(slot: string, several: boolean, start: number): number {
		// A place may be led in by `at`, as one would say it: `shelf one at 12 above bottom`.
		let at = wordOf(this.items[start]) === "at" ? start + 1 : start;
		const direction = directionOf(this.items[at]);
		// `up` before an offset is a direction, before a datum it is not ours (`up to case.bottom`).
		const leads = direction && isOffset(this.items[at + 1], several);
		if (leads) at++;
		const first = this.items[at];
		if (!first) return -1;
		if (!isOffset(first, several)) {
			const datum = refOf(first);
			if (!datum || leads) return -1;
			this.setPosition(slot, start, at + 1, [], undefined, "at", datum);
			return at + 1;
		}
		const offsets =
			first.kind === "list" ? first.elements : [first as Expression];
		// A name alone may be an offset (`given`) or the datum itself; what follows decides.
		at++;
		const trailing = leads ? undefined : directionOf(this.items[at]);
		const afterDirection = trailing ? at + 1 : at;
		const relation = wordOf(this.items[afterDirection]);
		if (
			relation === "from" ||
			(!trailing && (relation === "above" || relation === "below"))
		) {
			const datumItem = this.items[afterDirection + 1];
			const datum = datumItem && refOf(datumItem);
			if (!datum) {
				this.want(afterDirection + 1, { kind: "slot", slot, type: "ref" });
				return -1;
			}
			const end = afterDirection + 2;
			this.setPosition(
				slot,
				start,
				end,
				offsets,
				leads ? direction : trailing,
				relation,
				datum,
			);
			return end;
		}
		if (first.kind === "path" && !leads) {
			this.setPosition(slot, start, at, [], undefined, "at", first);
			return at;
		}
		// An offset from nothing: read, so that the datum can be asked for with the readings listed.
		const end = trailing && relation !== "to" ? afterDirection : at;
		this.setPosition(
			slot,
			start,
			end,
			offsets,
			leads ? direction : end > at ? trailing : undefined,
			"from",
			undefined,
		);
		return end;
	}

	private setPosition(
		slot: string,
		start: number,
		end: number,
		offsets: readonly Expression[],
		direction: DirectionWord | undefined,
		relation: Position["relation"],
		datum: PathNode | undefined,
	): void {
		const first = (this.items[start] as Item).span;
		const span =
			end - start > 1
				? spanOver(first, (this.items[end - 1] as Item).span)
				: first;
		this.slots.set(slot, {
			kind: "position",
			position: { span, offsets, direction, relation, datum },
		});
	}
}

function wordOf(item: Item | undefined): string | undefined {
	if (item?.kind === "equals") return "=";
	return item?.kind === "path" && item.segments.length === 1
		? item.segments[0]?.text
		: undefined;
}

function directionOf(item: Item | undefined): DirectionWord | undefined {
	const word = wordOf(item);
	return word !== undefined && Object.hasOwn(directionWords, word)
		? (word as DirectionWord)
		: undefined;
}

function refOf(item: Item): PathNode | undefined {
	return item.kind === "path" && !joining.has(wordOf(item) ?? "")
		? item
		: undefined;
}

/** Something that can be a size; a bare joining word cannot. */
function isSize(item: Item | undefined): item is Expression {
	if (!item) return false;
	switch (item.kind) {
		case "measure":
		case "call":
		case "unary":
		case "binary":
		case "group":
			return true;
		case "path":
			return !joining.has(wordOf(item) ?? "");
		default:
			return false;
	}
}

function isOffset(item: Item | undefined, several: boolean): boolean {
	if (several && item?.kind === "list") return item.elements.every(isSize);
	return isSize(item);
}

function slotValue(type: SlotType, item: Item): SlotValue | undefined {
	const expression = (fits: boolean): SlotValue | undefined =>
		fits ? { kind: "expression", expression: item as Expression } : undefined;
	switch (type) {
		case "new-name":
		case "new-names": {
			const elements =
				item.kind === "list" && type === "new-names" ? item.elements : [item];
			const names: NameNode[] = [];
			for (const element of elements) {
				const word = element.kind === "path" ? element.segments[0] : undefined;
				if (
					element.kind !== "path" ||
					element.segments.length !== 1 ||
					!word ||
					joining.has(word.text)
				)
					return undefined;
				names.push(word);
			}
			return { kind: "names", names };
		}
		case "material":
		case "ref": {
			const ref = refOf(item);
			return ref && { kind: "refs", refs: [ref] };
		}
		case "refs": {
			const refs = (item.kind === "list" ? item.elements : [item]).map(refOf);
			return refs.every((ref) => ref !== undefined)
				? { kind: "refs", refs: refs as PathNode[] }
				: undefined;
		}
		case "text":
			return expression(item.kind === "text");
		case "condition":
			return expression(item.kind === "compare");
		case "size-number":
			return expression(item.kind === "size-number");
		case "sizes2":
			return expression(item.kind === "cross" && item.sizes.length === 2);
		case "sizes3":
			return expression(item.kind === "cross" && item.sizes.length === 3);
		case "sizes2-3":
			return expression(item.kind === "cross" && item.sizes.length <= 3);
		case "fastener":
			return expression(item.kind === "cross" && item.sizes.length === 2);
		case "lengths":
			return expression(isOffset(item, true));
		default:
			return expression(isSize(item));
	}
}
