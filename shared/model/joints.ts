// Turns the drafts of a piece's joints into joints: in a fixed order, with the distance where parts do not meet.

import { apartness, boxOf, veneerBetween } from "./contact.ts";
import type { PieceContext } from "./piece-context.ts";
import { readingSlack } from "./readings.ts";
import type { Joint, Part } from "./types.ts";

export function finishJoints(context: PieceContext): Joint[] {
	return [...context.collected.joints.all()].map((draft) => ({
		id: `${draft.host.path}~${draft.member.path}`,
		kind: draft.kind,
		origin: draft.origin,
		host: draft.host,
		member: draft.member,
		named: draft.named,
		glue: draft.glue,
		glueName: draft.glueName,
		fasteners: draft.fasteners,
		fits: draft.fits,
		apart: draft.named ? apartOf(context, draft) : 0,
	}));
}

/** Veneer between two parts is no gap. */
function apartOf(
	context: PieceContext,
	{ host, member }: { readonly host: Part; readonly member: Part },
): number {
	const gap = apartness(boxOf(host), boxOf(member));
	if (gap <= 0) return 0;
	const apart = gap - veneerBetween(context.collected.parts, host, member);
	return apart <= readingSlack(context) ? 0 : apart;
}
