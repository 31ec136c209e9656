// Which construct has which meaning: a new one is a row of the table, a module beside this one, and a line here.

import { box } from "./box.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { fit } from "./fit.ts";
import { join } from "./join.ts";
import { leg } from "./leg.ts";
import { mount } from "./mount.ts";
import { must } from "./must.ts";
import { part } from "./part.ts";
import { given, mark, type SetValue } from "./sizes.ts";
import { trim } from "./trim.ts";
import { veneer } from "./veneer.ts";

/** The meanings of the heads of a piece or component. */
export function meaningsOf(
	sets: ReadonlyMap<string, SetValue>,
): ReadonlyMap<string, ConstructMeaning> {
	return new Map<string, ConstructMeaning>([
		["given", given(sets)],
		["mark", mark],
		["box", box],
		["part", part],
		["join", join],
		["fit", fit],
		["must", must],
		["leg", leg],
		["trim", trim],
		["veneer", veneer],
		["mount", mount],
	]);
}
