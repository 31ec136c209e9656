// A thin loose panel that is veneered on one face only.

import { spanBehind } from "../../../../grammar/index.ts";
import { numberOf } from "../../../model/size.ts";
import type {
	Fix,
	Joint,
	Part,
	Piece,
	VeneerInfo,
} from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { thicknessAxis } from "../../grain-axes.ts";
import { listed, nameOf, show } from "../../words.ts";

export const veneerOneSide = defineCheck({
	id: "veneer-one-side",
	group: "shape",
	severity: "warning",
	summary: "A thin loose panel is veneered on one face only, and bows",
	explanation: `
Veneer and its glue pull as they dry. A panel with veneer on one face only bows towards it, unless it is thick enough to withstand,
or something holds it flat: the panel of a case that is glued to others at two or more of its edges is held, and so is a glued back. A door, a lid, a flap or a
loose top is not. Balance it: veneer of the same thickness on the other face, its grain the same way.`,
	source:
		"common practice, no source: balanced from memory of veneer handbooks; 3/4 in as sold measures about 17 to 19 mm",
	figures: {
		thick: {
			value: 17,
			unit: "mm",
			help: "A panel as thick as this stays flat",
			source: "common practice, no source: 3/4 in as sold",
		},
		held: {
			value: 2,
			unit: "times",
			help: "Glued joints with panels in other planes that hold it flat",
			source: "common practice, no source",
		},
	},
	fires: `
piece cupboard {
  part door {
    of ply.half
    size 24 x 16
    lies up facing front
    bottom at 4 from floor
  }
  veneer skin {
    on door
    faces outside
    of skins.oak
  }
}`,
	silent: `
piece cupboard {
  part door {
    of ply.half
    size 24 x 16
    lies up facing front
    bottom at 4 from floor
  }
  veneer skin {
    on door
    faces both
    of skins.oak
  }
}`,
	find: (piece, { design, figures }) =>
		piece.veneers.flatMap((veneer) => {
			const bad = veneer.sheets.filter(
				({ covers, face }) =>
					numberOf(covers.thick) < figures.thick - grain &&
					!balanced(piece, covers, face) &&
					heldBy(piece, covers) < figures.held,
			);
			return bad.length > 0 ? [tell(piece, design.uri, veneer, bad)] : [];
		}),
});

/** Floating dust, mm. */
const grain = 1e-6;

type Sheet = VeneerInfo["sheets"][number];

/** The other face is veneered, too. */
function balanced(piece: Piece, part: Part, face: Sheet["face"]): boolean {
	return piece.veneers.some(({ sheets }) =>
		sheets.some((sheet) => sheet.covers === part && sheet.face !== face),
	);
}

const holding: ReadonlySet<Joint["kind"]> = new Set([
	"butt",
	"dado",
	"groove",
	"rabbet",
	"mitre",
	"tenon",
]);

/** How many parts in other planes it is glued to. */
function heldBy(piece: Piece, part: Part): number {
	const others = new Set<Part>();
	for (const { kind, glue, host, member } of piece.joints) {
		if (!glue || !holding.has(kind)) continue;
		const other = host === part ? member : member === part ? host : undefined;
		if (other && thicknessAxis(other) !== thicknessAxis(part))
			others.add(other);
	}
	return others.size;
}

function tell(
	piece: Piece,
	uri: string,
	veneer: VeneerInfo,
	bad: readonly Sheet[],
): Found {
	const { display } = piece;
	const names = [...new Set(bad.map(({ covers }) => nameOf(covers)))];
	const [thin] = bad
		.map(({ covers }) => covers.thick)
		.toSorted((a, b) => numberOf(a) - numberOf(b));
	const is = names.length > 1 ? "are" : "is";
	const { origin, facesSpan } = veneer;
	return {
		origin: facesSpan ? { uri: origin.uri, span: facesSpan } : origin,
		message: `${listed(names)} ${is} ${show(display, thin ?? 0)} thick, loose, and veneered on one face: the veneer pulls ${names.length > 1 ? "them" : "it"} hollow; veneer the other face as well, or use 3/4 in`,
		fixes: origin.uri === uri ? bothFix(veneer) : [],
	};
}

function bothFix({
	facesSpan,
	materialSpan,
	namesFaces,
}: VeneerInfo): readonly Fix[] {
	if (namesFaces) return [];
	const title = "Veneer both faces";
	if (facesSpan) return [{ title, edits: [{ span: facesSpan, text: "both" }] }];
	return materialSpan
		? [
				{
					title,
					edits: [{ span: spanBehind(materialSpan), text: "; faces both" }],
				},
			]
		: [];
}
