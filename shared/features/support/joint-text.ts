// The joints that a line makes, in words: the gap, what it may be, what feeds it, and how many would fit.

import { percent, showFine, showRange } from "../../checks/words.ts";
import { numberOf } from "../../model/size.ts";
import { shareWithin, spreadOf } from "../../model/stack-up.ts";
import type { Display, Fit, Joint } from "../../model/types.ts";
import { codeSpan, escapeMarkdown } from "../../text/markdown.ts";
import { prose } from "./prose.ts";

/** A line can join hundreds of parts: the rest is counted. */
const mostJoints = 6;
const mostSources = 4;

/** Empty for none. */
export function jointsText(joints: readonly Joint[], display: Display): string {
	const groups = grouped(joints, display);
	const shown = groups.slice(0, mostJoints);
	const rest = groups
		.slice(mostJoints)
		.reduce((sum, group) => sum + group.names.length, 0);
	return [
		...shown.map(({ names, text }) =>
			[
				`**${names.slice(0, 4).join(", ")}**${names.length > 4 ? ` and ${names.length - 4} more` : ""}`,
				text,
			].join(": "),
		),
		...(rest > 0 ? [`And ${rest} more joints.`] : []),
	].join("\n\n");
}

/** Joints that read alike are told once. */
function grouped(
	joints: readonly Joint[],
	display: Display,
): { names: string[]; text: string }[] {
	const groups = new Map<string, { names: string[]; text: string }>();
	for (const joint of joints) {
		const name = `${codeSpan(joint.member.path)} to ${codeSpan(joint.host.path)}`;
		const text = jointText(joint, display);
		const known = groups.get(text);
		if (known) known.names.push(name);
		else groups.set(text, { names: [name], text });
	}
	return [...groups.values()];
}

function jointText(joint: Joint, display: Display): string {
	const fasteners = joint.fasteners.map(
		({ size, points, counted }) =>
			`${points.length} ${size.kind}${points.length === 1 ? "" : "s"} ${escapeMarkdown(size.label)}${counted ? "" : " as tacks"}`,
	);
	const held = [...(joint.glue ? ["glue"] : []), ...fasteners];
	const first = `${joint.kind}${held.length > 0 ? `, ${held.join(", ")}` : ""}`;
	const lines = joint.fits.flatMap((fit) => fitLines(fit, display));
	return lines.length > 0 ? `${first}\n${lines.join("\n")}` : first;
}

function fitLines(fit: Fit, display: Display): string[] {
	const { expected, worst, sources } = spreadOf(fit.gap.feeds);
	const share = shareWithin(
		numberOf(fit.gap),
		expected,
		fit.low.toNumber(),
		fit.high.toNumber(),
	);
	const either = (mm: number): string => `${showFine(display, mm)} either way`;
	return [
		`- ${prose(fit.what)}: gap **${showFine(display, fit.gap)}**, may be ${showRange(display, fit.low, fit.high)} (${prose(fit.rangeFrom)})`,
		`- expected within ${either(expected)}, at worst ${either(worst)}: **${percent(share)}** would fit`,
		...sources
			.slice(0, mostSources)
			.map(
				({ source, tolerance, share: part }) =>
					`  - ${prose(source.label)}: ${either(tolerance)}, ${percent(part)} of the spread`,
			),
		`- measure before it is cut: ${prose(fit.measure)}`,
	];
}
