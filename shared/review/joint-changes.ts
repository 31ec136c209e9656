// Joints that came, went or are made otherwise: found again by the parts that they join.

import type { FastenerRun, Joint, Part, Piece } from "../model/types.ts";
import { textChange } from "./part-changes.ts";
import type { JointChange, PieceComparison, TextChange } from "./types.ts";

/** `now`: what a part of before is afterwards. */
export function jointChanges(
	before: Piece,
	after: Piece,
	now: ReadonlyMap<Part, Part>,
): PieceComparison["joints"] {
	const left = new Map<string, Joint[]>();
	for (const joint of before.joints) {
		const key = keyOf(now.get(joint.host), now.get(joint.member));
		const known = left.get(key);
		if (known) known.push(joint);
		else left.set(key, [joint]);
	}
	const gone = new Set(before.joints);
	const added: Joint[] = [];
	const changed: JointChange[] = [];
	for (const joint of after.joints) {
		const old = left.get(keyOf(joint.host, joint.member))?.shift();
		if (!old) {
			added.push(joint);
			continue;
		}
		gone.delete(old);
		const texts = jointTexts(old, joint);
		if (texts.length > 0) changed.push({ before: old, after: joint, texts });
	}
	return { gone: [...gone], added, changed };
}

/** A part that is gone has no key: its joint is gone with it. */
function keyOf(host: Part | undefined, member: Part | undefined): string {
	return host && member ? `${host.path}~${member.path}` : "";
}

function jointTexts(before: Joint, after: Joint): TextChange[] {
	return [
		...textChange("kind", before.kind, after.kind),
		...textChange("glue", glueText(before), glueText(after)),
		...textChange(
			"fasteners",
			fastenersText(before.fasteners),
			fastenersText(after.fasteners),
		),
	];
}

function glueText({ glue, glueName }: Joint): string | undefined {
	return glue ? (glueName ?? "glued") : undefined;
}

function fastenersText(runs: readonly FastenerRun[]): string | undefined {
	const texts = runs.map(
		({ size, points, counted }) =>
			`${points.length} ${size.kind} ${size.label}${counted ? "" : " as tacks"}`,
	);
	return texts.length > 0 ? texts.join(", ") : undefined;
}
