// Names as the right one of a handed pair reads them: `case.left` is `case.right`, `inner.left` its own right face.

import { type Binding, type Meaning, Scope, type Thing } from "./meaning.ts";
import { memberOf } from "./names.ts";

/** A scope whose names are read in the mirror. */
export class MirroredScope extends Scope {
	override readonly mirrored = true;

	override find(name: string): Binding | undefined {
		const own = this.own(name);
		const binding = own ?? this.outer?.find(name);
		if (!binding) return undefined;
		const { declaration, along } = binding;
		return {
			declaration,
			meaning: () => mirrored(binding.meaning()),
			...(own && along
				? {
						along: (axis, behind) =>
							axis === "x" ? undefined : along(axis, behind),
					}
				: {}),
		};
	}
}

function mirrored(meaning: Meaning | undefined): Meaning | undefined {
	if (meaning?.kind === "thing")
		return { kind: "thing", thing: mirroredThing(meaning.thing) };
	return meaning?.kind === "part" ? { ...meaning, mirrored: true } : meaning;
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
