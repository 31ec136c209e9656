// Fits of a piece as the checks read them: equal ones told once, and the ways to mend a written size.

import { numberOf, type Size } from "../model/size.ts";
import type { Display, Fit, Fix, Joint, Part, Piece } from "../model/types.ts";
import { Rational } from "../units/rational.ts";
import { plainSize } from "./words.ts";

/** Joints that have one and the same fit, told at one place. */
export interface SharedFit {
	readonly fit: Fit;
	readonly joint: Joint;
	readonly joints: readonly Joint[];
}

/** ` (and 3 more alike)`, where several joints of one line have the same fit. */
export function alike(joints: readonly Joint[]): string {
	return joints.length > 1 ? ` (and ${joints.length - 1} more alike)` : "";
}

/** The fits of a piece that are asked for; those of one line that are alike in every figure come once. */
export function fitsOf(
	piece: Piece,
	wanted: (fit: Fit, joint: Joint) => boolean,
): readonly SharedFit[] {
	const groups = new Map<
		string,
		{ readonly fit: Fit; readonly joint: Joint; readonly joints: Joint[] }
	>();
	for (const joint of piece.joints) {
		for (const fit of joint.fits) {
			if (!wanted(fit, joint)) continue;
			const { uri, span } = fit.origin;
			const key = `${uri} ${span.start} ${span.end} ${fit.gap.value} ${fit.low} ${fit.high} ${fit.member.value}`;
			const known = groups.get(key);
			if (known) known.joints.push(joint);
			else groups.set(key, { fit, joint, joints: [joint] });
		}
	}
	return [...groups.values()];
}

const memberJoints = new WeakMap<Piece, ReadonlyMap<Part, readonly Joint[]>>();

/** The joints that a part enters or meets, in the order of the piece; looked up once for all parts. */
export function jointsOfMember(piece: Piece, member: Part): readonly Joint[] {
	let known = memberJoints.get(piece);
	if (!known) {
		known = Map.groupBy(piece.joints, (joint) => joint.member);
		memberJoints.set(piece, known);
	}
	return known.get(member) ?? [];
}

/** Most that a dado is cut over its member: 0.1 mm where the range allows it, else the middle of the range. */
export function wantedGap(fit: Fit): Rational {
	const allowance = Rational.of(1, 10);
	if (allowance.cmp(fit.low) >= 0 && allowance.cmp(fit.high) <= 0)
		return allowance;
	return fit.low.add(fit.high).div(Rational.of(2));
}

/** The written size that brings the gap into its range. */
export function mendedSize(
	display: Display,
	fit: Fit,
): { readonly text: string; readonly value: Rational } | undefined {
	const { written } = fit;
	if (!written || written.weight === 0) return undefined;
	const weight = Rational.near(written.weight, 1_000_000);
	if (weight.isZero()) return undefined;
	const at = (gap: Rational): Rational =>
		written.size.value.add(gap.sub(fit.gap.value).div(weight));
	// Well within the range, not at its very ends.
	const wanted = wantedGap(fit);
	const half = Rational.of(1, 2);
	const ends = [
		at(fit.low.add(wanted).mul(half)),
		at(fit.high.add(wanted).mul(half)),
	] as const;
	const size = plainSize(
		display,
		ends[0].min(ends[1]),
		ends[0].max(ends[1]),
		at(wanted),
	);
	return size && size.value.sign() > 0 ? size : undefined;
}

/** The member goes in with its thickness, and the opening's width is written. */
export function isThickness(fit: Fit, member: Part): boolean {
	return (
		fit.written !== undefined &&
		fit.written.weight === 1 &&
		fit.member.value.eq(member.thick.value)
	);
}

/** Edits that mend the written size: by the material's name where the member goes in with its own thickness, and by a figure. */
export function fitFixes(
	display: Display,
	fit: Fit,
	member: Part,
): readonly Fix[] {
	const { written } = fit;
	if (!written) return [];
	const fixes: Fix[] = [];
	const { stock } = member;
	if (
		isThickness(fit, member) &&
		stock.thick?.value.eq(member.thick.value) === true &&
		member.measured.length === 0
	) {
		const text = `${stock.id}.thick + ${allowanceText(display, wantedGap(fit))}`;
		fixes.push({
			title: `Make it ${text}, from what the material measures`,
			edits: [{ span: written.span, text }],
		});
	}
	const size = mendedSize(display, fit);
	if (size)
		fixes.push({
			title: `Make it ${size.text} ${display.unit}`,
			edits: [{ span: written.span, text: size.text }],
		});
	return fixes;
}

function allowanceText(display: Display, gap: Rational): string {
	const size = plainSize(
		{
			unit: display.unit,
			precision: Rational.of(1, display.unit === "in" ? 1000 : 20),
		},
		Rational.ZERO,
		gap.mul(Rational.of(2)),
		gap,
	);
	return size?.text ?? `${gap.toNumber()} mm`;
}

/** The size that its story begins with: `ply.three-quarter.sold-as` behind `wide ply.three-quarter.sold-as + 0.004`. */
export function comesFrom(size: Size, is: (size: Size) => boolean): boolean {
	const open: Size[] = [size];
	// A story is a tree of at most some dozens of sizes; the bound is for one that grew wild.
	for (let steps = 0; open.length > 0 && steps < 10_000; steps++) {
		const next = open.pop() as Size;
		if (is(next)) return true;
		const { why } = next;
		if (why.kind === "named") open.push(why.of);
		else if (why.kind === "sum" || why.kind === "product")
			open.push(why.left, why.right);
		else if (why.kind === "function") open.push(...why.args);
		else if (why.kind === "fact" && why.of) open.push(why.of);
	}
	return false;
}

/** A fit's range and gap in mm. */
export function numbersOf(fit: Fit): {
	readonly gap: number;
	readonly low: number;
	readonly high: number;
} {
	return {
		gap: numberOf(fit.gap),
		low: fit.low.toNumber(),
		high: fit.high.toNumber(),
	};
}
