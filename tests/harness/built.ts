// Compiles a small text with a stock beside it, for tests of what constructs mean.

import { compile } from "../../shared/model/compile.ts";
import type { Size } from "../../shared/model/size.ts";
import type { Design, Finding, Part, Piece } from "../../shared/model/types.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { inch } from "../../shared/units/dimensions.ts";

/** Thicknesses are plain figures, so that a test can write its sums out. */
export const stockText = `
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
  variant quarter { sold-as 1/4; thick 13/64 }
  variant eighteen { sold-as 18 mm; thick 18 mm }
  variant nine { sold-as 9 mm; thick 9 mm }
}
board oak {
  species "white oak"
  variant four-quarter { rough 1; planed 3/4 }
  variant six-quarter { rough 1 1/2; planed 1 1/4 }
  variant eight-quarter { rough 2; planed 1 3/4 }
}
veneer skins {
  variant oak { thick 1/42; size 96 x 24 }
}
coating hard-oil { kind finish; covers 400 ft2 per gallon }
coating shellac { kind ground; covers 300 ft2 per gallon }
`;

export interface Built {
	readonly design: Design;
	readonly piece: Piece;
	readonly findings: readonly Finding[];
	/** Ids of the findings, in order. */
	readonly ids: readonly string[];
	part(path: string): Part;
	/** Corners of a part in inches: [min, max]. */
	corners(path: string): readonly [number[], number[]];
}

/** A design of one file; `use` of all the stock is written before the text. */
export function built(
	text: string,
	set: ReadonlyMap<string, string> = new Map(),
): Built {
	const uri = "file:///shop/design.rod";
	const design = compile(
		sourcesOf(
			new Map([
				[
					uri,
					`use ply, oak, skins, hard-oil, shellac from "./stock.rod"\n${text}`,
				],
				["file:///shop/stock.rod", stockText],
			]),
		),
		uri,
		{ set },
	);
	const piece = design.pieces.find((one) => one.kind === "piece");
	if (!piece) throw new Error("The text of this test has no piece");
	const part = (path: string): Part => {
		const found = piece.partByPath.get(path);
		if (!found)
			throw new Error(
				`No part ${path}: there is ${[...piece.partByPath.keys()].join(", ")}\n${design.findings.map((one) => one.message).join("\n")}`,
			);
		return found;
	};
	return {
		design,
		piece,
		findings: design.findings,
		ids: design.findings.map((finding) => finding.id),
		part,
		corners: (path) => {
			const { min, max } = part(path);
			return [min.map(inInches), max.map(inInches)] as const;
		},
	};
}

/** A size in inches: exact before it is a floating number. */
export function inInches(size: Size): number {
	return size.value.div(inch).toNumber();
}
