// All that a machine can mend in a file, at once.

import { allFindings } from "../../checks/index.ts";
import { mendText } from "../../checks/mend.ts";
import { lineEdits } from "../../format/line-edits.ts";
import { type Asked, type Offer, refusal } from "../support/refactoring.ts";

const id = "fix-all";
const kind = "source.fixAll.storyrod";
const title = "Mend all that can be mended by machine";

export function fixAll({ snapshot, findings, around }: Asked): Offer[] {
	if (!around.wholeFile) return [];
	const { uri, text } = snapshot;
	const some = findings.some(
		({ origin, fixes }) => origin.uri === uri && fixes.length > 0,
	);
	if (!some) return [];
	if (snapshot.result.faults.some(({ severity }) => severity === "error"))
		return [
			refusal(
				id,
				kind,
				title,
				"Some lines cannot be read: mend these first, one by one",
			),
		];
	return [
		{
			id,
			kind,
			title,
			change: () => {
				const mended = mendText(uri, text, (now) =>
					now === text ? findings : allFindings(around.evaluate(now)),
				);
				if (mended.mends.length === 0)
					return mended.toChoose > 0
						? "What is left can be mended in several ways: choose at each"
						: "Nothing here can be mended by machine without harm";
				return {
					edits: lineEdits(text, mended.text).map(
						({ start, end, text: put }) => ({
							span: { start, end },
							text: put,
						}),
					),
					keeps: "nothing",
				};
			},
		},
	];
}
