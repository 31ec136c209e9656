// The one spelling of a size and of a text, whichever of the readable ones the maker typed.

import type { MeasureNode, TextNode, Unit } from "../../grammar/index.ts";

const unitSpelling: Readonly<Record<Unit, string>> = {
	none: "",
	in: " in",
	ft: " ft",
	"ft-in": " in",
	mm: " mm",
	cm: " cm",
	m: " m",
	deg: " deg",
	lb: " lb",
	oz: " oz",
	kg: " kg",
	g: " g",
	F: " F",
	C: " C",
	percent: " %",
	gauge: "ga",
};

/** `2-1/4"` is `2 1/4 in`, `5' 2"` is `5 ft 2 in`, `450mm` is `450 mm`. Decimals and unreduced fractions stay as typed. */
export function spellMeasure(node: MeasureNode): string {
	const unit = unitSpelling[node.unit];
	const numbers = numbersIn(node.text);
	if (node.unit === "ft-in") {
		const [feet = "0", inches = "0"] = numbers;
		return `${feet} ft ${inches} in`;
	}
	return `${numbers[0] ?? node.text}${unit}`;
}

const number =
	/\d+(?:\.\d+|(?:[ -]\d+)?\/\d+|[ -]?[\u00bc-\u00be\u2150-\u215e])?|[\u00bc-\u00be\u2150-\u215e]/g;

/** The numbers of a literal, each in plain writing. */
function numbersIn(text: string): string[] {
	const plain = text
		.replace(/[\u00a0\u202f\u2009]/g, " ")
		.replace(/\u2044/g, "/")
		.replace(/[\u2010\u2011\u2013]/g, "-");
	return (plain.match(number) ?? []).map((found) =>
		found
			.replace(
				/(\d?)[ -]?([\u00bc-\u00be\u2150-\u215e])/,
				(_all, digit: string, sign: string) =>
					`${digit}${digit === "" ? "" : " "}${vulgar(sign)}`,
			)
			.replace(/^(\d+)-(?=\d+\/)/, "$1 "),
	);
}

/** `½` is `1/2`: the compatibility form of Unicode, with a plain slash. */
function vulgar(sign: string): string {
	return sign.normalize("NFKD").replace("\u2044", "/");
}

/** A text in plain double quotes. */
export function spellText(node: TextNode, typed: string): string {
	if (typed.startsWith('"')) return typed;
	return `"${node.value.replace(/["\\]/g, "\\$&")}"`;
}

/** Whether a bare number before this text would swallow its beginning as a unit. */
export function readsAsUnit(text: string): boolean {
	return /^(?:in|ft|mm|cm|m|deg|lb|oz|kg|ga|g|F|C)(?![\p{L}\p{M}\p{N}_]|-\p{L})/u.test(
		text,
	);
}
