// Which construct has which meaning: a new one is a row of the table, a module beside this one, and a line here.

import { aid } from "./aid.ts";
import { box } from "./box.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { finish } from "./finish.ts";
import { fit } from "./fit.ts";
import { join } from "./join.ts";
import { leg } from "./leg.ts";
import { load } from "./load.ts";
import { make, type Populate } from "./make.ts";
import { match } from "./match.ts";
import { mount } from "./mount.ts";
import { must } from "./must.ts";
import { part } from "./part.ts";
import { given, mark, type SetValue } from "./sizes.ts";
import { step } from "./step.ts";
import { trim } from "./trim.ts";
import { veneer } from "./veneer.ts";

/** The meanings of the heads of a piece or component. */
export function meaningsOf(
	sets: ReadonlyMap<string, SetValue>,
	populate: Populate,
): ReadonlyMap<string, ConstructMeaning> {
	return new Map<string, ConstructMeaning>([
		["given", given(sets)],
		["mark", mark],
		["box", box],
		["part", part],
		["join", join],
		["fit", fit],
		["match", match],
		["must", must],
		["leg", leg],
		["trim", trim],
		["veneer", veneer],
		["mount", mount],
		["make", make(populate)],
		["finish", finish],
		["load", load],
		["step", step],
		["aid", aid],
	]);
}
