// What one screw, nail or lag screw holds: reference values of the NDS (ANSI/AWC National Design Specification for Wood
// Construction, 2018, chapter 12) in SI. Reference values are for design: about a fifth of what breaks on average.

import { poundForce, psi } from "../units/derived.ts";
import { inch } from "../units/dimensions.ts";

const mmPerInch = inch.toNumber();
const newtonPerPound = poundForce.toNumber();
const pascal = psi.toNumber();
const poundPerInch = newtonPerPound / mmPerInch;

/** N per mm of thread in side grain: 2850 G^2 D lb/in (NDS 12.2-2). Diameter of the shank, mm. No value in end grain. */
export function screwWithdrawal(gravity: number, diameter: number): number {
	return 2850 * gravity ** 2 * (diameter / mmPerInch) * poundPerInch;
}

/** N per mm of a smooth nail in side grain: 1380 G^(5/2) D lb/in (NDS 12.2-3, from memory). No value in end grain. */
export function nailWithdrawal(gravity: number, diameter: number): number {
	return 1380 * gravity ** 2.5 * (diameter / mmPerInch) * poundPerInch;
}

/** N per mm of thread of a lag screw in side grain: 1800 G^(3/2) D^(3/4) lb/in (NDS 12.2-1). Three quarters of it in end grain. */
export function lagWithdrawal(gravity: number, diameter: number): number {
	return 1800 * gravity ** 1.5 * (diameter / mmPerInch) ** 0.75 * poundPerInch;
}

/**
 * N at which a head is pulled through a member `thick` mm thick: 690 pi D_H G^2 t lb, at most 1725 pi D_H^2 G^2
 * (NDS 2018, 12.2-6a and b, from memory). Diameter of the head, mm.
 */
export function headPullThrough(
	gravity: number,
	head: number,
	thick: number,
): number {
	const across = head / mmPerInch;
	const deep = Math.min(thick / mmPerInch, 2.5 * across);
	return 690 * Math.PI * across * gravity ** 2 * deep * newtonPerPound;
}

/** To the 50 psi that the tables print, MPa. */
function toTable(pounds: number): number {
	return Math.round(pounds / 50) * 50 * pascal;
}

/**
 * Dowel bearing strength, MPa (NDS Table 12.3.3). Thinner than 1/4 in: 16600 G^1.84 psi whatever the grain; else
 * 11200 G along and 6100 G^1.45 / D^0.5 across. Rounded to 50 psi, as the tables are.
 */
export function dowelBearing(
	gravity: number,
	diameter: number,
	grain: "along" | "across" = "across",
): number {
	const across = diameter / mmPerInch;
	if (across < 0.25) return toTable(16_600 * gravity ** 1.84);
	return toTable(
		grain === "along"
			? 11_200 * gravity
			: (6100 * gravity ** 1.45) / Math.sqrt(across),
	);
}

/** Bending yield strength of common wire by its diameter in mm, MPa (NDS Appendix I, from memory). */
export function bendingYield(diameter: number): number {
	const across = diameter / mmPerInch;
	if (across <= 0.142) return 100_000 * pascal;
	if (across <= 0.177) return 90_000 * pascal;
	if (across <= 0.236) return 80_000 * pascal;
	if (across <= 0.273) return 70_000 * pascal;
	if (across <= 0.344) return 60_000 * pascal;
	return 45_000 * pascal;
}

/** K_D of NDS Table 12.3.1B: what the yield load of a thin fastener is divided by. Diameter in mm. */
export function reduction(diameter: number): number {
	const across = diameter / mmPerInch;
	return across <= 0.17 ? 2.2 : 10 * across + 0.5;
}

export type YieldMode = "Im" | "Is" | "II" | "IIIm" | "IIIs" | "IV";

/** One of the two members that a fastener in single shear joins. */
export interface Bearer {
	/** Bearing length of the fastener in it, mm. */
	readonly length: number;
	/** Dowel bearing strength, MPa. */
	readonly bearing: number;
}

export interface LateralCase {
	/** mm; of a screw whose thread lies in the shear plane, the root. */
	readonly diameter: number;
	/** MPa. */
	readonly bendingYield: number;
	/** The member that holds the point. */
	readonly main: Bearer;
	/** The member under the head. */
	readonly side: Bearer;
	/** A layer between them that bears nothing (plasterboard), mm. */
	readonly gap?: number;
	/** Largest angle between load and grain in either member, degrees; only 1/4 in and thicker. */
	readonly angle?: number;
}

export interface LateralValue {
	/** N, each mode with its own reduction. */
	readonly modes: Readonly<Record<YieldMode, number>>;
	readonly mode: YieldMode;
	/** N, the smallest. */
	readonly value: number;
}

/**
 * Single shear by the yield limit: each mode is the root of A P^2 + B P + C = 0 (AWC Technical Report 12, from memory), which
 * without a gap is the equation of NDS Table 12.3.1A. Undefined where a length or strength is not above zero.
 */
export function lateralValue(given: LateralCase): LateralValue | undefined {
	const { diameter, main, side, gap = 0, angle = 90 } = given;
	const positive = [
		diameter,
		given.bendingYield,
		main.length,
		main.bearing,
		side.length,
		side.bearing,
	];
	if (!positive.every((one) => Number.isFinite(one) && one > 0) || !(gap >= 0))
		return undefined;
	const m = main.bearing * diameter;
	const s = side.bearing * diameter;
	const lm = main.length;
	const ls = side.length;
	const moment = (given.bendingYield * diameter ** 3) / 6;
	const mainEnd = (m * lm ** 2) / 4;
	const sideEnd = (s * ls ** 2) / 4;
	const thin = diameter < 0.25 * mmPerInch;
	const thick = 1 + angle / 360;
	const over = (first: number, load: number): number =>
		load / (thin ? reduction(diameter) : first * thick);
	const modes: Record<YieldMode, number> = {
		Im: over(4, m * lm),
		Is: over(4, s * ls),
		II: over(
			3.6,
			root(1 / (4 * s) + 1 / (4 * m), ls / 2 + gap + lm / 2, sideEnd + mainEnd),
		),
		IIIm: over(
			3.2,
			root(1 / (2 * s) + 1 / (4 * m), gap + lm / 2, moment + mainEnd),
		),
		IIIs: over(
			3.2,
			root(1 / (4 * s) + 1 / (2 * m), ls / 2 + gap, sideEnd + moment),
		),
		IV: over(3.2, root(1 / (2 * s) + 1 / (2 * m), gap, 2 * moment)),
	};
	let mode: YieldMode = "Im";
	for (const one of Object.keys(modes) as YieldMode[])
		if (modes[one] < modes[mode]) mode = one;
	return { modes, mode, value: modes[mode] };
}

/** The positive root of a x^2 + b x - c = 0 for a, c > 0 and b >= 0. */
function root(a: number, b: number, c: number): number {
	return (-b + Math.sqrt(b * b + 4 * a * c)) / (2 * a);
}

/**
 * How much of a fastener is used by a pull and a shear together, 1 = all of it: P / Z'a with
 * Z'a = W Z / (W cos^2 a + Z sin^2 a) (NDS 12.4.1, from memory), a = angle of the load from the surface. All in N.
 */
export function combinedUse(
	pull: number,
	shear: number,
	withdrawal: number,
	lateral: number,
): number {
	const load = Math.hypot(pull, shear);
	if (load === 0) return 0;
	return (
		(shear * shear) / (load * lateral) + (pull * pull) / (load * withdrawal)
	);
}

/** C_D: what a connection bears longer or shorter than ten years (NDS Table 2.3.2, from memory). */
export const duration = {
	permanent: 0.9,
	/** Ten years: what is stored. */
	stored: 1,
	/** Ten minutes: a knock, somebody who leans. */
	short: 1.6,
} as const;

/**
 * N that a screw of `diameter` mm holds in sheet steel `thick` mm thick with tensile strength `strength` MPa: pull-out
 * 0.85 t d F_u / 3, shear by tilting 4.2 sqrt(t^3 d) F_u / 3 (AISI S100, J4.3.1 and J4.4.1, allowable strength, from memory).
 */
export function steelScrew(
	diameter: number,
	thick: number,
	strength: number,
): { readonly withdrawal: number; readonly lateral: number } {
	return {
		withdrawal: (0.85 * thick * diameter * strength) / 3,
		lateral: (4.2 * Math.sqrt(thick ** 3 * diameter) * strength) / 3,
	};
}
