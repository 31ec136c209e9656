// From a refactoring's plain edits to those that an editor gets: laid out as the formatter does, and tried before anything
// is touched. What does not keep its promise is not made.

import { type Edit, parse, type Span } from "../../../grammar/index.ts";
import { allFindings } from "../../checks/index.ts";
import { format } from "../../format/format.ts";
import { lineEdits } from "../../format/line-edits.ts";
import { sameMeaning } from "../../format/same-meaning.ts";
import type { Design, Finding, Part } from "../../model/types.ts";
import { applyEdits, overlap, type TextEdit } from "../../text/edits.ts";
import type { Asked, Change, Keeps } from "./refactoring.ts";
import { touchedPieces } from "./touched-pieces.ts";

export interface FinishedChange {
	/** Line by line, in order of place, none overlapping. */
	readonly edits: readonly Edit[];
	readonly newFile: Change["newFile"];
	readonly caution: string | undefined;
}

/** The change as an editor makes it; in words why not, where it would not keep what it promises. */
export function finished(
	{ snapshot, around }: Asked,
	change: Change,
): FinishedChange | string {
	const { text, result } = snapshot;
	const { newFile, caution, keeps = "all" } = change;
	const isCrlf = text.includes("\r\n");
	const edits = change.edits.map(({ span, text: put }) => ({
		...span,
		text: isCrlf ? put.replace(/\r?\n/g, "\r\n") : put,
	}));
	if (overlap(edits)) return "Two changes would meet in one place";
	const after = laidOut(text, edits);
	const now = parse(after);
	if (errorsIn(now.faults) > errorsIn(result.faults))
		return "The lines could not be read any more";
	const file = newFile && { ...newFile, text: format(newFile.text).text };
	const comments = [
		...now.tree.comments,
		...(file ? parse(file.text).tree.comments : []),
	].map((comment) => comment.text.trim());
	for (const { text: comment } of result.tree.comments) {
		const at = comments.indexOf(comment.trim());
		if (at >= 0) comments.splice(at, 1);
		else if (!change.mergesComments) return "A comment would be lost";
	}
	let told = caution;
	if (keeps !== "nothing") {
		const some = touchedPieces(
			{ text, tree: result.tree },
			{ text: after, tree: now.tree },
		);
		const old = some ? around.evaluate(some.before) : snapshot.design;
		const changed = around.evaluate(some?.after ?? after, file);
		const reason =
			differentCut(old, changed, keeps) ??
			oneMore(newFaults(old.findings, changed.findings));
		if (reason) return reason;
		const found = newFaults(allFindings(old), allFindings(changed));
		if (found.length > 0 && !change.mayBringFindings)
			return oneMore(found) ?? "";
		told ??= oneMore(found);
	}
	return {
		edits: lineEdits(text, after).map(({ start, end, text: put }) => ({
			span: { start, end },
			text: put,
		})),
		newFile: file,
		caution: told,
	};
}

/** The text after the edits. Of a text in the one layout all is laid out again, of another only the lines that were touched. */
function laidOut(text: string, edits: readonly TextEdit[]): string {
	const raw = applyEdits(text, edits);
	const formatted = format(raw);
	if (formatted.refused) return raw;
	const before = format(text);
	if (!before.refused && before.text === text) return formatted.text;
	const touched = touchedLines(raw, edits);
	const some = applyEdits(
		raw,
		lineEdits(raw, formatted.text).filter(({ start, end }) =>
			touched.some((lines) => lines.start <= start && end <= lines.end),
		),
	);
	return sameMeaning(parse(raw).tree, parse(some).tree) ? some : raw;
}

/** The lines in the text after the edits on which something was put or taken away. */
function touchedLines(raw: string, edits: readonly TextEdit[]): Span[] {
	let moved = 0;
	return edits
		.toSorted((a, b) => a.start - b.start || a.end - b.end)
		.map(({ start, end, text }) => {
			const from = start + moved;
			const to = from + text.length;
			moved += text.length - (end - start);
			const next = raw.slice(to).search(/[\r\n]/);
			return {
				start:
					Math.max(
						raw.lastIndexOf("\n", from - 1),
						raw.lastIndexOf("\r", from - 1),
					) + 1,
				end: next < 0 ? raw.length : to + next,
			};
		});
}

function errorsIn(faults: readonly { readonly severity: string }[]): number {
	return faults.filter(({ severity }) => severity === "error").length;
}

/** A part that would be another one than before, in words; undefined if there is none. */
function differentCut(
	before: Design,
	after: Design,
	keeps: Keeps,
): string | undefined {
	const now = cutsOf(after, keeps);
	const gone = [...cutsOf(before, keeps)].find(([cut, part]) => {
		const left = now.get(cut);
		return left === undefined || left.count < part.count;
	});
	return gone && `\`${gone[1].path}\` would not be cut the same any more`;
}

function oneMore([first, ...others]: readonly string[]): string | undefined {
	return first === undefined
		? undefined
		: `The design would have ${others.length === 0 ? "one finding" : `${others.length + 1} findings`} more: ${first}`;
}

/** Messages of the errors and warnings that are more than before: the same ones may tell other figures. */
export function newFaults(
	before: readonly Finding[],
	after: readonly Finding[],
): string[] {
	const known = new Map<string, number>();
	for (const { id } of before.filter(isFault))
		known.set(id, (known.get(id) ?? 0) + 1);
	return after.filter(isFault).flatMap(({ id, message }) => {
		const left = known.get(id) ?? 0;
		known.set(id, left - 1);
		return left > 0 ? [] : [message];
	});
}

function isFault({ severity }: Finding): boolean {
	return severity === "error" || severity === "warning";
}

/** What is cut, and where it stands: equal ones counted. */
function cutsOf(
	{ pieces }: Design,
	keeps: Keeps,
): Map<string, { readonly path: string; readonly count: number }> {
	const cuts = new Map<string, { path: string; count: number }>();
	for (const piece of pieces)
		if (piece.kind === "piece" || keeps !== "sizes")
			for (const part of piece.parts) {
				const cut = `${piece.name} ${keeps === "sizes" ? "" : part.path} ${cutText(part, keeps !== "exact")}`;
				cuts.set(cut, {
					path: part.path,
					count: (cuts.get(cut)?.count ?? 0) + 1,
				});
			}
	return cuts;
}

/** A part as the saw and the one who glues it up see it: exact. */
export function cutText(part: Part, withRough = true): string {
	const { length, width, thick, min, max, stages, housings, cut } = part;
	return [
		part.role,
		part.stock.id,
		cut.when,
		...[length, width, thick, ...min, ...max].map(({ value }) => value),
		...stages
			.filter(({ stage }) => withRough || stage !== "rough")
			.flatMap((one) => [
				one.stage,
				one.length.value,
				one.width.value,
				one.thick.value,
			]),
		...housings
			.map((one) =>
				[one.kind, one.at.value, one.width.value, one.depth.value].join(" "),
			)
			.sort(),
	].join(" ");
}
