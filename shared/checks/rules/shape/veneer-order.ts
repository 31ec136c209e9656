// An edge of one veneered face that shows on the face that is seen most.

import { axisOf } from "../../../geometry/place.ts";
import type { Piece, VeneerInfo } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import { blankOf } from "../../neighbours.ts";
import { listed, nameOf } from "../../words.ts";

export const veneerOrder = defineCheck({
	id: "veneer-order",
	group: "shape",
	severity: "warning",
	summary:
		"An edge of the veneer is left showing on the face that is seen most",
	explanation: `
Where two veneered faces meet, the one that is laid later covers the edge of the earlier one, and its own edge shows beside it, on
the earlier face. So the face that is seen most is laid last: the front before all others, then a top that one looks down on, then
the sides, then a bottom or a top above the eye. Without an \`order\` line it is asked for once.`,
	source:
		"common practice, no source; the height of the eye is that of somebody who stands, common practice, no source",
	figures: {
		eye: {
			value: 1500,
			unit: "mm",
			help: "A top below this is looked down on",
			source: "common practice, no source",
		},
	},
	fires: `
piece chest {
  box case {
    outside 30 x 20 x 14
    panels top, bottom, left, right of ply.three-quarter
  }
  join case.top, case.bottom to case.left, case.right { glue }
  veneer skin {
    on case.left, case.right, case.top
    of skins.oak
    order case.top, case.left, case.right
  }
}`,
	silent: `
piece chest {
  box case {
    outside 30 x 20 x 14
    panels top, bottom, left, right of ply.three-quarter
  }
  join case.top, case.bottom to case.left, case.right { glue }
  veneer skin {
    on case.left, case.right, case.top
    of skins.oak
    order case.left, case.right, case.top
  }
}`,
	find: (piece, { design, figures }) => {
		let asked = false;
		return piece.veneers.flatMap((veneer) => {
			const faces = veneer.sheets.map((sheet) => faceOf(sheet, figures.eye));
			const meeting = faces.flatMap((one, i) =>
				faces
					.slice(i + 1)
					.filter((other) => one.axis !== other.axis && touch(one, other))
					.map((other): readonly [Face, Face] =>
						one.seen >= other.seen ? [one, other] : [other, one],
					)
					.filter(([more, less]) => more.seen > less.seen),
			);
			if (meeting.length === 0) return [];
			if (veneer.order.length === 0) {
				if (asked) return [];
				asked = true;
				return [ask(veneer, faces)];
			}
			const turn = ({ sheet }: Face): number =>
				veneer.order.indexOf(sheet.covers.path);
			const bad = meeting.filter(
				([more, less]) => turn(more) >= 0 && turn(more) < turn(less),
			);
			return bad.length > 0
				? [tell(piece, veneer, bad, faces, design.uri)]
				: [];
		});
	},
});

interface Face {
	readonly sheet: VeneerInfo["sheets"][number];
	/** That it looks along. */
	readonly axis: 0 | 1 | 2;
	/** The more it is seen, the higher. */
	readonly seen: number;
}

function faceOf(sheet: Face["sheet"], eye: number): Face {
	const axis = axisOf(sheet.part.place.axes[2]);
	const own = blankOf(sheet.part);
	const panel = blankOf(sheet.covers);
	const outward =
		own.min[axis] + own.max[axis] > panel.min[axis] + panel.max[axis];
	const seen =
		axis === 2
			? outward
				? 4
				: 0
			: axis === 1
				? outward && own.max[1] <= eye
					? 3
					: 1
				: 2;
	return { sheet, axis, seen: sheet.face === "inside" ? 0 : seen };
}

/** Whether two sheets come together at an edge. */
function touch(one: Face, other: Face): boolean {
	const a = blankOf(one.sheet.part);
	const b = blankOf(other.sheet.part);
	return ([0, 1, 2] as const).every(
		(axis) =>
			a.min[axis] <= b.max[axis] + near && b.min[axis] <= a.max[axis] + near,
	);
}

/** Nearer than this they come together, mm. */
const near = 1;

/** The faces in the order that leaves no edge on the one seen most. */
function better(veneer: VeneerInfo, faces: readonly Face[]): string {
	const turn = ({ sheet }: Face): number => {
		const at = veneer.order.indexOf(sheet.covers.path);
		return at < 0 ? Infinity : at;
	};
	const sorted = faces
		.filter(({ sheet }) => sheet.face === "outside")
		.map((face, index) => ({ face, index }))
		.toSorted(
			(a, b) =>
				a.face.seen - b.face.seen ||
				(turn(a.face) < turn(b.face)
					? -1
					: turn(a.face) > turn(b.face)
						? 1
						: 0) ||
				a.index - b.index,
		);
	return sorted.map(({ face }) => face.sheet.covers.path).join(", ");
}

function ask(veneer: VeneerInfo, faces: readonly Face[]): Found {
	return {
		severity: "hint",
		origin: veneer.origin,
		message: `\`${veneer.path}\` does not say which face is laid last, so that its edge shows on none that is seen more: write \`order ${better(veneer, faces)}\``,
	};
}

function tell(
	piece: Piece,
	veneer: VeneerInfo,
	bad: readonly (readonly [Face, Face])[],
	faces: readonly Face[],
	uri: string,
): Found {
	const [first] = bad;
	const [more] = first ?? [];
	const late = [
		...new Set(
			bad
				.filter(([one]) => one === more)
				.map(([, less]) => nameOf(less.sheet.covers)),
		),
	];
	const text = better(veneer, faces);
	const { orderSpan } = veneer;
	const origin = orderSpan
		? { uri: veneer.origin.uri, span: orderSpan }
		: veneer.origin;
	return {
		origin,
		message: `The veneer on ${listed(late)} is laid after that on ${more ? nameOf(more.sheet.covers) : `\`${piece.name}\``}, which is seen more and would show ${late.length > 1 ? "their edges" : "its edge"}: lay it last, as in \`order ${text}\``,
		fixes:
			orderSpan && origin.uri === uri
				? [
						{
							title: "Lay the face that is seen most last",
							edits: [{ span: orderSpan, text }],
						},
					]
				: [],
	};
}
