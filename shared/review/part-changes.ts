// How a part is cut otherwise than before, and which parts stand elsewhere.

import type { Vec3 } from "../geometry/solid.ts";
import { exactText } from "../model/explain.ts";
import { type Size, sameValue } from "../model/size.ts";
import type { Display, Part, Stage } from "../model/types.ts";
import { likenessOf } from "../outputs/likeness.ts";
import { compareStrings } from "../text/compare.ts";
import type {
	Both,
	Move,
	PartChange,
	SizeChange,
	TextChange,
} from "./types.ts";

/** How sizes and names are written. */
export interface Telling {
	readonly display: Display;
	/** What a path of before is called afterwards: a name alone is no change. */
	readonly named: (path: string) => string;
}

const ways = ["length", "width", "thick"] as const;

/** Undefined if it is cut alike: the same wood, sizes, shape and order. */
export function partChange(
	{ before, after }: Both<Part>,
	{ display, named }: Telling,
): PartChange | undefined {
	const sizes = [...finalSizes(before, after), ...stageSizes(before, after)];
	const texts = textChanges(before, after, sizes.length > 0, {
		display,
		named,
	});
	return sizes.length + texts.length > 0
		? { before, after, sizes, texts }
		: undefined;
}

function finalSizes(before: Part, after: Part): SizeChange[] {
	return ways.flatMap((what) => sizeChange(what, before[what], after[what]));
}

function stageSizes(before: Part, after: Part): SizeChange[] {
	const stages = new Set(
		[...before.stages, ...after.stages].map(({ stage }) => stage),
	);
	const find = (part: Part, name: string): Stage | undefined =>
		part.stages.find(({ stage }) => stage === name);
	return [...stages].sort().flatMap((name) => {
		const [old, now] = [find(before, name), find(after, name)];
		return ways.flatMap((what) =>
			sizeChange(`${name} ${what}`, old?.[what], now?.[what]),
		);
	});
}

/** Empty or one. */
export function sizeChange(
	what: string,
	before: Size | undefined,
	after: Size | undefined,
): SizeChange[] {
	if (before === after) return [];
	return before && after && sameValue(before, after)
		? []
		: [{ what, before, after }];
}

/** Where its size is another, its outline and housings move along: they are then told only where they are others. */
function textChanges(
	before: Part,
	after: Part,
	resized: boolean,
	{ display, named }: Telling,
): TextChange[] {
	const texts = [
		...textChange("material", before.stock.id, after.stock.id),
		...textChange("grain", grainText(before), grainText(after)),
		...textChange("cut", withNames(whenText(before), named), whenText(after)),
		...textChange("hand", before.hand, after.hand),
		...textChange("edges", edgesText(before), edgesText(after)),
		...textChange(
			"housings",
			withNames(housingsText(before, display), named),
			housingsText(after, display),
		),
		...textChange("strips", stripsText(before), stripsText(after)),
	];
	if (resized || texts.length > 0) return texts;
	const [old, now] = [likenessOf(before), likenessOf(after)];
	return old.shape === now.shape && old.hand === now.hand
		? []
		: [{ what: "shape", before: "as it was", after: "shaped otherwise" }];
}

/** Empty or one. */
export function textChange(
	what: string,
	before: string | undefined,
	after: string | undefined,
): TextChange[] {
	return before === after ? [] : [{ what, before, after }];
}

/** Which way the grain runs in the piece. */
function grainText({ place }: Part): string {
	return { x: "across", y: "up", z: "deep" }[place.axes[0].slice(1)] as string;
}

function whenText({ cut }: Part): string {
	const after = cut.after.length > 0 ? ` after ${cut.after.join(", ")}` : "";
	const when = { now: "at once", "to-fit": "to fit", last: "last" }[cut.when];
	return `${when}${after}${cut.reading === undefined ? "" : `, from ${cut.reading}`}`;
}

function edgesText({ edges }: Part): string | undefined {
	return listed(
		edges.map(({ where, work, text }) => `${where} ${work} ${text}`),
	);
}

/** For what, how wide and deep, and where. */
function housingsText(
	{ housings }: Part,
	{ unit }: Display,
): string | undefined {
	const text = (size: Size): string => exactText(size, unit);
	return listed(
		housings.map(
			({ kind, takes, width, depth, at, datum }) =>
				`${kind} for ${takes} ${text(width)} x ${text(depth)} at ${text(at)} ${datum}`,
		),
	);
}

function withNames(
	text: string | undefined,
	named: Telling["named"],
): string | undefined {
	return text?.replace(/[a-z][\w-]*(?:\.[\w-]+)*/gi, named);
}

function listed(texts: readonly string[]): string | undefined {
	return texts.length > 0
		? [...texts].sort(compareStrings).join("; ")
		: undefined;
}

function stripsText({ strips }: Part): string | undefined {
	return strips === undefined ? undefined : `${strips}`;
}

/** Parts that stand elsewhere, those that move together in one move; the largest first, then in their order. */
export function moves(both: readonly Both<Part>[]): readonly Move[] {
	const byWay = new Map<string, { parts: Both<Part>[]; by: Vec3 }>();
	for (const pair of both) {
		const by = [0, 1, 2].map((axis) =>
			(pair.after.min[axis] as Size).value
				.sub((pair.before.min[axis] as Size).value)
				.toNumber(),
		) as [number, number, number];
		const key = by.map((way) => way.toFixed(6)).join(" ");
		if (by.every((way) => Math.abs(way) < 1e-6)) continue;
		const known = byWay.get(key);
		if (known) known.parts.push(pair);
		else byWay.set(key, { parts: [pair], by });
	}
	return [...byWay.values()].sort((a, b) => b.parts.length - a.parts.length);
}
