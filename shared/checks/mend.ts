// Mends a text by the first mend of each finding, over and over, until there is nothing more that a machine can mend.

import { parse } from "../../grammar/index.ts";
import type { Finding, Fix } from "../model/types.ts";
import { applyEdits, type TextEdit } from "../text/edits.ts";
import { indexLines } from "../text/line-index.ts";

/** One mend that was made. */
export interface Mend {
	readonly id: string;
	/** Of the finding that it mends. */
	readonly message: string;
	readonly title: string;
	/** From 1, in the text of its round. */
	readonly line: number;
}

export interface Mending {
	readonly text: string;
	readonly mends: readonly Mend[];
	/** What is still found in the mended text, in every file. */
	readonly left: readonly Finding[];
	/** Findings that could be mended in several ways that mean different things: only the maker knows which. */
	readonly toChoose: number;
}

/** More rounds than this would be mends that undo each other. */
const mostRounds = 10;

interface Candidate {
	readonly finding: Finding;
	readonly fix: Fix;
	readonly edits: readonly TextEdit[];
}

/**
 * Mends the text of the file `uri`. `findingsIn` tells what is found when the file has a text. A mend is kept only if the
 * text still parses, has its comments and no more errors than before, and the finding is gone; edits never overlap. A text with
 * errors of syntax is left as it is.
 */
export function mendText(
	uri: string,
	text: string,
	findingsIn: (text: string) => readonly Finding[],
): Mending {
	let now = text;
	let found = findingsIn(now);
	const mends: Mend[] = [];
	const refused = new Set<string>();
	for (let round = 0; round < mostRounds && parses(now); round++) {
		const candidates = candidatesIn(uri, found).filter(
			({ finding }) => !refused.has(keyOf(finding)),
		);
		const together = apartFromEachOther(candidates);
		if (together.length === 0) break;
		let chosen = together;
		let next = tried(now, found, chosen, findingsIn);
		if (!next) {
			// One of them does harm: each by itself, the first that does none.
			for (const one of together) {
				chosen = [one];
				next = tried(now, found, chosen, findingsIn);
				if (next) break;
				refused.add(keyOf(one.finding));
			}
		}
		if (!next) continue;
		const lines = indexLines(now);
		for (const { finding, fix } of chosen)
			mends.push({
				id: finding.id,
				message: finding.message,
				title: fix.title,
				line: lines.positionAt(finding.origin.span.start).line + 1,
			});
		now = next.text;
		found = next.found;
	}
	return {
		text: now,
		mends,
		left: found,
		toChoose: found.filter(isChoice).length,
	};
}

function parses(text: string): boolean {
	return parse(text).faults.every(({ severity }) => severity !== "error");
}

/** A place without its datum: only the maker knows from where it was meant, even if one datum is the likeliest. */
function isChoice({ id, fixes }: Finding): boolean {
	return id === "datum-unclear" && fixes.length > 0;
}

function candidatesIn(
	uri: string,
	found: readonly Finding[],
): readonly Candidate[] {
	return found.flatMap((finding): Candidate[] => {
		const [fix] = finding.fixes;
		if (!fix || finding.origin.uri !== uri || isChoice(finding)) return [];
		const edits = fix.edits.map(({ span, text }) => ({
			start: span.start,
			end: span.end,
			text,
		}));
		return [{ finding, fix, edits }];
	});
}

/** The first ones whose edits do not touch those of another. */
function apartFromEachOther(
	candidates: readonly Candidate[],
): readonly Candidate[] {
	const taken: TextEdit[] = [];
	return candidates.filter(({ edits }) => {
		const free = edits.every((edit) =>
			taken.every(({ start, end }) => edit.end < start || end < edit.start),
		);
		if (free) taken.push(...edits);
		return free;
	});
}

function keyOf({ id, message }: Finding): string {
	return `${id} ${message}`;
}

/** The text with those mends and what is found in it; undefined if one of them does harm or mends nothing. */
function tried(
	text: string,
	found: readonly Finding[],
	chosen: readonly Candidate[],
	findingsIn: (text: string) => readonly Finding[],
): { readonly text: string; readonly found: readonly Finding[] } | undefined {
	const next = applyEdits(
		text,
		chosen.flatMap(({ edits }) => edits),
	);
	if (next === text || !parses(next)) return undefined;
	if (commentsOf(next) !== commentsOf(text)) return undefined;
	const after = findingsIn(next);
	const errors = (all: readonly Finding[]): number =>
		all.filter(({ severity }) => severity === "error").length;
	if (errors(after) > errors(found)) return undefined;
	const count = (all: readonly Finding[], key: string): number =>
		all.filter((finding) => keyOf(finding) === key).length;
	const keys = new Set(chosen.map(({ finding }) => keyOf(finding)));
	for (const key of keys) {
		const mended = chosen.filter(({ finding }) => keyOf(finding) === key);
		if (count(after, key) > count(found, key) - mended.length) return undefined;
	}
	return { text: next, found: after };
}

function commentsOf(text: string): string {
	return JSON.stringify(
		parse(text).tree.comments.map((comment) => comment.text),
	);
}
