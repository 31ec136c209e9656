// The catalogue: small designs with a fault that makers make, each with its near miss, and designs of sound practice. Read
// from tests/corpus by the tests and by the page of checks.

import { readdirSync, readFileSync } from "node:fs";
import { compile } from "../../shared/model/compile.ts";
import type { Design } from "../../shared/model/types.ts";
import { type Sources, sourcesOf } from "../../shared/sources/sources.ts";
import { compareStrings } from "../../shared/text/compare.ts";

const root = new URL("../../", import.meta.url);

/** What the first lines of a file say that it brings. */
export interface Expectation {
	readonly id: string;
	/** Must stand in the message; empty for `also`. */
	readonly part: string;
}

export interface CatalogueFile {
	/** Without folder and extension: `brad-comes-out`. */
	readonly name: string;
	readonly uri: string;
	/** The whole text, as it stands on disk. */
	readonly text: string;
	/** The text without the lines about what is expected. */
	readonly body: string;
	readonly expects: readonly Expectation[];
	/** Ids that may come along. */
	readonly also: readonly string[];
}

export interface Fault extends CatalogueFile {
	/** The near miss: all but the same, and sound. */
	readonly near: CatalogueFile;
}

const nearEnd = ".near";

function filesIn(folder: string): readonly CatalogueFile[] {
	return readdirSync(new URL(`tests/corpus/${folder}/`, root))
		.filter((file) => file.endsWith(".rod"))
		.sort(compareStrings)
		.map((file) => {
			const path = `tests/corpus/${folder}/${file}`;
			return readFile(
				file.slice(0, -".rod".length),
				uriOf(path),
				readFileSync(new URL(path, root), "utf8"),
			);
		});
}

function uriOf(path: string): string {
	return `file:///house/${path}`;
}

function readFile(name: string, uri: string, text: string): CatalogueFile {
	const lines = text.split("\n");
	const expects: Expectation[] = [];
	const also: string[] = [];
	let read = 0;
	for (const line of lines) {
		const expected = /^\/\/ expects: ([a-z-]+): (.+)$/.exec(line);
		const allowed = /^\/\/ also: ([a-z-]+)$/.exec(line);
		if (expected)
			expects.push({ id: expected[1] as string, part: expected[2] as string });
		else if (allowed) also.push(allowed[1] as string);
		else break;
		read++;
	}
	return {
		name,
		uri,
		text,
		body: lines.slice(read).join("\n").trim(),
		expects,
		also,
	};
}

const inFaults = filesIn("faults");

/** All faults, by name. Throws where one has no near miss, or a near miss no fault: a fault of the catalogue. */
export const faults: readonly Fault[] = inFaults
	.filter(({ name }) => !name.endsWith(nearEnd))
	.map((file) => {
		const near = inFaults.find(({ name }) => name === `${file.name}${nearEnd}`);
		if (!near) throw new Error(`The fault ${file.name} has no near miss`);
		return { ...file, near };
	});

for (const { name } of inFaults)
	if (
		name.endsWith(nearEnd) &&
		!faults.some((fault) => fault.near.name === name)
	)
		throw new Error(`The near miss ${name} has no fault`);

export const soundDesigns: readonly CatalogueFile[] = filesIn("sound");

const designs = "shared/designs/";

/** The catalogue as files, with the shipped designs whose stock it uses. */
export const catalogueSources: Sources = sourcesOf(
	new Map([
		...[...inFaults, ...soundDesigns].map(({ uri, text }): [string, string] => [
			uri,
			text,
		]),
		...readdirSync(new URL(designs, root))
			.filter((file) => file.endsWith(".rod"))
			.map((file): [string, string] => [
				uriOf(`${designs}${file}`),
				readFileSync(new URL(`${designs}${file}`, root), "utf8"),
			]),
	]),
);

export function designAt(uri: string): Design {
	return compile(catalogueSources, uri);
}

/** The design of a file with another text in its place. */
export function designWith(uri: string, text: string): Design {
	return compile(
		{
			...catalogueSources,
			read: (asked) => (asked === uri ? text : catalogueSources.read(asked)),
		},
		uri,
	);
}
