// Angled ends of a single part: which way they fall, and the outline that they leave.

import { type AngledEnd, shapeBlank } from "../../geometry/profile.ts";
import type { Point2 } from "../../geometry/solid.ts";
import { evaluateAs } from "../expressions.ts";
import { axisIndex, isSide, type Side, sides } from "../meaning.ts";
import { oppositeOf } from "../names.ts";
import type { PartDraft } from "../part-builder.ts";
import type { PieceContext } from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shownDegrees } from "../shown.ts";
import { numberOf } from "../size.ts";
import type { Way } from "../types.ts";
import { worldOutline } from "./world-outline.ts";

type Fall =
	| "inward"
	| "outward"
	| "forward"
	| "backward"
	| "left"
	| "right"
	| "up"
	| "down";

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
	const pointRow = rows.first("long-point");
	const point = pointRow?.word("face");
	const written = fallsRow?.word("way") as Fall | undefined;
	// Where the long point is says enough.
	const pointed = !written && point ? sideAcross(end, point) : undefined;
	const falls = written ?? (pointed ? undefined : "outward");
	const longest = falls ? longSide(end, falls) : pointed;
	if (!longest) {
		const across = waysAcross(end);
		context.evaluation.report(
			"fall-unclear",
			(fallsRow ?? angledRow).origin,
			sides[end].axis === "y"
				? `A part that stands alone has no inside: let its end fall ${across}`
				: `The ${end} end can fall inward, outward, ${across}, no other way`,
		);
		return;
	}
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
		text: `${falls ? `falls ${falls} ` : ""}${shownDegrees(degrees)}, long point ${longest}`,
	});
}

/** The side that a cut falls to, where the word names one. */
const fallsTo: Readonly<Partial<Record<Fall, Side>>> = {
	forward: "front",
	backward: "back",
	left: "left",
	right: "right",
	up: "top",
	down: "bottom",
};

/** The ways in which an end can fall that name a side, as a maker reads them. */
function waysAcross(end: Side): string {
	const ways = (Object.keys(fallsTo) as Fall[]).filter((way) => {
		const side = fallsTo[way];
		return side && sides[side].axis !== sides[end].axis;
	});
	return `${ways.slice(0, -1).join(", ")} or ${ways.at(-1)}`;
}

function sideAcross(end: Side, name: string): Side | undefined {
	return isSide(name) && sides[name].axis !== sides[end].axis
		? name
		: undefined;
}

/**
 * The face at which the part keeps its length; undefined where the cut cannot fall that way. A cut falls where its surface
 * leads down: an end that falls outward is short above. One that falls to a side is short on that side; a bottom end is
 * long there, so that top and bottom that fall the same way are parallel.
 */
function longSide(end: Side, falls: Fall): Side | undefined {
	const { axis } = sides[end];
	const to = fallsTo[falls];
	if (to)
		return sides[to].axis === axis
			? undefined
			: end === "bottom"
				? to
				: oppositeOf(to);
	if (axis === "y") return undefined;
	return falls === "outward" ? "bottom" : "top";
}
