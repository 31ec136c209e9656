// Areas, volumes, loads and pressures in the units of the shop, made exactly from the inch and the pound.

import { foot, inch, pound } from "./dimensions.ts";
import { Rational } from "./rational.ts";

/** mm2 in a square inch. */
export const squareInch: Rational = inch.mul(inch);

/** mm3 in a cubic inch. */
export const cubicInch: Rational = squareInch.mul(inch);

/** mm3 in a board foot: a foot by a foot by an inch, 144 cubic inches. */
export const boardFoot: Rational = cubicInch.mul(Rational.of(144));

/** mm2 in the units that the cover of a coating is given in. */
export const areaUnits = {
	ft2: foot.mul(foot),
	m2: Rational.of(1_000_000),
} as const satisfies Record<string, Rational>;

export type AreaUnit = keyof typeof areaUnits;

/** mm3 in the US gallon: 231 cubic inches exactly (NIST Handbook 44, appendix C). */
const gallon = cubicInch.mul(Rational.of(231));

/** mm3 in the units that coatings are sold in; gallon, quart and pint are the US liquid ones. */
export const volumeUnits = {
	gallon,
	quart: gallon.div(Rational.of(4)),
	pint: gallon.div(Rational.of(8)),
	litre: Rational.of(1_000_000),
	millilitre: Rational.of(1_000),
} as const satisfies Record<string, Rational>;

export type VolumeUnit = keyof typeof volumeUnits;

/** mm in the lengths that a spread load is given by (`35 lb per ft`). */
export const spreadUnits = {
	ft: foot,
	m: Rational.of(1_000),
} as const satisfies Record<string, Rational>;

export type SpreadUnit = keyof typeof spreadUnits;

/** kg/mm in a pound for each foot of length. */
export const poundPerFoot: Rational = pound.div(foot);

/** Newtons that a kilogram weighs: standard gravity, exact by convention (3rd CGPM 1901; NIST SP 811, appendix B.8). */
export const gravity: Rational = Rational.of(980_665, 100_000);

/** Newtons in a pound-force. */
export const poundForce: Rational = pound.mul(gravity);

/** MPa (N/mm2) in a pound-force per square inch. */
export const psi: Rational = poundForce.div(squareInch);
