// `mount`: what hangs a piece on a wall: a bevelled cleat pair, a plain rail, or brackets.

import { evaluateAs, positiveLength, sizeAtLeastZero } from "../expressions.ts";
import { readFastening } from "../fastening.ts";
import { type Meaning, pathText, type Thing } from "../meaning.ts";
import { resolve, thicknessAxis } from "../names.ts";
import { boundsAround, familyOf, thingAround } from "../owners.ts";
import { high, low, makePart, type PartDraft } from "../part-builder.ts";
import { type PieceContext, pathIn, stockOf } from "../piece-context.ts";
import { tellNoDatum } from "../positions.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { shown, shownDegrees } from "../shown.ts";
import {
	minus,
	named,
	numberOf,
	plus,
	type Size,
	times,
	zero,
} from "../size.ts";
import type { Declaration, MountInfo, Part, Stock } from "../types.ts";
import { cleatPair, isHookable } from "./cleat-pair.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { offsetFrom } from "./leg-place.ts";
import { readWall } from "./mount-wall.ts";
import { readNamedBlock } from "./named-block.ts";
import { stagesOf } from "./part.ts";
import { bind } from "./sizes.ts";
import { worldOutline } from "./world-outline.ts";

interface Made {
	readonly kind: MountInfo["kind"];
	readonly on: Part;
	/** Brackets have none. */
	readonly strip: PartDraft | undefined;
	readonly wallStrip: PartDraft | undefined;
	readonly bevel: number;
	readonly height: Size;
	readonly thick: Size;
	readonly lift: Size;
	readonly play: Size;
}

/** A mount by its row, from declare to settle of one run. */
const inners = new WeakMap<
	Row,
	{ rows: Rows; declaration: Declaration; work: () => Made | undefined }
>();

export const mount: ConstructMeaning = {
	declare: (context, row) => {
		const block = readNamedBlock(context, row, "mount");
		if (!block) return;
		const { name, path, declaration, rows } = block;
		const work = context.evaluation.lazy(name, row.headline, () =>
			build(context, rows, name, declaration),
		);
		inners.set(row, { rows, declaration, work });
		bind(context, row, {
			declaration,
			meaning: () => ({
				kind: "thing",
				thing: thingOf(path, declaration, work),
			}),
		});
	},
	// Behind the joins: what is in the way of the hook is known when all parts stand.
	phase: 2,
	settle: (context, row) => {
		const inner = inners.get(row);
		const made = inner?.work();
		if (!inner || !made) return;
		context.collected.mounts.push(
			infoOf(context, row, inner.rows, inner.declaration, made),
		);
	},
};

function thingOf(
	path: string,
	declaration: Declaration,
	work: () => Made | undefined,
): Thing {
	const parts = (): readonly PartDraft[] => {
		const made = work();
		if (!made?.strip) return [];
		return made.wallStrip ? [made.strip, made.wallStrip] : [made.strip];
	};
	return {
		path,
		declaration,
		parts,
		// The wall strip stays on the wall: the piece is as large as its own strip.
		bounds: () => boundsAround(parts().slice(0, 1)),
		member: (member): Meaning | undefined => {
			const part = parts().find((one) => one.name === member);
			return part && { kind: "part", part };
		},
		memberNames: () => parts().map((part) => part.name),
	};
}

function build(
	context: PieceContext,
	rows: Rows,
	name: string,
	declaration: Declaration,
): Made | undefined {
	const { frame } = context;
	const on = backOf(context, rows.first("on"));
	const kind = (rows.first("kind")?.word("kind") ??
		"cleat") as MountInfo["kind"];
	tellIdle(context, rows, kind);
	if (kind === "brackets") return on && withBrackets(context, rows, on);
	const stock = stockOf(context, rows.first("of")?.ref("material"), [
		"sheet",
		"board",
	]);
	const heightRow = rows.first("height");
	const height = positiveLength(
		frame,
		heightRow?.expression("height"),
		"A height",
	);
	const top = topOf(context, rows, on);
	const play =
		sizeAtLeastZero(
			frame,
			rows.first("play")?.expression("play"),
			"The play",
		) ?? zero;
	const thick = stock?.thick;
	if (!on || !stock || !thick || !height || !heightRow || !top)
		return undefined;
	const span = spanOf(context, on);
	const length = minus(span.stop, span.start);
	if (kind !== "cleat") {
		const strip = makePart(context, {
			...stripSpec(
				context,
				name,
				"strip",
				declaration,
				stock,
				length,
				height,
				thick,
			),
			role: "cleat",
			held: [low(span.start), high(top), high(on.min[2])],
		});
		return {
			kind,
			on,
			strip,
			wallStrip: undefined,
			bevel: 0,
			height,
			thick,
			lift: zero,
			play,
		};
	}
	const bevel = bevelOf(context, rows);
	if (bevel === undefined) return undefined;
	const pair = cleatPair(thick, height, bevel, context.shop.kerf);
	if (!isHookable(pair)) {
		context.evaluation.report(
			"bevel-too-deep",
			heightRow.headline,
			`The bevel falls ${shown(context, pair.drop)} over ${shown(context, thick)}: strips ${shown(context, height)} high keep nothing of their short face, make them higher`,
		);
		return undefined;
	}
	const wallLength = minus(length, times(2, play));
	if (wallLength.value.sign() <= 0) {
		context.evaluation.report(
			"no-size",
			(rows.first("play") ?? heightRow).headline,
			"The play at both ends leaves nothing of the wall strip",
		);
		return undefined;
	}
	const note = `ripped with its other half from one blank ${shown(context, length)} x ${shown(context, pair.blank)}, the saw tilted ${shownDegrees(90 - bevel)}`;
	const z = [numberOf(minus(on.min[2], thick)), numberOf(on.min[2])] as const;
	const y = (size: Size): number => numberOf(size);
	const bottom = minus(top, height);
	const strip = makePart(context, {
		...stripSpec(
			context,
			name,
			"strip",
			declaration,
			stock,
			length,
			height,
			thick,
		),
		role: "cleat",
		held: [low(span.start), high(top), high(on.min[2])],
		outlines: [
			worldOutline(
				[
					[y(top), z[0]],
					[y(bottom), z[0]],
					[y(plus(bottom, pair.drop)), z[1]],
					[y(top), z[1]],
				],
				1,
				2,
			),
		],
		edges: [
			{
				where: "bottom edge",
				work: "bevel",
				text: `${shownDegrees(bevel)}, tall face to the wall`,
			},
		],
		notes: [note],
	});
	const wallTop = plus(bottom, pair.drop);
	const wallBottom = minus(wallTop, height);
	const wallStrip = makePart(context, {
		...stripSpec(
			context,
			name,
			"wall-strip",
			declaration,
			stock,
			wallLength,
			height,
			thick,
		),
		role: "wall-strip",
		held: [low(plus(span.start, play)), high(wallTop), high(on.min[2])],
		outlines: [
			worldOutline(
				[
					[y(bottom), z[0]],
					[y(wallBottom), z[0]],
					[y(wallBottom), z[1]],
					[y(wallTop), z[1]],
				],
				1,
				2,
			),
		],
		edges: [
			{
				where: "top edge",
				work: "bevel",
				text: `${shownDegrees(bevel)}, tall face away from the wall`,
			},
		],
		notes: [note],
	});
	return {
		kind,
		on,
		strip,
		wallStrip,
		bevel,
		height,
		thick,
		lift: pair.drop,
		play,
	};
}

/** Lines that say nothing of that kind of mount. */
const idle: Readonly<Record<MountInfo["kind"], readonly string[]>> = {
	cleat: [],
	rail: ["bevel", "play"],
	brackets: ["of", "height", "bevel", "play", "fasten"],
};

function tellIdle(
	context: PieceContext,
	rows: Rows,
	kind: MountInfo["kind"],
): void {
	for (const row of rows.all)
		if (idle[kind].includes(row.head))
			context.evaluation.report(
				"not-for-kind",
				row.headline,
				kind === "rail"
					? `A rail is screwed straight to the wall: \`${row.head}\` says nothing of it, take the line away or make it a \`kind cleat\``
					: `Brackets are bought, there is no strip to be made: \`${row.head}\` says nothing of them, take the line away or make it a \`kind rail\``,
				{ severity: "warning" },
			);
}

/** Bought brackets: nothing is made, the piece hangs by the part that they are fixed to. */
function withBrackets(
	context: PieceContext,
	rows: Rows,
	on: Part,
): Made | undefined {
	const top = rows.first("down") ? topOf(context, rows, on) : on.max[1];
	if (!top) return undefined;
	return {
		kind: "brackets",
		on,
		strip: undefined,
		wallStrip: undefined,
		bevel: 0,
		height: minus(top, on.min[1]),
		thick: zero,
		lift: zero,
		play: zero,
	};
}

function stripSpec(
	context: PieceContext,
	name: string,
	part: string,
	declaration: Declaration,
	stock: Stock,
	length: Size,
	height: Size,
	thick: Size,
) {
	return {
		path: `${name}.${part}`,
		declaration,
		owner: name,
		stock,
		along: "x",
		through: "z",
		length,
		width: height,
		thick,
		stages: stagesOf(context, stock, length, height, thick, undefined),
	} as const;
}

function bevelOf(context: PieceContext, rows: Rows): number | undefined {
	const row = rows.first("bevel");
	const written = evaluateAs(context.frame, row?.expression("bevel"), "angle");
	if (!row) return 45;
	if (!written) return undefined;
	const bevel = numberOf(written);
	if (bevel > 0 && bevel < 90) return bevel;
	context.evaluation.report(
		"bad-angle",
		row.origin,
		"A bevel is more than 0 and less than 90 degrees from the face",
	);
	return undefined;
}

/** The upright part that the strip is fixed to. */
function backOf(context: PieceContext, row: Row | undefined): Part | undefined {
	const ref = row?.ref("on");
	if (!row || !ref) return undefined;
	// All parts of the box must stand: its sides bound the strip.
	thingAround(context, ref)?.parts();
	const meaning = resolve(context.frame, ref);
	if (!meaning) return undefined;
	const part =
		meaning.kind === "part"
			? meaning.part
			: meaning.kind === "face"
				? meaning.face.part
				: undefined;
	if (part && thicknessAxis(part) === "z") return part;
	const label = pathText(ref.segments);
	context.evaluation.report(
		"not-a-part",
		row.at(ref.span),
		part
			? `\`${label}\` does not lie along the wall: name the back, or a part that faces the front`
			: `\`${label}\` is no part that a strip can be fixed to: name the back of a box, as in \`${label.split(".")[0]}.back\`, and give the box one`,
	);
	return undefined;
}

function topOf(
	context: PieceContext,
	rows: Rows,
	on: Part | undefined,
): Size | undefined {
	const row = rows.first("down");
	const distance = row?.expression("distance");
	const datum = row?.ref("datum");
	if (!distance) return undefined;
	if (datum) return offsetFrom(context, distance, datum, "y", "down");
	const owner = on?.owner ?? "case";
	tellNoDatum(context.frame, distance, [
		`from ${owner}.top`,
		`from ${on?.path ?? "case.back"}.top`,
	]);
	return undefined;
}

/** Between the sides where they stand past the back; else along the back itself. */
function spanOf(
	context: PieceContext,
	on: Part,
): { readonly start: Size; readonly stop: Size } {
	const panels = familyOf(context, on).filter(({ role }) => role === "panel");
	const left = panels.find(({ name }) => name === "left");
	const right = panels.find(({ name }) => name === "right");
	const past = (side: Part | undefined): side is Part =>
		side !== undefined && numberOf(side.min[2]) < numberOf(on.max[2]) - 1e-9;
	return {
		start: past(left) ? left.max[0] : on.min[0],
		stop: past(right) ? right.min[0] : on.max[0],
	};
}

function infoOf(
	context: PieceContext,
	row: Row,
	rows: Rows,
	declaration: Declaration,
	made: Made,
): MountInfo {
	const { on, strip, wallStrip } = made;
	const fasteners = strip ? fastened(context, row, rows, on, strip) : [];
	const family = familyOf(context, on);
	const rear = boundsAround(family)?.min[2] ?? on.min[2];
	const lowest = wallStrip ?? strip ?? on;
	return {
		path: pathIn(context, declaration.name),
		declaration,
		origin: row.headline,
		kind: made.kind,
		on,
		strip: strip ?? on,
		wallStrip,
		bevel: made.bevel,
		height: made.height,
		thick: made.thick,
		gap: minus(on.min[2], rear),
		lift: made.lift,
		above: strip ? roomAbove(context, strip, family) : zero,
		below: strip ? roomBelow(context, wallStrip ?? strip) : zero,
		play: made.play,
		fasteners,
		wall: readWall(context, rows.first("wall")),
		wallStripTop: named(
			"the top of the wall strip over the floor",
			minus(
				strip ? lowest.max[1] : plus(on.min[1], made.height),
				context.origin[1],
			),
		),
	};
}

/** What holds the strip on the piece. */
function fastened(
	context: PieceContext,
	row: Row,
	rows: Rows,
	on: Part,
	strip: PartDraft,
): MountInfo["fasteners"] {
	const joint = context.collected.joints.of(
		"cleat",
		on as PartDraft,
		strip,
		row.headline,
	);
	const fasten = rows.first("fasten");
	readFastening(
		context,
		readRows(context.evaluation, context.frame.uri, fasten?.block, "fasten"),
		joint,
	);
	return joint.fasteners;
}

/** Parts of the piece that stand in the way of a strip moved up or down: over or under it, as far back as it is. */
function inTheWay(context: PieceContext, strip: PartDraft): readonly Part[] {
	return context.collected.parts.filter(
		(part) =>
			part.role !== "wall-strip" &&
			part.role !== "cleat" &&
			([0, 2] as const).every(
				(axis) =>
					Math.min(numberOf(part.max[axis]), numberOf(strip.max[axis])) -
						Math.max(numberOf(part.min[axis]), numberOf(strip.min[axis])) >
					0.01,
			),
	);
}

/** Up to the first part over the strip; up to the top of the box where none is. */
function roomAbove(
	context: PieceContext,
	strip: PartDraft,
	family: readonly Part[],
): Size {
	const top = strip.max[1];
	const over = inTheWay(context, strip)
		.map((part) => part.min[1])
		.filter((at) => numberOf(at) >= numberOf(top) - 1e-9);
	const limit = over.reduce<Size | undefined>(
		(best, at) => (!best || numberOf(at) < numberOf(best) ? at : best),
		undefined,
	);
	return minus(limit ?? boundsAround(family)?.max[1] ?? top, top);
}

/** Down to the first part under the strip; down to the floor where none is. */
function roomBelow(context: PieceContext, strip: PartDraft): Size {
	const bottom = strip.min[1];
	const under = inTheWay(context, strip)
		.map((part) => part.max[1])
		.filter((at) => numberOf(at) <= numberOf(bottom) + 1e-9);
	const limit = under.reduce<Size | undefined>(
		(best, at) => (!best || numberOf(at) > numberOf(best) ? at : best),
		undefined,
	);
	return minus(bottom, limit ?? context.origin[1]);
}
