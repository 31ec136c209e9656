// Holds every size exactly: a fraction in lowest terms, so that no length drifts however often it is added or scaled.

/**
 * How big a numerator or denominator may grow, in bits. A thousand bits are three hundred digits; no piece of
 * furniture comes near. Below it, every value also fits a double as a normal number, so `toNumber` always answers.
 */
export const maxBits = 1_000;

/** What may still be brought to lowest terms: products and sums of two values at the limit, with room. */
const maxRawBits = 4 * maxBits;

const largest = (1n << BigInt(maxBits)) - 1n;
const largestRaw = (1n << BigInt(maxRawBits)) - 1n;
const maxSafe = Number.MAX_SAFE_INTEGER;
const maxSafeBig = BigInt(maxSafe);
const maxInt32 = 0x7fff_ffff;

/** A value outgrew `maxBits`. Evaluation turns it into a message at the place that asked for it. */
export class TooLargeError extends Error {
	override readonly name = "TooLargeError";
	constructor() {
		super("The number is too large or too fine to be computed exactly");
	}
}

/** `nearest`: ties away from zero. `down`: toward minus infinity. `up`: toward plus infinity. */
export type Rounding = "nearest" | "down" | "up";

interface BigParts {
	readonly n: bigint;
	readonly d: bigint;
}

/**
 * An exact, immutable fraction. Always in lowest terms with a positive denominator; zero is 0/1.
 *
 * As long as both halves are safe integers they are plain numbers, which is where nearly all sizes live; beyond that
 * they are bigints, and come back to plain numbers as soon as they fit.
 */
export class Rational {
	/** Plain halves; not to be read when `big` is there. */
	private readonly n: number;
	private readonly d: number;
	private readonly big: BigParts | undefined;

	private constructor(n: number, d: number, big: BigParts | undefined) {
		this.n = n;
		this.d = d;
		this.big = big;
	}

	static readonly ZERO: Rational = new Rational(0, 1, undefined);
	static readonly ONE: Rational = new Rational(1, 1, undefined);

	/** n / d of two whole numbers. RangeError if one is not whole and safe, or if d is zero. */
	static of(n: number, d = 1): Rational {
		if (!Number.isSafeInteger(n) || !Number.isSafeInteger(d)) {
			throw new RangeError(`Not two safe whole numbers: ${n}, ${d}`);
		}
		if (d === 1) return new Rational(n + 0, 1, undefined);
		if (d === 0) throw new RangeError("Division by zero");
		const g = gcd(Math.abs(n), Math.abs(d));
		return d < 0
			? new Rational(0 - n / g, -d / g, undefined)
			: new Rational(n / g + 0, d / g, undefined);
	}

	/** n / d. RangeError if d is zero; TooLargeError if the fraction, or what it is reduced from, is out of bounds. */
	static fromBigints(n: bigint, d = 1n): Rational {
		if (d === 0n) throw new RangeError("Division by zero");
		if (isBeyond(n, largestRaw) || isBeyond(d, largestRaw)) {
			throw new TooLargeError();
		}
		const positive = d < 0n;
		const top = positive ? -n : n;
		const bottom = positive ? -d : d;
		if (bottom <= maxSafeBig && !isBeyond(top, maxSafeBig)) {
			return Rational.of(Number(top), Number(bottom));
		}
		const g = gcdBig(top < 0n ? -top : top, bottom);
		return lowest(top / g, bottom / g);
	}

	/** Reads `12`, `-0.71`, `+3.250`. Undefined for any other text; TooLargeError if there are too many digits. */
	static fromDecimalText(text: string): Rational | undefined {
		const match = /^([+-]?)(\d+)(?:\.(\d+))?$/.exec(text);
		if (match === null) return undefined;
		const [, sign = "", whole = "", part = ""] = match;
		if (whole.length + part.length > maxBits) throw new TooLargeError();
		const n = BigInt(whole + part);
		return Rational.fromBigints(
			sign === "-" ? -n : n,
			10n ** BigInt(part.length),
		);
	}

	/**
	 * The fraction with this denominator that lies nearest to a double: the way back from what cannot be exact (a root,
	 * a sine). RangeError if `value` is not finite or the denominator not a positive whole number.
	 */
	static near(value: number, denominator: number): Rational {
		if (!(denominator > 0)) {
			throw new RangeError(`Not a positive denominator: ${denominator}`);
		}
		if (!Number.isFinite(value)) throw new RangeError(`Not finite: ${value}`);
		const whole = Math.floor(value);
		// The rest is below 1, so that its product with the denominator stays a safe integer.
		const rest = Math.round((value - whole) * denominator);
		return Rational.fromBigints(
			BigInt(whole) * BigInt(denominator) + BigInt(rest),
			BigInt(denominator),
		);
	}

	get numerator(): bigint {
		return this.big === undefined ? BigInt(this.n) : this.big.n;
	}

	/** Positive. */
	get denominator(): bigint {
		return this.big === undefined ? BigInt(this.d) : this.big.d;
	}

	add(other: Rational): Rational {
		if (this.big === undefined && other.big === undefined) {
			const sum = addSmall(this.n, this.d, other.n, other.d);
			if (sum !== undefined) return sum;
		}
		return addBig(
			this.numerator,
			this.denominator,
			other.numerator,
			other.denominator,
		);
	}

	sub(other: Rational): Rational {
		if (this.big === undefined && other.big === undefined) {
			const sum = addSmall(this.n, this.d, -other.n, other.d);
			if (sum !== undefined) return sum;
		}
		return addBig(
			this.numerator,
			this.denominator,
			-other.numerator,
			other.denominator,
		);
	}

	mul(other: Rational): Rational {
		if (this.big === undefined && other.big === undefined) {
			const product = mulSmall(this.n, this.d, other.n, other.d);
			if (product !== undefined) return product;
		}
		return mulBig(
			this.numerator,
			this.denominator,
			other.numerator,
			other.denominator,
		);
	}

	/** RangeError if the other is zero. */
	div(other: Rational): Rational {
		if (other.isZero()) throw new RangeError("Division by zero");
		if (this.big === undefined && other.big === undefined) {
			const quotient =
				other.n > 0
					? mulSmall(this.n, this.d, other.d, other.n)
					: mulSmall(this.n, this.d, -other.d, -other.n);
			if (quotient !== undefined) return quotient;
		}
		const n = other.numerator;
		return n > 0n
			? mulBig(this.numerator, this.denominator, other.denominator, n)
			: mulBig(this.numerator, this.denominator, -other.denominator, -n);
	}

	neg(): Rational {
		return this.big === undefined
			? new Rational(0 - this.n, this.d, undefined)
			: new Rational(0, 1, { n: -this.big.n, d: this.big.d });
	}

	abs(): Rational {
		return this.sign() < 0 ? this.neg() : this;
	}

	/** -1, 0 or 1. */
	sign(): -1 | 0 | 1 {
		const n = this.big === undefined ? this.n : this.big.n;
		return n > 0 ? 1 : n < 0 ? -1 : 0;
	}

	isZero(): boolean {
		return this.big === undefined && this.n === 0;
	}

	isInteger(): boolean {
		return this.big === undefined ? this.d === 1 : this.big.d === 1n;
	}

	eq(other: Rational): boolean {
		if (this.big === undefined || other.big === undefined) {
			return this.big === other.big && this.n === other.n && this.d === other.d;
		}
		return this.big.n === other.big.n && this.big.d === other.big.d;
	}

	/** Negative, zero or positive, as this lies below, at or above the other: fit for `sort`. */
	cmp(other: Rational): -1 | 0 | 1 {
		if (this.eq(other)) return 0;
		// A correctly rounded quotient never changes order; only where two of them meet the exact fractions must tell.
		const a = this.toNumber();
		const b = other.toNumber();
		if (a !== b) return a < b ? -1 : 1;
		const left = this.numerator * other.denominator;
		return left < other.numerator * this.denominator ? -1 : 1;
	}

	min(other: Rational): Rational {
		return this.cmp(other) <= 0 ? this : other;
	}

	max(other: Rational): Rational {
		return this.cmp(other) >= 0 ? this : other;
	}

	/** The greatest whole number that is not above. */
	floor(): Rational {
		return this.roundTo(Rational.ONE, "down");
	}

	/** The smallest whole number that is not below. */
	ceil(): Rational {
		return this.roundTo(Rational.ONE, "up");
	}

	/** The multiple of `step` that the rounding asks for. RangeError if the step is not positive. */
	roundTo(step: Rational, mode: Rounding): Rational {
		if (step.sign() <= 0) {
			throw new RangeError(`Not a positive step: ${step.toString()}`);
		}
		if (this.big === undefined && step.big === undefined) {
			const n = this.n * step.d;
			const d = this.d * step.n;
			if (Math.abs(n) <= maxSafe && d <= maxSafe) {
				const steps = roundedQuotient(n, d, mode);
				const rounded = mulSmall(steps, 1, step.n, step.d);
				if (rounded !== undefined) return rounded;
			}
		}
		const steps = roundedQuotientBig(
			this.numerator * step.denominator,
			this.denominator * step.numerator,
			mode,
		);
		return mulBig(steps, 1n, step.numerator, step.denominator);
	}

	/** The nearest double (ties to even), never overflowing or losing bits below the normal range. */
	toNumber(): number {
		// Both halves are exact doubles and division rounds correctly.
		if (this.big === undefined) return this.n / this.d;
		const { n, d } = this.big;
		const size = n < 0n ? -n : n;
		// A quotient of at least 55 bits holds two more than a double; the last one says whether anything follows.
		const shift = 55 - (bitLength(size) - bitLength(d));
		const top = shift > 0 ? size << BigInt(shift) : size;
		const bottom = shift < 0 ? d << BigInt(-shift) : d;
		const quotient = top / bottom;
		const sticky = quotient * bottom === top ? quotient : quotient | 1n;
		const value = Number(sticky) * 2 ** -shift;
		return n < 0n ? -value : value;
	}

	/** `7`, `-3/4`, `19/8`: for messages about our own faults and for tests, not for users. */
	toString(): string {
		if (this.big === undefined)
			return this.d === 1 ? `${this.n}` : `${this.n}/${this.d}`;
		const { numerator, denominator } = this;
		return denominator === 1n ? `${numerator}` : `${numerator}/${denominator}`;
	}

	toJSON(): string {
		return this.toString();
	}

	/** @internal For this module only: halves that are in lowest terms already. */
	static raw(n: number, d: number, big?: BigParts): Rational {
		return new Rational(n, d, big);
	}
}

/** Greatest common divisor of two safe integers that are not negative; 1 if both are zero. */
function gcd(a: number, b: number): number {
	let x = a;
	let y = b;
	// The remainder of doubles is slow: leave it as soon as the rest fits an int32.
	while (y !== 0 && (x > maxInt32 || y > maxInt32)) {
		const rest = x % y;
		x = y;
		y = rest;
	}
	if (y === 0) return x === 0 ? 1 : x;
	let i = x | 0;
	let j = y | 0;
	while (j !== 0) {
		const rest = (i % j) | 0;
		i = j;
		j = rest;
	}
	return i;
}

function gcdBig(a: bigint, b: bigint): bigint {
	let x = a;
	let y = b;
	while (y > maxSafeBig) {
		const rest = x % y;
		x = y;
		y = rest;
	}
	return y === 0n ? x : BigInt(gcd(Number(y), Number(x % y)));
}

function isBeyond(n: bigint, bound: bigint): boolean {
	return n > bound || n < -bound;
}

function bitLength(positive: bigint): number {
	const hex = positive.toString(16);
	return hex.length * 4 - (Math.clz32(Number.parseInt(hex.charAt(0), 16)) - 28);
}

/** Takes a fraction in lowest terms with a positive denominator. */
function lowest(n: bigint, d: bigint): Rational {
	if (d <= maxSafeBig && !isBeyond(n, maxSafeBig)) {
		return Rational.raw(Number(n), Number(d));
	}
	if (d > largest || isBeyond(n, largest)) throw new TooLargeError();
	return Rational.raw(0, 1, { n, d });
}

/** Undefined if a number on the way is not safe. A double at most `maxSafe` comes from an exact integer. */
function addSmall(
	an: number,
	ad: number,
	bn: number,
	bd: number,
): Rational | undefined {
	if (ad === bd) {
		const n = an + bn;
		if (n > maxSafe || n < -maxSafe) return undefined;
		if (ad === 1) return Rational.raw(n + 0, 1);
		const g = gcd(n < 0 ? -n : n, ad);
		return Rational.raw(n / g + 0, ad / g);
	}
	const g = gcd(ad, bd);
	const left = an * (bd / g);
	const right = bn * (ad / g);
	const n = left + right;
	if (
		left > maxSafe ||
		left < -maxSafe ||
		right > maxSafe ||
		right < -maxSafe ||
		n > maxSafe ||
		n < -maxSafe
	) {
		return undefined;
	}
	// Only a divisor of g can be common to the sum and the common denominator (Knuth, 4.5.1).
	const h = g === 1 ? 1 : gcd(n < 0 ? -n : n, g);
	const d = (ad / g) * (bd / h);
	return d > maxSafe ? undefined : Rational.raw(n / h + 0, d);
}

function addBig(an: bigint, ad: bigint, bn: bigint, bd: bigint): Rational {
	return Rational.fromBigints(an * bd + bn * ad, ad * bd);
}

/** Undefined if a half of the product is not safe. */
function mulSmall(
	an: number,
	ad: number,
	bn: number,
	bd: number,
): Rational | undefined {
	const g = bd === 1 ? 1 : gcd(an < 0 ? -an : an, bd);
	const h = ad === 1 ? 1 : gcd(bn < 0 ? -bn : bn, ad);
	const n = (an / g) * (bn / h);
	const d = (ad / h) * (bd / g);
	return n > maxSafe || n < -maxSafe || d > maxSafe
		? undefined
		: Rational.raw(n + 0, d);
}

function mulBig(an: bigint, ad: bigint, bn: bigint, bd: bigint): Rational {
	return Rational.fromBigints(an * bn, ad * bd);
}

/** n / d to a whole number; d positive, both safe integers. */
function roundedQuotient(n: number, d: number, mode: Rounding): number {
	const rest = n % d;
	const whole = (n - rest) / d;
	if (rest === 0) return whole + 0;
	if (mode === "down") return rest < 0 ? whole - 1 : whole + 0;
	if (mode === "up") return rest > 0 ? whole + 1 : whole + 0;
	// Doubling a double loses nothing, safe or not.
	if (Math.abs(rest) * 2 < d) return whole + 0;
	return rest < 0 ? whole - 1 : whole + 1;
}

function roundedQuotientBig(n: bigint, d: bigint, mode: Rounding): bigint {
	const rest = n % d;
	const whole = n / d;
	if (rest === 0n) return whole;
	if (mode === "down") return rest < 0n ? whole - 1n : whole;
	if (mode === "up") return rest > 0n ? whole + 1n : whole;
	const size = rest < 0n ? -rest : rest;
	if (size * 2n < d) return whole;
	return rest < 0n ? whole - 1n : whole + 1n;
}
