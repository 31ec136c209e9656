// Names as the right one of a handed pair reads them: `case.left` is `case.right`.

import { type Binding, type Meaning, Scope, type Thing } from "./meaning.ts";
import { memberOf } from "./names.ts";

/** A scope whose own names are as declared, and whose outer ones are read in the mirror. */
export class MirroredScope extends Scope {
	override find(name: string): Binding | undefined {
		const own = this.own(name);
		if (own) return own;
		const binding = this.outer?.find(name);
		return (
			binding && {
				declaration: binding.declaration,
				meaning: () => mirrored(binding.meaning()),
			}
		);
	}
}

function mirrored(meaning: Meaning | undefined): Meaning | undefined {
	return meaning?.kind === "thing"
		? { kind: "thing", thing: mirroredThing(meaning.thing) }
		: meaning;
}

function mirroredThing(thing: Thing): Thing {
	return {
		...thing,
		member: (name) => {
			const other = otherSide(name);
			return mirrored(
				other === name
					? thing.member(name)
					: memberOf({ kind: "thing", thing }, other, thing.path),
			);
		},
	};
}

function otherSide(name: string): string {
	return name === "left" ? "right" : name === "right" ? "left" : name;
}
