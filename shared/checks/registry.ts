// The list of all checks, in the order of the page. A check that is not in it does not run; a test sees to it that all are.

import type { Check } from "./check.ts";
import { oddReading } from "./rules/change/odd-reading.ts";
import { tooSmall } from "./rules/change/too-small.ts";
import { trimBack } from "./rules/change/trim-back.ts";
import { unitSlip } from "./rules/change/unit-slip.ts";
import { biscuitSize } from "./rules/fasteners/biscuit-size.ts";
import { edgeBlowout } from "./rules/fasteners/edge-blowout.ts";
import { edgeSplit } from "./rules/fasteners/edge-split.ts";
import { fastenerClash } from "./rules/fasteners/fastener-clash.ts";
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
import { shortGrain } from "./rules/shape/short-grain.ts";
import { stockSize } from "./rules/shape/stock-size.ts";
import { trimKerf } from "./rules/shape/trim-kerf.ts";
import { trimWidth } from "./rules/shape/trim-width.ts";
import { veneerGround } from "./rules/shape/veneer-ground.ts";
import { veneerOneSide } from "./rules/shape/veneer-one-side.ts";
import { veneerOrder } from "./rules/shape/veneer-order.ts";
import { veneerOverhang } from "./rules/shape/veneer-overhang.ts";
import { veneerSheet } from "./rules/shape/veneer-sheet.ts";
import { cleatFit } from "./rules/strength/cleat-fit.ts";
import { cleatLiftOff } from "./rules/strength/cleat-lift-off.ts";
import { cleatLoad } from "./rules/strength/cleat-load.ts";
import { cleatPath } from "./rules/strength/cleat-path.ts";
import { cleatStuds } from "./rules/strength/cleat-studs.ts";
import { legKnock } from "./rules/strength/leg-knock.ts";
import { level } from "./rules/strength/level.ts";
import { rack } from "./rules/strength/rack.ts";
import { sag } from "./rules/strength/sag.ts";
import { square } from "./rules/strength/square.ts";
import { tip } from "./rules/strength/tip.ts";
import { crossGrainGlue } from "./rules/wood/cross-grain-glue.ts";
import { trappedPanel } from "./rules/wood/trapped-panel.ts";

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
	edgeSplit,
	edgeBlowout,
	fastenerClash,
	fastenerInWaste,
	biscuitSize,
	trimWidth,
	trimKerf,
	veneerOverhang,
	veneerSheet,
	veneerOrder,
	veneerOneSide,
	veneerGround,
	footThin,
	shortGrain,
	stockSize,
	trappedPanel,
	crossGrainGlue,
	sag,
	cleatFit,
	cleatLoad,
	cleatPath,
	cleatStuds,
	cleatLiftOff,
	legKnock,
	level,
	tip,
	rack,
	square,
	tooSmall,
	trimBack,
	oddReading,
	unitSlip,
];
