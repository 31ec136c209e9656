// A number literal to its exact value and unit, with what is wrong about how it is written.

import {
	footMark,
	inchMark,
	numberPattern,
	oneBlank,
	unitWords,
	vulgarFractions,
} from "../characters.ts";
import {
	improperFraction,
	leadingZero,
	numberTooLarge,
	tangledNumber,
	thousandsComma,
	typographicSign,
	zeroDenominator,
} from "../errors.ts";
import type { MeasureNode, Span, SyntaxFault, Unit } from "./nodes.ts";

/** More digits than any size has; a longer number would make every later step slow. */
const longestNumber = 30;

interface Value {
	readonly numerator: bigint;
	readonly denominator: bigint;
	readonly unit: Unit;
}

const zero: Value = { numerator: 0n, denominator: 1n, unit: "none" };

const unitOfWord: ReadonlyMap<string, Unit> = new Map<string, Unit>([
	...unitWords.map((word): [string, Unit] => [
		word,
		word === "ga" ? "gauge" : word,
	]),
	["", "none"],
	["%", "percent"],
	["°", "deg"],
	["º", "deg"],
	["°F", "F"],
	["ºF", "F"],
	["°C", "C"],
	["ºC", "C"],
	['"', "in"],
	["″", "in"],
	["“", "in"],
	["”", "in"],
	["''", "in"],
	["′′", "in"],
	["’’", "in"],
	["'", "ft"],
	["′", "ft"],
	["’", "ft"],
	["‘", "ft"],
]);

const feetThenInches = new RegExp(
	`^(${numberPattern})${oneBlank}?${footMark}${oneBlank}?-?(${numberPattern})${oneBlank}?${inchMark}$`,
);
const numberThenUnit = new RegExp(`^(${numberPattern})(.*)$`);

/** Reads literals; equal ones, of which a design has many, are read once. */
export type MeasureReader = (span: Span, image: string) => MeasureNode;

/** A reader that reports into `report`. `text` is the whole text, for what stands before a literal. */
export function measureReader(
	text: string,
	report: (fault: SyntaxFault) => void,
): MeasureReader {
	const known = new Map<string, Value>();
	return (span, image) => {
		let value = known.get(image);
		if (!value || text.charCodeAt(span.start - 1) === 44) {
			const faults: SyntaxFault[] = [];
			value = readValue(text, span, image, faults);
			if (faults.length === 0 && !/^0[0-9]/.test(image))
				known.set(image, value);
			for (const fault of faults) report(fault);
		}
		return {
			kind: "measure",
			span,
			numerator: value.numerator,
			denominator: value.denominator,
			unit: value.unit,
			text: image,
		};
	};
}

function readValue(
	text: string,
	span: Span,
	image: string,
	faults: SyntaxFault[],
): Value {
	if (image.length > longestNumber && hasLongNumber(image)) {
		faults.push(numberTooLarge(span, image));
		return zero;
	}
	checkZeroAndComma(text, span, image, faults);
	const plain = plainWriting(image);
	if (plain !== image) faults.push(typographicSign(span, image, plain));

	const both = feetThenInches.exec(plain);
	if (both) {
		const feet = readNumber(both[1] as string, span, image, faults);
		const inches = readNumber(both[2] as string, span, image, faults);
		if (inches.numerator >= 12n * inches.denominator) {
			faults.push(improperFraction(span, image, "12 in"));
		}
		return {
			numerator:
				12n * feet.numerator * inches.denominator +
				inches.numerator * feet.denominator,
			denominator: feet.denominator * inches.denominator,
			unit: "ft-in",
		};
	}
	const single = numberThenUnit.exec(plain);
	const number = readNumber(single?.[1] ?? "0", span, image, faults);
	const unit = unitOfWord.get((single?.[2] ?? "").replaceAll(" ", ""));
	return { ...number, unit: unit ?? "none" };
}

function readNumber(
	number: string,
	span: Span,
	image: string,
	faults: SyntaxFault[],
): { numerator: bigint; denominator: bigint } {
	const point = number.indexOf(".");
	if (point >= 0) {
		return {
			numerator: BigInt(number.slice(0, point) + number.slice(point + 1)),
			denominator: 10n ** BigInt(number.length - point - 1),
		};
	}
	const slash = number.indexOf("/");
	if (slash < 0) return { numerator: BigInt(number), denominator: 1n };
	const gap = number.search(/[ -]/);
	const whole = gap < 0 ? 0n : BigInt(number.slice(0, gap));
	const upper = BigInt(number.slice(gap + 1, slash));
	const lower = BigInt(number.slice(slash + 1));
	if (lower === 0n) {
		faults.push(zeroDenominator(span, image));
		return { numerator: 0n, denominator: 1n };
	}
	if (gap >= 0 && upper >= lower) {
		faults.push(improperFraction(span, image, "1"));
	}
	return { numerator: whole * lower + upper, denominator: lower };
}

function hasLongNumber(image: string): boolean {
	return /[0-9.]{31}/.test(image);
}

/** The literal as a plain keyboard would have it. */
export function plainWriting(image: string): string {
	if (/^[\x20-\x7e]*$/.test(image) && !image.includes("''")) return image;
	return image
		.replace(/[\u00a0\u202f\u2009]/g, " ")
		.replace(/\u2044/g, "/")
		.replace(/[\u2010\u2011\u2013]/g, "-")
		.replace(
			/([0-9]?)([ -]?)([\u00bc-\u00be\u2150-\u215e])/g,
			(_all, digit: string, gap: string, vulgar: string) =>
				`${digit}${digit === "" ? "" : gap || " "}${vulgarFractions.get(vulgar) ?? "1/1"}`,
		)
		.replace(/''|\u2032\u2032|\u2019\u2019|[\u2033\u201c\u201d]/g, '"')
		.replace(/[\u2032\u2019\u2018]/g, "'")
		.replace(/ ?[\u00b0\u00ba] ?([FC])$/, " $1")
		.replace(/ ?[\u00b0\u00ba]$/, " deg");
}

function checkZeroAndComma(
	text: string,
	span: Span,
	image: string,
	faults: SyntaxFault[],
): void {
	const digits = /^[0-9]+/.exec(image)?.[0] ?? "";
	const needlessZero = digits.length > 1 && digits.startsWith("0");
	const before = text.slice(Math.max(0, span.start - 5), span.start);
	const thousands = /(?:^|[^0-9./])([0-9]{1,3}),$/.exec(before);
	if (thousands?.[1] && digits.length === 3 && !thousands[1].startsWith("0")) {
		const comma = { start: span.start - 1, end: span.start };
		const start = comma.start - thousands[1].length;
		const end = span.start + 3;
		faults.push(
			thousandsComma(
				{ start, end },
				comma,
				text.slice(start, end),
				needlessZero,
			),
		);
	} else if (digits.length === 3 && /(?:^|[\s=(,])[0-9]{1,3} $/.test(before)) {
		// `1 000`: two sizes side by side, which the climber reports.
	} else if (needlessZero) {
		faults.push(
			leadingZero(
				{ start: span.start, end: span.start + digits.length },
				digits.replace(/^0+(?=[0-9])/, ""),
			),
		);
	}
}

const otherUnitWords: ReadonlyMap<string, string> = new Map([
	["inch", " in"],
	["inches", " in"],
	["foot", " ft"],
	["feet", " ft"],
	["gauge", "ga"],
	["degree", " deg"],
	["degrees", " deg"],
	["pound", " lb"],
	["pounds", " lb"],
	["lbs", " lb"],
	["ounce", " oz"],
	["ounces", " oz"],
	["millimetre", " mm"],
	["millimetres", " mm"],
	["millimeter", " mm"],
	["millimeters", " mm"],
	["centimetre", " cm"],
	["centimetres", " cm"],
	["centimeter", " cm"],
	["centimeters", " cm"],
	["metre", " m"],
	["metres", " m"],
	["meter", " m"],
	["meters", " m"],
	["percent", " %"],
	["f", " F"],
	["c", " C"],
]);

/** What is wrong with `42x30`, `18gauge`, `1e3`, `5th`, and what was probably meant. */
export function tangledNumberFault(span: Span, image: string): SyntaxFault {
	const power = /^([0-9]+)(?:\.([0-9]+))?[eE]([+-]?[0-9]+)$/.exec(image);
	if (power) {
		const exponent = Number(power[3]);
		if (Math.abs(exponent) + image.length > longestNumber) {
			return numberTooLarge(span, image);
		}
		return tangledNumber(
			span,
			image,
			withoutPower(power[1] as string, power[2] ?? "", exponent),
		);
	}
	if (
		/^[0-9./ -]+(?:in|ft|mm|cm|m)?(?:x[0-9./]+(?:in|ft|mm|cm|m)?)*x?$/.test(
			image,
		)
	) {
		const sizes = image.split("x");
		if (sizes.length > 1) {
			return tangledNumber(span, image, sizes.join(" x ").trimEnd());
		}
	}
	const feet = /^([0-9./]+)ft([0-9./]+)in$/.exec(image);
	if (feet) return tangledNumber(span, image, `${feet[1]} ft ${feet[2]} in`);
	const worded = /^([0-9./ -]+)([A-Za-z]+)$/.exec(image);
	const word = worded?.[2]?.toLowerCase() ?? "";
	const known =
		otherUnitWords.get(word) ??
		(unitOfWord.has(word) && word !== "" ? word : undefined);
	return tangledNumber(
		span,
		image,
		worded && known !== undefined ? `${worded[1]}${known}` : undefined,
	);
}

function withoutPower(whole: string, part: string, exponent: number): string {
	const digits = whole + part;
	const point = whole.length + exponent;
	const padded =
		point <= 0 ? "0".repeat(1 - point) + digits : digits.padEnd(point, "0");
	const at = Math.max(point, 1);
	const before = padded.slice(0, at).replace(/^0+(?=[0-9])/, "");
	const after = padded.slice(at).replace(/0+$/, "");
	return after === "" ? before : `${before}.${after}`;
}
