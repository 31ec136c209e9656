// From parts to sheets and boards: figures worked out by hand, one kind of material after another.

import { describe, expect, test } from "vitest";
import { countsOf, faultsOfLayout } from "../../tests/harness/check-layout.ts";
import { compile } from "../model/compile.ts";
import { sourcesOf } from "../sources/sources.ts";
import type { Rational } from "../units/rational.ts";
import {
	type LaidRegion,
	layoutsOf,
	type MaterialLayout,
	partsIn,
	searchLayouts,
} from "./index.ts";

const inch = 25_400;

/** The layouts of a text whose pieces are all laid out together; labels are the paths. */
function laid(text: string): readonly MaterialLayout[] {
	const uri = "file:///shop/design.rod";
	const design = compile(sourcesOf(new Map([[uri, text]])), uri);
	expect(design.findings.map(({ message }) => message)).toEqual([]);
	const layouts = layoutsOf(
		design.pieces.map((piece) => ({
			piece,
			labels: new Map(piece.parts.map(({ id, path }) => [id, path])),
		})),
		{ effort: "quick" },
	);
	expect(layouts.flatMap(faultsOfLayout)).toEqual([]);
	return layouts;
}

function only(text: string): MaterialLayout {
	const layouts = laid(text);
	expect(layouts).toHaveLength(1);
	return layouts[0] as MaterialLayout;
}

const sheet = (lines: string): string =>
	`currency "EUR"\nsheet ply { species "birch plywood"; variant half { sold-as 1/2; thick 1/2; ${lines} } }\n`;

/** So many single parts of one size; `shop` lines besides. */
const panels = (count: number, size: string, more = ""): string =>
	`piece tray {\n${Array.from({ length: count }, (_, at) => `part p${at} { of ply.half; size ${size}; bottom at ${at / 100} from floor }\n`).join("")}${more}\n}`;

describe("sheets", () => {
	test("the saw counts: eight of 24 x 24 fill 96 x 48 without a kerf, and do not with one", () => {
		const stock = sheet("size 96 x 48; price 60");
		expect(
			only(stock + panels(8, "24 x 24", "shop { saw kerf 0 }")).sheets,
		).toHaveLength(1);
		// One strip of 24 then, and 3 x 24 + 2 x 1/8 in its 96: three to a sheet.
		expect(only(stock + panels(8, "24 x 24")).sheets).toHaveLength(3);
		// 4 x 23 29/32 + 3 x 1/8 = 96, 2 x 23 15/16 + 1/8 = 48.
		const exact = only(stock + panels(8, "23 29/32 x 23 15/16"));
		expect(exact.sheets).toHaveLength(1);
		expect(exact.price?.toString()).toBe("60");
		expect(exact.offcuts).toEqual([]);
	});

	test("factory edges come off first", () => {
		const stock = sheet("size 96 x 48; trim 1/4");
		expect(only(stock + panels(1, "95 1/2 x 47 1/2")).missing).toEqual([]);
		const { missing, sheets } = only(stock + panels(1, "95 5/8 x 10"));
		expect(sheets).toEqual([]);
		expect(missing.map(({ why, message }) => [why, message])).toEqual([
			[
				"too-large",
				"`p0` is 95 5/8 x 10, the largest sheet of `ply.half` is 96 x 48, 95 1/2 x 47 1/2 once its edges are off: make it smaller, or give `ply.half` a larger `size`",
			],
		]);
	});

	test("the grain holds a part, unless the sheet has none", () => {
		const across = panels(1, "40 x 60");
		expect(only(sheet("size 96 x 48") + across).missing).toHaveLength(1);
		const plain = sheet("size 96 x 48").replace(
			"variant",
			"face-grain none; variant",
		);
		expect(only(plain + across).missing).toEqual([]);
	});

	test("what is on hand is used first and costs nothing; the cheaper of two sizes is bought", () => {
		const stock = sheet(
			"size 96 x 48 price 60; size 48 x 48 price 34; on-hand 30 x 20",
		);
		// One of 28 x 18 goes into the offcut; four of 44 x 20 go two to 48 x 48 (2 x 34) and four to 96 x 48 (60).
		const layout = only(
			`${stock}piece tray { part small { of ply.half; size 28 x 18; bottom at 9 from floor }
${panels(4, "44 x 20").replace("piece tray {", "")}`,
		);
		expect(layout.sizes.map(({ name, onHand }) => [name, onHand])).toEqual([
			["30 x 20", true],
			["96 x 48", false],
		]);
		expect(layout.price?.toString()).toBe("60");
		expect(layout.leastPrice?.toString()).toBe("60");
		expect(layout.proven).toBe(true);
	});

	test("one sheet left at the dealer's: what it does not hold is told", () => {
		const layout = only(
			sheet("size 96 x 48 price 60 in-stock 1") + panels(3, "50 x 30"),
		);
		// Longer and wider than half a sheet: never two in one.
		expect(layout.sheets).toHaveLength(1);
		expect(
			layout.missing.map(({ count, why, message }) => [count, why, message]),
		).toEqual([
			[
				2,
				"no-stock-left",
				expect.stringMatching(
					/^`p2` and 1 more of that size \(50 x 30\) are left over when all sheets of `ply\.half` are used up: raise `in-stock`, or give another `size`$/,
				),
			],
		]);
	});

	test("no size, no price", () => {
		const none = only(sheet("price 60") + panels(1, "20 x 10"));
		expect(none.missing[0]?.message).toBe(
			"`ply.half` has no `size`: add one, as in `size 96 x 48`",
		);
		const unpriced = only(sheet("size 96 x 48") + panels(1, "20 x 10"));
		expect(unpriced.sheets).toHaveLength(1);
		expect(unpriced.price).toBeUndefined();
		expect(unpriced.leastPrice).toBeUndefined();
	});

	test("a kerf wider than a part, and five thousand parts", () => {
		const wide = only(
			sheet("size 96 x 48; price 60") +
				panels(12, "20 x 1/16", "shop { saw kerf 1/2 }"),
		);
		// Across 48 in there is room for (48 + 1/2) / (1/16 + 1/2) = 86 of them.
		expect(wide.sheets).toHaveLength(1);
		const many = only(
			sheet("size 96 x 48; price 60") + panels(5_000, "38 x 14"),
		);
		// 2 x 3 to a sheet: 5,000 / 6, up.
		expect(many.sheets).toHaveLength(834);
		expect([...countsOf([many]).values()].every((count) => count === 1)).toBe(
			true,
		);
	}, 60_000);

	test("parts that exist take no wood, except those that are too small", () => {
		const layout = only(
			sheet("size 96 x 48; price 60") +
				panels(3, "20 x 10", "cut p0 20 x 10\ncut p1 19 x 10"),
		);
		expect([...countsOf([layout]).keys()]).toEqual(["tray.p1", "tray.p2"]);
	});

	test("patterns and cauls come from what is on hand; nothing is bought for them alone", () => {
		const pattern = `piece tray { part p { of oak.inch; size 20 x 3 }
aid gauge { kind spacer; size 6 x 3; of ply.half } }
board oak { species "white oak"; variant inch { rough 1; planed 3/4 } }`;
		const [, bought] = laid(sheet("size 96 x 48; price 60") + pattern);
		expect(bought?.sheets).toEqual([]);
		expect(bought?.missing).toEqual([]);
		expect(bought?.assumptions).toEqual([
			"`gauge` (6 x 3) is cut from an offcut, and none is on hand: nothing is bought for aids alone",
		]);
		const [, kept] = laid(
			sheet("size 96 x 48; price 60; on-hand 8 x 4") + pattern,
		);
		expect(kept?.sizes.map(({ name }) => name)).toEqual(["8 x 4"]);
	});

	test("two pieces share a sheet and keep their names apart", () => {
		const [layout] = laid(
			`${sheet("size 96 x 48; price 60") + panels(1, "20 x 10")}\n${panels(1, "20 x 10").replace("tray", "box-of-two")}`,
		);
		expect(layout?.sheets).toHaveLength(1);
		expect(
			layout?.sheets.flatMap(({ root }) =>
				partsIn(root).map(({ of }) => `${of.label} ${of.id} ${of.pieceAt}`),
			),
		).toEqual(["1p0 tray.p0 0", "2p0 box-of-two.p0 1"]);
	});
});

describe("matched parts", () => {
	const matched = (way: string, sizes = ["14 x 12", "30 x 11", "14 x 12"]) =>
		`piece tray {\n${sizes.map((size, at) => `part p${at} { of ply.half; size ${size}; bottom at ${at} from floor }\n`).join("")}match p0, p1, p2 ${way}\n}`;
	const rowOf = (region: LaidRegion): LaidRegion | undefined =>
		region.kind !== "cut"
			? undefined
			: region.matched
				? region
				: region.pieces.flatMap((piece) => rowOf(piece) ?? [])[0];

	test("lie one behind the other along the grain, a kerf apart", () => {
		const layout = only(sheet("size 96 x 48") + matched(""));
		const [root] = layout.sheets.map((one) => one.root);
		const row = root && rowOf(root);
		// 14 + 1/8 + 30 + 1/8 + 14; as wide as the widest.
		expect(row?.length).toBe(58.25 * inch);
		expect(row?.width).toBe(12 * inch);
		const placed = row ? partsIn(row) : [];
		expect(placed.map(({ of }) => of.path)).toEqual(["p0", "p1", "p2"]);
		expect(placed.map(({ place }) => place.x - (row?.x ?? 0))).toEqual([
			0,
			14.125 * inch,
			44.25 * inch,
		]);
		// The narrower one is cut to 11.
		expect(placed[1]?.place.width).toBe(11 * inch);
	});

	test("or side by side across it", () => {
		const layout = only(sheet("size 96 x 48") + matched("across"));
		const [root] = layout.sheets.map((one) => one.root);
		const row = root && rowOf(root);
		// 12 + 1/8 + 11 + 1/8 + 12
		expect(row?.width).toBe(35.25 * inch);
		expect(row?.length).toBe(30 * inch);
	});

	test("that are together too long are laid one by one, and that is said", () => {
		const layout = only(
			sheet("size 96 x 48") + matched("", ["40 x 12", "40 x 12", "40 x 12"]),
		);
		expect(layout.missing).toEqual([]);
		expect(layout.assumptions).toEqual([
			"`p0`, `p1` and `p2` cannot be matched: in one row they are larger than any piece of `ply.half`, so they are laid one by one",
		]);
	});
});

const boards = (lines: string): string =>
	`currency "EUR"\nboard oak { species "white oak"; variant inch { rough 1; planed 3/4; ${lines} } }\n`;

describe("boards", () => {
	test("to buy are of the middle width, in the shortest and the longest length; priced by the board foot", () => {
		const layout = only(
			`${boards("widths 4 to 9; lengths 72 to 120; price 10 per board-foot")}piece shelf { part a { of oak.inch; size 60 x 5 } }`,
		);
		// 72 x 6 1/2 x 1 / 144 = 3.25 board feet.
		expect(layout.sizes.map(({ name }) => name)).toEqual(["72 x 6 1/2"]);
		expect(layout.price?.toString()).toBe("65/2");
		expect(layout.assumptions).toEqual([
			"planned with boards 6 1/2 wide, 72 or 120 long: put yours in with `on-hand`",
		]);
	});

	test("a wider part takes a board of the full width; what is wider still is told to be glued up", () => {
		const stock = boards("widths 4 to 9; lengths 72 to 120");
		const wide = only(
			`${stock}piece shelf { part a { of oak.inch; size 60 x 8 } }`,
		);
		expect(wide.sizes.map(({ name }) => name)).toEqual(["72 x 9"]);
		const glued = only(
			`${stock}piece shelf { part a { of oak.inch; size 60 x 14; strips 3 } }`,
		);
		// Rough 14 + 1/4, two more joints of 1/4: 14 3/4 / 3 = 4 11/12 wide, 61 long; one to a board of 6 1/2 x 72.
		const placed = glued.sheets.flatMap(({ root }) => partsIn(root));
		expect(placed.map(({ of }) => of.share)).toEqual([
			"strip 1 of 3",
			"strip 2 of 3",
			"strip 3 of 3",
		]);
		expect(placed[0]?.of.length).toBe(61 * inch);
		expect(placed[0]?.of.width).toBe(Math.floor((14.75 * inch) / 3));
	});

	test("defects are cut round", () => {
		// 60 x 5 with 20 to 30 gone: 20 and 30 less a kerf are left. 18 + 1 = 19 fits into the one, 28 + 1 = 29 into the other.
		const layout = only(
			`${boards("widths 4 to 9; lengths 72 to 120; price 10; on-hand 60 x 5 { defect 20 to 30 }")}piece shelf {
part a { of oak.inch; size 18 x 4 }
part b { of oak.inch; size 28 x 4; bottom at 3 from floor } }`,
		);
		expect(layout.sizes.map(({ name, onHand }) => [name, onHand])).toEqual([
			["60 x 5", true],
		]);
		expect(layout.price?.toString()).toBe("0");
	});

	test("thin trim is ripped off the edge, a kerf each", () => {
		const layout = laid(
			`${boards("widths 4 to 4; lengths 40 to 40; price 10")}${sheet("size 96 x 48").replace('currency "EUR"\n', "")}
piece tray {
box case { outside 20 x 20 x 10; panels top, bottom, left, right of ply.half }
trim lip { on case.front.edges; of oak.inch; thick 3/8; corners mitred }
}`,
		).find(({ kind }) => kind === "boards");
		const strips = layout?.sheets.flatMap(({ root }) => partsIn(root)) ?? [];
		expect(strips).toHaveLength(4);
		// The edge is 1/2, which goes through the board of 3/4; 3/8 of it and a kerf go with each.
		expect(strips.map(({ of }) => of.width)).toEqual(
			[1, 2, 3, 4].map(() => (3 / 8) * inch),
		);
		// One above the other: 4 x 3/8 + 4 x 1/8 = 2 of the 4 in are left.
		expect(layout?.sheets).toHaveLength(1);
		expect(layout?.offcuts[0]).toEqual({ length: 40 * inch, width: 2 * inch });
	});

	test("battens are cut to length only, from the lengths that are sold", () => {
		const layout = only(
			`${boards("")}board pine { species "white oak"; variant batten { planed 3/4; widths 3/4 to 3/4; lengths 72, 96; price 1.50 per foot } }
piece rack {
part a { of pine.batten; size 47 x 3/4 }
part b { of pine.batten; size 48 7/8 x 3/4; bottom at 3 from floor }
part c { of pine.batten; size 70 x 3/4; bottom at 6 from floor } }`,
		);
		// 47 + 1/8 + 48 7/8 = 96: one of 96 at 12.00 and one of 72 at 9.00.
		expect(layout.kind).toBe("lengths");
		expect(layout.sizes.map(({ name }) => name).sort()).toEqual(["72", "96"]);
		expect(layout.price?.toString()).toBe("21");
		const long = only(
			`board pine { species "white oak"; variant batten { planed 3/4; lengths 72, 96; price 4.20 per metre } }
piece rack { part a { of pine.batten; size 97 x 3/4 } }`,
		);
		expect(long.missing[0]?.message).toBe(
			"`a` is 97 long, the longest `pine.batten` is 96: make it shorter, or give `lengths` that are long enough",
		);
	});
});

describe("a cleat pair", () => {
	test("comes from one strip by one bevelled rip", () => {
		const layout = laid(
			`${sheet("size 96 x 48; price 60")}piece rack {
box case { outside 40 x 20 x 8; panels top, bottom, left, right of ply.half; back of ply.half inset 1 }
mount hook { on case.back; of ply.half; height 3; bevel 45 deg; down 2 from case.top; play 1/4 }
}`,
		).at(-1);
		const pairs: LaidRegion[] = [];
		const find = (region: LaidRegion): void => {
			if (region.kind === "pair") pairs.push(region);
			if (region.kind === "cut") region.pieces.forEach(find);
		};
		for (const { root } of layout?.sheets ?? []) find(root);
		expect(pairs).toHaveLength(1);
		const [pair] = pairs;
		if (pair?.kind !== "pair") throw new Error("No pair");
		expect(pair.of.map(({ path }) => path)).toEqual([
			"hook.strip",
			"hook.wall-strip",
		]);
		// Two strips of 3 whose bevels lie in one another: at 45 degrees the bevel falls the thickness, 1/2, so both together take
		// 2 x 3 - 1/2; the blade of 1/8 takes 1/8 / sin 45 = 0.17678 of the face: 5.67678 in = 144.190 mm.
		expect(pair.width / 1_000).toBeCloseTo(144.19, 2);
		// 40 less two sides of 1/2; the wall strip is cut shorter afterwards.
		expect(pair.length).toBe(39 * inch);
		// The first is 3 wide on the upper face and 2 1/2 below; from there and the kerf on the second has its 3.
		expect(pair.upper).toBe(3 * inch);
		expect(pair.lower).toBe(2.5 * inch);
		expect((pair.width - pair.lower) / inch - 0.125 / Math.SQRT1_2).toBeCloseTo(
			3,
			4,
		);
	});
});

describe("veneer", () => {
	const veneered = (outside: string, size: string): MaterialLayout =>
		laid(
			`${sheet("size 96 x 48")}veneer skins { variant oak { thick 1/40; size ${size}; price 50 } }
piece case-of-one {
box case { outside ${outside}; panels top, bottom, left, right of ply.half; caps top, bottom }
veneer skin { on case.top; of skins.oak; overhang 1/4 }
}`,
		).find(({ kind }) => kind === "veneer") as MaterialLayout;

	test("a face with what hangs over, cut with a knife", () => {
		const layout = veneered("40 x 12 x 14", "96 x 24");
		const [leaf] = layout.sheets.flatMap(({ root }) => partsIn(root));
		// 40 + 2 x 1/4 by 14 + 2 x 1/4.
		expect(leaf?.of.length).toBe(40.5 * inch);
		expect(leaf?.of.width).toBe(14.5 * inch);
		expect(layout.kerf).toBe(0);
	});

	test("a face wider than a sheet has seams", () => {
		const layout = veneered("40 x 12 x 30", "96 x 24");
		const leaves = layout.sheets.flatMap(({ root }) => partsIn(root));
		// 30 1/2 wide; a sheet of 24 less twice 1/8 gives 23 3/4, so two leaves of 15 1/4 and 1/4: 15 1/2.
		expect(leaves.map(({ of }) => [of.share, of.width])).toEqual([
			["leaf 1 of 2", 15.5 * inch],
			["leaf 2 of 2", 15.5 * inch],
		]);
		// Two of 40 1/2 go behind one another into 96: one sheet.
		expect(layout.sheets).toHaveLength(1);
		expect(layout.assumptions[0]).toBe(
			"`skin.top` is wider than a sheet: 2 leaves side by side, 1/8 on each edge to joint the seam (common practice)",
		);
	});

	test("a face longer than every sheet is told", () => {
		expect(veneered("100 x 12 x 14", "96 x 24").missing[0]?.message).toBe(
			"`skin.top` is 100 1/2 x 14 1/2, the largest sheet of `skins.oak` is 96 x 24: give a longer `size`",
		);
	});
});

describe("the search", () => {
	test("has an answer for every material at once, never gets worse, and ends the same each time", () => {
		const uri = "file:///shop/design.rod";
		const design = compile(
			sourcesOf(
				new Map([
					[
						uri,
						sheet("size 96 x 48; price 60") +
							panels(23, "31 x 13", "shop { saw kerf 3 mm }"),
					],
				]),
			),
			uri,
		);
		const pieces = design.pieces.map((piece) => ({
			piece,
			labels: new Map<string, string>(),
		}));
		let price: Rational | undefined;
		let done = 0;
		let last: readonly MaterialLayout[] = [];
		for (const progress of searchLayouts(pieces, { effort: "quick" })) {
			last = progress.layouts;
			const now = last[0]?.price as Rational;
			if (price) expect(now.cmp(price)).toBeLessThanOrEqual(0);
			expect(progress.done).toBeGreaterThanOrEqual(done);
			[price, done] = [now, progress.done];
		}
		const told = (layouts: readonly MaterialLayout[]): string =>
			JSON.stringify(
				layouts.map(({ sheets }) => sheets.map(({ root }) => trace(root))),
			);
		expect(told(layoutsOf(pieces, { effort: "quick" }))).toBe(told(last));
		expect(last[0]?.sheets.length).toBeGreaterThan(0);
	});

	test("of nothing is nothing", () => {
		expect(layoutsOf([])).toEqual([]);
	});
});

function trace(region: LaidRegion): unknown {
	const { x, y, length, width } = region;
	return region.kind === "cut"
		? region.pieces.map(trace)
		: [x, y, length, width, partsIn(region).map(({ of }) => of.id)];
}
