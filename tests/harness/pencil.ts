// Reads sums as a maker pencils them (`54 - 2 * ply`), by fraction.js and a few lines: nothing of the language is used,
// so that a size worked out by hand cannot share a fault with one that the program worked out.

import { Fraction } from "fraction.js";

/** What is known before the sums begin, by its name on the sheet: a figure or a sum of those above it. */
export type Known = Readonly<Record<string, string>>;

/** `length x width x thickness`, for a part that is cut straight to size; else one such line for each stage. */
export type Sums = string | Readonly<Record<string, string>>;

/** The sheet of one piece. Parts that are alike stand in one line: `case.left, case.right`. */
export interface PencilSheet {
	readonly unit: "in" | "mm";
	readonly known: Known;
	readonly parts: Readonly<Record<string, Sums>>;
}

/** Sheets by the name of the piece. */
export type PencilSheets = Readonly<Record<string, PencilSheet>>;

/** Sizes of one part by stage; `final` is always there. */
export type PencilSizes = ReadonlyMap<string, readonly Fraction[]>;

/** All sums of a sheet, by the path of the part. Throws where a sum cannot be read: a fault of the sheet. */
export function workOut({
	known,
	parts,
}: PencilSheet): ReadonlyMap<string, PencilSizes> {
	const figures = new Map<string, Fraction>();
	for (const [name, text] of Object.entries(known))
		figures.set(name, sum(text, figures));
	const sizes = new Map<string, PencilSizes>();
	for (const [names, sums] of Object.entries(parts)) {
		const stages = typeof sums === "string" ? { final: sums } : sums;
		const worked = new Map(
			Object.entries(stages).map(([stage, text]) => [
				stage,
				text.split(" x ").map((one) => sum(one, figures)),
			]),
		);
		for (const name of names.split(", ")) {
			if (sizes.has(name)) throw new Error(`${name} is on the sheet twice`);
			sizes.set(name, worked);
		}
	}
	return sizes;
}

/** One sum: figures, names, `+ - * /` and brackets. A fraction is a division: `45/64`, `15 + 3/4`. */
export function sum(
	text: string,
	known: ReadonlyMap<string, Fraction> = new Map(),
): Fraction {
	const tokens = text.match(/[A-Za-z][A-Za-z0-9-]*|[\d.]+|\S/g) ?? [];
	let at = 0;
	const atom = (): Fraction => {
		const token = tokens[at++] ?? "";
		if (token === "(") {
			const inner = added();
			if (tokens[at++] !== ")") throw new Error(`An open bracket in ${text}`);
			return inner;
		}
		if (/^[\d.]+$/.test(token)) return new Fraction(token);
		const figure = known.get(token);
		if (!figure) throw new Error(`What is ${token || "missing"} in ${text}`);
		return figure;
	};
	const multiplied = (): Fraction => {
		let left = atom();
		while (tokens[at] === "*" || tokens[at] === "/")
			left = tokens[at++] === "*" ? left.mul(atom()) : left.div(atom());
		return left;
	};
	const added = (): Fraction => {
		let left = multiplied();
		while (tokens[at] === "+" || tokens[at] === "-")
			left =
				tokens[at++] === "+" ? left.add(multiplied()) : left.sub(multiplied());
		return left;
	};
	const result = added();
	if (at < tokens.length)
		throw new Error(`Something is left over in ${text}: ${tokens[at]}`);
	return result;
}
