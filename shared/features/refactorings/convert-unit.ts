// A piece or a whole file in the other unit: to the sizes that a maker would write, with the largest change told, or exactly.

import {
	type Edit,
	type FileNode,
	parse,
	walk,
} from "../../../grammar/index.ts";
import { allFindings } from "../../checks/index.ts";
import type { Size } from "../../model/size.ts";
import type { Design } from "../../model/types.ts";
import { applyEdits } from "../../text/edits.ts";
import { fromBase, units } from "../../units/dimensions.ts";
import { decimalText } from "../../units/format.ts";
import type { DisplayUnit } from "../../units/measure.ts";
import { Rational } from "../../units/rational.ts";
import { bareNumbers, type RoleOfGiven } from "../support/bare-numbers.ts";
import {
	type Body,
	bodiesOf,
	holds,
	unitLine,
	unitOf,
} from "../support/bodies.ts";
import {
	type Converted,
	converted,
	precisionIn,
	unitEdit,
} from "../support/converted-measures.ts";
import { newFaults } from "../support/finished-change.ts";
import { namesOf } from "../support/known-names.ts";
import {
	type Asked,
	type Offer,
	type RefactoringKind,
	refusal,
} from "../support/refactoring.ts";
import { touchedPieces } from "../support/touched-pieces.ts";

const words: Readonly<Record<DisplayUnit, string>> = {
	in: "inches",
	mm: "millimetres",
};

export function convertUnit(asked: Asked): Offer[] {
	const { snapshot, span, around } = asked;
	const { tree } = snapshot.result;
	const ofFile = unitOf(tree, "in");
	const offers: Offer[] = [];
	for (const body of bodiesOf(tree)) {
		const line = unitLine(body.block);
		if (
			holds(body.statement.headline, span) ||
			(line && holds(line.span, span))
		)
			offers.push(
				...offersFor(asked, otherUnit(unitOf(body.block, ofFile)), body),
			);
	}
	const line = unitLine(tree);
	if (around.wholeFile || (line && holds(line.span, span))) {
		const used = new Set([
			...bodiesOf(tree).map(({ block }) => unitOf(block, ofFile)),
			ofFile,
		]);
		for (const from of ["in", "mm"] as const)
			if (used.has(from))
				offers.push(...offersFor(asked, otherUnit(from), undefined));
	}
	return offers;
}

function otherUnit(unit: DisplayUnit): DisplayUnit {
	return unit === "in" ? "mm" : "in";
}

/** Of one piece, or of the whole file. */
function offersFor(
	asked: Asked,
	to: DisplayUnit,
	body: Body | undefined,
): Offer[] {
	const kind: RefactoringKind =
		asked.around.wholeFile && !body
			? "source.convertUnit.storyrod"
			: "refactor.rewrite";
	const what = body ? `\`${body.name}\`` : "the file";
	const title = `Convert ${what} to ${words[to]}`;
	const id = `convert-unit ${body?.name ?? ""} ${to}`;
	const rounded = conversion(asked, to, body, false);
	if (rounded.torn.length > 0)
		return [
			refusal(
				id,
				kind,
				title,
				`\`${rounded.torn[0]}\` is a length in one place and a number in another: give each a name of its own`,
			),
		];
	const exact = conversion(asked, to, body, true);
	const [before, after] = evaluated(asked, rounded.edits);
	const told = changeText(before, after, to);
	return [
		{
			id,
			kind,
			title: `${title}: ${told}`,
			change: () => ({
				edits: rounded.edits,
				caution: `${caution(told, before, after)}${namesNumbers(asked, body) ? "; numbers in comments and texts stay as they are" : ""}`,
				keeps: "nothing",
			}),
		},
		{
			id: `${id} exactly`,
			kind,
			title: `${title} exactly${exact.kept > 0 ? `: ${exact.kept} ${exact.kept === 1 ? "size keeps" : "sizes keep"} ${exact.kept === 1 ? "its" : "their"} ${words[otherUnit(to)]}` : ""}`,
			change: () => ({
				edits: exact.edits,
				keeps: "exact",
				mayBringFindings: true,
			}),
		},
	];
}

function conversion(
	{ snapshot, around }: Asked,
	to: DisplayUnit,
	only: Body | undefined,
	exact: boolean,
): Converted {
	const { text, result } = snapshot;
	const { tree } = result;
	const from = otherUnit(to);
	const ofFile = unitOf(tree, "in");
	const roleOfGiven = rolesOfGivens((component) => [
		tree,
		...around
			.files()
			.filter((file) => file.mentions(component))
			.map((file) => file.tree),
	]);
	const all: Converted[] = [];
	const add = (
		body: FileNode | Body["block"],
		context: Body["context"] | "file",
	) => {
		const precision = precisionIn([body, tree], to, from);
		const one = converted(body, context, from, {
			to,
			exact,
			precision,
			roleOfGiven,
		});
		all.push({ ...one, edits: [...one.edits, unitEdit(text, body, to)] });
	};
	for (const { block, context, name } of bodiesOf(tree)) {
		if (only && only.name !== name) continue;
		if (unitOf(block, ofFile) !== from) continue;
		if (only || unitLine(block)) add(block, context);
		else {
			// Its unit is that of the file, which changes.
			const one = converted(block, context, from, {
				to,
				exact,
				precision: precisionIn([block, tree], to, from),
				roleOfGiven,
			});
			all.push(one);
		}
	}
	if (!only && ofFile === from) add(tree, "file");
	return {
		edits: all.flatMap(({ edits }) => edits),
		kept: all.reduce((sum, { kept }) => sum + kept, 0),
		torn: all.flatMap(({ torn }) => torn),
	};
}

/** What the givens of components stand for, by the files that are known. */
function rolesOfGivens(
	treesWith: (component: string) => readonly FileNode[],
): RoleOfGiven {
	return (component, given) => {
		for (const tree of treesWith(component))
			for (const { block, context, name } of bodiesOf(tree))
				if (
					context === "component" &&
					name === component &&
					block.statements.some((one) => namesOf(one, context).includes(given))
				)
					return bareNumbers(block, context).roleOf(given) ?? "length";
		return "length";
	};
}

/** The design before and after, as far as it is touched. */
function evaluated(
	{ snapshot, around }: Asked,
	edits: readonly Edit[],
): readonly [before: Design, after: Design] {
	const { text, result, design } = snapshot;
	const now = applyEdits(
		text,
		edits.map(({ span, text: put }) => ({ ...span, text: put })),
	);
	const some = touchedPieces(
		{ text, tree: result.tree },
		{ text: now, tree: parse(now).tree },
	);
	return some
		? [around.evaluate(some.before), around.evaluate(some.after)]
		: [design, around.evaluate(now)];
}

/** How far the parts that are cut move from what they were. */
function changeText(before: Design, after: Design, to: DisplayUnit): string {
	const worst = worstChange(before, after);
	return worst
		? `nothing changes by more than ${shown(worst.by, to)} ${units[to].label} (\`${worst.path}\`)`
		: "nothing changes";
}

/** What the rounded sizes bring beside that. */
function caution(told: string, before: Design, after: Design): string {
	const [first, ...more] = newFaults(allFindings(before), allFindings(after));
	return `${capital(told)}${
		first === undefined
			? ""
			: `; the rounded sizes bring ${more.length === 0 ? "a finding" : `${more.length + 1} findings, the first`}: ${first}`
	}`;
}

/** Whether something is said in words of sizes that are converted. */
function namesNumbers(
	{ snapshot: { result } }: Asked,
	body: Body | undefined,
): boolean {
	const { tree } = result;
	const span = body?.statement.span ?? tree.span;
	let found = tree.comments.some(
		(comment) => holds(span, comment.span) && /\d/.test(comment.text),
	);
	walk(body?.statement ?? tree, (node) => {
		if (node.kind === "statement" && node.head === "use") return false;
		if (node.kind === "text" && /\d/.test(node.value)) found = true;
		return true;
	});
	return found;
}

interface Worst {
	readonly path: string;
	/** mm. */
	readonly by: Rational;
}

/** The size or place of a part, or the thickness of a material, that differs most; undefined if none does. */
function worstChange(before: Design, after: Design): Worst | undefined {
	let worst: Worst | undefined;
	const look = (path: string, one: Size, other: Size): void => {
		const by = one.value.sub(other.value).abs();
		if (by.sign() > 0 && (!worst || by.cmp(worst.by) > 0)) worst = { path, by };
	};
	for (const piece of before.pieces) {
		const other = after.pieces.find(({ name }) => name === piece.name);
		for (const part of piece.parts) {
			const now = other?.partByPath.get(part.path);
			if (!now) continue;
			for (const size of ["length", "width", "thick"] as const)
				look(part.path, part[size], now[size]);
			for (const axis of [0, 1, 2] as const)
				look(part.path, part.min[axis], now.min[axis]);
		}
	}
	for (const [id, { thick }] of before.stocks) {
		const now = after.stocks.get(id)?.thick;
		if (thick && now) look(id, thick, now);
	}
	return worst;
}

/** Rounded up, so that it holds. */
function shown(mm: Rational, to: DisplayUnit): string {
	const digits = to === "mm" ? 2 : 3;
	const step = Rational.of(1, 10 ** digits);
	return decimalText(fromBase(mm, to).roundTo(step, "up"), digits);
}

function capital(text: string): string {
	return text.slice(0, 1).toUpperCase() + text.slice(1);
}
