// How true a shop cuts, and where the piece lives: what the `shop` and `room` lines say, and what holds without them.

import { lengthText } from "../units/format.ts";
import {
	countOf,
	evaluateAs,
	inches,
	positiveLength,
	sizeAtLeastZero,
} from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { type Row, readRows } from "./rows.ts";
import { numberOf, type Size, type Source, stated } from "./size.ts";
import type { Display, Room, Shop } from "./types.ts";

/** Common practice, no source: a table saw with a stop, a router with a guide, a tape. mm, half range. */
const usual = {
	crosscut: 25.4 / 64,
	rip: 25.4 / 64,
	router: 0.1,
	mark: 25.4 / 32,
	drill: 0.5,
} as const;

/** A full-kerf table-saw blade: common practice, no source. */
const usualKerf: Size = stated(inches(1, 8), "1/8 in");

export function readShop(frame: Frame, row: Row | undefined): Shop {
	const rows = readRows(frame.evaluation, frame.uri, row?.block, "shop");
	const within = (head: keyof typeof usual): number => {
		const size = positiveLength(
			frame,
			rows.first(head)?.expression("tolerance"),
			"A tolerance",
		);
		return size ? numberOf(size) : usual[head];
	};
	return {
		leastStrip: sizeAtLeastZero(
			frame,
			rows.first("least-strip")?.expression("width"),
			"A least strip",
		),
		firstCut: positiveLength(
			frame,
			rows.first("first-cut")?.expression("length"),
			"A first cut",
		),
		stages: readStages(frame, rows.first("stages")),
		kerf:
			sizeAtLeastZero(frame, rows.first("saw")?.expression("kerf"), "A kerf") ??
			usualKerf,
		crosscut: within("crosscut"),
		rip: within("rip"),
		router: within("router"),
		mark: within("mark"),
		drill: within("drill"),
		temperature: valueIn(
			frame,
			rows.first("temperature"),
			"temperature",
			"temperature",
		),
		humidity: valueIn(frame, rows.first("humidity"), "humidity", "ratio"),
		origin: row?.headline,
	};
}

/** A sheet that is never cut gives no parts. */
function readStages(frame: Frame, row: Row | undefined): number | undefined {
	const stages = countOf(frame, row?.expression("stages"), 100);
	if (stages !== 0) return stages;
	frame.evaluation.report(
		"not-a-count",
		row?.headline ?? { uri: frame.uri, span: { start: 0, end: 0 } },
		"At least one stage of cuts is wanted: 2 cuts strips to length",
	);
	return undefined;
}

export function readRoom(frame: Frame, row: Row | undefined): Room {
	const rows = readRows(frame.evaluation, frame.uri, row?.block, "room");
	const humidity = rows.first("humidity");
	const low = valueIn(frame, humidity, "low", "ratio");
	const high = valueIn(frame, humidity, "high", "ratio");
	return {
		humidity:
			low !== undefined && high !== undefined
				? [Math.min(low, high), Math.max(low, high)]
				: undefined,
		temperature: valueIn(
			frame,
			rows.first("temperature"),
			"temperature",
			"temperature",
		),
		origin: row?.headline,
	};
}

function valueIn(
	frame: Frame,
	row: Row | undefined,
	slot: string,
	dimension: "temperature" | "ratio",
): number | undefined {
	const size = evaluateAs(frame, row?.expression(slot), dimension);
	return size && numberOf(size);
}

/** A length cut to a stop: all parts of that length move together. */
export function crosscutSource(
	shop: Shop,
	length: Size,
	display: Display,
): Source {
	return {
		id: `crosscut:${length.value.toString()}`,
		// Worked out only when it is told.
		get label() {
			return `the stop for ${lengthText(length.value, { ...display, suffix: true })}`;
		},
		tolerance: shop.crosscut,
	};
}

/** A housing cut with one setting of the router. */
export function routerSource(shop: Shop, what: string): Source {
	return {
		id: `router:${what}`,
		label: `the router's setting for ${what}`,
		tolerance: shop.router,
	};
}

/** A place set out by tape. */
export function markSource(shop: Shop, what: string): Source {
	return {
		id: `mark:${what}`,
		label: `the place of ${what}, by tape`,
		tolerance: shop.mark,
	};
}
