// Each snippet that the editor offers is, as it comes, a good statement in its place: no error.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { constructAt } from "../../grammar/index.ts";
import { examplePreamble } from "../../shared/checks/example.ts";
import { runChecks } from "../../shared/checks/index.ts";
import { compile } from "../../shared/model/compile.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";

interface Snippet {
	readonly prefix: string;
	readonly description: string;
	readonly body: readonly string[];
}

const snippets = Object.entries(
	JSON.parse(
		readFileSync(
			new URL("../../client/snippets/storyrod.json", import.meta.url),
			"utf8",
		),
	) as Record<string, Snippet>,
);

/**
 * What stands in the editor once every stop is left as it comes: `${1:36}` is 36, `${1|in,mm|}` is in, `$1` the same
 * again, `$0` nothing.
 */
function expand(body: readonly string[]): string {
	const stops = new Map<string, string>();
	const stop = /\$\{(\d+)(?:\|([^,|]+)[^|]*\||:([^}]*))\}/g;
	return body
		.join("\n")
		.replaceAll(stop, (_, number: string, choice?: string, text?: string) => {
			const shown = choice ?? text ?? "";
			stops.set(number, shown);
			return shown;
		})
		.replaceAll(/\$(\d+)/g, (_, number: string) => stops.get(number) ?? "");
}

const component = `component plinth {
  given width = 30
  part front { of oak.four-quarter; size width x 3; lies across facing front }
}
`;

const inBox = (line: string, joined: string): string => `piece p {
  box case {
    outside 36 x 30 x 12
    panels top, bottom, left, right of ply.three-quarter
    back of ply.quarter inset 3/4
    bottom at 18 up from floor
    ${joined}
    ${line}
  }
}
`;

/** The snippet where a maker would ask for it. */
function placed(prefix: string, text: string): string {
	const joined = "join top, bottom to left, right { dado 1/4; glue }";
	if (constructAt("file", prefix) && prefix !== "veneer") return text;
	if (prefix === "box") return `piece p {\n${text}\n}\n`;
	if (prefix === "join") return inBox(text, "");
	if (constructAt("box", prefix)) return inBox(text, joined);
	return inBox(
		"",
		`${joined}\n}\n${text}\nbox other {
    outside 20 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    left at 10 right from case.right`,
	);
}

describe.each(snippets)("%s", (_, { prefix, description, body }) => {
	it("begins with the word that brings it, and has help", () => {
		const first = expand(body)
			.split("\n")
			.find((line) => !line.startsWith("///"));
		expect(first?.split(" ")[0]).toBe(prefix);
		expect(description).not.toBe("");
	});

	it("is no error as it comes", () => {
		const uri = "file:///snippet.rod";
		const text =
			examplePreamble +
			component.repeat(prefix === "component" ? 0 : 1) +
			placed(prefix, expand(body));
		const design = compile(sourcesOf(new Map([[uri, text]])), uri);
		const findings = [...design.findings, ...runChecks(design)];
		expect(
			findings
				.filter(({ severity }) => severity === "error")
				.map(
					({ message, origin }) =>
						`${message}: ${text.slice(origin.span.start, origin.span.end)}`,
				),
		).toEqual([]);
	});
});
