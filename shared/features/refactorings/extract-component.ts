// Selected parts of a piece become a component, and the piece makes one of it.
//
// What the lines take from outside as a size becomes a given that the piece sets; what the piece names of them is named
// through the thing that is made. A face of something outside cannot be handed in: then it is told which one.

import {
	contexts,
	type Edit,
	type FileNode,
	type PathNode,
	type Statement,
} from "../../../grammar/index.ts";
import { fromBase } from "../../units/dimensions.ts";
import { mixedText } from "../../units/format.ts";
import type { Rational } from "../../units/rational.ts";
import { bareNumbers } from "../support/bare-numbers.ts";
import {
	type Body,
	bodyAt,
	commentsOf,
	lineEndBehind,
	lineStartBefore,
	putBehind,
	unitOf,
} from "../support/bodies.ts";
import { namesOf } from "../support/known-names.ts";
import { placedIn } from "../support/place.ts";
import {
	type Asked,
	type Change,
	type Offer,
	refusal,
} from "../support/refactoring.ts";
import type { Snapshot } from "../support/snapshot.ts";
import { freeName, namesWritten, type Use, usesIn } from "../support/uses.ts";

const id = "extract-component";
const kind = "refactor.extract";

export function extractComponent(asked: Asked): Offer[] {
	const { snapshot, span, around } = asked;
	const { tree } = snapshot.result;
	const body = bodyAt(tree, span.start);
	if (!body || span.start === span.end) return [];
	const selected = body.block.statements.filter(
		(one) => one.span.start < span.end && span.start < one.span.end,
	);
	const first = selected[0];
	const last = selected.at(-1);
	// Something within one line is selected: that is not about the line.
	if (
		!first ||
		!last ||
		first.span.start < span.start ||
		span.end < last.span.end
	)
		return [];
	if (!selected.some((one) => makesThings(one, body))) return [];
	const chosen = withJoins(body, selected);
	const along = chosen.length - selected.length;
	const title = `Make a component of ${selected.length === 1 ? "this" : `these ${selected.length}`}${
		along === 0
			? ""
			: `, with the ${along === 1 ? "line that joins" : `${along} lines that join`} them`
	}`;
	const plan = planned(asked, body, chosen);
	if (typeof plan === "string") return [refusal(id, kind, title, plan)];
	const offers: Offer[] = [
		{ id, kind, title, change: () => inSameFile(snapshot, body, plan) },
	];
	const place = around.canCreate ? newPath(asked, plan.component) : undefined;
	if (!place) return offers;
	const uses = usesOf(tree, plan, body);
	const other = {
		id: `${id}-in-file`,
		title: `${title} in a new file "${place.path}"`,
	};
	offers.push(
		typeof uses === "string"
			? refusal(other.id, kind, other.title, uses)
			: {
					...other,
					kind,
					change: () => inNewFile(asked, body, plan, place, uses),
				},
	);
	return offers;
}

/** Lines that are about nothing but what is selected go along. */
function withJoins(
	{ block, context }: Body,
	selected: readonly Statement[],
): Statement[] {
	const own = new Set(selected.flatMap((one) => namesOf(one, context)));
	return block.statements.filter(
		(one) =>
			selected.includes(one) ||
			((one.head === "join" || one.head === "fit") &&
				usesIn(one, context).every(
					(use) =>
						use.as === "material" ||
						use.as === "size" ||
						own.has(firstOf(use)) ||
						!isNamed(block, context, firstOf(use)),
				) &&
				usesIn(one, context).some((use) => own.has(firstOf(use)))),
	);
}

function isNamed(
	block: Body["block"],
	context: Body["context"],
	name: string,
): boolean {
	return block.statements.some((one) => namesOf(one, context).includes(name));
}

function makesThings(statement: Statement, { context }: Body): boolean {
	const declares = placedIn(context, statement).construct?.declares;
	return (
		declares === "part" ||
		declares === "box" ||
		declares === "leg" ||
		declares === "group"
	);
}

/** A size that comes from outside. */
interface Param {
	readonly name: string;
	/** The path in the piece. */
	readonly path: string;
	/** What it is when nobody sets it. */
	readonly usual: string;
}

interface Plan {
	readonly chosen: readonly Statement[];
	readonly component: string;
	/** The thing that the piece makes. */
	readonly made: string;
	readonly params: readonly Param[];
	/** Paths in the selection that become names of params. */
	readonly renamed: readonly {
		readonly path: PathNode;
		readonly name: string;
	}[];
	/** Paths in the rest of the piece that lead into the selection. */
	readonly led: readonly PathNode[];
}

/** What has to be done; in words why it cannot. */
function planned(
	asked: Asked,
	body: Body,
	chosen: readonly Statement[],
): Plan | string {
	const { snapshot } = asked;
	const { tree } = snapshot.result;
	const reason = chosen
		.map((one) => reasonAgainst(one, body))
		.find((one) => one !== undefined);
	if (reason) return reason;
	const broken = snapshot.design.findings.find(
		({ severity, origin }) =>
			severity === "error" &&
			origin.uri === snapshot.uri &&
			chosen.some(
				({ span }) =>
					span.start <= origin.span.start && origin.span.end <= span.end,
			),
	);
	if (broken) return `There is an error in these lines: ${broken.message}`;

	const own = new Set(chosen.flatMap((one) => namesOf(one, body.context)));
	const others = body.block.statements.filter((one) => !chosen.includes(one));
	const outside = new Set(others.flatMap((one) => namesOf(one, body.context)));
	const taken = namesWritten(tree);
	const base = chosen.find((one) => makesThings(one, body)) as Statement;
	const [thing = "thing"] = namesOf(base, body.context);
	const component = freeName(
		chosen.filter((one) => makesThings(one, body)).length === 1
			? `${thing}-unit`
			: "assembly",
		taken,
	);
	taken.add(component);
	const made = freeName("made", taken);
	taken.add(made);

	const params = new Map<string, Param>();
	const renamed: { path: PathNode; name: string }[] = [];
	for (const use of chosen.flatMap((one) => usesIn(one, body.context))) {
		const name = firstOf(use);
		if (own.has(name) || !outside.has(name)) continue;
		const path = textOf(use.path);
		if (use.as !== "size")
			return `\`${path}\` is outside of the selection: a component has only what is handed in, and that are sizes`;
		const param = params.get(path) ?? paramOf(snapshot, body, use.path, taken);
		if (typeof param === "string") return param;
		params.set(path, param);
		if (param.name !== path) renamed.push({ path: use.path, name: param.name });
	}
	const led: PathNode[] = [];
	for (const use of others.flatMap((one) => usesIn(one, body.context))) {
		if (!own.has(firstOf(use))) continue;
		if (use.as === "unread")
			return `A line that cannot be read names \`${textOf(use.path)}\`: mend it first`;
		led.push(use.path);
	}
	return {
		chosen,
		component,
		made,
		params: [...params.values()],
		renamed,
		led,
	};
}

/** Why a line can be in no component. */
function reasonAgainst(statement: Statement, body: Body): string | undefined {
	const { construct } = placedIn(body.context, statement);
	if (!construct || statement.head === "")
		return "There is a line that cannot be read";
	if (construct.head === "given")
		return "A given stays in the piece, where it can be set: leave it out of the selection, and it is handed in";
	const may = contexts.component.some(({ head }) => head === construct.head);
	if (!may || construct.head === "unit")
		return `A \`${construct.head}\` line stays in the piece: leave it out of the selection`;
	if (
		construct.head === "finish" &&
		!statement.block?.statements.some(({ head }) => head === "on")
	)
		return "The finish is for the whole piece: leave it out of the selection";
	return undefined;
}

function firstOf({ path, hidden }: Use): string {
	const name = path.segments[0]?.text ?? "";
	return hidden.has(name) ? "" : name;
}

function textOf({ segments }: PathNode): string {
	return segments.map(({ text }) => text).join(".");
}

/** A size from outside as a given; in words why it is none. */
function paramOf(
	{ design, uri }: Snapshot,
	body: Body,
	path: PathNode,
	taken: Set<string>,
): Param | string {
	const label = textOf(path);
	const known = design.sizesAt.find(
		({ origin }) =>
			origin.uri === uri &&
			origin.span.start === path.span.start &&
			origin.span.end === path.span.end,
	)?.size;
	if (!known || (known.dimension !== "length" && known.dimension !== "number"))
		return `\`${label}\` is no size that can be handed in: give it a name with a \`mark\` line first`;
	const single = path.segments.length === 1;
	const name = single
		? label
		: freeName(path.segments.map(({ text }) => text).join("-"), taken);
	taken.add(name);
	const unit = unitOfBody(design, body);
	const counts =
		single &&
		known.bare !== undefined &&
		bareNumbers(body.block, body.context).roleOf(label) === "number";
	const value =
		known.dimension === "number" || counts
			? known.value
			: fromBase(known.value, unit);
	return { name, path: label, usual: spelled(value) };
}

/** Exact, and readable where it can be. */
function spelled(value: Rational): string {
	const text = mixedText(value);
	return value.sign() < 0 ? `-(${text.slice(1)})` : text;
}

function unitOfBody(
	design: Snapshot["design"],
	{ statement }: Body,
): "in" | "mm" {
	const piece = design.pieces.find(
		({ declaration: { origin } }) =>
			origin.span.start === statement.span.start && origin.uri === design.uri,
	);
	return piece?.display.unit ?? "in";
}

/** The lines of the component, with their comments, in the order of the text. */
function componentText(
	snapshot: Snapshot,
	{ chosen, component, params, renamed }: Plan,
	unit: string | undefined,
): string {
	const { text } = snapshot;
	const lines = chosen.map((statement, index) => {
		const { start, end } = wholeSpan(snapshot, statement);
		const before = chosen[index - 1];
		const gap =
			before &&
			/(?:\r\n|\r|\n)[ \t]*(?:\r\n|\r|\n)/.test(
				text.slice(wholeSpan(snapshot, before).end, start),
			);
		let put = text.slice(start, end);
		for (const { path, name } of renamed.toReversed())
			if (path.span.start >= start && path.span.end <= end)
				put =
					put.slice(0, path.span.start - start) +
					name +
					put.slice(path.span.end - start);
		return (gap ? "\n" : "") + put;
	});
	const givens = params.map(({ name, usual }) => `given ${name} = ${usual}`);
	const head = [...(unit ? [`unit ${unit}`] : []), ...givens];
	return [
		`component ${component} {`,
		...head,
		...(head.length > 0 ? [""] : []),
		...lines,
		"}",
	].join("\n");
}

/** A statement with the comments that belong to it. */
function wholeSpan(
	snapshot: Snapshot,
	statement: Statement,
): { readonly start: number; readonly end: number } {
	const { above, behind } = commentsOf(snapshot, statement);
	return {
		start: above[0]?.span.start ?? statement.span.start,
		end: behind?.span.end ?? statement.span.end,
	};
}

/** The piece without the lines, with what it makes in their place. */
function pieceEdits(
	snapshot: Snapshot,
	{ chosen, component, made, params, led }: Plan,
): Edit[] {
	const { text } = snapshot;
	const sets = params.map(({ name, path }) => `set ${name} = ${path}`);
	const make = `make ${made} from ${component} {${sets.length > 0 ? `\n${sets.join("\n")}\n` : " "}}`;
	return [
		...chosen.map((statement, index) => {
			const { start, end } = wholeSpan(snapshot, statement);
			if (index === 0) return { span: { start, end }, text: make };
			const rest = /^[ \t]*;/.exec(text.slice(end))?.[0] ?? "";
			const from = lineStartBefore(text, start);
			return {
				span: {
					start: from,
					end:
						from < start || /[\r\n]/.test(text[start - 1] ?? "")
							? lineEndBehind(text, end + rest.length)
							: end + rest.length,
				},
				text: "",
			};
		}),
		...led.map(({ span }) => ({
			span: { start: span.start, end: span.start },
			text: `${made}.`,
		})),
	];
}

function inSameFile(snapshot: Snapshot, body: Body, plan: Plan): Change {
	const { tree } = snapshot.result;
	const own = unitOfBody(snapshot.design, body);
	const differs = unitOf(tree, "in") !== own;
	const start = wholeSpan(snapshot, body.statement).start;
	return {
		edits: [
			{
				span: { start, end: start },
				text: `${componentText(snapshot, plan, differs ? own : undefined)}\n\n`,
			},
			...pieceEdits(snapshot, plan),
		],
		keeps: "sizes",
		// The component is looked at by itself as well, without what holds it in the piece.
		mayBringFindings: true,
	};
}

function inNewFile(
	asked: Asked,
	body: Body,
	plan: Plan,
	place: { readonly path: string; readonly uri: string },
	uses: readonly string[],
): Change {
	const { snapshot } = asked;
	const { tree } = snapshot.result;
	const unit = unitOfBody(snapshot.design, body);
	const text = `${[...uses, `unit ${unit}`].join("\n")}\n\n${componentText(snapshot, plan, undefined)}\n`;
	const last = tree.statements.findLast(({ head }) => head === "use");
	const line = `use ${plan.component} from "${place.path}"`;
	return {
		edits: [
			last
				? putBehind(snapshot, last, line)
				: { span: { start: 0, end: 0 }, text: `${line}\n\n` },
			...pieceEdits(snapshot, plan),
		],
		newFile: { ...place, text },
		keeps: "sizes",
		// The component is looked at by itself as well, without what holds it in the piece.
		mayBringFindings: true,
	};
}

/** The lines by which a new file beside this one takes what the component needs; in words why it cannot. */
function usesOf(
	tree: FileNode,
	{ chosen }: Plan,
	body: Body,
): string[] | string {
	const inside = new Set(
		body.block.statements.flatMap((one) => namesOf(one, body.context)),
	);
	const needed = new Set(
		chosen
			.flatMap((one) => usesIn(one, body.context))
			.map(firstOf)
			.filter((name) => name !== "" && !inside.has(name)),
	);
	const lines: string[] = [];
	for (const statement of tree.statements) {
		const names = namesOf(statement, "file").filter((name) => needed.has(name));
		const path = statement.items.at(-1);
		if (names.length === 0) continue;
		if (statement.head !== "use")
			return `\`${names[0]}\` is declared in this file: a new file that this one uses cannot take it from here`;
		if (path?.kind === "text")
			lines.push(`use ${names.join(", ")} from "${path.value}"`);
	}
	return lines;
}

/** A file beside this one that is not there yet. */
function newPath(
	{ around }: Asked,
	component: string,
): { readonly path: string; readonly uri: string } | undefined {
	const there = new Set(around.files().map(({ uri }) => uri));
	for (let count = 1; count < 100; count++) {
		const path = `./${component}${count === 1 ? "" : `-${count}`}.rod`;
		const uri = around.resolve(path);
		if (uri === undefined) return undefined;
		if (!there.has(uri)) return { path, uri };
	}
	return undefined;
}
