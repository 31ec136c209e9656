// Writes the pages of the checks from the checks themselves.

import { type Check, checkGroups, type Figure } from "./check.ts";

/** Where a check stands on the page of all checks: for links, behind `#`. */
export function checkAnchor(check: Check): string {
	return check.id;
}

/** One check in Markdown, without its heading: for the page and for a hover. */
export function checkPage(check: Check): string {
	const parts = [
		check.summary,
		`Severity: ${check.severity}.${check.reportedByEvaluation ? " Found while the design is evaluated." : ""}`,
		check.explanation.trim(),
		`Source: ${check.source}.`,
		...figuresTable(check),
		`Brings it:\n\n${fenced(check.fires)}`,
		`Silent:\n\n${fenced(check.silent)}`,
	];
	return parts.join("\n\n");
}

/** A fault as makers make it, for the page. */
export interface Case {
	/** What was made, and how it went wrong: one line. */
	readonly title: string;
	readonly design: string;
	/** What the check says of it. */
	readonly messages: readonly string[];
	/** The lines that a sound design has in place of others: taken out, put in. */
	readonly mended: {
		readonly out: readonly string[];
		readonly in: readonly string[];
	};
}

/**
 * The page of all checks; every example begins with the materials of `preamble`. `cases` are the faults of the catalogue by the
 * id of the check.
 */
export function checksPage(
	checks: readonly Check[],
	preamble: string,
	cases: ReadonlyMap<string, readonly Case[]>,
): string {
	const lines = [
		"# The checks",
		"Written by `tests/generate/checks-page.ts` from the files in `shared/checks/rules`; change those, not this.",
		"Every figure is a default: a workspace may set another, and another severity or `off`, by the id of the check. The editor has the settings `storyrod.checks.severity` and `storyrod.checks.figures`; a file `.storyrod.json` beside the designs, or in a folder above them, holds for the editor and the command line alike:",
		'```json\n{\n  "severity": { "fit-nominal": "error", "trim-back": "off" },\n  "figures": { "fit-mitre.opening": 0.3 }\n}\n```',
		"A check is no proof of strength or safety: building codes and a licensed practitioner come first.",
		"| Check | Severity | Tells |\n| --- | --- | --- |\n" +
			checks
				.map(
					(check) =>
						`| [${check.id}](#${checkAnchor(check)}) | ${check.severity} | ${cell(check.summary)} |`,
				)
				.join("\n"),
	];
	for (const [group, title] of Object.entries(checkGroups)) {
		const own = checks.filter((check) => check.group === group);
		if (own.length === 0) continue;
		lines.push(`## ${title}`);
		for (const check of own)
			lines.push(
				`### ${check.id}`,
				checkPage(check),
				...casesOf(cases.get(check.id) ?? []),
			);
	}
	lines.push(
		"## The materials of the examples",
		"Every example above begins with these lines.",
		fenced(preamble),
	);
	return `${lines.join("\n\n")}\n`;
}

function casesOf(cases: readonly Case[]): readonly string[] {
	return cases.length === 0
		? []
		: [
				"As makers do it:",
				...cases.map(({ title, design, messages, mended }) =>
					[
						`<details>\n<summary>${html(title)}</summary>`,
						fenced(design),
						...messages.map((message) => `> ${message}`),
						"Silent with:",
						`\`\`\`diff\n${[
							...mended.out.map((line) => `- ${line}`),
							...mended.in.map((line) => `+ ${line}`),
						].join("\n")}\n\`\`\``,
						"</details>",
					].join("\n\n"),
				),
			];
}

function html(text: string): string {
	return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
}

function figuresTable(check: Check): readonly string[] {
	const rows = Object.entries(check.figures).map(
		([name, figure]) =>
			`| \`${name}\` | ${amount(figure)} | ${cell(figure.help)} | ${cell(figure.source)} |`,
	);
	return rows.length === 0
		? []
		: [
				`| Figure | Default | What it is | Source |\n| --- | --- | --- | --- |\n${rows.join("\n")}`,
			];
}

function amount(figure: Figure): string {
	return figure.unit === "ratio"
		? `${figure.value}`
		: `${figure.value} ${figure.unit}`;
}

function cell(text: string): string {
	return text.replaceAll("|", "\\|");
}

function fenced(text: string): string {
	return `\`\`\`storyrod\n${text.trim()}\n\`\`\``;
}
