// A given or mark is put where its name stands, and goes.

import {
	type Edit,
	type Expression,
	expressionsOf,
	type FileNode,
	fill,
	type Statement,
	walk,
} from "../../../grammar/index.ts";
import { type Body, bodyAt, removal } from "../support/bodies.ts";
import { namesOf } from "../support/known-names.ts";
import { placedIn } from "../support/place.ts";
import { type Asked, type Offer, refusal } from "../support/refactoring.ts";
import { means, type Use, usesIn } from "../support/uses.ts";

const id = "inline-size";
const kind = "refactor.inline";

export function inlineSize(asked: Asked): Offer[] {
	const { snapshot, span, around } = asked;
	const { text, result } = snapshot;
	const body = bodyAt(result.tree, span.start);
	const name = body && nameAt(body, asked);
	const declared = body && name && declarationOf(body, name);
	if (!body || !name || !declared) return [];
	const { statement, value, hasRange } = declared;
	const title = `Put \`${text.slice(value.span.start, value.span.end)}\` where \`${name}\` stands${hasRange ? ", and give up its range" : ""}`;
	const uses = body.block.statements
		.filter((one) => one !== statement)
		.flatMap((one) => usesIn(one, body.context))
		.filter((use) => means(use, name));
	const reason =
		reasonInside(uses, name, value) ??
		(body.context === "component"
			? reasonOutside(
					[
						{ tree: result.tree, path: "" },
						...around.files().filter((file) => file.mentions(body.name)),
					],
					body.name,
					name,
				)
			: undefined);
	if (reason) return [refusal(id, kind, title, reason)];
	return [
		{
			id,
			kind,
			title,
			change: () => ({
				edits: [
					...removal(snapshot, statement),
					...uses.map((use) => put(text, use, value)),
				],
				keeps: "sizes",
			}),
		},
	];
}

/** The name that the cursor touches: where it is declared or where it is used. */
function nameAt({ block, context }: Body, { span }: Asked): string | undefined {
	for (const statement of block.statements) {
		if (statement.span.start > span.start || statement.span.end < span.end)
			continue;
		const [name] = namesOf(statement, context);
		const item = statement.items[1];
		if (
			placedIn(context, statement).construct?.declares === "size" &&
			item &&
			item.span.start <= span.start &&
			span.end <= item.span.end
		)
			return name;
		return usesIn(statement, context)
			.filter(({ path, hidden }) => {
				const [first] = path.segments;
				return (
					path.segments.length === 1 &&
					first &&
					!hidden.has(first.text) &&
					path.span.start <= span.start &&
					span.end <= path.span.end
				);
			})
			.map(({ path }) => path.segments[0]?.text)[0];
	}
	return undefined;
}

interface Declared {
	readonly statement: Statement;
	readonly value: Expression;
	readonly hasRange: boolean;
}

/** Undefined where the name is no size of this body, or is declared twice. */
function declarationOf(
	{ block, context }: Body,
	name: string,
): Declared | undefined {
	const all = block.statements.filter((one) =>
		namesOf(one, context).includes(name),
	);
	const [statement] = all;
	const construct = statement && placedIn(context, statement).construct;
	if (!statement || construct?.declares !== "size" || all.length > 1)
		return undefined;
	const read = fill(statement, construct);
	const value = read.ok ? read.filled.slots.get("value") : undefined;
	return read.ok && value?.kind === "expression" && isSound(value.expression)
		? {
				statement,
				value: value.expression,
				hasRange: read.filled.slots.has("low"),
			}
		: undefined;
}

function isSound(value: Expression): boolean {
	let sound = true;
	walk(value, (node) => {
		if (node.kind === "bad") sound = false;
	});
	return sound;
}

/** Why a value cannot stand where the name does. */
function reasonInside(
	uses: readonly Use[],
	name: string,
	value: Expression,
): string | undefined {
	if (uses.some(({ as }) => as === "unread"))
		return `A line that cannot be read names \`${name}\`: mend it first`;
	if (uses.some(({ as, path }) => as !== "size" || path.segments.length > 1))
		return `\`${name}\` is named where only a name can stand`;
	const needed = [...expressionsOf(value)].flatMap((node) =>
		node.kind === "path" ? [node.segments[0]?.text ?? ""] : [],
	);
	if (needed.includes(name)) return `\`${name}\` hangs on itself`;
	for (const use of uses) {
		const hidden = needed.find((one) => use.hidden.has(one));
		if (hidden)
			return `\`${hidden}\` means something else in a block that names \`${name}\``;
	}
	return undefined;
}

/** Why a size of a component is still wanted by its name elsewhere. */
function reasonOutside(
	files: readonly { readonly tree: FileNode; readonly path: string }[],
	component: string,
	name: string,
): string | undefined {
	for (const { tree, path } of files) {
		const where = path === "" ? "This file" : `"${path}"`;
		for (const outer of tree.statements)
			for (const one of outer.block?.statements ?? []) {
				const last = one.items.at(-1);
				if (
					one.head !== "make" ||
					last?.kind !== "path" ||
					last.segments[0]?.text !== component
				)
					continue;
				if (
					one.block?.statements.some((set) => namesOf(set, "make")[0] === name)
				)
					return `${where} sets \`${name}\` of \`${component}\``;
				const group = namesOf(one, "piece")[0];
				for (const other of outer.block?.statements ?? [])
					for (const { path: used } of usesIn(other, "piece"))
						if (
							used.segments[0]?.text === group &&
							used.segments[1]?.text === name
						)
							return `${where} names \`${group}.${name}\``;
			}
	}
	return undefined;
}

function put(text: string, { path, within }: Use, value: Expression): Edit {
	const written = text.slice(value.span.start, value.span.end);
	const alone = within === path || isWhole(within, path);
	return {
		span: path.span,
		text:
			needsBrackets(value, alone) ||
			(value.kind === "measure" && isDivisor(text, path))
				? `(${written})`
				: written,
	};
}

/** Behind a stroke a fraction would be read as a second division. */
function isDivisor(text: string, { span }: Expression): boolean {
	return /\/\s*$/.test(text.slice(0, span.start));
}

/** Whether the name is a size by itself: in a list, between crosses, as an argument. */
function isWhole(within: Expression | undefined, path: Expression): boolean {
	switch (within?.kind) {
		case "cross":
			return within.sizes.includes(path);
		case "list":
			return within.elements.includes(path);
		case "compare":
			return within.left === path || within.right === path;
		default:
			return false;
	}
}

function needsBrackets(value: Expression, alone: boolean): boolean {
	switch (value.kind) {
		case "path":
		case "call":
		case "group":
		case "measure":
			return false;
		default:
			return !alone;
	}
}
