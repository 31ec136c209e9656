// The list of all checks, in the order of the page. A check that is not in it does not run; a test sees to it that all are.

import type { Check } from "./check.ts";
import { oddReading } from "./rules/change/odd-reading.ts";
import { tooSmall } from "./rules/change/too-small.ts";
import { trimBack } from "./rules/change/trim-back.ts";
import { unitSlip } from "./rules/change/unit-slip.ts";
import { fastenerInWaste } from "./rules/fasteners/fastener-in-waste.ts";
import { fastenerShort } from "./rules/fasteners/fastener-short.ts";
import { fastenerThrough } from "./rules/fasteners/fastener-through.ts";
import { datumUnclear } from "./rules/fit/datum-unclear.ts";
import { fitGap } from "./rules/fit/fit-gap.ts";
import { fitMitre } from "./rules/fit/fit-mitre.ts";
import { fitNominal } from "./rules/fit/fit-nominal.ts";
import { fitStack } from "./rules/fit/fit-stack.ts";
import { flush } from "./rules/fit/flush.ts";
import { gap } from "./rules/fit/gap.ts";
import { interfere } from "./rules/fit/interfere.ts";
import { footThin } from "./rules/shape/foot-thin.ts";
import { stockSize } from "./rules/shape/stock-size.ts";
import { trimWidth } from "./rules/shape/trim-width.ts";
import { veneerOverhang } from "./rules/shape/veneer-overhang.ts";
import { cleatFit } from "./rules/strength/cleat-fit.ts";

export const checks: readonly Check[] = [
	fitGap,
	fitStack,
	fitNominal,
	fitMitre,
	flush,
	interfere,
	gap,
	datumUnclear,
	fastenerThrough,
	fastenerShort,
	fastenerInWaste,
	trimWidth,
	veneerOverhang,
	footThin,
	stockSize,
	cleatFit,
	tooSmall,
	trimBack,
	oddReading,
	unitSlip,
];
