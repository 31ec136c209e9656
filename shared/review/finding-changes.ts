// Findings that are new and findings that are cured: the same finding is the same check about the same thing.

import type { Design, Finding } from "../model/types.ts";
import type { Both, FindingChanges } from "./types.ts";

/** A finding with what it is about. */
export interface Placed {
	readonly finding: Finding;
	/** Path of the innermost thing that its place lies in; empty outside of all. */
	readonly about: string;
}

/** What each finding is about, in the order of the list. */
export function placed(
	design: Design,
	findings: readonly Finding[],
): readonly Placed[] {
	return findings.map((finding) => {
		const { uri, span } = finding.origin;
		let about = "";
		let shortest = Number.POSITIVE_INFINITY;
		for (const { path, origin } of design.declarations) {
			const length = origin.span.end - origin.span.start;
			if (
				origin.uri === uri &&
				origin.span.start <= span.start &&
				origin.span.end >= span.end &&
				length < shortest
			) {
				about = path;
				shortest = length;
			}
		}
		return { finding, about };
	});
}

/** `named`: what a path of before is called afterwards. */
export function findingChanges(
	before: readonly Placed[],
	after: readonly Placed[],
	named: (path: string) => string = (path) => path,
): FindingChanges {
	const left = new Map<string, Finding[]>();
	for (const { finding, about } of before) {
		const key = `${finding.id} ${named(about)}`;
		const known = left.get(key);
		if (known) known.push(finding);
		else left.set(key, [finding]);
	}
	const open: Placed[] = [];
	const same = new Set<Finding>();
	// Those with the same words first, so that a pair is never told as two changes.
	for (const one of after) {
		const olds = left.get(`${one.finding.id} ${one.about}`) ?? [];
		const index = olds.findIndex(
			({ message }) => message === one.finding.message,
		);
		if (index < 0) open.push(one);
		else for (const old of olds.splice(index, 1)) same.add(old);
	}
	const fresh: Finding[] = [];
	const changed: Both<Finding>[] = [];
	const met = new Set<Finding>(same);
	for (const { finding, about } of open) {
		const old = left.get(`${finding.id} ${about}`)?.shift();
		if (!old) fresh.push(finding);
		else {
			met.add(old);
			changed.push({ before: old, after: finding });
		}
	}
	const cured = before.flatMap(({ finding }) =>
		met.has(finding) ? [] : [finding],
	);
	return { fresh, cured, changed };
}
