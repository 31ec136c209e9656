// `given` and `mark`: sizes by name.

import { asLength, evaluate } from "../expressions.ts";
import type { Binding } from "../meaning.ts";
import { declareName, type PieceContext, pathIn } from "../piece-context.ts";
import type { Row } from "../rows.ts";
import { named, type Size } from "../size.ts";
import type { Declaration, Origin } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";

/** A value that comes from outside: the command line, the preview, a `set` line. */
export interface SetValue {
	readonly size: Size;
	readonly origin: Origin;
}

export function given(sets: ReadonlyMap<string, SetValue>): ConstructMeaning {
	return {
		declare: (context, row) => {
			declareSize(context, row, (declaration, name) => {
				const value = row.expression("value");
				const set = sets.get(name);
				const written = value && evaluate(context.frame, value);
				const size = set?.size ?? written;
				const low = sizeIn(context, row, "low");
				const high = sizeIn(context, row, "high");
				if (!size || !value) return undefined;
				if (!set || written) {
					checkRange(
						context,
						set?.origin ?? row.at(value.span),
						name,
						size,
						low,
						high,
					);
				}
				context.collected.givens.push({
					declaration,
					size,
					low,
					high,
					set: set !== undefined,
					valueSpan: value.span,
				});
				return size;
			});
		},
	};
}

export const mark: ConstructMeaning = {
	declare: (context, row) => {
		declareSize(context, row, () => {
			const value = row.expression("value");
			return value && evaluate(context.frame, value);
		});
	},
};

function declareSize(
	context: PieceContext,
	row: Row,
	work: (declaration: Declaration, name: string) => Size | undefined,
): void {
	const name = row.name("name");
	if (!name) return;
	const path = pathIn(context, name.text);
	const declaration = declareName(context, "size", name, row, path);
	const size = context.evaluation.lazy(name.text, row.headline, () => {
		const value = work(declaration, name.text);
		if (value) context.collected.sizes.set(path, value);
		return value;
	});
	bind(context, row, {
		declaration,
		meaning: () => {
			const value = size();
			return value && { kind: "size", size: named(name.text, value) };
		},
	});
}

function sizeIn(
	context: PieceContext,
	row: Row,
	slot: string,
): Size | undefined {
	const expression = row.expression(slot);
	return expression && evaluate(context.frame, expression);
}

function checkRange(
	context: PieceContext,
	origin: Origin,
	name: string,
	size: Size,
	low: Size | undefined,
	high: Size | undefined,
): void {
	if (!low || !high) return;
	const tooSmall = compared(size, low) < 0;
	const tooLarge = compared(size, high) > 0;
	if (!tooSmall && !tooLarge) return;
	const limit = tooSmall ? low : high;
	context.evaluation.report(
		"out-of-range",
		origin,
		`\`${name}\` is ${tooSmall ? "below" : "above"} the range that the maker gives it: it must be ${tooSmall ? "at least" : "at most"} ${writtenText(limit)}`,
	);
}

/**
 * A bare number beside a length is one too: `width = 30 from 12 to 95`, set to `case.width - 2`; and so are two bare numbers
 * of different units, where a piece in millimetres sets a given of a component in inches.
 */
function compared(size: Size, limit: Size): number {
	return size.dimension === "length" ||
		limit.dimension === "length" ||
		size.bare !== limit.bare
		? asLength(size).value.cmp(asLength(limit).value)
		: size.value.cmp(limit.value);
}

/** How a stated size was written; its plain value if it was worked out. */
function writtenText(size: Size): string {
	return size.why.kind === "written"
		? size.why.text
		: String(size.value.toNumber());
}

/** Brings a name into the scope; a second one of the same name is told. */
export function bind(context: PieceContext, row: Row, binding: Binding): void {
	const { scope, evaluation, uri } = {
		scope: context.frame.scope,
		evaluation: context.evaluation,
		uri: context.frame.uri,
	};
	const { name, nameSpan } = binding.declaration;
	const before = scope.declare(name, binding);
	if (!before) return;
	evaluation.report(
		"named-twice",
		{ uri, span: nameSpan },
		`\`${name}\` is named twice here: give this ${row.head} another name`,
		{
			related: [
				{
					origin: {
						uri: before.declaration.origin.uri,
						span: before.declaration.nameSpan,
					},
					message: "The first one",
				},
			],
		},
	);
}
