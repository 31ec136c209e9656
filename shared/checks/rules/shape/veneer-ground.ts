// Adhesive-backed veneer on a ground, or in a shop, that it does not hold on.

import { spanBehind } from "../../../../grammar/index.ts";
import type { Design, Fix, Piece, VeneerInfo } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { nameOf } from "../../words.ts";

export const veneerGround = defineCheck({
	id: "veneer-ground",
	group: "shape",
	severity: "warning",
	summary:
		"Adhesive-backed veneer goes on an unsealed ground, or in a cold shop",
	explanation: `
The adhesive on the back of a veneer grips the skin of a sealed surface; bare plywood, fibreboard or wood drinks it, and dust
lets it go. So the ground wants a thin coat (shellac, sealer or finish) that is dry and sanded. And it wants warmth: each has a
lowest temperature that it bonds at. Both are told; a shop without a temperature is asked for it once.`,
	source:
		"common practice, from memory of makers' sheets; the lowest temperature is the stock file's own",
	figures: {},
	fires: `
veneer sticky { variant oak { species "white oak"; thick 1/40; adhesive-backed above 60 F; size 96 x 24 } }
piece table {
  part top {
    of ply.three-quarter
    size 40 x 20
    bottom at 28 from floor
  }
  veneer skin {
    on top
    faces both
    of sticky.oak
    ground { sand 180 before }
  }
  shop { temperature 65 F }
}`,
	silent: `
veneer sticky { variant oak { species "white oak"; thick 1/40; adhesive-backed above 60 F; size 96 x 24 } }
piece table {
  part top {
    of ply.three-quarter
    size 40 x 20
    bottom at 28 from floor
  }
  veneer skin {
    on top
    faces both
    of sticky.oak
    ground { coats 1 of shellac; sand 180 before }
  }
  shop { temperature 65 F }
}`,
	find: (piece, { design }) => {
		const found: Found[] = [];
		let asked = false;
		for (const veneer of piece.veneers) {
			const [sheet] = veneer.sheets;
			if (!sheet?.part.stock.adhesiveBacked) continue;
			const sealed = veneer.ground.some(
				({ coats, stock }) => coats > 0 && stock?.coating?.kind !== "glue",
			);
			if (!sealed) found.push(unsealed(design, veneer, sheet));
			const least = sheet.part.stock.adhesiveAbove;
			if (least === undefined) continue;
			const { temperature } = piece.shop;
			if (temperature === undefined) {
				if (!asked)
					found.push({
						severity: "hint",
						origin: veneer.origin,
						message: `\`${sheet.part.stock.id}\` bonds above ${degrees(piece, least)}, and the design does not say how warm the shop is: add \`temperature\` to \`shop\``,
					});
				asked = true;
			} else if (temperature < least - grain) {
				found.push({
					origin: veneer.origin,
					message: `The shop is at ${degrees(piece, temperature)} and \`${sheet.part.stock.id}\` bonds above ${degrees(piece, least)}: warm shop, panels and veneer by ${difference(piece, least - temperature)} first, or lay it elsewhere`,
					related: [
						...(piece.shop.origin
							? [
									{
										origin: piece.shop.origin,
										message: "The shop is told here",
									},
								]
							: []),
						{
							origin: sheet.part.stock.declaration.origin,
							message: `\`${sheet.part.stock.id}\` is declared here`,
						},
					],
				});
			}
		}
		return found;
	},
});

/** Floating dust, °C. */
const grain = 1e-6;

/** In the degrees that go with the design's unit. */
function degrees(piece: Piece, celsius: number): string {
	return piece.display.unit === "in"
		? `${rounded((celsius * 9) / 5 + 32)} F`
		: `${rounded(celsius)} C`;
}

function difference(piece: Piece, celsius: number): string {
	return piece.display.unit === "in"
		? `${rounded((celsius * 9) / 5)} F`
		: `${rounded(celsius)} C`;
}

function rounded(value: number): number {
	return Math.round(value * 10) / 10;
}

function unsealed(
	design: Design,
	veneer: VeneerInfo,
	sheet: VeneerInfo["sheets"][number],
): Found {
	const sealer = [...design.stocks.values()].find(
		({ coating }) => coating?.kind === "ground",
	);
	const line = `coats 1 of ${sealer?.id ?? "shellac"}`;
	return {
		origin: veneer.origin,
		message: `\`${veneer.path}\` is adhesive-backed and ${nameOf(sheet.covers)} is not sealed under it: the bare ground drinks the adhesive; seal it, as in \`ground { ${line} }\``,
		fixes:
			sealer && veneer.origin.uri === design.uri ? sealFix(veneer, line) : [],
	};
}

function sealFix(
	{ materialSpan, groundSpan }: VeneerInfo,
	line: string,
): readonly Fix[] {
	const title = "Seal the ground first";
	if (groundSpan)
		return [{ title, edits: [{ span: groundSpan, text: ` ${line};` }] }];
	return materialSpan
		? [
				{
					title,
					edits: [
						{ span: spanBehind(materialSpan), text: `; ground { ${line} }` },
					],
				},
			]
		: [];
}
