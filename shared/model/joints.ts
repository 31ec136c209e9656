// Turns the drafts of a piece's joints into joints: in a fixed order, with the distance where parts do not meet.

import { apartness, boxOf } from "./contact.ts";
import type { PieceContext } from "./piece-context.ts";
import type { Joint } from "./types.ts";

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
		apart: draft.named
			? Math.max(0, apartness(boxOf(draft.host), boxOf(draft.member)))
			: 0,
	}));
}
