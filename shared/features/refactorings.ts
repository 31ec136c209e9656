// What can be done to the text at a place beside mending it: one file each in `refactorings/`, listed here.

import { addImport } from "./refactorings/add-import.ts";
import { convertUnit } from "./refactorings/convert-unit.ts";
import { extractComponent } from "./refactorings/extract-component.ts";
import { fillRequired } from "./refactorings/fill-required.ts";
import { fixAll } from "./refactorings/fix-all.ts";
import { inlineSize } from "./refactorings/inline-size.ts";
import { mirroredPair } from "./refactorings/mirrored-pair.ts";
import { numberToGiven } from "./refactorings/number-to-given.ts";
import { sortLines } from "./refactorings/sort-lines.ts";
import type {
	Asked,
	Offer,
	Refactoring,
	RefactoringKind,
} from "./support/refactoring.ts";

/** In the order in which they are offered, each with the kinds that it can be of. */
const registry: readonly {
	readonly offers: Refactoring;
	readonly kinds: readonly RefactoringKind[];
}[] = [
	{ offers: addImport, kinds: ["quickfix"] },
	{ offers: fillRequired, kinds: ["quickfix", "refactor.rewrite"] },
	{ offers: numberToGiven, kinds: ["refactor.extract"] },
	{ offers: extractComponent, kinds: ["refactor.extract"] },
	{ offers: inlineSize, kinds: ["refactor.inline"] },
	{ offers: mirroredPair, kinds: ["refactor.rewrite"] },
	{ offers: sortLines, kinds: ["refactor.rewrite"] },
	{
		offers: convertUnit,
		kinds: ["refactor.rewrite", "source.convertUnit.storyrod"],
	},
	{ offers: fixAll, kinds: ["source.fixAll.storyrod"] },
];

/** Every kind that is offered, without those that begin with another one. */
export const refactoringKinds: readonly RefactoringKind[] = [
	...new Set(registry.flatMap(({ kinds }) => kinds)),
];

/** What can be done where the cursor or the selection is; of some kinds only, where these are asked for. */
export function refactorings(
	asked: Asked,
	isWanted: (kind: RefactoringKind) => boolean = () => true,
): Offer[] {
	return registry
		.filter(({ kinds }) => kinds.some(isWanted))
		.flatMap(({ offers }) => offers(asked))
		.filter(({ kind }) => isWanted(kind));
}
