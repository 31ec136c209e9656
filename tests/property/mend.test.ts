// What the command line mends by itself: over all faults of the catalogue, alone and several in one file, the text still parses,
// keeps its comments and every statement that no mend was about, and what could be mended is gone.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, type Statement } from "../../grammar/index.ts";
import { allFindings } from "../../shared/checks/index.ts";
import { type Mending, mendText } from "../../shared/checks/mend.ts";
import { format } from "../../shared/format/format.ts";
import type { Finding } from "../../shared/model/types.ts";
import { designWith, type Fault, faults } from "../harness/catalogue.ts";

function findingsIn(uri: string, text: string): readonly Finding[] {
	return allFindings(designWith(uri, text));
}

function mended(uri: string, text: string): Mending {
	return mendText(uri, text, (now) => findingsIn(uri, now));
}

/** Every statement by its headline and how deep it stands, in order, laid out in the one style. */
function statementsOf(text: string): readonly string[] {
	const laidOut = format(text).text;
	const lines: string[] = [];
	const walk = (statements: readonly Statement[], depth: number): void => {
		for (const { headline, block } of statements) {
			const line = laidOut.slice(headline.start, headline.end).trim();
			lines.push(`${depth} ${line}`);
			if (block) walk(block.statements, depth + 1);
		}
	};
	walk(parse(laidOut).tree.statements, 0);
	return lines;
}

function commentsOf(text: string): readonly string[] {
	return parse(text).tree.comments.map((comment) => comment.text);
}

/** How many lines stand in both lists in the same order, as many as can be. */
function sameLines(old: readonly string[], now: readonly string[]): number {
	let row = new Array<number>(now.length + 1).fill(0);
	for (const line of old) {
		const next = [0];
		for (let at = 0; at < now.length; at++)
			next.push(
				line === now[at]
					? (row[at] as number) + 1
					: Math.max(row[at + 1] as number, next[at] as number),
			);
		row = next;
	}
	return row.at(-1) ?? 0;
}

/** The laws of one mending; true if something was mended. */
function holds(uri: string, text: string): boolean {
	const before = findingsIn(uri, text);
	const { text: after, mends, left } = mended(uri, text);
	expect(
		parse(after).faults.filter(({ severity }) => severity === "error"),
	).toEqual([]);
	expect(commentsOf(after)).toEqual(commentsOf(text));
	expect(left).toEqual(findingsIn(uri, after));
	if (mends.length === 0) expect(after).toBe(text);

	const old = statementsOf(text);
	const now = statementsOf(after);
	const same = sameLines(old, now);
	expect(old.length - same).toBeLessThanOrEqual(mends.length);
	// A line in place of another, or a new one with all that a join with its screw says in its blocks.
	expect(now.length - same).toBeLessThanOrEqual(5 * mends.length);

	for (const { id, message } of mends)
		expect(
			left.filter((one) => one.id === id && one.message === message).length,
			message,
		).toBeLessThanOrEqual(
			Math.max(
				0,
				before.filter((one) => one.id === id && one.message === message)
					.length - 1,
			),
		);
	// Again, and nothing changes.
	expect(mended(uri, after).text).toBe(after);
	return mends.length > 0;
}

/** The finding that a fault is about, if it offers a mend that is not a choice. */
function mendable({ uri, text, expects }: Fault): Finding | undefined {
	return findingsIn(uri, text).find(
		({ id, fixes, origin }) =>
			id !== "datum-unclear" &&
			fixes.length > 0 &&
			origin.uri === uri &&
			expects.some((one) => one.id === id),
	);
}

describe.each(faults)("$name", (fault) => {
	it("is mended where a mend is offered, and nothing else is touched", () => {
		const changed = holds(fault.uri, fault.text);
		const wanted = mendable(fault);
		if (!wanted) return;
		expect(changed, wanted.message).toBe(true);
		const { left } = mended(fault.uri, fault.text);
		expect(
			left.filter(
				({ id, message }) => id === wanted.id && message === wanted.message,
			),
		).toEqual([]);
	});
});

it("mends a good part of the catalogue", () => {
	expect(
		faults.filter((fault) => mendable(fault)).length,
	).toBeGreaterThanOrEqual(20);
});

/** Faults that declare nothing but one piece, so that several can stand in one file. */
const lone = faults.filter(
	({ body }) =>
		/^use [^\n]+ from "[^"\n]+stock\.rod"\n/.test(body) &&
		(body.match(/^[a-z]/gm) ?? []).length === 2,
);

function inOneFile(chosen: readonly Fault[]): string {
	const names = new Set<string>();
	const bodies: string[] = [];
	for (const [index, { body }] of chosen.entries()) {
		const [use = "", ...lines] = body.split("\n");
		for (const name of use
			.slice("use ".length, use.indexOf(" from "))
			.split(","))
			names.add(name.trim());
		bodies.push(
			lines.join("\n").replace(/^piece ([a-z-]+)/m, `piece $1-${index + 1}`),
		);
	}
	const path = /from ("[^"]+")/.exec(chosen[0]?.body ?? "")?.[1] ?? "";
	return `use ${[...names].join(", ")} from ${path}\n// ${chosen.length} pieces\n${bodies.join("\n")}\n`;
}

it("mends several faults in one file, whatever they are", () => {
	expect(lone.length).toBeGreaterThan(30);
	fc.assert(
		fc.property(
			fc.uniqueArray(fc.constantFrom(...lone), {
				minLength: 2,
				maxLength: 4,
				selector: ({ name }) => name,
			}),
			(chosen) => {
				holds((chosen[0] as Fault).uri, inOneFile(chosen));
			},
		),
		{ numRuns: 20, seed: 7 },
	);
});
