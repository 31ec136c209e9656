// `fit … after …`: parts that are cut to an assembly that has been measured.

import type { PartDraft } from "../part-builder.ts";
import { type PieceContext, partsOf } from "../piece-context.ts";
import type { Row } from "../rows.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";

export const fit: ConstructMeaning = {
	phase: 2,
	settle: settleFit,
};

export function settleFit(context: PieceContext, row: Row): void {
	const after = row.refs("after").flatMap((ref) => partsOf(context, ref) ?? []);
	for (const ref of row.refs("parts")) {
		for (const part of partsOf(context, ref) ?? []) {
			const reading = context.collected.readings.get(`${part.path}.length`);
			(part as PartDraft).cut = {
				when: "to-fit",
				after: after.map((one) => one.path),
				reading: reading ? `${part.path}.length` : undefined,
			};
		}
	}
}
