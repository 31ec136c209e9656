/** The one table of constructs: validation, completion, hover, formatting, colouring and the reference read it. */
import { bodyContexts } from "./body.ts";
import type { Construct, ContextId } from "./construct.ts";
import { joiningWords } from "./directions.ts";
import { type Form, readForm, wordsOf } from "./form.ts";
import { joineryContexts } from "./joinery.ts";
import { materialContexts } from "./materials.ts";
import { pieceContexts } from "./piece.ts";

export type { Construct, ContextId, Declares } from "./construct.ts";
export {
	type DirectionWord,
	directionWords,
	joiningWords,
} from "./directions.ts";
export {
	type Form,
	type FormElement,
	type SlotType,
	showForm,
	slotTypeLabels,
} from "./form.ts";

/** Every context with its statements, in the order in which they are documented. */
export const contexts: Readonly<Record<ContextId, readonly Construct[]>> = {
	...pieceContexts,
	...materialContexts,
	...bodyContexts,
	...joineryContexts,
};

const byHead = new Map<ContextId, Map<string, Construct>>();
for (const [context, rows] of Object.entries(contexts) as [
	ContextId,
	readonly Construct[],
][]) {
	const heads = new Map<string, Construct>();
	for (const row of rows) {
		for (const head of [row.head, ...(row.aliases ?? [])]) heads.set(head, row);
	}
	byHead.set(context, heads);
}

/** The row for a head word in a context, aliases included. */
export function constructAt(
	context: ContextId,
	head: string,
): Construct | undefined {
	return byHead.get(context)?.get(head);
}

/** The contexts in which a head word may stand, for "belongs in a `box`" messages. */
export function contextsOf(head: string): ContextId[] {
	return [...byHead].filter(([, heads]) => heads.has(head)).map(([id]) => id);
}

const readForms = new Map<Construct, readonly Form[]>();

/** The forms of a row, read once. */
export function formsOf(construct: Construct): readonly Form[] {
	let forms = readForms.get(construct);
	if (!forms) {
		forms = construct.forms.map(readForm);
		readForms.set(construct, forms);
	}
	return forms;
}

/** Words that can never be declared as a name. */
export const reservedNames: ReadonlySet<string> = new Set([
	...joiningWords,
	"floor",
]);

/** All words of the language that are not heads, for colouring. */
export function phraseWords(): string[] {
	const words = new Set<string>(joiningWords);
	for (const rows of Object.values(contexts)) {
		for (const row of rows)
			for (const form of formsOf(row))
				for (const word of wordsOf(form)) words.add(word);
	}
	return [...words].filter((word) => /^[a-z-]+$/.test(word)).sort();
}
