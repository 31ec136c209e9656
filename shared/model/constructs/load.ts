// `load`: what stands on the piece, and where.

import { Rational } from "../../units/rational.ts";
import { evaluateAs } from "../expressions.ts";
import { pathText } from "../meaning.ts";
import { resolve } from "../names.ts";
import { stated, times } from "../size.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { partBehind } from "./named-refs.ts";

/** Feet in a metre, exact: 1 ft = 0.3048 m. */
const feetPerMetre = stated(
	Rational.of(10_000, 3048),
	"ft in a metre",
	"number",
);

export const load: ConstructMeaning = {
	phase: 3,
	settle: (context, row) => {
		const amount = row.expression("amount");
		const mass = evaluateAs(context.frame, amount, "mass");
		const ref = row.ref("where");
		const meaning = ref && resolve(context.frame, ref);
		if (!mass || !amount || !meaning || !ref) return;
		if (mass.value.sign() <= 0) {
			context.evaluation.report(
				"no-size",
				row.at(amount.span),
				"A load must be more than 0",
			);
			return;
		}
		const where = pathText(ref.segments);
		const part = partBehind(meaning);
		if (!part && meaning.kind !== "thing" && meaning.kind !== "face") {
			context.evaluation.report(
				"not-a-part",
				row.at(ref.span),
				`\`${where}\` is nothing that a load can stand on: name a part or a face of one`,
			);
			return;
		}
		const unit = row.word("unit");
		context.collected.loads.push({
			origin: row.origin,
			mass: unit === "ft" ? times(feetPerMetre, mass) : mass,
			perLength: unit !== undefined,
			where,
			part,
		});
	},
};
