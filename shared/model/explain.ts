// Tells where a size comes from, in a maker's words and in the design's unit; what is rounded carries a `~`.

import { fromBase } from "../units/dimensions.ts";
import {
	decimalText,
	formatLength,
	lengthText,
	mixedText,
} from "../units/format.ts";
import { Rational, TooLargeError } from "../units/rational.ts";
import type { Size } from "./size.ts";
import type { Display } from "./types.ts";

type LengthUnit = Display["unit"];

/** What the story of a size is made of: a line, and the lines that explain what stands in it. */
export interface Story {
	readonly text: string;
	readonly steps: readonly Story[];
}

/**
 * One line: `52 19/32 = width 54 - 2 x 45/64 (ply.three-quarter as it measures)`. Names are told with their value and
 * not followed further. A size that the maker just states reads `54, as written`.
 */
export function explainLine(size: Size, display: Display): string {
	return headline(unnamed(size), display, new Budget());
}

/**
 * Every step down to what the maker wrote, each on a line, two blanks deeper than what it explains. A name that came
 * before is not told again. `label` is what is explained: `case.top.length`.
 */
export function explainTree(
	size: Size,
	display: Display,
	label?: string,
): string {
	const lines: string[] = [];
	const write = (story: Story, depth: number): void => {
		lines.push(`${"  ".repeat(depth)}${story.text}\n`);
		for (const step of story.steps) write(step, depth + 1);
	};
	write(storyOf(size, display, label), 0);
	return lines.join("");
}

/** The tree as data. */
export function storyOf(size: Size, display: Display, label?: string): Story {
	const told = new Set<string>();
	const budget = new Budget();
	const top = unnamed(size);
	const text = headline(top, display, budget);
	return {
		text: label === undefined ? text : `${label} ${text}`,
		steps: stepsOf(top, display, told, budget, 0),
	};
}

/**
 * What can be off in the shop and moves the size with it, one line each: `-2 x thickness of ply (1/64 in either way)`. In the
 * order of the sources' ids.
 */
export function movers(size: Size, display: Display): readonly string[] {
	return size.feeds
		.filter((feed) => feed.source.tolerance > 0)
		.map(({ source, weight }) => {
			const by = Rational.near(source.tolerance, 1_000_000);
			const amount = roundedLength(by, display.unit);
			const factor = Rational.near(weight, 1_000_000);
			const count = factor.eq(Rational.ONE) ? "" : `${numberText(factor)} x `;
			return `${count}${source.label} (${amount} ${display.unit} either way)`;
		});
}

/**
 * A value as exactly as it can be read: inches in binary fractions to 1/128 or up to four decimals, millimetres up to
 * three decimals; a length that is only round in the other unit is written in that one, with the unit. Anything else is
 * rounded and carries a `~`. A length in the display's unit has no unit behind it.
 */
export function exactText(size: Size, unit: LengthUnit): string {
	switch (size.dimension) {
		case "length":
			return size.exact
				? lengthExactly(size.value, unit)
				: `~${decimalText(fromBase(size.value, unit), unit === "in" ? 4 : 2)}`;
		case "angle":
			return `${rounded(size.value, 4)} deg`;
		case "mass":
			return unit === "in"
				? `${rounded(fromBase(size.value, "lb"), 4)} lb`
				: `${rounded(size.value, 4)} kg`;
		case "temperature":
			return unit === "in"
				? `${rounded(fromBase(size.value, "F"), 2)} F`
				: `${rounded(size.value, 2)} C`;
		case "ratio":
			return `${rounded(size.value.mul(Rational.of(100)), 4)} %`;
		case "number":
			return numberText(size.value);
		case "text":
			return "a text";
	}
}

/** `exactText`, and what the maker reads off the rule where the display's precision cannot show it: `45/64 (~23/32)`. */
export function shownText(size: Size, display: Display): string {
	const exact = exactText(size, display.unit);
	if (size.dimension !== "length") return exact;
	const shown = formatLength(size.value, { ...display, approximately: true });
	if (shown.exact && size.exact) return exact;
	const near = shown.text.startsWith("~") ? shown.text : `~${shown.text}`;
	return exact.startsWith("~") ? near : `${exact} (${near})`;
}

/** A tolerance or another length that only its size matters of: to a thousandth of an inch or a hundredth of a millimetre. */
export function roundedLength(mm: Rational, unit: LengthUnit): string {
	const value = fromBase(mm, unit);
	const exact = exactly(value, unit);
	if (exact !== undefined) return exact;
	return lengthText(mm, {
		unit,
		precision: unit === "in" ? Rational.of(1, 1_000) : Rational.of(1, 100),
		approximately: true,
	});
}

/** How much text one story may take: a design of a stranger can make any amount. */
class Budget {
	private left = 2_000;
	/** False when nothing more is to be told. */
	take(): boolean {
		this.left -= 1;
		return this.left >= 0;
	}
}

const deepest = 100;
const mostTerms = 24;

/** A size by its story rather than by the name that it was asked for by; a name that stands for itself counts once. */
function unnamed(size: Size): Size {
	const { why } = size;
	if (why.kind !== "named") return size;
	let inner = why.of;
	while (inner.why.kind === "named" && inner.why.name === why.name) {
		inner = inner.why.of;
	}
	return inner;
}

function headline(size: Size, display: Display, budget: Budget): string {
	const value = shownText(size, display);
	const { why } = size;
	if (why.kind === "written") return `${value}, ${asWritten(size, display)}`;
	if (why.kind === "fact") {
		if (why.of === undefined) return `${value}, ${why.text}`;
		const inner = why.of;
		return inner.why.kind === "written"
			? `${value}, ${why.text}`
			: `${value} = ${express(inner, display, budget, 0).text} (${why.text})`;
	}
	return `${value} = ${express(size, display, budget, 0).text}`;
}

function asWritten(size: Size, display: Display): string {
	const text = size.why.kind === "written" ? size.why.text : "";
	if (text === "" || text === exactText(size, display.unit)) {
		return "as written";
	}
	return `written \`${text}\``;
}

/** How tightly a text holds together: a sum wants brackets in a product, a product behind a stroke. */
type Level = "sum" | "product" | "atom";

interface Told {
	readonly text: string;
	readonly level: Level;
}

function express(
	size: Size,
	display: Display,
	budget: Budget,
	depth: number,
): Told {
	const atom = (text: string): Told => ({ text, level: "atom" });
	if (depth > deepest || !budget.take()) return atom("…");
	const { why } = size;
	switch (why.kind) {
		case "written":
			return atom(writtenText(size, display.unit));
		case "named":
			return atom(`${why.name} ${exactText(size, display.unit)}`);
		case "fact":
			return atom(`${exactText(size, display.unit)} (${why.text})`);
		case "function":
			return atom(
				`${why.name}(${why.args
					.map((arg) => express(arg, display, budget, depth + 1).text)
					.join(", ")})`,
			);
		case "product": {
			if (why.operator === "*" && isMinusOne(why.left)) {
				return expressSum(size, display, budget, depth);
			}
			const left = express(why.left, display, budget, depth + 1);
			const right = express(why.right, display, budget, depth + 1);
			const divides = why.operator === "/";
			const first = bracketed(left, left.level === "sum");
			const second = bracketed(
				right,
				right.level === "sum" || (divides && right.level === "product"),
			);
			return {
				text: `${first} ${divides ? "/" : "x"} ${second}`,
				level: "product",
			};
		}
		case "sum":
			return expressSum(size, display, budget, depth);
	}
}

function bracketed(told: Told, wanted: boolean): string {
	return wanted ? `(${told.text})` : told.text;
}

interface Term {
	readonly told: Told;
	factor: Rational;
}

/** A sum over as many operators as there are: equal terms taken together, what cancels left out. */
function expressSum(
	size: Size,
	display: Display,
	budget: Budget,
	depth: number,
): Told {
	const byText = new Map<string, Term>();
	const { found, complete } = summands(size, budget);
	for (const { base, factor } of found) {
		if (isNothing(base)) continue;
		const told = express(base, display, budget, depth + 1);
		const known = byText.get(told.text);
		if (known) known.factor = known.factor.add(factor);
		else byText.set(told.text, { told, factor });
	}
	const terms = [...byText.values()].filter((term) => !term.factor.isZero());
	// A plus in front reads better than a minus.
	const first = terms.findIndex((term) => term.factor.sign() > 0);
	if (first > 0) terms.unshift(...terms.splice(first, 1));
	const only = terms[0];
	if (only === undefined) return { text: complete ? "0" : "…", level: "atom" };
	if (terms.length === 1 && complete && only.factor.eq(Rational.ONE)) {
		return only.told;
	}
	const shown = terms.slice(0, mostTerms).map((term, index) => {
		const amount = term.factor.abs();
		const text = bracketed(term.told, term.told.level === "sum");
		const times = amount.eq(Rational.ONE)
			? text
			: `${numberText(amount)} x ${text}`;
		const minus = term.factor.sign() < 0;
		if (index === 0) return minus ? `-${times}` : times;
		return `${minus ? "-" : "+"} ${times}`;
	});
	const rest = terms.length - shown.length;
	if (!complete) shown.push("+ …");
	else if (rest > 0) shown.push(`+ ${rest} more`);
	return {
		text: shown.join(" "),
		level: shown.length === 1 && only.factor.sign() > 0 ? "product" : "sum",
	};
}

/** A nought that the maker or the table wrote, by whatever name: the floor, an inset of 0. */
function isNothing(size: Size): boolean {
	if (!size.value.isZero()) return false;
	let inner = size;
	while (inner.why.kind === "named") inner = inner.why.of;
	return inner.why.kind === "written";
}

/** What is added up, left to right, without recursion: a text may chain thousands of sums. */
function summands(
	size: Size,
	budget: Budget,
): {
	readonly found: readonly { readonly base: Size; readonly factor: Rational }[];
	readonly complete: boolean;
} {
	const found: { readonly base: Size; readonly factor: Rational }[] = [];
	const open: { readonly size: Size; readonly factor: Rational }[] = [
		{ size, factor: Rational.ONE },
	];
	for (let next = open.pop(); next; next = open.pop()) {
		const { size: at, factor } = next;
		const { why } = at;
		if (!budget.take()) return { found, complete: false };
		if (why.kind === "sum") {
			const sign = why.operator === "-" ? factor.neg() : factor;
			open.push({ size: why.right, factor: sign }, { size: why.left, factor });
		} else if (
			why.kind === "product" &&
			why.operator === "*" &&
			isLiteral(why.left)
		) {
			const by = factor.mul(why.left.value);
			// A sum in brackets stays one term unless only its sign is turned.
			if (why.right.why.kind === "sum" && !isMinusOne(why.left)) {
				found.push({ base: why.right, factor: by });
			} else open.push({ size: why.right, factor: by });
		} else found.push({ base: at, factor });
	}
	return { found, complete: true };
}

function isLiteral(size: Size): boolean {
	return (
		size.dimension === "number" &&
		size.bare === undefined &&
		size.why.kind === "written"
	);
}

function isMinusOne(size: Size): boolean {
	return isLiteral(size) && size.value.eq(Rational.of(-1));
}

/** What stands in a size's expression and has a story of its own. */
function stepsOf(
	size: Size,
	display: Display,
	told: Set<string>,
	budget: Budget,
	depth: number,
): readonly Story[] {
	if (depth > deepest) return [];
	const found: Story[] = [];
	for (const operand of operands(size, budget)) {
		const { why } = operand;
		const name = why.kind === "named" ? why.name : "";
		const text = headline(unnamed(operand), display, budget);
		const line = name === "" ? text : `${name} ${text}`;
		if (told.has(line)) continue;
		told.add(line);
		if (!budget.take()) {
			found.push({ text: "…", steps: [] });
			break;
		}
		const inner = why.kind === "fact" && why.of ? why.of : unnamed(operand);
		found.push({
			text: line,
			steps: stepsOf(inner, display, told, budget, depth + 1),
		});
	}
	return found;
}

/** The names and facts that a size is computed from, in the order in which they stand in its expression. */
function operands(size: Size, budget: Budget): readonly Size[] {
	const found: Size[] = [];
	const open: Size[] = [size];
	for (let next = open.pop(); next; next = open.pop()) {
		if (!budget.take()) break;
		const { why } = next;
		if (next !== size && isNothing(next)) continue;
		if (why.kind === "named") found.push(next);
		else if (why.kind === "sum" || why.kind === "product") {
			open.push(why.right, why.left);
		} else if (why.kind === "function") open.push(...why.args.toReversed());
		// A fact about a literal is told in full where it stands.
		else if (why.kind === "fact" && why.of && why.of.why.kind !== "written") {
			found.push(next);
		}
	}
	return found;
}

/** A length in the unit of the design and no other: exact if it can be, else with `~`. */
export function ownText(mm: Rational, unit: LengthUnit): string {
	const value = fromBase(mm, unit);
	return (
		exactly(value, unit) ?? `~${decimalText(value, unit === "in" ? 4 : 3)}`
	);
}

function exactly(value: Rational, unit: LengthUnit): string | undefined {
	if (unit === "in" && isBinary(value, 128n)) return mixedText(value);
	return exactDecimal(value, unit === "in" ? 4 : 3);
}

function lengthExactly(mm: Rational, unit: LengthUnit): string {
	try {
		const own = ownText(mm, unit);
		if (!own.startsWith("~")) return own;
		const other = unit === "in" ? "mm" : "in";
		const foreign = exactly(fromBase(mm, other), other);
		if (foreign !== undefined) return `${foreign} ${other}`;
		return own;
	} catch (error) {
		if (!(error instanceof TooLargeError)) throw error;
		return lengthText(mm, { unit, precision: Rational.ONE });
	}
}

function isBinary(value: Rational, most: bigint): boolean {
	const { denominator } = value;
	return denominator <= most && (denominator & (denominator - 1n)) === 0n;
}

function exactDecimal(value: Rational, digits: number): string | undefined {
	const scale = Rational.of(10 ** digits);
	return value.mul(scale).isInteger() ? decimalText(value, digits) : undefined;
}

function rounded(value: Rational, digits: number): string {
	return exactDecimal(value, digits) ?? `~${decimalText(value, digits)}`;
}

function numberText(value: Rational): string {
	return value.denominator <= 1_000n ? mixedText(value) : rounded(value, 4);
}

/** A literal in the display's unit, or as it stands in the text where that says it exactly and the unit cannot. */
function writtenText(size: Size, unit: LengthUnit): string {
	const exact = exactText(size, unit);
	if (!exact.startsWith("~") || size.why.kind !== "written") return exact;
	const { text } = size.why;
	return /^[\d ./-]+$/.test(text) &&
		decimalOrMixed(text)?.eq(fromBase(size.value, unit))
		? text
		: exact;
}

function decimalOrMixed(text: string): Rational | undefined {
	const match = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
	if (!match) return undefined;
	const [, whole = "0", top = "0", bottom = "1"] = match;
	if (/^0*$/.test(bottom) || text.length > 60) return undefined;
	return Rational.fromBigints(BigInt(top), BigInt(bottom)).add(
		Rational.fromBigints(BigInt(whole)),
	);
}
