// What a material is cut from: what lies in the shop, and what can be bought or must be assumed.

import type { Rectangle } from "../cutting/index.ts";
import { exactText } from "../model/explain.ts";
import { inches } from "../model/expressions.ts";
import { numberOf, over, plus, type Size, stated } from "../model/size.ts";
import { isSoldInSection } from "../model/stock-sizes.ts";
import type { Display, OnHand, Part, Stock } from "../model/types.ts";
import { boardFeet } from "../units/board-foot.ts";
import { inch } from "../units/dimensions.ts";
import { Rational } from "../units/rational.ts";
import type { Blank } from "./blanks.ts";
import { paidThickness } from "./rough-size.ts";
import { mmOf, stepsOf } from "./steps.ts";
import type { LayoutKind } from "./types.ts";
import { sizeText } from "./words.ts";

/** Sheets, boards or lengths of one size and price. */
export interface StockToCut {
	readonly name: string;
	readonly length: number;
	readonly width: number;
	readonly onHand: boolean;
	readonly count: number;
	/** Of one. */
	readonly price: Rational | undefined;
	readonly trim: number;
	readonly defects: readonly Rectangle[];
}

export interface Supply {
	readonly kind: LayoutKind;
	readonly stocks: readonly StockToCut[];
	/** What had to be taken for granted, a line each. */
	readonly assumptions: readonly string[];
}

/** Taken where the stock file does not say what boards there are. Common practice, no source. */
const usualBoard: Readonly<
	Record<Display["unit"], { length: Size; width: Size }>
> = {
	in: { length: stated(inches(96), "96"), width: stated(inches(6), "6") },
	mm: {
		length: stated(Rational.of(2_400), "2400"),
		width: stated(Rational.of(150), "150"),
	},
};

export function kindOf(stock: Stock): LayoutKind {
	if (stock.kind === "veneer") return "veneer";
	if (stock.kind === "sheet") return "sheets";
	return isSoldInSection(stock) ? "lengths" : "boards";
}

/** `blanks` are what is wanted of it: boards that can be bought are assumed to be large enough where the stock file is silent. */
export function supplyOf(
	stock: Stock,
	blanks: readonly Blank[],
	display: Display,
): Supply {
	const kind = kindOf(stock);
	const onHand = stock.onHand.map((one) => handStock(one, display));
	if (kind === "boards") {
		const bought = boardsToBuy(stock, blanks, display);
		return {
			kind,
			stocks: [...onHand, ...bought.stocks],
			assumptions: bought.assumptions,
		};
	}
	if (kind === "lengths") {
		const bought = lengthsToBuy(stock, blanks, display);
		return {
			kind,
			stocks: [...onHand, ...bought.stocks],
			assumptions: bought.assumptions,
		};
	}
	const trim = stock.trim ? stepsOf(stock.trim) : 0;
	return {
		kind,
		stocks: [
			...onHand,
			...stock.sizes.map((size) => ({
				name: sizeText(size, display),
				length: stepsOf(size.length),
				width: stepsOf(size.width),
				onHand: false,
				count: size.inStock ?? Number.POSITIVE_INFINITY,
				price: size.price ?? stock.price,
				trim,
				defects: [],
			})),
		],
		assumptions: [],
	};
}

function handStock(one: OnHand, display: Display): StockToCut {
	const [length, width] = [stepsOf(one.length), stepsOf(one.width)];
	return {
		name: sizeText(one, display),
		length,
		width,
		onHand: true,
		count: one.count,
		price: Rational.ZERO,
		trim: 0,
		defects: one.defects.map(({ from, to, across }) => {
			const x = stepsOf(from);
			const y = across ? stepsOf(across.from) : 0;
			return {
				x,
				y,
				length: stepsOf(to) - x,
				width: across ? stepsOf(across.to) - y : width,
			};
		}),
	};
}

/**
 * Nobody knows what boards the dealer will have. They are planned with as of the middle width, in the shortest and the
 * longest length that the stock file gives; where a part is wider than that, of the full width, too.
 */
function boardsToBuy(
	stock: Stock,
	blanks: readonly Blank[],
	display: Display,
): Pick<Supply, "stocks" | "assumptions"> {
	if (blanks.length === 0) return { stocks: [], assumptions: [] };
	const usual = usualBoard[display.unit];
	const widest = Math.max(...blanks.map(({ width }) => width));
	const longest = Math.max(...blanks.map(({ length }) => length));
	const { widths, lengths } = stock;
	const middle = widths
		? over(plus(widths.low, widths.high), 2)
		: atLeast(usual.width, widest);
	const allWidths = [
		middle,
		...(widths && stepsOf(middle) < widest ? [widths.high] : []),
	];
	const allLengths = lengths
		? differing([lengths.high, lengths.low])
		: [atLeast(usual.length, longest)];
	const parts = blanks.flatMap((blank) =>
		blank.parts.flatMap(({ part }) => part ?? []),
	);
	const stocks = allWidths.flatMap((width) =>
		allLengths.map((length) => ({
			name: sizeText({ length, width }, display),
			length: stepsOf(length),
			width: stepsOf(width),
			onHand: false,
			count: Number.POSITIVE_INFINITY,
			price: boardPrice(stock, parts, length, width),
			trim: 0,
			defects: [],
		})),
	);
	const names = allWidths.map((width) => exactText(width, display.unit));
	const long = allLengths.map((length) => exactText(length, display.unit));
	return {
		stocks,
		assumptions: [
			`planned with boards ${names.join(" or ")} wide, ${long.toReversed().join(" or ")} long${widths && lengths ? "" : ", as the stock file does not say what there is"}: put yours in with \`on-hand\``,
		],
	};
}

/** Of a whole board: board feet on the thickness that is paid for. */
function boardPrice(
	stock: Stock,
	parts: readonly Part[],
	length: Size,
	width: Size,
): Rational | undefined {
	if (!stock.price || stock.per !== "board-foot") return undefined;
	return stock.price.mul(
		boardFeetOf(paidThickness(stock, parts), length, width),
	);
}

/** Exact, by the formula of `boardFeet`. */
export function boardFeetOf(
	thick: Pick<Size, "value">,
	length: Pick<Size, "value">,
	width: Pick<Size, "value">,
): Rational {
	return boardFeet(
		thick.value.div(inch),
		width.value.div(inch),
		length.value.div(inch),
	);
}

function lengthsToBuy(
	stock: Stock,
	blanks: readonly Blank[],
	display: Display,
): Pick<Supply, "stocks" | "assumptions"> {
	if (blanks.length === 0) return { stocks: [], assumptions: [] };
	const usual = usualBoard[display.unit];
	const longest = Math.max(...blanks.map(({ length }) => length));
	const known =
		stock.soldLengths.length > 0
			? differing(stock.soldLengths)
			: stock.lengths
				? differing([stock.lengths.high, stock.lengths.low])
				: [];
	const width =
		stock.widths?.high ??
		({ value: mmOf(Math.max(...blanks.map((one) => one.width))) } as Size);
	const lengths = known.length > 0 ? known : [atLeast(usual.length, longest)];
	const run =
		stock.per === "metre" ? Rational.of(1_000) : inch.mul(Rational.of(12));
	return {
		stocks: lengths.map((length) => ({
			name: exactText(length, display.unit),
			length: stepsOf(length),
			width: stepsOf(width),
			onHand: false,
			count: Number.POSITIVE_INFINITY,
			price: stock.price?.mul(length.value.div(run)),
			trim: 0,
			defects: [],
		})),
		assumptions:
			known.length > 0
				? []
				: [
						`planned with lengths of ${lengths.map((one) => exactText(one, display.unit)).join(" or ")}, as the stock file does not say what there is: add a line as in \`lengths 72, 96\``,
					],
	};
}

function differing(sizes: readonly Size[]): readonly Size[] {
	return sizes.filter(
		(size, at) => sizes.findIndex((one) => one.value.eq(size.value)) === at,
	);
}

function atLeast(size: Size, steps: number): Size {
	return numberOf(size) * 1_000 >= steps
		? size
		: stated(mmOf(steps), String(steps));
}
