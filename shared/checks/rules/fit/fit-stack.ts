// A joint that is right on paper, but not when the tolerances that feed its gap add up.

import { spanBehind } from "../../../../grammar/index.ts";
import type { Feed } from "../../../model/size.ts";
import { halfRanges, shareWithin, spreadOf } from "../../../model/stack-up.ts";
import type { Fit, Fix, Joint, Piece } from "../../../model/types.ts";
import { defineCheck, type Found } from "../../check.ts";
import {
	alike,
	fitsOf,
	jointsOfMember,
	numbersOf,
	type SharedFit,
} from "../../fits.ts";
import {
	capital,
	listed,
	nameOf,
	percent,
	show,
	showRange,
} from "../../words.ts";

export const fitStack = defineCheck({
	id: "fit-stack",
	group: "fit",
	severity: "warning",
	summary:
		"A joint is right on paper, but its tolerances add up to more than it can bear",
	explanation: `
Every size that feeds a gap brings its tolerance: the thickness of a sheet, the saw's stop, the router, the tape. A size that
feeds the gap on both sides (the same sheet, the same setting) moves both and counts once, with what is left of it.

    expected spread = sqrt( sum (a t)^2 )        worst case = sum |a t|

where t is the tolerance of a source and a is how far the gap moves with it. It is a **warning** when gap ± expected spread
leaves the allowed range, a **hint** when only the worst case does. A gap that is out of range without any tolerance is
told by \`fit-gap\` instead.

The share that fits is told under an assumption: each source spread normally about its middle, its tolerance at three
standard deviations. It is for a run of many. For a one-off, measure what the message names before you cut; a
\`measured\` line with the reading then takes the place of the tolerance. A part that a \`fit\` line cuts to a measured assembly
answers to its own cut alone.`,
	source:
		"stack-up by worst case and by root-sum-square, as in any text on tolerance analysis; ranges and shop tolerances are common practice, no source",
	figures: {
		deviations: {
			value: 3,
			unit: "times",
			help: "A tolerance is this many standard deviations, for the share that fits",
			source: "the usual reading of a tolerance in root-sum-square stack-ups",
		},
	},
	fires: `
sheet mixed {
  species "hardwood plywood"
  tolerance 1/64
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
piece rack {
  shop { router within 0.002 }
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of mixed.three-quarter
    join top, bottom to left, right { dado 1/4 wide 0.707; glue }
  }
}`,
	silent: `
sheet mixed {
  species "hardwood plywood"
  tolerance 1/64
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
piece rack {
  shop { router within 0.002 }
  measured mixed.three-quarter.thick 0.702
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of mixed.three-quarter
    join top, bottom to left, right { dado 1/4 wide 0.707; glue }
  }
}`,
	find: (piece, { figures }) =>
		fitsOf(piece, (fit, joint) => reachOf(fit, joint) !== undefined).flatMap(
			(shared) => {
				const severity = reachOf(shared.fit, shared.joint);
				return severity
					? [tell(piece, shared, severity, figures.deviations)]
					: [];
			},
		),
});

/** A warning where the expected spread leaves the range, a hint where only the worst case does. */
function reachOf(fit: Fit, joint: Joint): "warning" | "hint" | undefined {
	const feeds = feedsOf(fit, joint);
	if (feeds.length === 0) return undefined;
	const { gap, low, high } = numbersOf(fit);
	// Out of range without any tolerance is another check's.
	if (gap < low || gap > high) return undefined;
	const room = Math.min(gap - low, high - gap) + grain;
	const { expected, worst } = halfRanges(feeds);
	return expected > room ? "warning" : worst > room ? "hint" : undefined;
}

/** A part that is cut to a measured assembly answers to its own cut alone: the opening is known by then. */
function feedsOf(fit: Fit, joint: Joint): readonly Feed[] {
	const { member } = joint;
	const cutToFit =
		member.cut.when === "to-fit" && !fit.member.value.eq(member.thick.value);
	return cutToFit ? fit.member.feeds : fit.gap.feeds;
}

/** Floating dust, mm. */
const grain = 1e-9;

function tell(
	piece: Piece,
	shared: SharedFit,
	severity: "warning" | "hint",
	deviations: number,
): Found {
	const { fit, joints } = shared;
	const { display } = piece;
	const { gap, low, high } = numbersOf(fit);
	const spread = spreadOf(feedsOf(fit, shared.joint));
	const by = severity === "warning" ? spread.expected : spread.worst;
	const sources = listed(
		spread.sources.map(
			({ source, share }) =>
				`${source.label} ±${show(display, source.tolerance)} (${percent(share)} of it)`,
		),
	);
	const share = shareWithin(gap, spread.expected, low, high, deviations);
	const chance = `${percent(share)} would fit (spread normally, tolerance = ${deviations} sigma)`;
	const reach = showRange(display, gap - by, gap + by);
	const what =
		severity === "warning"
			? `may come out ${reach}`
			: `comes out ${reach} in the worst case only`;
	return {
		severity,
		origin: fit.origin,
		message: `${capital(fit.what)}${alike(joints)}: the gap ${what}, where ${showRange(display, low, high)} is right; from ${sources}; ${chance}; for a one-off, measure ${fit.measure} before you cut it`,
		related: joints.slice(0, 1).map((one) => ({
			origin: one.member.declaration.origin,
			message: `${nameOf(one.member)} is ${show(display, fit.member)} there`,
		})),
		fixes: toFit(piece, shared),
	};
}

/** A divider or shelf can be cut when what it stands between has been measured: the line that says so. */
function toFit(piece: Piece, { fit, joint }: SharedFit): readonly Fix[] {
	const { member } = joint;
	const inBox = member.role === "divider" || member.role === "shelf";
	if (!inBox || fit.member.value.eq(member.thick.value)) return [];
	const hosts = jointsOfMember(piece, member)
		.map((one) => one.host)
		.filter((host) => host.owner === member.owner);
	if (hosts.length === 0) return [];
	const line = `fit ${member.name} after ${hosts.map((host) => host.name).join(", ")}`;
	return [
		{
			title: `Cut it to fit: add \`${line}\``,
			edits: [
				{
					span: spanBehind(member.declaration.origin.span),
					text: `; ${line}`,
				},
			],
		},
	];
}
