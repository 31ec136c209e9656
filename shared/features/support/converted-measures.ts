// A text with its lengths in the other unit: to the fraction or the millimetre that a maker would write, or exactly.

import {
	type Block,
	type ContextId,
	type Edit,
	type FileNode,
	fill,
	type MeasureNode,
	type Statement,
	walk,
} from "../../../grammar/index.ts";
import { fromBase, toBase, units } from "../../units/dimensions.ts";
import { decimalText, mixedText } from "../../units/format.ts";
import type { DisplayUnit } from "../../units/measure.ts";
import { Rational } from "../../units/rational.ts";
import { bareNumbers, type RoleOfGiven } from "./bare-numbers.ts";
import { putFirst, unitLine, unitOf } from "./bodies.ts";
import { placedIn } from "./place.ts";

export interface Converted {
	readonly edits: readonly Edit[];
	/** Sizes that keep their unit, written behind them. */
	readonly kept: number;
	/** Names that are a length in one place and a number in another: nothing can be converted then. */
	readonly torn: readonly string[];
}

interface Settings {
	readonly to: DisplayUnit;
	readonly exact: boolean;
	/** Of what is shown, in the unit `to`. */
	readonly precision: Rational;
	readonly roleOfGiven: RoleOfGiven;
}

/**
 * Goods are called by their size: a sheet of 3/4 stays one. What was read from a rule or callipers stays as it was read,
 * too: its last figure says how true it is.
 */
const asTheyAre: ReadonlySet<string> = new Set([
	"sold-as",
	"rough",
	"measured",
]);

/** A screw of 1 1/4 is bought as that; how far they stand apart is a size like any. */
const goods: ReadonlySet<string> = new Set([
	"screw",
	"brad",
	"pin",
	"nail",
	"dowel",
	"tack",
]);

/** Finer than a size on a drawing, as what was measured of a material and how true a shop works. */
const fine: ReadonlySet<string> = new Set(["gap", "proud"]);

/** The lengths of a file's own lines or of one piece, which is written in `from` now. */
export function converted(
	body: FileNode | Block,
	context: ContextId,
	from: DisplayUnit,
	settings: Settings,
): Converted {
	const { roles, torn } = bareNumbers(body, context, settings.roleOfGiven);
	const edits: Edit[] = [];
	let kept = 0;
	const lines = (
		inner: FileNode | Block,
		place: ContextId | undefined,
		isFine: boolean,
	): void => {
		for (const statement of inner.statements) {
			const { construct } = placedIn(place, statement);
			const apart =
				place === "file" &&
				(construct?.block === "piece" || construct?.block === "component");
			if (apart) continue;
			kept += line(statement, place, isFine);
			if (statement.block)
				lines(
					statement.block,
					construct?.block,
					isFine ||
						construct?.declares === "material" ||
						construct?.head === "shop",
				);
		}
	};
	const line = (
		statement: Statement,
		place: ContextId | undefined,
		isFine: boolean,
	): number => {
		const { head } = statement;
		const measures = measuresOf(
			statement,
			from,
			(node) => roles.get(node) === "length",
		);
		if (head === "unit") return 0;
		if (head === "precision") {
			for (const node of measures)
				edits.push({
					span: node.span,
					text: spelledPrecision(
						otherPrecision(lengthOf(node, from), settings.to),
						settings.to,
					),
				});
			return 0;
		}
		const bought = goods.has(head)
			? statement.items.find(({ kind }) => kind === "cross")?.span
			: undefined;
		const keeps = ({ span }: MeasureNode): boolean =>
			asTheyAre.has(head) ||
			(bought !== undefined &&
				bought.start <= span.start &&
				span.end <= bought.end);
		let left = 0;
		for (const node of measures) {
			const bare = node.unit === "none";
			const text = keeps(node)
				? undefined
				: written(lengthOf(node, from), settings, isFine || fine.has(head));
			if (text !== undefined) {
				const alone = bare ? text : `${text} ${settings.to}`;
				edits.push({ span: node.span, text: alone });
			} else if (bare) {
				edits.push({
					span: node.span,
					text: `${node.text.trim()} ${units[from].label}`,
				});
				left++;
			}
		}
		if (settings.exact) edits.push(...writtenOut(statement, place, from));
		return left;
	};
	lines(body, context, false);
	return { edits, kept, torn };
}

function lengthOf(node: MeasureNode, from: DisplayUnit): Rational {
	return toBase(
		Rational.fromBigints(node.numerator, node.denominator),
		node.unit === "none" ? from : node.unit,
	);
}

/** The lengths in a line that are written in a unit of the system `from`; its block aside. */
function measuresOf(
	statement: Statement,
	from: DisplayUnit,
	isLength: (node: MeasureNode) => boolean,
): MeasureNode[] {
	const found: MeasureNode[] = [];
	for (const item of statement.items)
		walk(item, (node) => {
			if (node.kind !== "measure") return;
			if (node.unit === "none" ? isLength(node) : inSystem(node, from))
				found.push(node);
		});
	return found;
}

function inSystem({ unit }: MeasureNode, system: DisplayUnit): boolean {
	return system === "in"
		? unit === "in" || unit === "ft" || unit === "ft-in"
		: unit === "mm" || unit === "cm" || unit === "m";
}

/** Undefined where the unit has no short exact number for it. */
function written(
	mm: Rational,
	{ to, exact, precision }: Settings,
	isFine: boolean,
): string | undefined {
	const value = fromBase(mm, to);
	if (exact) return exactly(value, to);
	if (mm.isZero()) return "0";
	const step = stepFor(value, to, precision, isFine);
	const rounded = value.roundTo(step, "nearest");
	const good = rounded.isZero() ? value.roundTo(leastStep[to], "up") : rounded;
	return spelled(good, to);
}

/** So many figures behind the point can be set on a rule or a calliper. */
const mostDigits = 3;

function exactly(value: Rational, to: DisplayUnit): string | undefined {
	if (to === "in")
		return value.roundTo(Rational.of(1, 64), "nearest").eq(value)
			? mixedText(value)
			: undefined;
	return value.roundTo(Rational.of(1, 10 ** mostDigits), "nearest").eq(value)
		? decimalText(value, mostDigits)
		: undefined;
}

const leastStep: Readonly<Record<DisplayUnit, Rational>> = {
	mm: Rational.of(1, 100),
	in: Rational.of(1, 1000),
};

/**
 * What a maker would round to: whole millimetres from 100 on, below the precision of the drawing, tenths where half a
 * millimetre is much; in inches the precision, 1/64 below half an inch, thousandths below 1/16. Common practice, no source.
 */
function stepFor(
	value: Rational,
	to: DisplayUnit,
	precision: Rational,
	isFine: boolean,
): Rational {
	const size = value.toNumber();
	if (to === "mm") {
		if (isFine) return size >= 100 ? Rational.of(1, 2) : Rational.of(1, 100);
		if (size >= 100) return Rational.ONE;
		if (size >= 3) return precision.min(Rational.of(1, 2));
		return size >= 0.5 ? Rational.of(1, 10) : leastStep.mm;
	}
	if (isFine)
		return size >= 4
			? Rational.of(1, 64)
			: isNear(value, Rational.of(1, 64))
				? Rational.of(1, 64)
				: leastStep.in;
	if (size >= 0.5) return precision;
	return size >= 1 / 16 ? precision.min(Rational.of(1, 64)) : leastStep.in;
}

/** Within half a thousandth of an inch. */
function isNear(value: Rational, step: Rational): boolean {
	const off = value.roundTo(step, "nearest").sub(value).abs();
	return off.cmp(Rational.of(1, 2000)) <= 0;
}

function spelled(value: Rational, to: DisplayUnit): string {
	if (to === "mm") return decimalText(value, mostDigits);
	return value.roundTo(Rational.of(1, 128), "nearest").eq(value)
		? mixedText(value)
		: decimalText(value, mostDigits);
}

/** Pairs of what drawings in the two systems are shown to: common practice, no source. */
const precisions: readonly (readonly [inches: Rational, mm: Rational])[] = [
	[Rational.of(1, 128), Rational.of(1, 10)],
	[Rational.of(1, 64), Rational.of(1, 5)],
	[Rational.of(1, 32), Rational.of(1, 2)],
	[Rational.of(1, 16), Rational.ONE],
];

/** The precision of the other system that goes with one of this, mm -> in the unit `to`. */
export function otherPrecision(mm: Rational, to: DisplayUnit): Rational {
	const pair =
		precisions.find(([inches, millimetres]) =>
			to === "mm"
				? toBase(inches, "in").cmp(mm) >= 0
				: millimetres.cmp(mm) >= 0,
		) ?? precisions.at(-1);
	const [inches, millimetres] = pair as (typeof precisions)[number];
	return to === "mm" ? millimetres : inches;
}

function spelledPrecision(value: Rational, to: DisplayUnit): string {
	return to === "mm" ? decimalText(value, mostDigits) : mixedText(value);
}

/** The one size that is another in each unit where it is left to the language: for an exact change it is written. */
function writtenOut(
	statement: Statement,
	place: ContextId | undefined,
	from: DisplayUnit,
): Edit[] {
	const { construct } = placedIn(place, statement);
	const read = construct && fill(statement, construct);
	if (construct?.head !== "back" || !read?.ok) return [];
	const { slots, words } = read.filled;
	if (!slots.has("material") || slots.has("clearance") || words.has("applied"))
		return [];
	const letIn = slots.has("rabbet") || slots.has("groove");
	const usual = {
		in: letIn ? "3/32 in" : "1/16 in",
		mm: letIn ? "2 mm" : "1.5 mm",
	}[from];
	const { end } = statement.headline;
	return [{ span: { start: end, end }, text: ` clearance ${usual}` }];
}

/** Sets the unit of a body; a line is added where it has none. */
export function unitEdit(
	text: string,
	body: FileNode | Block,
	to: DisplayUnit,
): Edit {
	const line = unitLine(body);
	const word = line?.items[1];
	if (line && word) return { span: word.span, text: to };
	if (body.kind === "block") return putFirst(text, body, `unit ${to}`);
	const last = body.statements.findLast(({ head }) => head === "use");
	if (last)
		return {
			span: { start: last.span.end, end: last.span.end },
			text: `\n\nunit ${to}\n`,
		};
	const at = text.startsWith("\ufeff") ? 1 : 0;
	return { span: { start: at, end: at }, text: `unit ${to}\n\n` };
}

/** What a body is shown in, in the unit `to`: its own precision, or that of the file, else what is usual. */
export function precisionIn(
	bodies: readonly (FileNode | Block)[],
	to: DisplayUnit,
	from: DisplayUnit,
): Rational {
	for (const body of bodies) {
		const line = body.statements.find(({ head }) => head === "precision");
		const item = line?.items[1];
		if (item?.kind === "measure")
			return otherPrecision(lengthOf(item, unitOf(body, from)), to);
	}
	return to === "mm" ? Rational.of(1, 2) : Rational.of(1, 32);
}
