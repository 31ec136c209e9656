// Veneer that is cut over its edges by too little, or by more than it needs.

import { numberOf } from "../../../model/size.ts";
import type { Fix, Piece, VeneerInfo } from "../../../model/types.ts";
import { Rational } from "../../../units/rational.ts";
import { defineCheck } from "../../check.ts";
import {
	nameOf,
	plainSize,
	show,
	showLimit,
	writtenLike,
} from "../../words.ts";

export const veneerOverhang = defineCheck({
	id: "veneer-overhang",
	group: "shape",
	severity: "warning",
	summary: "Veneer hangs over an edge by less than 1/4 in or more than 1/2 in",
	explanation: `
Veneer is laid larger than its face and trimmed after. With too little over, a sheet that slips or creeps leaves the edge bare;
with too much, it is waste that curls, catches and snaps. An edge that is registered against a shim has no overhang, and
is left out.

    1/4 in <= overhang <= 1/2 in`,
	source:
		"common practice, no source: 6 to 12 mm on each edge, trimmed after pressing",
	figures: {
		least: {
			value: 6,
			unit: "mm",
			help: "Least overhang",
			source: "common practice, no source: 1/4 in, 6 mm",
		},
		most: {
			value: 12.7,
			unit: "mm",
			help: "Most overhang",
			source: "common practice, no source: 1/2 in, 12 mm",
		},
	},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  veneer skin {
    on case.left
    of skins.oak
    overhang 1/16
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
  }
  veneer skin {
    on case.left
    of skins.oak
    overhang 5/16
    shim 1/16 at case.left.back
  }
}`,
	find: (piece, { figures }) =>
		piece.veneers.flatMap((veneer) => {
			const { display } = piece;
			const bad = veneer.sheets.flatMap(({ covers, overhang }) =>
				overhang
					.filter(({ registered, size }) => {
						const over = numberOf(size);
						return (
							!registered &&
							(over < figures.least - grain || over > figures.most + grain)
						);
					})
					.map((edge) => ({ ...edge, covers })),
			);
			const [first] = bad;
			if (!first) return [];
			const little = numberOf(first.size) < figures.least;
			const edges = bad.length > 1 ? ` and ${bad.length - 1} more edges` : "";
			const range = `${showLimit(display, figures.least)} to ${showLimit(display, figures.most)}`;
			return [
				{
					origin: veneer.overhangSpan
						? { uri: veneer.origin.uri, span: veneer.overhangSpan }
						: veneer.origin,
					message: `\`${veneer.path}\` hangs over ${nameOf(first.covers)} by ${show(display, first.size)} (${first.edge}${edges}): ${little ? "a slip leaves the edge bare" : "so much curls and snaps"}; ${range} is usual`,
					fixes: overhangFix(piece, veneer, first.size, figures),
				},
			];
		}),
});

/** Floating dust, mm: 1/4 in is not less than 6 mm. */
const grain = 1e-9;

function overhangFix(
	piece: Piece,
	veneer: VeneerInfo,
	before: VeneerInfo["sheets"][number]["overhang"][number]["size"],
	figures: { readonly least: number; readonly most: number },
): readonly Fix[] {
	if (!veneer.overhangSpan) return [];
	const { display } = piece;
	const usual =
		display.unit === "in" ? Rational.of(5 * 254, 160) : Rational.of(8);
	const size = plainSize(
		display,
		Rational.near(figures.least, 1000),
		Rational.near(figures.most, 1000),
		usual,
	);
	if (!size) return [];
	return [
		{
			title: `Make it ${show(display, size.value)}`,
			edits: [
				{
					span: veneer.overhangSpan,
					text: writtenLike(display, before, size.value),
				},
			],
		},
	];
}
