// A given or mark is put where its name stands, and goes.

import {
	type Edit,
	type Expression,
	expressionsOf,
	fill,
	nodeAt,
	walk,
} from "../../../grammar/index.ts";
import { holds, removal } from "../support/bodies.ts";
import { NameWorld } from "../support/names/name-world.ts";
import type { Mention, Named, NameScope } from "../support/names/named.ts";
import {
	isPrivate,
	type Occurrence,
	occurrences,
	subjectAt,
} from "../support/names/occurrences.ts";
import { type Asked, type Offer, refusal } from "../support/refactoring.ts";
import type { Snapshot } from "../support/snapshot.ts";

const id = "inline-size";
const kind = "refactor.inline";

export function inlineSize(asked: Asked): Offer[] {
	const { snapshot, span, around } = asked;
	const { text, uri } = snapshot;
	const world = worldOf(asked);
	const subject = subjectAt(world, uri, span.start);
	if (!subject || !holds(subject.node.span, span)) return [];
	const { target } = subject;
	if (target.kind !== "named" || target.suffix !== "") return [];
	const { named } = target;
	const declared = declaredSize(named, uri);
	if (!declared) return [];
	const { name } = named;
	const { value, hasRange } = declared;
	const title = `Put \`${text.slice(value.span.start, value.span.end)}\` where \`${name}\` stands${hasRange ? ", and give up its range" : ""}`;
	const others = isPrivate(named)
		? []
		: around.files().filter((file) => file.mentions(name));
	const paths = new Map(others.map((file) => [file.uri, file.path]));
	const uses = occurrences(world, target, [uri, ...paths.keys()]);
	const reason =
		uses
			.map((use) => reasonAgainst(use, named, value, paths))
			.find((one) => one !== undefined) ??
		(named.scope?.names.get(name) === named
			? undefined
			: `\`${name}\` is declared twice`);
	if (reason) return [refusal(id, kind, title, reason)];
	return [
		{
			id,
			kind,
			title,
			change: () => ({
				edits: [
					...removal(snapshot, named.statement),
					...uses.flatMap(({ mention }) =>
						mention ? [put(snapshot, mention, value)] : [],
					),
				],
				keeps: "sizes",
			}),
		},
	];
}

function worldOf({ snapshot, around }: Asked): NameWorld {
	const { uri, text, result } = snapshot;
	const find = (other: string) =>
		around.files().find((file) => file.uri === other);
	return new NameWorld({
		tree: (one) => (one === uri ? result.tree : find(one)?.tree),
		text: (one) => (one === uri ? text : undefined),
		resolve: (from, path) => around.resolve(path, from),
	});
}

/** The value of a given or mark of this file, if it can be read. */
function declaredSize(
	{ kind: declares, statement, construct, uri: from }: Named,
	uri: string,
): { readonly value: Expression; readonly hasRange: boolean } | undefined {
	if (declares !== "size" || from !== uri) return undefined;
	const read = fill(statement, construct);
	const value = read.ok ? read.filled.slots.get("value") : undefined;
	if (!read.ok || value?.kind !== "expression") return undefined;
	let sound = true;
	walk(value.expression, (node) => {
		if (node.kind === "bad") sound = false;
	});
	return sound
		? {
				value: value.expression,
				hasRange: read.filled.slots.has("low"),
			}
		: undefined;
}

/** Why the value cannot stand in one of the places. */
function reasonAgainst(
	{ uri, mention }: Occurrence,
	{ name, scope, statement, uri: own }: Named,
	value: Expression,
	paths: ReadonlyMap<string, string>,
): string | undefined {
	if (!mention) return undefined;
	const where = uri === own ? "This file" : `"${paths.get(uri)}"`;
	const written = mention.segments.map(({ text }) => text).join(".");
	if (mention.role === "set")
		return `${where} sets \`${name}\` of \`${mention.component?.segments.map(({ text }) => text).join(".")}\``;
	if (mention.role === "measured")
		return `\`${written}\` is measured: it needs its name`;
	if (mention.loose)
		return `A line that cannot be read names \`${written}\`: mend it first`;
	if (mention.segments.length > 1) return `${where} names \`${written}\``;
	if (mention.statement === statement) return `\`${name}\` hangs on itself`;
	const needed = [...expressionsOf(value)].flatMap((node) =>
		node.kind === "path" ? [node.segments[0]?.text ?? ""] : [],
	);
	const hidden = needed.find((one) => isHidden(one, mention.scope, scope));
	return hidden === undefined
		? undefined
		: `\`${hidden}\` means something else in a block that names \`${name}\``;
}

/** Whether a block between the place and where the value stands declares the name itself. */
function isHidden(
	name: string,
	from: NameScope | undefined,
	to: NameScope | undefined,
): boolean {
	for (let scope = from; scope && scope !== to; scope = scope.outer)
		if (scope.names.has(name) || scope.fixed.has(name)) return true;
	return false;
}

function put(
	{ text, result }: Snapshot,
	{ path }: Mention,
	value: Expression,
): Edit {
	const written = text.slice(value.span.start, value.span.end);
	const chain = nodeAt(result.tree, path.span.start);
	const around = chain[chain.indexOf(path) - 1];
	const isOperand = around?.kind === "binary" || around?.kind === "unary";
	return {
		span: path.span,
		text:
			(isOperand && !isOne(value)) ||
			(value.kind === "measure" && isDivisor(text, path.span.start))
				? `(${written})`
				: written,
	};
}

/** Stands by itself beside any operator. */
function isOne({ kind }: Expression): boolean {
	return (
		kind === "path" || kind === "call" || kind === "group" || kind === "measure"
	);
}

/** Behind a stroke a fraction would be read as a second division. */
function isDivisor(text: string, start: number): boolean {
	return /\/\s*$/.test(text.slice(Math.max(0, start - 200), start));
}
