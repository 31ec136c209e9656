// A size in words: in both systems, how it is rounded, and where it comes from.

import type { MeasureNode, SlotType } from "../../../grammar/index.ts";
import { exactText, explainTree } from "../../model/explain.ts";
import { type Size, stated } from "../../model/size.ts";
import type { Display } from "../../model/types.ts";
import { codeBlock, codeSpan } from "../../text/markdown.ts";
import { fromBase, toBase } from "../../units/dimensions.ts";
import {
	decimalText,
	defaultPrecision,
	formatBoth,
	formatLength,
	formatMass,
	formatTemperature,
	lengthText,
} from "../../units/format.ts";
import { bareLength, readMeasure } from "../../units/measure.ts";
import { TooLargeError } from "../../units/rational.ts";

const plainDisplay: Display = { unit: "in", precision: defaultPrecision.in };

/** Slots in which a bare number is a length, or can become one by where it is used. */
const lengthSlots: ReadonlySet<SlotType> = new Set<SlotType>([
	"length",
	"lengths",
	"position",
	"positions",
	"sizes2",
	"sizes3",
	"sizes2-3",
	"value",
	"condition",
]);

/** A number as it stands in the text. Empty where it is just a number. */
export function measureText(
	node: MeasureNode,
	slotType: SlotType | undefined,
	size: Size | undefined,
	display: Display = plainDisplay,
): string {
	const read = size ?? readAlone(node);
	const isBare = node.unit === "none";
	const known =
		read &&
		isBare &&
		read.dimension === "number" &&
		slotType &&
		lengthSlots.has(slotType)
			? asLength(read, display)
			: read;
	if (!known || known.dimension === "number" || known.dimension === "text")
		return "";
	const as = known === read ? "is" : "as a length is";
	const lines = [
		`**${codeSpan(node.text)}** ${as} ${bothSystems(known, display)}`,
	];
	if (known.dimension === "length") lines.push(roundingText(known, display));
	return lines.join("\n\n");
}

function asLength(number: Size, { unit }: Display): Size {
	return {
		...number,
		dimension: "length",
		value: bareLength(number.value, unit),
	};
}

function readAlone(node: MeasureNode): Size | undefined {
	try {
		const { dimension, value } = readMeasure(node);
		return dimension === "gauge"
			? undefined
			: stated(value, node.text, dimension);
	} catch (error) {
		if (error instanceof TooLargeError) return undefined;
		throw error;
	}
}

/** A named or derived size with its story; without a label the figures alone. */
export function sizeText(
	label: string | undefined,
	size: Size,
	display: Display = plainDisplay,
): string {
	const figures = bothSystems(size, display);
	if (label === undefined) return figures;
	const length = size.dimension === "number" ? asLength(size, display) : size;
	const also =
		length === size ? "" : `; as a length ${bothSystems(length, display)}`;
	const parts = [`**${codeSpan(label)}** = ${figures}${also}`];
	if (length.dimension === "length") parts.push(roundingText(length, display));
	parts.push(codeBlock(explainTree(size, display, label).trimEnd(), "text"));
	return parts.join("\n\n");
}

/** `2 1/4 in = 57.15 mm`, as exactly as each can be read. */
export function bothSystems(size: Size, { unit }: Display): string {
	const other = unit === "in" ? "mm" : "in";
	switch (size.dimension) {
		case "length":
			return `${lengthIn(size, unit)} = ${lengthIn(size, other)}`;
		case "mass":
			return `${formatMass(size.value, unit)} = ${formatMass(size.value, other)}`;
		case "temperature":
			return `${formatTemperature(size.value, unit)} = ${formatTemperature(size.value, other)}`;
		default:
			return exactText(size, unit);
	}
}

function lengthIn(size: Size, unit: Display["unit"]): string {
	const text = exactText(size, unit);
	// What is only round in the other system comes with that unit: here each is told in its own.
	return /[a-z]$/.test(text)
		? `~${decimalText(fromBase(size.value, unit), unit === "in" ? 4 : 3)} ${unit}`
		: `${text} ${unit}`;
}

function roundingText(size: Size, display: Display): string {
	const { unit, precision } = display;
	const step = toBase(precision, unit);
	const nearest = lengthText(step, { unit, precision, suffix: true });
	const shown = formatLength(size.value, { ...display, suffix: true });
	return shown.exact
		? `Shown and cut to the nearest ${nearest}: exactly this.`
		: `Shown and cut to the nearest ${nearest}: ${formatBoth(size.value, display).text}.`;
}
