// Reads the designs that are shipped, as a reader on disk does, for tests of what stands in them.

import { readdirSync, readFileSync } from "node:fs";
import { runChecks } from "../../shared/checks/index.ts";
import { compile } from "../../shared/model/compile.ts";
import type { Design, Finding } from "../../shared/model/types.ts";
import { type Sources, sourcesOf } from "../../shared/sources/sources.ts";

const root = new URL("../../", import.meta.url);
const folders = ["shared/designs", "tests/corpus"] as const;

const texts = new Map<string, string>();
const names: string[] = [];
for (const folder of folders)
	for (const file of readdirSync(new URL(folder, root)).sort()) {
		if (!file.endsWith(".rod")) continue;
		const path = `${folder}/${file}`;
		texts.set(uriOf(path), readFileSync(new URL(path, root), "utf8"));
		if (folder === "shared/designs") names.push(path);
	}

/** Paths of the shipped designs, in order: `shared/designs/stock.rod`. */
export const shippedDesigns: readonly string[] = names;

/** All texts of the designs and of the corpus. */
export const shippedSources: Sources = sourcesOf(texts);

/** The same with one more file beside the designs. */
export function sourcesWith(path: string, text: string): Sources {
	return sourcesOf(new Map([...texts, [uriOf(path), text]]));
}

export function uriOf(path: string): string {
	return `file:///house/${path}`;
}

/** Throws if there is no such file: a fault of the test. */
export function textOf(path: string): string {
	const text = texts.get(uriOf(path));
	if (text === undefined) throw new Error(`There is no design ${path}`);
	return text;
}

const designs = new Map<string, Design>();

/** Compiled once for all tests of a file. */
export function designOf(path: string): Design {
	let design = designs.get(path);
	if (!design) {
		textOf(path);
		design = compile(shippedSources, uriOf(path));
		designs.set(path, design);
	}
	return design;
}

/** What syntax, evaluation and checks say of a design. */
export function findingsOf(path: string): readonly Finding[] {
	return allFindings(designOf(path));
}

export function allFindings(design: Design): readonly Finding[] {
	return [...design.findings, ...runChecks(design)];
}

/** What a maker would have to change: errors and warnings, each as a line that a failing test shows. */
export function faultsIn(findings: readonly Finding[]): string[] {
	return findings
		.filter(({ severity }) => severity === "error" || severity === "warning")
		.map(told);
}

/** A finding by file and line, for a test that fails. */
export function told({ id, severity, origin, message }: Finding): string {
	const text = texts.get(origin.uri) ?? "";
	const line = text.slice(0, origin.span.start).split("\n").length;
	return `${origin.uri.slice(uriOf("").length)}:${line} ${severity} ${id}: ${message}`;
}
