// Evaluates one piece: names, then things, then what needs all of them.

import { meaningsOf } from "./constructs/index.ts";
import type { SetValue } from "./constructs/sizes.ts";
import { cutInfos } from "./cut-parts.ts";
import { readDisplay } from "./display.ts";
import { countOf, evaluateAs } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { finishJoints } from "./joints.ts";
import { type Meaning, Scope } from "./meaning.ts";
import { emptyCollected, type PieceContext } from "./piece-context.ts";
import { readReadings, tellReadings } from "./readings.ts";
import { type Row, type Rows, readRows } from "./rows.ts";
import { readRoom, readShop } from "./shop.ts";
import { minus, numberOf, type Size, zero } from "./size.ts";
import type { Declaration, Display, Part, Piece } from "./types.ts";

/** Evaluates a `piece`, or a `component` standing alone with its own givens. */
export function evaluatePiece(
	fileFrame: Frame,
	row: Row,
	declaration: Declaration,
	fileDisplay: Display,
	sets: ReadonlyMap<string, SetValue>,
): Piece {
	const { evaluation, uri } = fileFrame;
	const kind = row.head === "component" ? "component" : "piece";
	const rows = readRows(evaluation, uri, row.block, kind);
	const display = readDisplay(fileFrame, rows, fileDisplay);
	const frame: Frame = {
		...fileFrame,
		unit: display.unit,
		scope: new Scope(fileFrame.scope),
	};
	const collected = emptyCollected();
	const context: PieceContext = {
		evaluation,
		frame,
		piece: declaration.name,
		prefix: "",
		origin: [zero, zero, zero],
		display,
		shop: readShop(frame, rows.first("shop")),
		collected,
	};
	readReadings(context, rows.every("measured"));
	populate(context, rows, sets);
	const joints = finishJoints(context);
	const parts = collected.parts;
	return {
		name: declaration.name,
		kind,
		declaration,
		display,
		editions: rows.every("edition").flatMap((edition) => {
			const number = countOf(frame, edition.expression("number"));
			return number === undefined
				? []
				: [
						{
							number,
							note: edition.text("note") ?? "",
							origin: edition.origin,
						},
					];
		}),
		givens: inTextOrder(collected.givens, (one) => one.declaration),
		parts,
		partByPath: new Map(parts.map((part) => [part.path, part])),
		joints,
		boxes: collected.boxes,
		legs: collected.legs,
		trims: collected.trims,
		veneers: collected.veneers,
		mounts: collected.mounts,
		finishes: collected.finishes,
		loads: collected.loads,
		matches: collected.matches,
		spare: readSpare(frame, rows.first("spare")),
		room: readRoom(frame, rows.first("room")),
		shop: context.shop,
		measured: tellReadings(context),
		cuts: cutInfos(context, rows.every("cut")),
		steps: collected.steps,
		aids: collected.aids,
		overCase: extent(
			parts.filter(
				(part) =>
					!["trim", "veneer", "cleat", "wall-strip", "layer", "aid"].includes(
						part.role,
					),
			),
		),
		overAll: extent(
			parts.filter((part) => part.role !== "aid" && part.role !== "wall-strip"),
		),
		sizes: collected.sizes,
	};
}

/** Declares, works out and settles all lines of a piece or of a component that is made into one. */
export function populate(
	context: PieceContext,
	rows: Rows,
	sets: ReadonlyMap<string, SetValue>,
): void {
	const meanings = meaningsOf(sets, populate);
	for (const row of rows.all) meanings.get(row.head)?.declare?.(context, row);
	for (const row of rows.all)
		for (const name of [...row.names("name"), ...row.names("names")])
			force(context.frame.scope.own(name.text)?.meaning());
	const late = rows.all
		.map((row) => ({ row, meaning: meanings.get(row.head) }))
		.filter(({ meaning }) => meaning?.settle)
		.sort((a, b) => (a.meaning?.phase ?? 0) - (b.meaning?.phase ?? 0));
	for (const { row, meaning } of late) meaning?.settle?.(context, row);
}

function force(meaning: Meaning | undefined): void {
	if (meaning?.kind === "thing") meaning.thing.parts();
}

/** More than the whole of it again is a slip. */
function readSpare(frame: Frame, row: Row | undefined): number {
	const share = evaluateAs(frame, row?.expression("share"), "ratio");
	if (!share || !row) return 0;
	const value = numberOf(share);
	if (value >= 0 && value <= 1) return value;
	frame.evaluation.report(
		"out-of-range",
		row.origin,
		"What is bought to spare is 0 % to 100 % of what is counted",
	);
	return 0;
}

function inTextOrder<T>(
	things: readonly T[],
	of: (thing: T) => Declaration,
): T[] {
	return [...things].sort(
		(a, b) => of(a).origin.span.start - of(b).origin.span.start,
	);
}

function extent(
	parts: readonly Part[],
): readonly [Size, Size, Size] | undefined {
	if (parts.length === 0) return undefined;
	const along = (axis: 0 | 1 | 2): Size => {
		let low = parts[0]?.min[axis] as Size;
		let high = parts[0]?.max[axis] as Size;
		for (const part of parts) {
			if (numberOf(part.min[axis]) < numberOf(low)) low = part.min[axis];
			if (numberOf(part.max[axis]) > numberOf(high)) high = part.max[axis];
		}
		return minus(high, low);
	};
	return [along(0), along(1), along(2)];
}
