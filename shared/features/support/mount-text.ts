// What a cleat or rail carries, in words and as a free-body sketch, for the hover on it.

import { caution, showForce } from "../../checks/force-words.ts";
import {
	type Hanging,
	hangingOf,
	type WallHold,
	wallHold,
	worstUse,
} from "../../checks/hanging.ts";
import { figuresOf } from "../../checks/options.ts";
import { showAbout } from "../../checks/rounded.ts";
import { cleatLoad } from "../../checks/rules/strength/cleat-load.ts";
import type { CleatForces } from "../../mechanics/cleat-statics.ts";
import { numberOf } from "../../model/size.ts";
import type { MountInfo, Piece } from "../../model/types.ts";
import { cleatForces } from "../../outputs/pictures/cleat-forces.ts";
import { base64 } from "../../text/base64.ts";
import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";

/** The figures of the check, as they are without a setting. */
const figures = figuresOf(cleatLoad, {});
const lean = figures.lean ?? 0;
const steel = {
	steel: figures.steel ?? 0,
	steelStrength: figures["steel-strength"] ?? 0,
};

/** Undefined where nothing hangs on it. */
export function mountText(mount: MountInfo, piece: Piece): string | undefined {
	const hanging = hangingOf(piece, mount, { lean });
	const stored = hanging?.cases[0];
	if (!hanging || !stored || !Number.isFinite(stored.hung.lean))
		return undefined;
	const { display } = piece;
	const hold = wallHold(mount, steel);
	const lines = hanging.cases.flatMap((one) => {
		const name =
			one.name === "stored"
				? "With what is stored"
				: `With ${showForce(display, lean)} at the front edge as well`;
		return [
			...(one.onLegs
				? [`${name}, on its legs: ${forcesText(piece, mount, one.onLegs)}`]
				: []),
			`${name}${one.onLegs ? ", the legs clear of the floor" : ""}: ${forcesText(piece, mount, one.hung)}`,
		];
	});
	return [
		`${codeSpan(mount.path)} carries ${escapeMarkdown(`${showForce(display, stored.hung.weight)}, ${showAbout(display, stored.hung.fromWall)} off the wall.`)}`,
		picture(piece, hanging),
		[...lines, wallText(piece, hanging, hold), ...levelText(piece, mount)]
			.map((line) => `- ${escapeMarkdown(line)}`)
			.join("\n"),
		escapeMarkdown(
			`Taken: screws at half the height of the strip on the wall, no friction in the bevel, ${hold ? "only screws that are sure of a stud" : "no figure for the wall"}, loads in the middle of what they stand on. ${caution}`,
		),
	].join("\n\n");
}

function forcesText(
	{ display }: Piece,
	mount: MountInfo,
	forces: CleatForces,
): string {
	const show = (newton: number): string => showForce(display, newton);
	const wanted = [`${show(forces.down)} down`];
	if (mount.kind === "cleat")
		wanted.push(
			`a thrust of ${range(show, forces.thrust)} off the wall in the bevel`,
		);
	if (forces.lean > 0)
		wanted.push(`${show(forces.lean)} against the wall at the lower edge`);
	if (forces.legs > 0) wanted.push(`${show(forces.legs)} on the legs`);
	return `${wanted.join(", ")}; ${range(show, forces.pull)} on the wall screws together`;
}

function range(
	show: (newton: number) => string,
	[low, high]: readonly [number, number],
): string {
	return high - low < 1 ? show(high) : `${show(low)} to ${show(high)}`;
}

function wallText(
	{ display }: Piece,
	hanging: Hanging,
	hold: WallHold | undefined,
): string {
	const { wall } = hanging.mount;
	if (!wall)
		return "The wall is not given: there is no figure for what it carries";
	if (wall.masonry)
		return "Masonry: what a plug carries is told by its maker; there is no figure here";
	if (!hold)
		return "What the screws find in this wall is not known: there is no figure for what it carries";
	const worst = worstUse(hanging, hold, hold.least);
	return `Of the screws, ${hold.least} ${hold.least === 1 ? "is" : "are"} sure of a stud (${hold.studs[0]} to ${hold.studs[1]} studs lie under the strip): each holds ${showForce(display, hold.withdrawal)} out of the wall or ${showForce(display, hold.lateral)} down for what is stored (${hold.by}); at most ${Math.round(worst.use * 100)} % of that is asked`;
}

/** Where legs stand too, the strip's height decides whether the piece is level. */
function levelText(piece: Piece, mount: MountInfo): readonly string[] {
	const { legs } = piece;
	if (legs.length === 0 || mount.kind !== "cleat") return [];
	const { display } = piece;
	const top = mount.wallStripTop;
	const box = piece.boxes.find(({ panels }) => panels.back === mount.on);
	if (!box) return [];
	const out =
		Math.max(...legs.map(({ blank }) => blank.max[2])) - numberOf(box.min[2]);
	return [
		`Level where the top of the wall strip is ${showAbout(display, numberOf(top))} above the floor at the feet, not at the wall: ${showAbout(display, out / 100)} more or less there tilts it by 1 in 100`,
	];
}

function picture(
	{ display, legs, boxes }: Piece,
	{ mount, geometry, legsAt, front, height, cases }: Hanging,
): string {
	const one = cases[0];
	if (!one) return "";
	const forces = one.onLegs ?? one.hung;
	const show = (newton: number): string => showForce(display, newton);
	const box = boxes.find(({ panels }) => panels.back === mount.on);
	const floor = Math.min(...legs.map(({ foot }) => numberOf(foot)));
	const svg = cleatForces({
		depth: front,
		height,
		hook: { out: geometry.contact, up: geometry.rise },
		strip: mount.wallStrip
			? { height: geometry.contactUp, thick: numberOf(mount.thick) }
			: undefined,
		slope: geometry.slope,
		weight: { out: forces.fromWall, label: show(forces.weight) },
		down: show(forces.down),
		level: range(show, forces.thrust),
		lean: one.onLegs ? undefined : show(forces.lean),
		legs:
			legsAt !== undefined && one.onLegs && box
				? {
						out: legsAt,
						length: Math.max(0, numberOf(box.min[1]) - floor),
						label: show(forces.legs),
					}
				: undefined,
		pull: range(show, forces.pull),
	});
	const alt = escapeMarkdown(`The forces on ${mount.path}, seen from the side`);
	return `![${alt}](data:image/svg+xml;base64,${base64(svg)})`;
}
