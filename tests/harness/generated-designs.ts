// Designs at random: pieces of boards, boxes and legs with sizes by number and by name, comments anywhere, in either unit. Their
// joinery may be nonsense; what they say is always clear.

import fc from "fast-check";

/** Few sizes, so that many stand more than once. */
const inInches = ["3/4", "1 1/2", "2", "3 3/8", "4", "9 5/16", "11 1/4", "20"];
const inMillimetres = ["19", "38", "50.5", "86", "100", "237", "286", "508"];

interface Draw {
	readonly unit: "in" | "mm" | undefined;
	readonly givens: readonly {
		readonly size: number;
		readonly count: boolean;
	}[];
	readonly marks: readonly Formula[];
	readonly parts: readonly {
		readonly sizes: readonly [Formula, Formula];
		readonly place: number;
		readonly comment: boolean;
		readonly oneLine: boolean;
	}[];
	readonly box: readonly [number, number, number] | undefined;
	readonly legs: number | undefined;
}

interface Formula {
	readonly kind: number;
	readonly a: number;
	readonly b: number;
}

const formula: fc.Arbitrary<Formula> = fc.record({
	kind: fc.nat(7),
	a: fc.nat(50),
	b: fc.nat(50),
});
const size = fc.nat(inInches.length - 1);

/** The text of a file with one piece, which takes from `./stock.rod` of the shipped designs. */
export const generatedDesign: fc.Arbitrary<string> = fc
	.record<Draw>({
		unit: fc.constantFrom("in", "mm", undefined),
		givens: fc.array(fc.record({ size, count: fc.boolean() }), {
			minLength: 1,
			maxLength: 4,
		}),
		marks: fc.array(formula, { maxLength: 3 }),
		parts: fc.array(
			fc.record({
				sizes: fc.tuple(formula, formula),
				place: fc.nat(4),
				comment: fc.boolean(),
				oneLine: fc.boolean(),
			}),
			{ minLength: 2, maxLength: 6 },
		),
		box: fc.option(fc.tuple(size, size, size), { nil: undefined }),
		legs: fc.option(size, { nil: undefined }),
	})
	.map(written);

function written(draw: Draw): string {
	const numbers = draw.unit === "mm" ? inMillimetres : inInches;
	const number = (index: number): string =>
		numbers[index % numbers.length] as string;
	const lines: string[] = [];
	if (draw.unit) lines.push(`unit ${draw.unit}`);
	const lengths: string[] = [];
	const counts: string[] = [];
	draw.givens.forEach(({ size, count }, index) => {
		if (count) {
			counts.push(`count-${index}`);
			lines.push(`given count-${index} = ${2 + (size % 3)}`);
		} else {
			lengths.push(`given-${index}`);
			lines.push(
				`given given-${index} = ${number(size)}  // as wide as it must be`,
			);
		}
	});
	const value = ({ kind, a, b }: Formula): string => {
		const name = lengths[a % Math.max(1, lengths.length)] ?? number(a);
		const count = counts[b % Math.max(1, counts.length)] ?? `${2 + (b % 3)}`;
		return [
			number(a),
			name,
			`${name} + ${number(b)}`,
			`2 * ${number(a)} + ${name}`,
			`${count} * ${name}`,
			`${name} / ${count}`,
			`${count} * (${name} + ${number(b)})`,
			`${name} + ply.half.thick`,
		][kind] as string;
	};
	draw.marks.forEach((one, index) => {
		lines.push(`mark mark-${index} = ${value(one)}`);
		lengths.push(`mark-${index}`);
	});
	draw.parts.forEach(({ sizes, place, comment, oneLine }, index) => {
		if (comment) lines.push(`// Board ${index}.`);
		const own = [
			"of oak.four-quarter",
			`size ${value(sizes[0])} x ${value(sizes[1])}`,
			...(place > 0 && index > 0
				? [`bottom at ${number(place)} up from board-${index - 1}.top`]
				: index === 0
					? [`bottom at ${number(7)} from floor`]
					: []),
		];
		if (place % 2 === 1) own.reverse();
		lines.push(
			oneLine
				? `part board-${index} { ${own.join("; ")} }`
				: `part board-${index} {\n    ${own.join("\n    ")}${comment ? "  // so it lies" : ""}\n  }`,
		);
	});
	if (draw.box) {
		const [width, height, depth] = draw.box;
		lines.push(
			`box case {
    outside 4 * ${number(width)} + 6 * ${number(7)} x 3 * ${number(height)} + 2 * ${number(7)} x ${number(depth)} + ${number(7)}
    panels top, bottom, left, right of ply.half
    back of ply.quarter applied
    bottom at ${number(7)} from floor
  }`,
		);
	}
	if (draw.legs !== undefined)
		for (const side of ["left", "right"])
			lines.push(
				`leg leg-${side} {
    against under board-0
    set-in ${number(draw.legs)} from board-0.${side}
    set-back ${number(draw.legs)} from board-0.front
    layer only of oak.six-quarter ${number(1)} wide from floor up to board-0
  }`,
			);
	return `use ply, oak from "./stock.rod"

piece made {
  ${lines.join("\n  ")}
}
`;
}
