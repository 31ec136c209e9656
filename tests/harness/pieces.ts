// Hand-made pieces that several tests of what comes out share.

import type { Box, Solid } from "../../shared/geometry/solid.ts";
import { minus, numberOf, plus, times } from "../../shared/model/size.ts";
import type { Part, Piece, Stock } from "../../shared/model/types.ts";
import { Rational } from "../../shared/units/rational.ts";
import {
	asItMeasures,
	declarationOf,
	fastenerSize,
	inches,
	jointOf,
	nowhere,
	partOf,
	pieceOf,
	stockOf,
} from "./piece.ts";

const plyThick = asItMeasures("ply.three-quarter", inches("45/64"), 0.4);

export const ply: Stock = stockOf("sheet", "ply.three-quarter", {
	species: "birch plywood",
	thick: plyThick,
	soldAs: inches("3/4"),
	tolerance: 0.4,
	sizes: [{ length: inches("96"), width: inches("48") }],
	price: Rational.of(92),
	per: "sheet",
	currency: "EUR",
	density: 680,
	densitySource: "as the stock file says",
});

export const oak: Stock = stockOf("board", "oak.eight-quarter", {
	species: "white oak",
	thick: inches("1 3/4"),
	soldAs: inches("2"),
	price: Rational.of(11),
	per: "board-foot",
	currency: "EUR",
	density: 762,
	densitySource: "handbook",
	widths: { low: inches("4"), high: inches("9") },
	lengths: { low: inches("72"), high: inches("120") },
});

export const quarterOak: Stock = stockOf("board", "oak.four-quarter", {
	species: "white oak",
	thick: inches("3/4"),
	soldAs: inches("1"),
	price: Rational.of(19, 2),
	per: "board-foot",
	currency: "EUR",
	density: 762,
	densitySource: "handbook",
});

export const skin: Stock = stockOf("veneer", "skins.oak", {
	thick: inches("1/42"),
	sizes: [{ length: inches("96"), width: inches("24") }],
	price: Rational.of(58),
	per: "sheet",
	currency: "EUR",
});

function take(solid: Solid, box: Box): Solid {
	return { ...solid, cuts: [...solid.cuts, box] };
}

/**
 * A case of two sides, a top and a bottom with a divider dadoed between, on a handed pair of legs: 54 wide, 14 5/8 high,
 * 15 3/4 deep, over the floor by 6 3/8.
 */
export function bench(): Piece {
	const up = inches("6 3/8");
	const zero = inches("0");
	const height = inches("14 5/8");
	const depth = inches("15 3/4");
	const width = inches("54");
	const inside = minus(width, times(2, plyThick));
	const dado = inches("5/16");
	const t = numberOf(plyThick);
	const d = numberOf(dado);
	const rabbet = {
		kind: "rabbet" as const,
		width: inches("1/4"),
		depth: inches("3/8"),
		datum: "from the back edge",
		at: zero,
		takes: "case.back",
	};
	const side = (name: "left" | "right"): Part => {
		const x = name === "left" ? zero : minus(width, plyThick);
		return partOf(`case.${name}`, {
			stock: ply,
			length: height,
			width: depth,
			thick: plyThick,
			axes: ["+y", "+z", "+x"],
			at: [x, up, zero],
			housings: [
				{
					...rabbet,
					box: { min: [0, 0, 0], max: [0, 0, 0] },
				},
			],
			solid: (solid) => {
				const { min, max } = solid.box;
				const inner =
					name === "left"
						? { min: [max[0] - 9.525, min[1], 0], max: [max[0], max[1], 6.35] }
						: { min: [min[0], min[1], 0], max: [min[0] + 9.525, max[1], 6.35] };
				return take(solid, inner as unknown as Box);
			},
		});
	};
	const middleX = minus(
		inches("27"),
		times(1, asItMeasures("half", inches("45/128"))),
	);
	const deck = (name: "top" | "bottom"): Part => {
		const y = name === "bottom" ? up : minus(plus(up, height), plyThick);
		return partOf(`case.${name}`, {
			stock: ply,
			length: inside,
			width: depth,
			thick: plyThick,
			axes: ["+x", "+z", "-y"],
			at: [plyThick, y, zero],
			housings: [
				{
					kind: "dado",
					width: plus(plyThick, inches("1/256")),
					depth: dado,
					datum: "from the left end",
					at: minus(middleX, plyThick),
					takes: "case.middle",
					box: { min: [0, 0, 0], max: [0, 0, 0] },
				},
			],
			solid: (solid) => {
				const { min, max } = solid.box;
				const x = numberOf(middleX);
				const [low, high] =
					name === "bottom" ? [max[1] - d, max[1]] : [min[1], min[1] + d];
				return take(solid, {
					min: [x, low, 0],
					max: [x + t, high, max[2]],
				});
			},
		});
	};
	const [left, right, top, bottom] = [
		side("left"),
		side("right"),
		deck("top"),
		deck("bottom"),
	];
	const middle = partOf("case.middle", {
		role: "divider",
		stock: ply,
		length: plus(minus(height, times(2, plyThick)), times(2, dado)),
		width: depth,
		thick: plyThick,
		axes: ["+y", "+z", "+x"],
		at: [middleX, minus(plus(up, plyThick), dado), zero],
		cut: {
			when: "to-fit",
			after: ["case.top", "case.bottom"],
			reading: "from dado to dado",
		},
	});
	const leg = (name: "left" | "right"): Part =>
		partOf(`front-${name}.inner`, {
			role: "layer",
			stock: oak,
			length: up,
			width: inches("2 3/4"),
			thick: inches("1 3/4"),
			axes: ["+y", "+z", "+x"],
			at: [name === "left" ? zero : minus(width, inches("1 3/4")), zero, zero],
			stages: [
				{
					stage: "rough",
					length: inches("7 3/8"),
					width: inches("3 1/4"),
					thick: inches("2"),
				},
				{
					stage: "heavy",
					length: inches("6 9/16"),
					width: inches("2 15/16"),
					thick: inches("1 3/4"),
				},
			],
			hand: name,
			handedFrom: "end top angled",
			edges: [
				{ where: "top end", work: "angle", text: "angled 12°, falls outward" },
			],
			notes: ["carries the load"],
		});
	const lip = partOf("lip.top", {
		role: "trim",
		stock: quarterOak,
		length: width,
		width: inches("47/64"),
		thick: inches("3/8"),
		axes: ["+x", "+y", "+z"],
		at: [zero, minus(plus(up, height), plyThick), depth],
		edges: [{ where: "both ends", work: "mitre", text: "45° mitre" }],
	});
	const sheet = partOf("skin.top", {
		role: "veneer",
		stock: skin,
		length: width,
		width: inches("16 1/8"),
		thick: inches("1/42"),
		axes: ["+x", "+z", "-y"],
		at: [zero, plus(up, height), zero],
		stages: [
			{
				stage: "heavy",
				length: inches("54 5/8"),
				width: inches("16 7/16"),
				thick: inches("1/42"),
			},
		],
		cut: { when: "last", after: ["lip.top"], reading: undefined },
	});
	const dowel = fastenerSize(
		"dowel",
		"dowel 5/16 x 1 3/8",
		7.9375,
		inches("1 3/8"),
	);
	const glued = (host: Part, member: Part, dowels: number) =>
		jointOf(host, member, {
			glue: true,
			fasteners: [
				{
					size: dowel,
					counted: true,
					origin: nowhere,
					through: host,
					into: member,
					points: Array.from(
						{ length: dowels },
						(_, i) => [0, 0, 25 * i] as const,
					),
					direction: [1, 0, 0],
					angle: 0,
					every: inches("5"),
					pilot: undefined,
					countersink: undefined,
					filled: false,
					lineSpan: { start: 0, end: 0 },
					hasBlock: false,
				},
			],
		});
	return pieceOf(
		"record-bench",
		[left, right, top, bottom, middle, leg("left"), leg("right"), lip, sheet],
		{
			joints: [
				glued(left, top, 3),
				glued(left, bottom, 3),
				glued(right, top, 3),
				glued(right, bottom, 3),
			],
			aids: [
				{
					name: "gauge",
					declaration: declarationOf("gauge", "aid"),
					kind: "spacer",
					length: inches("6"),
					width: inches("3"),
					thick: undefined,
					stock: undefined,
					serves: ["case.middle"],
				},
			],
		},
	);
}
