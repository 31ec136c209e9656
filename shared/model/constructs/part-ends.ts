// Angled ends of a single part: which way they fall, and the outline that they leave.

import { type AngledEnd, shapeBlank } from "../../geometry/profile.ts";
import type { Point2 } from "../../geometry/solid.ts";
import { evaluateAs } from "../expressions.ts";
import { axisIndex, type Side, sides } from "../meaning.ts";
import type { PartDraft } from "../part-builder.ts";
import type { PieceContext } from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shownDegrees } from "../shown.ts";
import { numberOf } from "../size.ts";
import type { Way } from "../types.ts";
import { worldOutline } from "./world-outline.ts";

type Fall = "inward" | "outward" | "forward" | "backward";

/** Cuts the ends that `end` lines name. */
export function angleEnds(
	context: PieceContext,
	rows: Rows,
	part: PartDraft,
): void {
	const along = part.place.axes[0].slice(1) as Way;
	const cut = new Map<Side, Row>();
	for (const row of rows.every("end")) {
		const end = row.word("end") as Side | undefined;
		if (!end) continue;
		if (sides[end].axis !== along) {
			const ends = (Object.keys(sides) as Side[]).filter(
				(side) => sides[side].axis === along,
			);
			context.evaluation.report(
				"no-such-end",
				row.headline,
				`\`${part.name}\` has its ends at the ${ends.join(" and the ")}, the ${end} is no end of it`,
			);
			continue;
		}
		const before = cut.get(end);
		if (before) {
			context.evaluation.report(
				"said-twice",
				row.headline,
				`The ${end} end is cut by another line already: take one of the two away`,
				{ related: [{ origin: before.headline, message: "The first one" }] },
			);
			continue;
		}
		cut.set(end, row);
		angleEnd(context, row, part, end);
	}
}

function angleEnd(
	context: PieceContext,
	row: Row,
	part: PartDraft,
	end: Side,
): void {
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"end",
		{ label: `\`end ${end}\``, origin: row.headline },
	);
	const angledRow = rows.first("angled");
	const angle = evaluateAs(
		context.frame,
		angledRow?.expression("angle"),
		"angle",
	);
	if (!angle || !angledRow) return;
	const degrees = numberOf(angle);
	if (!(degrees > 0 && degrees < 90)) {
		context.evaluation.report(
			"bad-angle",
			angledRow.origin,
			"An end is angled by more than 0 and less than 90 degrees from square",
		);
		return;
	}
	const fallsRow = rows.first("falls");
	const falls = (fallsRow?.word("way") ?? "outward") as Fall;
	const longest = longSide(end, falls);
	if (!longest) {
		context.evaluation.report(
			"fall-unclear",
			(fallsRow ?? angledRow).origin,
			sides[end].axis === "y"
				? "A part that stands alone has no inside: let its end fall forward or backward"
				: `The ${end} end can fall inward or outward, no other way`,
		);
		return;
	}
	const pointRow = rows.first("long-point");
	const point = pointRow?.word("face");
	if (pointRow && point !== longest)
		context.evaluation.report(
			"end-contradicts",
			pointRow.origin,
			`A ${end} end that falls ${falls} is longest at its ${longest}: take this line away, or let it fall another way`,
		);
	const along = axisIndex[sides[end].axis];
	const across = axisIndex[sides[longest].axis];
	const { min, max } = part.bounds;
	const angled: AngledEnd = {
		angle: (degrees * Math.PI) / 180,
		longPoint: sides[longest].outward === 1 ? "high" : "low",
	};
	const shaped = shapeBlank({
		plane: "xy",
		length: max[along] - min[along],
		width: max[across] - min[across],
		...(sides[end].outward === 1 ? { end: angled } : { start: angled }),
	});
	if ("problem" in shaped) {
		context.evaluation.report(
			"cannot-be-cut",
			row.headline,
			"The angled end takes the whole part away: make the angle smaller",
		);
		return;
	}
	part.outlines.push(
		worldOutline(
			shaped.outline.points.map(
				([u, v]): Point2 => [u + min[along], v + min[across]],
			),
			along,
			across,
		),
	);
	part.edges.push({
		where: `${end} end`,
		work: "angle",
		text: `falls ${falls} ${shownDegrees(degrees)}, long point ${longest}`,
	});
}

/**
 * The face at which the part keeps its length; undefined where the cut cannot fall that way. A cut falls where its surface
 * leads down: an end that falls outward is short above. Seen from above, it is short on the side that it falls to.
 */
function longSide(end: Side, falls: Fall): Side | undefined {
	const { axis } = sides[end];
	const deep = falls === "forward" || falls === "backward";
	if (axis === "y") {
		if (!deep) return undefined;
		return (falls === "forward") === (end === "bottom") ? "front" : "back";
	}
	if (axis === "x" && deep) return falls === "forward" ? "back" : "front";
	if (deep) return undefined;
	return falls === "outward" ? "bottom" : "top";
}
