// Gives a thing another name, in every place that means it, or tells why not. All places or none.

import {
	constructAt,
	type Edit,
	fill,
	joiningWords,
	parse,
	reservedNames,
	type Span,
} from "../../grammar/index.ts";
import { editedWorld } from "./support/names/edited-world.ts";
import type { NameWorld } from "./support/names/name-world.ts";
import type { Named, Target } from "./support/names/named.ts";
import {
	isPrivate,
	type Occurrence,
	occurrences,
	subjectAt,
} from "./support/names/occurrences.ts";
import { boxSides } from "./support/names/read-names.ts";
import { firstChange } from "./support/names/same-meaning.ts";
import {
	fileName,
	tellNamed,
	tellPlace,
	tellTarget,
	wordFor,
} from "./support/names/tell-names.ts";

/** One line, for the user. */
export interface Refusal {
	readonly refused: string;
}

export interface Renamable {
	/** The name in the text. */
	readonly span: Span;
	readonly name: string;
	readonly named: Named;
}

export interface Renaming {
	/** By file, in order of place. Empty if the name is the one that it has. */
	readonly edits: ReadonlyMap<string, readonly Edit[]>;
}

/** What can be renamed at an offset. Undefined where nothing is named at all. */
export function renamable(
	world: NameWorld,
	uri: string,
	offset: number,
): Renamable | Refusal | undefined {
	const subject = subjectAt(world, uri, offset);
	if (!subject) {
		const at = world.at(uri, offset);
		if (!at || "kind" in at.is || at.is.mention.loose) return undefined;
		const { mention } = at.is;
		return refuse(
			mention.role === "use"
				? `\`${at.node.text}\` is not found in the file that this line takes it from: mend the line first`
				: `Nothing here is called \`${at.node.text}\`: declare it or mend the name first`,
		);
	}
	const { node, target } = subject;
	if (target.kind === "fixed") return refuse(whyFixed(world, target));
	if (target.suffix !== "")
		return refuse(
			`\`${node.text}\` is named after \`${target.named.name}\`, that it lies on: rename ${tellNamed(world, target.named)}`,
		);
	return { span: node.span, name: node.text, named: target.named };
}

export interface RenameFiles {
	/** All files in which it may be mentioned, its own among them. */
	readonly uris: readonly string[];
	/** Why a file cannot be changed; undefined if it can. */
	readonly locked: (uri: string) => string | undefined;
}

/** The edits that give the thing at an offset another name. Undefined where nothing is named. */
export function rename(
	...asked: Parameters<typeof renaming>
): Renaming | Refusal | undefined {
	const steps = renaming(...asked);
	for (;;) {
		const { done, value } = steps.next();
		if (done) return value;
	}
}

/** The same, file by file: yields in between. The world must not change meanwhile. */
export function* renaming(
	world: NameWorld,
	uri: string,
	offset: number,
	wanted: string,
	files: RenameFiles,
): Generator<void, Renaming | Refusal | undefined> {
	const found = renamable(world, uri, offset);
	if (!found || "refused" in found) return found;
	const { named } = found;
	const name = wanted.trim();
	const fault =
		faultOf(name) ??
		(name === named.name ? undefined : taken(world, named, name, files));
	if (fault !== undefined) return refuse(fault);
	const places = occurrences(
		world,
		{ kind: "named", named, suffix: "", mirrored: false },
		files.uris,
	);
	const blocked =
		blockedBy(world, named, places, files) ??
		capsNamed(world, named, name, places);
	if (blocked !== undefined) return refuse(blocked);
	const edits = new Map<string, Edit[]>();
	if (name === named.name) return { edits };
	for (const place of places) {
		const list = edits.get(place.uri) ?? [];
		edits.set(place.uri, list);
		list.push({ span: place.node.span, text: `${name}${place.suffix}` });
	}
	const broken = yield* broke(world, named, name, edits, files);
	return broken === undefined ? { edits } : refuse(broken);
}

function refuse(refused: string): Refusal {
	return { refused };
}

/** Why nobody can choose the name. */
function whyFixed(
	world: NameWorld,
	{ of, words }: Target & { readonly kind: "fixed" },
): string {
	const word = words.at(-1) ?? "";
	if (!of) return `\`${word}\` is a word of the language: it has no other name`;
	const owner = `\`${of.name}\``;
	const rename = `rename ${tellNamed(world, of)} instead`;
	const [first = ""] = words;
	if (words.length === 1 && (of.kind === "trim" || of.kind === "veneer"))
		return `\`${word}\` is named after what this ${wordFor(of)} lies on, nobody chose it: ${rename}`;
	if (words.length === 1 && of.kind === "mount")
		return `\`${word}\` is a strip that every mount of its kind has: ${rename}`;
	if (words.length === 1 && of.kind === "box" && boxSides.has(first))
		return `\`${word}\` is what every box calls that side of it: ${rename}`;
	return `\`${word}\` is a size or a face that comes with ${owner}, nobody chose its name: ${rename}`;
}

/** Why a word can be no name at all. */
function faultOf(name: string): string | undefined {
	if (name === "") return "A name wants at least one letter";
	if (reservedNames.has(name))
		return `\`${name}\` is a word of the language: ${[...joiningWords].map((word) => `\`${word}\``).join(", ")} and \`floor\` can be no names`;
	const { tree, faults } = parse(`given ${name} = 1`);
	const [line] = tree.statements;
	const construct = constructAt("piece", "given");
	const result = line && construct && fill(line, construct);
	const value = result?.ok ? result.filled.slots.get("name") : undefined;
	const isName =
		faults.length === 0 &&
		tree.statements.length === 1 &&
		value?.kind === "names" &&
		value.names[0]?.text === name;
	return isName
		? undefined
		: `\`${name.replaceAll("`", "'")}\` is no name: a name begins with a letter and goes on with letters, digits and single hyphens, as in \`front-left\``;
}

/** Who has the name already, or what it would hide. */
function taken(
	world: NameWorld,
	named: Named,
	name: string,
	{ uris }: RenameFiles,
): string | undefined {
	const other = "choose another name";
	const already = (one: Named): string =>
		`\`${name}\` is already ${tellNamed(world, one)}: ${other}`;
	if (named.scope) {
		const same = named.scope.all.find((one) => one.name === name);
		if (same) return already(same);
		const { holder } = named.scope;
		if (
			named.scope.fixed.has(name) ||
			(holder?.kind === "box" && boxSizes.has(name))
		)
			return `\`${name}\` is what every box calls a side or a size of its own: ${other} for the ${wordFor(named)} in \`${holder?.name}\``;
		if (named.scope.behindDot) return undefined;
		for (let scope = named.scope.outer; scope; scope = scope.outer) {
			const hidden = scope.names.get(name);
			if (hidden)
				return `\`${name}\` would hide ${tellNamed(world, hidden)}: ${other}`;
		}
		const top = world.topName(named.uri, name);
		return top && `\`${name}\` would hide ${tellNamed(world, top)}: ${other}`;
	}
	// Files that take it have it among their own names.
	for (const uri of new Set([named.uri, ...uris])) {
		const file = world.file(uri);
		if (!file) continue;
		const isTaken = file.scope.get(named.name);
		if (
			uri !== named.uri &&
			(isTaken?.kind !== "taken" || world.topName(uri, named.name) !== named)
		)
			continue;
		const same = file.top.find((one) => one.name === name);
		if (same) return already(same);
		const use = file.uses.find((one) =>
			one.names.some(({ text }) => text === name),
		);
		const node = use?.names.find(({ text }) => text === name);
		if (node)
			return `\`${name}\` is already taken from another file at ${tellPlace(world, uri, node.span)}: ${other}`;
	}
	return undefined;
}

const boxSizes: ReadonlySet<string> = new Set([
	"width",
	"height",
	"depth",
	"inside",
	"rear",
]);

/** Why one of the places cannot be changed. */
function blockedBy(
	world: NameWorld,
	named: Named,
	places: readonly Occurrence[],
	{ locked }: RenameFiles,
): string | undefined {
	for (const { uri, node, suffix, mirrored } of places) {
		const why = locked(uri);
		const counts = /\d$/.test(suffix);
		if (why === undefined && !counts && !mirrored) continue;
		const where = tellPlace(world, uri, node.span);
		if (why !== undefined)
			return `\`${named.name}\` is mentioned at ${where}, and ${why}: nothing was renamed`;
		return counts
			? `\`${node.text}\` at ${where} counts the parts that are called \`${named.name}\`: name that part in another way first`
			: `At ${where} the right one of a handed pair reads \`left\` for \`right\`: with another name it would not; write the two legs on lines of their own first`;
	}
	return undefined;
}

/** `caps` of a trim goes by the names of its strips, and a strip on one edge of a part is called as the part is. */
function capsNamed(
	world: NameWorld,
	named: Named,
	name: string,
	places: readonly Occurrence[],
): string | undefined {
	if (!boxSides.has(named.name) && !boxSides.has(name)) return undefined;
	for (const { mention } of places) {
		const trim = mention?.statement.head === "on" ? mention.holder : undefined;
		if (
			trim?.kind === "trim" &&
			trim.statement.block?.statements.some(({ head }) => head === "caps")
		)
			return `The \`caps\` line of ${tellNamed(world, trim)} goes by the names of what the strips lie on: with another name for \`${named.name}\` other strips could run over; take the line away first`;
	}
	return undefined;
}

/** What would mean something else with the new name, told with its place. */
function* broke(
	world: NameWorld,
	named: Named,
	name: string,
	edits: ReadonlyMap<string, readonly Edit[]>,
	{ uris }: RenameFiles,
): Generator<void, string | undefined> {
	const after = yield* editedWorld(world, edits);
	const names = new Set([named.name, name]);
	const change = yield* firstChange(
		world,
		after,
		isPrivate(named) ? [named.uri] : uris,
		names,
	);
	if (!change) return undefined;
	const { uri, node } = change;
	const where = node ? tellPlace(world, uri, node.span) : fileName(uri);
	if (!node || !("before" in change))
		return `\`${name}\` would be read as a word of the language at ${where}: choose another name`;
	const { before, after: then } = change;
	const told = node.text === named.name ? name : node.text;
	if (!before)
		return `\`${node.text}\` at ${where} is a name that nothing has yet: it would come to mean ${tellNamed(world, named)}; choose another name`;
	return `\`${told}\` at ${where} would mean ${then ? tellTarget(world, then) : "nothing"} instead of ${tellTarget(world, before)}: choose another name`;
}
