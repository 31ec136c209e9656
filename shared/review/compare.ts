// Holds two states of a design against each other: by what it does to the piece, not by how its text reads.

import type { Design, Finding, Part, Piece } from "../model/types.ts";
import { cutChanges } from "./cut-changes.ts";
import { findingChanges, type Placed, placed } from "./finding-changes.ts";
import { jointChanges } from "./joint-changes.ts";
import { matchParts } from "./match-parts.ts";
import { moves, partChange, sizeChange } from "./part-changes.ts";
import type { Both, Comparison, PieceComparison, SizeChange } from "./types.ts";

/** A design with all that is to be told of it. */
export interface Reviewed {
	readonly design: Design;
	readonly findings: readonly Finding[];
}

const nothing: Reviewed = {
	design: {
		uri: "",
		pieces: [],
		stocks: new Map(),
		declarations: [],
		references: [],
		sizesAt: [],
		findings: [],
		files: [],
	},
	findings: [],
};

/** Undefined where a side has no such file: all its pieces are then new, or gone. */
export function compare(
	before: Reviewed | undefined,
	after: Reviewed | undefined,
): Comparison {
	const [old, now] = [before ?? nothing, after ?? nothing];
	const told = {
		before: placed(old.design, old.findings),
		after: placed(now.design, now.findings),
	};
	const pairs = pairPieces(old.design.pieces, now.design.pieces);
	const pieces = pairs.map((pair) => comparePiece(pair, told));
	const inPieces = (pieceNames: ReadonlySet<string>) => (one: Placed) =>
		!pieceNames.has(pieceOf(one));
	const names = (side: Reviewed): ReadonlySet<string> =>
		new Set(side.design.pieces.map(({ name }) => name));
	return {
		pieces: pieces.filter(differs),
		findings: findingChanges(
			told.before.filter(inPieces(names(old))),
			told.after.filter(inPieces(names(now))),
		),
	};
}

type Pair = {
	readonly before: Piece | undefined;
	readonly after: Piece | undefined;
};

/** By name; then, if one piece is left on each side, these two. */
function pairPieces(
	before: readonly Piece[],
	after: readonly Piece[],
): readonly Pair[] {
	const byName = new Map(before.map((piece) => [piece.name, piece]));
	const names = new Set(after.map(({ name }) => name));
	const gone = before.filter(({ name }) => !names.has(name));
	const added = after.filter(({ name }) => !byName.has(name));
	const [lost, made] = [gone[0], added[0]];
	const renamed =
		gone.length === 1 &&
		added.length === 1 &&
		lost?.kind === made?.kind &&
		lost &&
		made &&
		matchParts(lost, made).both.length > 0
			? lost
			: undefined;
	return [
		...after.map((piece): Pair => {
			const old = byName.get(piece.name);
			return {
				before: old ?? (piece === made ? renamed : undefined),
				after: piece,
			};
		}),
		...gone
			.filter((piece) => piece !== renamed)
			.map((piece): Pair => ({ before: piece, after: undefined })),
	];
}

interface Told {
	readonly before: readonly Placed[];
	readonly after: readonly Placed[];
}

function comparePiece({ before, after }: Pair, told: Told): PieceComparison {
	const parts =
		before && after
			? matchParts(before, after)
			: { both: [], gone: before?.parts ?? [], added: after?.parts ?? [] };
	const now = new Map(parts.both.map((pair) => [pair.before, pair.after]));
	const paths = new Map(
		parts.both.map((pair) => [pair.before.path, pair.after.path]),
	);
	const named = (path: string): string => paths.get(path) ?? path;
	const display = (after ?? before)?.display;
	const changed = display
		? parts.both.flatMap((pair) => partChange(pair, { display, named }) ?? [])
		: [];
	const isChanged = new Set(changed.map((one) => one.after));
	const moved = moves(parts.both.filter((pair) => !isChanged.has(pair.after)));
	const movedParts = moved.reduce((sum, move) => sum + move.parts.length, 0);
	return {
		name: (after ?? before)?.name ?? "",
		before,
		after,
		gone: parts.gone,
		added: parts.added,
		changed,
		renamed: parts.both.filter((pair) => pair.before.path !== pair.after.path),
		moved,
		same: parts.both.length - changed.length - movedParts,
		joints:
			before && after
				? jointChanges(before, after, now)
				: {
						gone: before?.joints ?? [],
						added: after?.joints ?? [],
						changed: [],
					},
		givens: givenChanges(before, after),
		overall: overallChanges(before, after),
		editions: (after?.editions ?? []).filter(
			({ number }) =>
				!before?.editions.some((edition) => edition.number === number),
		),
		findings: findingChanges(
			told.before.filter((one) => pieceOf(one) === before?.name),
			told.after.filter((one) => pieceOf(one) === after?.name),
			namesAfter(before, after, parts.both),
		),
		cuts: before && after ? cutChanges(before, after, now) : [],
	};
}

/** The first name of a path is that of the piece. */
function pieceOf({ about }: Placed): string {
	return about.split(".")[0] ?? "";
}

/** What a path of before is called afterwards. */
function namesAfter(
	before: Piece | undefined,
	after: Piece | undefined,
	both: readonly Both<Part>[],
): (path: string) => string {
	if (!before || !after) return (path) => path;
	const renamed = new Map(
		both.map((pair) => [
			pair.before.declaration.path,
			pair.after.declaration.path,
		]),
	);
	return (path) =>
		renamed.get(path) ??
		(path === before.name || path.startsWith(`${before.name}.`)
			? after.name + path.slice(before.name.length)
			: path);
}

function givenChanges(
	before: Piece | undefined,
	after: Piece | undefined,
): PieceComparison["givens"] {
	const names = [...(after?.givens ?? []), ...(before?.givens ?? [])].map(
		({ declaration }) => declaration.name,
	);
	const find = (piece: Piece | undefined, name: string) =>
		piece?.givens.find(({ declaration }) => declaration.name === name);
	return [...new Set(names)].flatMap((name) => {
		const [old, now] = [find(before, name), find(after, name)];
		return sizeChange(name, old?.size, now?.size).length > 0
			? [{ name, before: old, after: now }]
			: [];
	});
}

function overallChanges(
	before: Piece | undefined,
	after: Piece | undefined,
): readonly SizeChange[] {
	return (["width", "height", "depth"] as const).flatMap((what, axis) => [
		...sizeChange(
			`${what} over the case`,
			before?.overCase?.[axis],
			after?.overCase?.[axis],
		),
		...sizeChange(what, before?.overAll?.[axis], after?.overAll?.[axis]),
	]);
}

function differs(piece: PieceComparison): boolean {
	const { gone, added, changed, renamed, moved, joints, givens } = piece;
	const { fresh, cured, changed: told } = piece.findings;
	return (
		!piece.before ||
		!piece.after ||
		piece.before.name !== piece.after.name ||
		[gone, added, changed, renamed, moved, givens].some(
			(list) => list.length > 0,
		) ||
		[joints.gone, joints.added, joints.changed].some(
			(list) => list.length > 0,
		) ||
		[fresh, cured, told, piece.overall, piece.editions, piece.cuts].some(
			(list) => list.length > 0,
		)
	);
}
