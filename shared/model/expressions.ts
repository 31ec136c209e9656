// Works out expressions: exact, with their dimension checked and their story kept.

import type {
	BinaryNode,
	CallNode,
	CompareNode,
	Expression,
} from "../../grammar/index.ts";
import { toBase } from "../units/dimensions.ts";
import { bareLength, readMeasure } from "../units/measure.ts";
import { Rational, TooLargeError } from "../units/rational.ts";
import type { Frame } from "./frame.ts";
import { faceOf, isSide, pathText, sides } from "./meaning.ts";
import { reachAlong, resolve } from "./names.ts";
import {
	type Dimension,
	minus,
	named,
	over,
	plus,
	type Size,
	stated,
	statedBare,
	times,
	zero,
} from "./size.ts";
import type { Way } from "./types.ts";

const labels: Readonly<Record<Dimension, string>> = {
	length: "a length",
	angle: "an angle",
	mass: "a weight",
	temperature: "a temperature",
	ratio: "a percentage",
	number: "a number",
	text: "a text",
};

/** The longest size that a piece can have: 100 m. Beyond it a figure is a slip, and sums of such lose their meaning. */
const longest = Rational.of(100_000);

/** The value of an expression; undefined, and told, if it has none. */
export function evaluate(
	frame: Frame,
	expression: Expression,
): Size | undefined {
	try {
		const size = sizeValue(frame, expression);
		if (size) frame.evaluation.note(frame.uri, expression.span, size);
		return size;
	} catch (error) {
		if (!(error instanceof TooLargeError)) throw error;
		frame.evaluation.report(
			"too-large",
			{ uri: frame.uri, span: expression.span },
			"This number is too large to work with: write it smaller",
		);
		return undefined;
	}
}

function sizeValue(frame: Frame, expression: Expression): Size | undefined {
	const origin = { uri: frame.uri, span: expression.span };
	switch (expression.kind) {
		case "measure": {
			const { dimension, value } = readMeasure(expression);
			if (dimension === "gauge") {
				frame.evaluation.report(
					"wrong-dimension",
					origin,
					"A gauge is no size: it belongs to a brad, pin or nail, as in `brad 18ga x 7/8`",
				);
				return undefined;
			}
			if (dimension === "length" && value.abs().cmp(longest) > 0) {
				frame.evaluation.report(
					"too-large",
					origin,
					`${expression.text} is longer than 100 m: no piece is that large`,
				);
				return undefined;
			}
			return expression.unit === "none"
				? statedBare(value, expression.text, frame.unit)
				: stated(value, expression.text, dimension);
		}
		case "path": {
			const meaning = resolve(frame, expression);
			if (!meaning) return undefined;
			if (meaning.kind === "size")
				return named(pathText(expression.segments), meaning.size);
			if (meaning.kind === "face" || meaning.kind === "floor") {
				frame.evaluation.report(
					"not-a-size",
					origin,
					`\`${pathText(expression.segments)}\` is a place, no size: subtract another face that is square to the same way from it, as in \`case.right.inside - case.left.inside\``,
				);
				return undefined;
			}
			frame.evaluation.report(
				"not-a-size",
				origin,
				`\`${pathText(expression.segments)}\` is no size: name one of its own, as in \`${pathText(expression.segments)}.${meaning.kind === "part" ? "length" : meaning.kind === "stock" ? "thick" : "width"}\``,
			);
			return undefined;
		}
		case "unary": {
			const operand = evaluate(frame, expression.operand);
			if (!operand) return undefined;
			return expression.operator === "-"
				? keepBare(operand, times(-1, operand))
				: operand;
		}
		case "group":
			return evaluate(frame, expression.inner);
		case "binary":
			return binary(frame, expression);
		case "call":
			return call(frame, expression);
		case "bad":
			return undefined;
		default:
			frame.evaluation.report(
				"not-a-size",
				origin,
				expression.kind === "cross"
					? "`x` sets sizes side by side; write `*` to multiply"
					: expression.kind === "compare"
						? "A comparison belongs in a `must` line"
						: "A single size is wanted here",
			);
			return undefined;
	}
}

function keepBare(from: Size, to: Size): Size {
	return from.bare === undefined ? to : { ...to, bare: from.bare };
}

/** A place on an axis: a face, or the panel of a box that stands for its outside one. */
interface Place {
	readonly axis: Way;
	readonly at: Size;
}

function placeOf(frame: Frame, node: Expression): Place | undefined {
	if (node.kind === "group") return placeOf(frame, node.inner);
	if (node.kind !== "path") return undefined;
	const last = node.segments.at(-1)?.text ?? "";
	if (!placeNames.has(last)) return undefined;
	const label = pathText(node.segments);
	if (isSide(last)) {
		const { axis } = sides[last];
		const reach = reachAlong(frame, node, axis)?.();
		const outward =
			reach?.face ?? (reach?.panelSide && sides[reach.panelSide].outward);
		if (reach && outward)
			return {
				axis,
				at: named(label, outward === 1 ? reach.high : reach.low),
			};
	}
	const meaning = resolve(frame, node);
	if (meaning?.kind === "floor")
		return { axis: "y", at: named(label, frame.floor ?? zero) };
	const face =
		meaning?.kind === "face"
			? meaning.face
			: meaning?.kind === "part" && meaning.panelSide
				? faceOf(meaning.part, meaning.panelSide, label)
				: undefined;
	return face && { axis: face.axis, at: named(label, face.at) };
}

/** The names that a face can end with. */
const placeNames: ReadonlySet<string> = new Set([
	...Object.keys(sides),
	"inside",
	"outside",
	"rear",
	"floor",
]);

const axisWords: Readonly<Record<Way, string>> = {
	x: "left or right",
	y: "up or down",
	z: "to the front or back",
};

/** From one face to another: positive to the right, up, to the front. Undefined where neither operand is a face. */
function betweenFaces(
	frame: Frame,
	node: BinaryNode,
): { readonly size: Size | undefined } | undefined {
	if (node.operator !== "-") return undefined;
	const left = placeOf(frame, node.left);
	const right = placeOf(frame, node.right);
	if (!left || !right) return undefined;
	if (left.axis === right.axis)
		return {
			size:
				left.axis === "x" && frame.scope.mirrored
					? minus(right.at, left.at)
					: minus(left.at, right.at),
		};
	frame.evaluation.report(
		"wrong-direction",
		{ uri: frame.uri, span: node.span },
		`No length lies between these faces: the first looks ${axisWords[left.axis]}, the second ${axisWords[right.axis]}; subtract faces that are square to the same way`,
	);
	return { size: undefined };
}

function binary(frame: Frame, node: BinaryNode): Size | undefined {
	const faces = betweenFaces(frame, node);
	if (faces) return faces.size && tooLong(frame, node, faces.size);
	const left = evaluate(frame, node.left);
	const right = evaluate(frame, node.right);
	if (!left || !right) return undefined;
	const at = { uri: frame.uri, span: node.operatorSpan };
	if (node.operator === "*") {
		const product =
			left.dimension === "number"
				? times(left, right)
				: right.dimension === "number"
					? times(right, left)
					: undefined;
		if (!product) {
			frame.evaluation.report(
				"wrong-dimension",
				at,
				`${labels[left.dimension]} times ${labels[right.dimension]} is no size: one of them must be a plain number`,
			);
			return undefined;
		}
		// The story keeps the order in which it was written.
		const told: Size = {
			...product,
			why: { kind: "product", operator: "*", left, right },
		};
		return tooLong(frame, node, withBare(told, left, right));
	}
	if (node.operator === "/") {
		if (right.value.isZero()) {
			frame.evaluation.report(
				"divided-by-zero",
				at,
				"This divides by zero: the size behind the stroke must not be 0",
			);
			return undefined;
		}
		if (right.dimension === "number")
			return withBare(over(left, right), left, right);
		const [a, b] = alike(left, right);
		if (a.dimension !== b.dimension) {
			frame.evaluation.report(
				"wrong-dimension",
				at,
				`${capital(labels[left.dimension])} cannot be divided by ${labels[right.dimension]}`,
			);
			return undefined;
		}
		return {
			dimension: "number",
			value: a.value.div(b.value),
			why: { kind: "product", operator: "/", left: a, right: b },
			feeds: [],
			exact: a.exact && b.exact,
		};
	}
	const [a, b] = alike(left, right);
	if (a.dimension !== b.dimension) {
		frame.evaluation.report(
			"wrong-dimension",
			at,
			`${capital(labels[left.dimension])} and ${labels[right.dimension]} cannot be ${node.operator === "+" ? "added" : "subtracted"}`,
		);
		return undefined;
	}
	const sum = node.operator === "+" ? plus(a, b) : minus(a, b);
	return tooLong(frame, node, withBare(sum, a, b));
}

/** Two bare numbers stay bare; a bare one beside a length is a length. */
function alike(left: Size, right: Size): [Size, Size] {
	if (left.bare && right.dimension === "length") return [asLength(left), right];
	if (right.bare && left.dimension === "length") return [left, asLength(right)];
	if (left.bare && right.bare && left.bare !== right.bare)
		return [asLength(left), asLength(right)];
	return [left, right];
}

function withBare(result: Size, left: Size, right: Size): Size {
	if (result.dimension !== "number") return result;
	const bare = left.bare ?? right.bare;
	return bare === undefined ? result : { ...result, bare };
}

function tooLong(frame: Frame, node: BinaryNode, size: Size): Size | undefined {
	if (size.dimension !== "length" || size.value.abs().cmp(longest) <= 0)
		return size;
	frame.evaluation.report(
		"too-large",
		{ uri: frame.uri, span: node.span },
		"This comes to more than 100 m: no piece is that large",
	);
	return undefined;
}

const functions: Readonly<
	Record<
		string,
		{ readonly arity: readonly [number, number]; readonly help: string }
	>
> = {
	min: { arity: [1, 20], help: "the smallest of its sizes" },
	max: { arity: [1, 20], help: "the largest of its sizes" },
	abs: { arity: [1, 1], help: "the size without its sign" },
	round: { arity: [2, 2], help: "the size to the nearest step" },
};

function call(frame: Frame, node: CallNode): Size | undefined {
	const name = node.callee.text;
	const row = Object.hasOwn(functions, name) ? functions[name] : undefined;
	if (!row) {
		frame.evaluation.report(
			"unknown-function",
			{ uri: frame.uri, span: node.callee.span },
			`There is no \`${name}( )\`: there is ${Object.keys(functions)
				.map((known) => `\`${known}( )\``)
				.join(", ")}`,
		);
		return undefined;
	}
	const [least, most] = row.arity;
	if (node.args.length < least || node.args.length > most) {
		frame.evaluation.report(
			"wrong-count",
			{ uri: frame.uri, span: node.span },
			`\`${name}( )\` takes ${least === most ? least : `${least} to ${most}`} sizes, here are ${node.args.length}: it gives ${row.help}`,
		);
		return undefined;
	}
	let args = node.args.map((arg) => evaluate(frame, arg));
	if (args.some((arg) => !arg)) return undefined;
	if (args.some((arg) => arg?.dimension === "length"))
		args = args.map((arg) => arg && asLength(arg));
	const sizes = args as Size[];
	const first = sizes[0] as Size;
	const odd = sizes.find((size) => size.dimension !== first.dimension);
	if (odd) {
		frame.evaluation.report(
			"wrong-dimension",
			{ uri: frame.uri, span: node.span },
			`\`${name}( )\` cannot take ${labels[first.dimension]} and ${labels[odd.dimension]} together`,
		);
		return undefined;
	}
	const why = { kind: "function", name, args: sizes } as const;
	if (name === "abs")
		return first.value.sign() < 0
			? { ...times(-1, first), why }
			: { ...first, why };
	if (name === "round") {
		const step = sizes[1] as Size;
		if (step.value.sign() <= 0) {
			frame.evaluation.report(
				"divided-by-zero",
				{ uri: frame.uri, span: node.span },
				"The step of `round( )` must be more than 0",
			);
			return undefined;
		}
		return { ...first, value: first.value.roundTo(step.value, "nearest"), why };
	}
	const want = name === "min" ? -1 : 1;
	const chosen = sizes.reduce((best, size) =>
		size.value.cmp(best.value) === want ? size : best,
	);
	return { ...chosen, why };
}

/** A bare number as the length that it stands for; other sizes unchanged. */
export function asLength(size: Size): Size {
	if (size.bare === undefined) return size;
	return {
		dimension: "length",
		value: bareLength(size.value, size.bare),
		why: size.why,
		feeds: size.feeds,
		exact: size.exact,
	};
}

/** The value where a dimension is wanted; a wrong one is told. */
export function evaluateAs(
	frame: Frame,
	expression: Expression | undefined,
	dimension: Dimension,
): Size | undefined {
	if (!expression) return undefined;
	const size = evaluate(frame, expression);
	if (!size) return undefined;
	const fitting = dimension === "length" ? asLength(size) : size;
	if (fitting.dimension === dimension) {
		if (fitting.bare !== undefined && dimension === "number") {
			const { bare: _, ...pure } = fitting;
			return pure;
		}
		if (dimension === "length" && fitting.value.abs().cmp(longest) > 0) {
			frame.evaluation.report(
				"too-large",
				{ uri: frame.uri, span: expression.span },
				"This is longer than 100 m: no piece is that large",
			);
			return undefined;
		}
		return fitting;
	}
	const bareHint =
		size.bare !== undefined
			? dimension === "angle"
				? ": write `deg` behind it"
				: dimension === "mass"
					? ": write `kg` or `lb` behind it"
					: dimension === "temperature"
						? ": write `C` or `F` behind it"
						: dimension === "ratio"
							? ": write `%` behind it"
							: ""
			: "";
	frame.evaluation.report(
		"wrong-dimension",
		{ uri: frame.uri, span: expression.span },
		`${capital(labels[dimension])} is wanted here, this is ${labels[size.dimension]}${bareHint}`,
	);
	return undefined;
}

export function lengthOf(
	frame: Frame,
	expression: Expression | undefined,
): Size | undefined {
	return evaluateAs(frame, expression, "length");
}

/** A length of zero or more; a negative one is told. */
export function sizeAtLeastZero(
	frame: Frame,
	expression: Expression | undefined,
	what: string,
): Size | undefined {
	const size = lengthOf(frame, expression);
	if (!size || !expression) return undefined;
	if (size.value.sign() >= 0) return size;
	frame.evaluation.report(
		"negative-size",
		{ uri: frame.uri, span: expression.span },
		`${what} cannot be less than 0`,
	);
	return undefined;
}

/** A length of more than zero. */
export function positiveLength(
	frame: Frame,
	expression: Expression | undefined,
	what: string,
): Size | undefined {
	const size = lengthOf(frame, expression);
	if (!size || !expression) return undefined;
	if (size.value.sign() > 0) return size;
	frame.evaluation.report(
		"no-size",
		{ uri: frame.uri, span: expression.span },
		`${what} must be more than 0`,
	);
	return undefined;
}

/** A whole number of 0 or more, at most `most`. */
export function countOf(
	frame: Frame,
	expression: Expression | undefined,
	most = 10_000,
): number | undefined {
	const size = evaluateAs(frame, expression, "number");
	if (!size || !expression) return undefined;
	if (
		size.value.isInteger() &&
		size.value.sign() >= 0 &&
		size.value.cmp(Rational.of(most)) <= 0
	)
		return size.value.toNumber();
	frame.evaluation.report(
		"not-a-count",
		{ uri: frame.uri, span: expression.span },
		`A whole number from 0 to ${most} is wanted here`,
	);
	return undefined;
}

/** Whether a comparison holds, with both sides; undefined if it cannot be told. */
export function compare(
	frame: Frame,
	node: CompareNode,
):
	| { readonly holds: boolean; readonly left: Size; readonly right: Size }
	| undefined {
	const first = evaluate(frame, node.left);
	const second = evaluate(frame, node.right);
	if (!first || !second) return undefined;
	const [left, right] = alike(first, second);
	if (left.dimension !== right.dimension) {
		frame.evaluation.report(
			"wrong-dimension",
			{ uri: frame.uri, span: node.operatorSpan },
			`${capital(labels[left.dimension])} and ${labels[right.dimension]} cannot be compared`,
		);
		return undefined;
	}
	const order = left.value.cmp(right.value);
	const holds = {
		"<=": order <= 0,
		">=": order >= 0,
		"==": order === 0,
		"!=": order !== 0,
		"<": order < 0,
		">": order > 0,
	}[node.operator];
	return { holds, left, right };
}

function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A length in a display unit, for constants of the trade: `inches(1, 64)`. */
export function inches(numerator: number, denominator = 1): Rational {
	return toBase(Rational.of(numerator, denominator), "in");
}
