// What could be typed at a place: heads of the block, then what the form of the row expects, names in force, members.

import {
	type Construct,
	contexts,
	directionWords,
	expectedAfter,
	type FormElement,
	type Item,
	joiningWords,
	type SlotType,
	type Span,
	type Statement,
} from "../../grammar/index.ts";
import type { Design, StockKind } from "../model/types.ts";
import { headHelp, headSnippet } from "./support/head-help.ts";
import {
	type KnownKind,
	type KnownName,
	KnownNames,
} from "./support/known-names.ts";
import { type Place, placeAt } from "./support/place.ts";
import type { Snapshot } from "./support/snapshot.ts";
import {
	isInCommentOrText,
	readBefore,
	statementBefore,
	type Word,
	wordBefore,
} from "./support/typing.ts";
import {
	type Beside,
	namesOffered,
	pathOffers,
	pathReplaces,
	usePlaceAt,
} from "./support/use-offers.ts";

export interface CompletionItem {
	readonly label: string;
	readonly kind: "head" | "word" | "file" | "folder" | KnownKind;
	/** A few words beside the label. */
	readonly detail: string;
	/** Markdown; may be empty. */
	readonly documentation: string;
	/** Plain text to put in. */
	readonly insert: string;
	/** The same with places to fill in, for clients that know snippets. */
	readonly snippet: string | undefined;
	/** What it replaces: the word that is being typed, up to the cursor. */
	readonly replace: Span;
	/** Lower comes first; equal ones as the client likes. */
	readonly rank: number;
}

type Draft = Omit<CompletionItem, "replace">;

export interface CompletionOptions {
	/** The editor asks because a blank was typed: where that is only indentation, nothing is to pop up. */
	readonly afterBlank?: boolean;
	/** The editor asks because a quote or a slash was typed: only a path may pop up. */
	readonly onlyPaths?: boolean;
	/** The files around this one; without it no file and none of its names are offered. */
	readonly beside?: Beside;
}

export function completion(
	snapshot: Snapshot,
	offset: number,
	options: CompletionOptions = {},
): readonly CompletionItem[] {
	const { text, result } = snapshot;
	const use = options.beside && usePlaceAt(snapshot, offset);
	if (options.beside && use?.kind === "path")
		return pathItems(use.typed, offset, options.beside);
	if (options.onlyPaths || isInCommentOrText(snapshot, offset)) return [];
	const word = wordBefore(text, offset);
	// A number is being typed.
	if (/^\d/.test(word.path)) return [];
	const place = placeAt(result.tree, offset);
	const typing = statementBefore(text, place, word.start);
	if (typing === "none" || (typing === "new" && options.afterBlank)) return [];
	const replace = { start: offset - word.last.length, end: offset };
	if (options.beside && use?.kind === "names" && typing !== "new") {
		const tree = options.beside.tree(use.path);
		return (tree ? namesOffered(tree) : [])
			.filter(({ name }) => !use.taken.includes(name))
			.map((name) => ({ ...nameDraft(name, 0), replace }));
	}
	let known: KnownNames | undefined;
	const names = (): KnownNames => {
		known ??= new KnownNames(snapshot, place, offset);
		return known;
	};
	const drafts =
		typing === "new"
			? word.base.length === 0
				? heads(place, word.start)
				: []
			: afterHead(snapshot, place, typing, word, names);
	return drafts.map((draft) => ({ ...draft, replace }));
}

/** Files beside, then the folders. */
function pathItems(
	typed: string,
	offset: number,
	beside: Beside,
): readonly CompletionItem[] {
	return pathOffers(typed, beside).map(({ entry, insert }) => ({
		label: insert,
		kind: entry.isFolder ? "folder" : "file",
		detail: "",
		documentation: "",
		insert,
		snippet: undefined,
		rank: entry.name === ".." ? 2 : entry.isFolder ? 1 : 0,
		replace: pathReplaces(typed, offset),
	}));
}

/** Statements that may stand in the block; those that are there already and do not repeat are left out. */
function heads(place: Place, start: number): Draft[] {
	const rows = place.context ? contexts[place.context] : [];
	const there = new Set(
		place.body.statements
			.filter((statement) => statement.span.start !== start)
			.map((statement) => statement.head),
	);
	const isThere = (row: Construct): boolean =>
		[row.head, ...(row.aliases ?? [])].some((head) => there.has(head));
	return rows
		.filter((row) => row.repeats || !isThere(row))
		.map((row) => ({
			label: row.head,
			kind: "head",
			detail: row.help,
			documentation: headHelp(row),
			insert: row.head,
			snippet: headSnippet(row),
			rank: row.required && !isThere(row) ? 0 : 1,
		}));
}

function afterHead(
	{ text, design }: Snapshot,
	place: Place,
	statement: Statement,
	word: Word,
	names: () => KnownNames,
): Draft[] {
	if (word.base.length > 0) {
		return names()
			.membersOf(word.base)
			.map((name) => nameDraft(name, 0));
	}
	const row = place.context
		? contexts[place.context].find(
				({ head, aliases }) =>
					head === statement.head || aliases?.includes(statement.head),
			)
		: undefined;
	if (!row) return [];
	const before = readBefore(text.slice(statement.span.start, word.start));
	if (before.wantsOperand) return sizeNames(names());
	if (row.head === "set" && before.items.length === 0) {
		return givenDrafts(design, place);
	}
	const wanted = expectedAfter(before.items, row);
	const drafts: Draft[] = [];
	for (const element of wanted) {
		if (before.list && !takesMany(element)) continue;
		drafts.push(...draftsFor(element, row, place, names));
	}
	if (!before.list) drafts.push(...positionDrafts(before.items, row, names));
	const taken = new Set(before.list);
	const unique = new Map<string, Draft>();
	for (const draft of drafts) {
		if (!taken.has(draft.label) && !unique.has(draft.label))
			unique.set(draft.label, draft);
	}
	return [...unique.values()];
}

/** The givens of the component that is being made. */
function givenDrafts({ pieces }: Design, { around }: Place): Draft[] {
	const from = around.at(-1)?.statement.items.at(-1);
	const name = from?.kind === "path" ? from.segments.at(-1)?.text : undefined;
	const component = pieces.find(
		(piece) => piece.kind === "component" && piece.name === name,
	);
	return (component?.givens ?? []).map(({ declaration }) =>
		nameDraft(
			{ name: declaration.name, kind: "size", doc: declaration.doc },
			0,
		),
	);
}

function takesMany(element: FormElement): boolean {
	if (element.kind === "choice") return element.many;
	return (
		element.kind === "slot" &&
		["refs", "lengths", "positions"].includes(element.type)
	);
}

function draftsFor(
	element: FormElement,
	row: Construct,
	place: Place,
	names: () => KnownNames,
): Draft[] {
	switch (element.kind) {
		case "word":
			return [wordDraft(element.word, row, 0)];
		case "choice":
			return element.words.map((word) => wordDraft(word, row, 0));
		case "optional":
			return element.elements[0]
				? draftsFor(element.elements[0], row, place, names)
				: [];
		case "slot":
			return slotDrafts(element.slot, element.type, row, place, names);
	}
}

function slotDrafts(
	slot: string,
	type: SlotType,
	row: Construct,
	place: Place,
	names: () => KnownNames,
): Draft[] {
	switch (type) {
		case "material":
			return materialDrafts(names(), place);
		case "ref":
		case "refs":
			return refNames(names(), slot);
		case "position":
		case "positions":
			// What leads there is told by `positionDrafts`.
			return [];
		case "length":
		case "lengths":
		case "value":
		case "number":
		case "sizes2":
		case "sizes3":
		case "sizes2-3":
		case "condition":
			return sizeNames(names());
		case "fastener":
		case "size-number":
			return fastenerDrafts(names(), row);
		default:
			return [];
	}
}

/** `2 1/4 up from case.top`: what may follow the beginning of a position. */
function positionDrafts(
	items: readonly Item[],
	row: Construct,
	names: () => KnownNames,
): Draft[] {
	const words = (...all: string[]): Draft[] =>
		all.map((word) => wordDraft(word, row, 1));
	const directions = Object.keys(directionWords);
	for (let back = 0; back <= Math.min(3, items.length); back++) {
		const begun = items.slice(items.length - back);
		const wanted = expectedAfter(items.slice(0, items.length - back), row);
		const isHere = wanted.some(
			(element) =>
				element.kind === "slot" &&
				(element.type === "position" || element.type === "positions"),
		);
		if (!isHere) continue;
		const shape = begun.map(shapeOf).join(" ");
		switch (shape) {
			case "":
				return [
					...sizeNames(names()),
					...refNames(names(), "datum"),
					floor,
					...words(...directions),
				];
			case "direction":
				return sizeNames(names());
			case "size":
			case "name":
				return words(...directions, "from", "above", "below");
			case "size direction":
			case "name direction":
			case "direction size":
			case "direction name":
				return words("from");
			case "size relation":
			case "name relation":
			case "size direction relation":
			case "name direction relation":
			case "direction size relation":
			case "direction name relation":
				return [...refNames(names(), "datum"), floor];
		}
	}
	return [];
}

const floor: Draft = {
	label: "floor",
	kind: "floor",
	detail: "The floor: height 0",
	documentation: "",
	insert: "floor",
	snippet: undefined,
	rank: 1,
};

function shapeOf(item: Item): string {
	if (item.kind !== "path" || item.segments.length > 1) {
		return item.kind === "text" || item.kind === "equals" || item.kind === "bad"
			? "other"
			: item.kind === "path"
				? "name"
				: "size";
	}
	const word = item.segments[0]?.text ?? "";
	if (Object.hasOwn(directionWords, word)) return "direction";
	if (word === "from" || word === "above" || word === "below")
		return "relation";
	return joiningWords.includes(word) ? "other" : "name";
}

const things: ReadonlySet<KnownKind> = new Set<KnownKind>([
	"box",
	"part",
	"leg",
	"layer",
	"trim",
	"veneer",
	"mount",
	"group",
]);

function refNames(names: KnownNames, slot: string): Draft[] {
	const kinds: ReadonlySet<KnownKind> =
		slot === "coating" || slot === "glue"
			? new Set<KnownKind>(["stock"])
			: slot === "component"
				? new Set<KnownKind>(["component"])
				: slot === "things" || slot === "after"
					? new Set<KnownKind>([...things, "step"])
					: slot === "what"
						? new Set<KnownKind>([...things, "material"])
						: things;
	return names
		.inForce()
		.filter(
			({ kind, stock }) =>
				kinds.has(kind) && (kind !== "stock" || stock?.kind === "coating"),
		)
		.map((name) => nameDraft(name, 0));
}

/** Sizes first, then the things whose sizes stand behind a dot. */
function sizeNames(names: KnownNames): Draft[] {
	return names
		.inForce()
		.filter(
			({ kind }) => kind === "size" || things.has(kind) || kind === "material",
		)
		.map((name) =>
			nameDraft(
				name,
				name.kind === "size" ? 0 : name.kind === "material" ? 3 : 2,
			),
		);
}

function materialDrafts(names: KnownNames, place: Place): Draft[] {
	const kinds: readonly StockKind[] =
		place.context === "veneer" ? ["veneer"] : ["sheet", "board"];
	const drafts: Draft[] = [];
	for (const name of names.inForce()) {
		if (name.kind !== "material" && name.kind !== "import") continue;
		const variants = names
			.membersOf([name.name])
			.filter(
				({ kind, stock }) =>
					kind === "variant" || (stock && kinds.includes(stock.kind)),
			);
		for (const variant of variants) {
			const id = `${name.name}.${variant.name}`;
			drafts.push({ ...nameDraft(variant, 0), label: id, insert: id });
		}
		if (variants.length === 0 && name.kind === "import")
			drafts.push(nameDraft(name, 1));
	}
	return drafts;
}

/** The fasteners of the stock files, as sizes. */
function fastenerDrafts(names: KnownNames, row: Construct): Draft[] {
	const kind = row.head === "tack" ? undefined : row.head;
	return names.inForce().flatMap((material) =>
		material.kind === "material"
			? names.membersOf([material.name]).flatMap(({ stock }) => {
					const size = stock?.fastener?.size;
					if (!stock || !size || (kind && size.kind !== kind)) return [];
					return [
						{
							label: size.label,
							kind: "stock" as const,
							detail: stock.id,
							documentation: "",
							insert: size.label,
							snippet: undefined,
							rank: 0,
						},
					];
				})
			: [],
	);
}

function wordDraft(word: string, row: Construct, rank: number): Draft {
	return {
		label: word,
		kind: "word",
		detail: "",
		documentation: headHelp(row),
		insert: word,
		snippet: undefined,
		rank,
	};
}

function nameDraft({ name, kind, doc, stock }: KnownName, rank: number): Draft {
	return {
		label: name,
		kind,
		detail: stock?.species ? `${stock.kind}, ${stock.species}` : kind,
		documentation: doc,
		insert: name,
		snippet: undefined,
		rank,
	};
}
