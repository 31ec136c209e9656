// The cut list of a piece as data: equal parts in one row, in the order in which they can be cut.

import { type CutDifference, excess, lacking } from "../model/already-cut.ts";
import {
	type CutSize,
	cutSizes,
	shownSize,
	trueSize,
} from "../model/cut-size.ts";
import { housingAllowance } from "../model/fits.ts";
import { type Size, sameValue } from "../model/size.ts";
import type {
	AidInfo,
	Display,
	EdgeWork,
	Housing,
	Part,
	Piece,
	StageName,
	Stock,
} from "../model/types.ts";
import { formatLength } from "../units/format.ts";
import type { Rational } from "../units/rational.ts";
import { type Likeness, likenessOf } from "./likeness.ts";
import { overallText } from "./overall.ts";
import { type Square, squaresOf } from "./squares.ts";

export type CutWhen = Part["cut"]["when"];

/** The three parts of a cut list, in their order. */
export const cutOrder: readonly CutWhen[] = ["now", "to-fit", "last"];

export interface CutList {
	readonly piece: string;
	readonly display: Display;
	/** How large the piece is, in words; empty if it has no parts. */
	readonly overall: string;
	/** Always all three, in order; one may be empty. */
	readonly sections: readonly {
		readonly when: CutWhen;
		readonly rows: readonly CutRow[];
	}[];
	/** Spacers, patterns and the like, cut from offcuts. */
	readonly aids: readonly AidInfo[];
	/** Diagonals of the cases, for the clamping up. */
	readonly squares: readonly Square[];
}

/** A size that a part has on its way, and what it is cut to. */
export interface CutStage {
	readonly stage: StageName;
	readonly sizes: Sizes;
	readonly cut: CutSize;
}

/** Along the grain, across it, through it. */
export interface Sizes {
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
}

/** A row: parts that are cut alike. */
export interface CutRow {
	/** A, B, … Z, AA, …: through all three parts of the list. */
	readonly label: string;
	readonly parts: readonly Part[];
	readonly stock: Stock;
	/** Final. */
	readonly sizes: Sizes;
	/** Final, as a maker cuts it. */
	readonly cut: CutSize;
	/** In order of time; the final size is not repeated. */
	readonly stages: readonly CutStage[];
	/** Mirror images among the parts; undefined if all are the same. */
	readonly hands: Hands | undefined;
	readonly edges: readonly RowEdge[];
	/** Of the first part; `takes` of all. */
	readonly housings: readonly RowHousing[];
	readonly strips: number | undefined;
	/** What is said of all its parts, then what is said of some: with their paths in front. */
	readonly notes: readonly string[];
	readonly after: readonly string[];
	/** What to measure before it is cut. */
	readonly reading: string | undefined;
}

export interface RowEdge {
	readonly edge: EdgeWork;
	/** So many alike in the part. */
	readonly count: number;
}

export interface RowHousing {
	readonly housing: Housing;
	/** So many alike in the part, on its two faces. */
	readonly count: number;
	/** Paths of the parts that go into it, over all parts of the row. */
	readonly takes: readonly string[];
	/** How thick these are, where the housing is cut to fit them; undefined where its width is written. */
	readonly fits: Size | undefined;
}

/** Parts of one row that differ from a certain operation on. */
export interface Hands {
	/** `left and right` where the design says so; else the second ones mirror the first. */
	readonly named: boolean;
	/** Left ones, or those like the first part. */
	readonly first: readonly Part[];
	readonly second: readonly Part[];
	/** The first operation from which they differ: up to there they are alike. */
	readonly from: string;
}

/**
 * Parts are in one row when they are cut at the same time from the same material to the same exact sizes at every stage,
 * with the same edges and housings. Mirror images share a row, as they do on the saw, and are told apart in
 * `hands`. Rows stand by material in the order in which the design first uses it, within it in the order of the design.
 */
export function cutList(piece: Piece): CutList {
	const sizes = cutSizes(piece);
	const parts = piece.parts.filter((part) => part.role !== "aid");
	const stocks = [...new Set(parts.map((part) => part.stock.id))];
	const tenons = tenonShoulders(piece);
	const labels = labelMaker();
	return {
		piece: piece.name,
		overall: overallText(piece),
		display: piece.display,
		sections: cutOrder.map((when) => {
			const groups = new Map<string, { part: Part; likeness: Likeness }[]>();
			for (const part of parts) {
				if (part.cut.when !== when) continue;
				const likeness = likenessOf(part);
				const key = rowKey(part, likeness);
				const known = groups.get(key);
				if (known) known.push({ part, likeness });
				else groups.set(key, [{ part, likeness }]);
			}
			const rows = [...groups.values()]
				.map((group) => rowOf(group, piece, sizes, tenons))
				// Stable: within a material the order of the design stays.
				.sort(
					(a, b) => stocks.indexOf(a.stock.id) - stocks.indexOf(b.stock.id),
				);
			return { when, rows: rows.map((row) => ({ label: labels(), ...row })) };
		}),
		aids: piece.aids,
		squares: squaresOf(piece),
	};
}

/** The number of parts in all rows. */
export function partCount(list: CutList): number {
	return list.sections.reduce(
		(sum, section) =>
			sum + section.rows.reduce((count, row) => count + row.parts.length, 0),
		0,
	);
}

function rowOf(
	group: readonly { readonly part: Part; readonly likeness: Likeness }[],
	piece: Piece,
	cuts: ReadonlyMap<string, CutSize>,
	tenons: ReadonlySet<string>,
): Omit<CutRow, "label"> {
	const parts = group.map(({ part }) => part);
	const [part] = parts as [Part];
	const { display } = piece;
	return {
		parts,
		stock: part.stock,
		sizes: { length: part.length, width: part.width, thick: part.thick },
		cut: cuts.get(part.id) as CutSize,
		stages: part.stages
			.filter(({ stage }) => stage !== "final")
			.map(({ stage, length, width, thick }) => ({
				stage,
				sizes: { length, width, thick },
				cut: {
					length: shownSize(length, display),
					width: shownSize(width, display),
					thick: trueSize(thick, display),
				},
			})),
		hands: handsOf(group),
		edges: edgesOf(part),
		housings: housingsOf(parts, tenons, piece),
		strips: part.strips,
		notes: [
			...notesOf(parts, (part) => [...part.notes, ...cutNotes(piece, part)]),
			...(part.measured.length > 0
				? [`${part.measured.join(" and ")} as measured in the shop`]
				: []),
		],
		after: part.cut.after,
		reading: part.cut.reading ?? readingOf(parts, piece),
	};
}

/** Everything that two parts must share to be cut as one. Fractions, so that what only looks alike stays apart. */
function rowKey(part: Part, likeness: Likeness): string {
	const exact = (sizes: Sizes): string =>
		[sizes.thick, sizes.width, sizes.length]
			.map(({ value }) => value.toString())
			.join(" x ");
	return JSON.stringify([
		part.cut.after,
		part.cut.reading,
		part.stock.id,
		exact(part),
		part.stages.map((stage) => [stage.stage, exact(stage)]),
		part.edges.map(({ where, work, text }) => [where, work, text]),
		part.housings
			.map(({ kind, width, depth }) => `${kind} ${width.value} ${depth.value}`)
			.sort(),
		likeness.shape,
		part.strips,
		part.measured,
	]);
}

function handsOf(
	group: readonly { readonly part: Part; readonly likeness: Likeness }[],
): Hands | undefined {
	const parts = group.map(({ part }) => part);
	const [first] = group;
	if (!first) return undefined;
	const said = parts.find((part) => part.handedFrom !== undefined);
	if (said?.handedFrom !== undefined) {
		return {
			named: true,
			first: parts.filter((part) => part.hand !== "right"),
			second: parts.filter((part) => part.hand === "right"),
			from: said.handedFrom,
		};
	}
	const like = first.likeness.hand;
	const second = group.filter(({ likeness }) => likeness.hand !== like);
	if (second.length === 0) return undefined;
	return {
		named: false,
		first: group
			.filter(({ likeness }) => likeness.hand === like)
			.map(({ part }) => part),
		second: second.map(({ part }) => part),
		from: first.part.housings[0]?.kind ?? first.part.edges[0]?.work ?? "shape",
	};
}

function edgesOf(part: Part): readonly RowEdge[] {
	const alike = new Map<string, EdgeWork[]>();
	for (const edge of part.edges) {
		const key = JSON.stringify([edge.where, edge.work, edge.text]);
		const known = alike.get(key);
		if (known) known.push(edge);
		else alike.set(key, [edge]);
	}
	return [...alike.values()].map((edges) => ({
		edge: edges[0] as EdgeWork,
		count: edges.length,
	}));
}

function notesOf(
	parts: readonly Part[],
	own: (part: Part) => readonly string[],
): readonly string[] {
	const owners = new Map<string, Part[]>();
	for (const part of parts) {
		for (const note of new Set(own(part))) {
			const known = owners.get(note);
			if (known) known.push(part);
			else owners.set(note, [part]);
		}
	}
	const shared = [...owners].filter(([, of]) => of.length === parts.length);
	const some = [...owners].filter(([, of]) => of.length < parts.length);
	return [
		...shared.map(([note]) => note),
		...some.map(
			([note, of]) => `${of.map((part) => part.path).join(", ")}: ${note}`,
		),
	];
}

/** Whether a part that exists already can stay as it is. */
function cutNotes(piece: Piece, part: Part): readonly string[] {
	const { display } = piece;
	const show = (mm: Rational): string =>
		formatLength(mm, { ...display, suffix: true }).text;
	const listed = (
		{ length, width }: CutDifference,
		say: (amount: string, which: string) => string,
	): string =>
		[
			...(length ? [say(show(length), "length")] : []),
			...(width ? [say(show(width), "width")] : []),
		].join(" and ");
	return piece.cuts
		.filter((cut) => cut.part === part)
		.map((cut) => {
			const is =
				cut.stage === "final" ? "cut already" : `cut already, ${cut.stage}`;
			const missing = listed(
				lacking(piece, cut),
				(amount, which) => `${amount} in ${which}`,
			);
			if (missing !== "")
				return `${is}: too small, cut anew (missing ${missing})`;
			const over = listed(
				excess(piece, cut),
				(amount, which) => `${amount} off the ${which}`,
			);
			return over !== "" ? `${is}: trim ${over}` : `${is}: still right`;
		});
}

/** What the joints say must be measured before parts are cut to fit; nothing for parts that are cut to figures. */
function readingOf(parts: readonly Part[], piece: Piece): string | undefined {
	const found = new Set<string>();
	for (const part of parts) {
		if (part.cut.when !== "to-fit") continue;
		for (const joint of piece.joints) {
			if (joint.member !== part) continue;
			for (const { member, measure } of joint.fits) {
				if (sameValue(member, part.length) || sameValue(member, part.width)) {
					if (measure !== "") found.add(measure);
				}
			}
		}
	}
	return found.size > 0 ? [...found].join("; ") : undefined;
}

/** The shoulders of a tenon are cuts in the solid; the list tells the tenon itself. */
function tenonShoulders(piece: Piece): ReadonlySet<string> {
	return new Set(
		piece.joints
			.filter(({ kind }) => kind === "tenon")
			.map(({ member, host }) => `${member.path} ${host.path}`),
	);
}

function housingsOf(
	all: readonly Part[],
	tenons: ReadonlySet<string>,
	piece: Piece,
): readonly RowHousing[] {
	const parts = all.map(({ path, housings }) => ({
		housings: housings.filter(
			({ kind, takes }) => kind !== "rabbet" || !tenons.has(`${path} ${takes}`),
		),
	}));
	const key = ({ kind, width, depth, at, datum }: Housing): string =>
		[kind, width.value, depth.value, at.value, datum].join(" ");
	const takes = new Map<string, Set<string>>();
	for (const housing of parts.flatMap((part) => part.housings)) {
		const known = takes.get(key(housing));
		if (known) known.add(housing.takes);
		else takes.set(key(housing), new Set([housing.takes]));
	}
	const alike = new Map<string, Housing[]>();
	for (const housing of parts[0]?.housings ?? []) {
		const known = alike.get(key(housing));
		if (known) known.push(housing);
		else alike.set(key(housing), [housing]);
	}
	return [...alike].map(([id, housings]) => ({
		housing: housings[0] as Housing,
		count: housings.length,
		takes: [...(takes.get(id) ?? [])],
		fits: fittedThickness(housings[0] as Housing, piece),
	}));
}

/** A housing as wide as what it takes is thick, and what a router leaves: it is cut to the thing itself, not to a figure. */
function fittedThickness(
	{ kind, width, takes }: Housing,
	piece: Piece,
): Size | undefined {
	const thick = piece.partByPath.get(takes)?.thick;
	return (kind === "dado" || kind === "groove") &&
		thick?.value.add(housingAllowance).eq(width.value)
		? thick
		: undefined;
}

function labelMaker(): () => string {
	let count = 0;
	return () => {
		let rest = count;
		count += 1;
		let label = "";
		do {
			label = String.fromCharCode(65 + (rest % 26)) + label;
			rest = Math.floor(rest / 26) - 1;
		} while (rest >= 0);
		return label;
	};
}
