// Writes the colouring grammar and the editor's language configuration from the table of tokens and the table of
// constructs. `node tests/generate/colouring.ts` writes, with `--check` it only says what is stale.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { letter, unitWords, wordCharacter } from "../../grammar/characters.ts";
import { contexts, formsOf, phraseWords } from "../../grammar/table/index.ts";
import { type TokenName, tokenTable } from "../../grammar/tokens.ts";

const folder = new URL("../../grammar/generated/", import.meta.url);

/** File name and text of everything that is generated here. */
export function colouringFiles(): ReadonlyMap<string, string> {
	return new Map([
		["storyrod.tmLanguage.json", asText(colouringGrammar())],
		["language-configuration.json", asText(languageConfiguration())],
	]);
}

/** The names of the files that are not as they would be written now. */
export function staleFiles(): string[] {
	return [...colouringFiles()]
		.filter(([name, text]) => textOf(name) !== text)
		.map(([name]) => name);
}

function textOf(name: string): string | undefined {
	try {
		return readFileSync(new URL(name, folder), "utf8");
	} catch {
		return undefined;
	}
}

function asText(value: unknown): string {
	return `${JSON.stringify(value, undefined, "\t")}\n`;
}

interface Rule {
	readonly match?: string;
	readonly begin?: string;
	readonly end?: string;
	readonly name?: string;
	readonly captures?: Readonly<Record<string, Rule>>;
	readonly beginCaptures?: Readonly<Record<string, Rule>>;
	readonly patterns?: readonly Rule[];
	readonly include?: string;
}

function scope(name: string): string {
	return `${name}.storyrod`;
}

/** A pattern of the lexer in the dialect of the colouring engine. */
function forColouring(pattern: string): string {
	return pattern.replace(/\\u([0-9a-f]{4})/g, "\\x{$1}");
}

function tokenRule(token: TokenName, name: string): Rule {
	const { pattern } = tokenTable[token] as { pattern: string };
	return { match: forColouring(pattern), name: scope(name) };
}

/** A name, and not the `x` between sizes. */
const name = forColouring(
	`(?!x(?![${wordCharacter}]|-[${wordCharacter}]))${tokenTable.Name.pattern}`,
);
const wordEnd = forColouring(`(?![${wordCharacter}]|-[${wordCharacter}])`);
const notInWord = forColouring(`(?<![${wordCharacter}])`);

function anyOf(words: readonly string[]): string {
	// Longer ones first, so that none hides another.
	const sorted = [...words].sort(
		(a, b) => b.length - a.length || (a < b ? -1 : 1),
	);
	return `(?:${sorted.join("|")})${wordEnd}`;
}

/** Heads behind which a new name stands. */
function declaringHeads(): string[] {
	const heads = new Set<string>();
	for (const rows of Object.values(contexts)) {
		for (const row of rows) {
			const declares = formsOf(row).length > 0 && row.declares !== undefined;
			if (!declares) continue;
			if (!row.forms.some((form) => /^<[a-z-]+:new-names?>/.test(form)))
				continue;
			for (const head of [row.head, ...(row.aliases ?? [])]) heads.add(head);
		}
	}
	return [...heads];
}

function colouringGrammar() {
	const head = `(?:^[ \\t]*|(?<=[{};])[ \\t]*)`;
	const middle: Rule[] = [
		{ match: "///.*$", name: scope("comment.line.documentation") },
		{ match: "//.*$", name: scope("comment.line.double-slash") },
		{
			match: forColouring(tokenTable.Text.pattern),
			name: scope("string.quoted.double"),
			captures: {
				"0": {
					patterns: [
						{ match: "\\\\.", name: scope("constant.character.escape") },
					],
				},
			},
		},
		tokenRule("OpenText", "string.quoted.double.open"),
		tokenRule("CurlyText", "string.quoted.other"),
		tokenRule("SingleQuotedText", "string.quoted.single"),
		tokenRule("BadNumber", "invalid.illegal.number"),
		tokenRule("Measure", "constant.numeric"),
		tokenRule("SizeNumber", "constant.numeric.size"),
		tokenRule("BadSizeNumber", "invalid.illegal.number"),
		{
			match: `(\\.)(?:(x${wordEnd})|(${name}))`,
			captures: {
				"1": { name: scope("punctuation.accessor") },
				"2": { name: scope("variable.other.property") },
				"3": { name: scope("variable.other.property") },
			},
		},
		{ match: `x${wordEnd}|\\x{00d7}`, name: scope("keyword.operator.size") },
		{
			match: `${anyOf(
				phraseWords().filter(
					(word) => word !== "x" && !unitWords.some((unit) => unit === word),
				),
			)}(?!\\.)`,
			name: scope("storage.modifier"),
		},
		{ match: `${name}(?=\\()`, name: scope("entity.name.function") },
		{ match: name, name: scope("variable.other") },
		tokenRule("Compare", "keyword.operator.comparison"),
		tokenRule("Equals", "keyword.operator.assignment"),
		{
			match: forColouring(
				[
					tokenTable.Plus.pattern,
					tokenTable.Minus.pattern,
					tokenTable.Times.pattern,
					tokenTable.Over.pattern,
				].join("|"),
			),
			name: scope("keyword.operator.arithmetic"),
		},
		{ match: ",", name: scope("punctuation.separator.list") },
		{ match: "[()\\[\\]]", name: scope("punctuation.section.brackets") },
		tokenRule("Dot", "punctuation.accessor"),
		{ match: "[^\\s{};]", name: scope("invalid.illegal") },
	];
	return {
		name: "Storyrod",
		scopeName: "source.storyrod",
		patterns: [
			{
				match: `${head}(${anyOf(declaringHeads())})[ \\t]+(${name}(?:,[ \\t]*${name})*)(?![(.])`,
				captures: {
					"1": { name: scope("keyword.control") },
					"2": {
						patterns: [
							{ match: name, name: scope("entity.name.type") },
							{ match: ",", name: scope("punctuation.separator.list") },
						],
					},
				},
			},
			{
				match: `${head}(${name})(?![(.])${wordEnd}`,
				captures: { "1": { name: scope("keyword.control") } },
			},
			{
				// A line that ends with a comma or an operator goes on: its next line begins no statement.
				begin: `(?:(,)|(${notInWord}x|\\x{00d7}|[-+*=<>]|/(?!/)))(?=[ \\t]*(?://.*)?$)`,
				beginCaptures: {
					"1": { name: scope("punctuation.separator.list") },
					"2": { name: scope("keyword.operator") },
				},
				end: "^[ \\t]+(?=\\S)(?!//)|^(?=\\S)(?!//)",
				patterns: [
					{ match: "///.*$", name: scope("comment.line.documentation") },
					{ match: "//.*$", name: scope("comment.line.double-slash") },
				],
			},
			{ match: "[{}]", name: scope("punctuation.section.block") },
			{ match: ";", name: scope("punctuation.terminator.statement") },
			...middle,
		] satisfies Rule[],
	};
}

function languageConfiguration() {
	const pairs: [string, string][] = [
		["{", "}"],
		["(", ")"],
	];
	return {
		comments: { lineComment: "//" },
		brackets: pairs,
		autoClosingPairs: [
			...pairs.map(([open, close]) => ({
				open,
				close,
				notIn: ["string", "comment"],
			})),
			{ open: '"', close: '"', notIn: ["string", "comment"] },
		],
		autoCloseBefore: ";,)}] \n\t",
		surroundingPairs: [...pairs, ['"', '"']],
		colorizedBracketPairs: pairs,
		wordPattern: `#?(?:[${letter}0-9][${wordCharacter}]*(?:-[${wordCharacter}]+)*)`,
		indentationRules: {
			// A `{` at the end of a line, before a comment at most, and not in one.
			increaseIndentPattern: "^[^/]*(?:/(?!/)[^/]*)*\\{[ \\t]*(?://.*)?$",
			decreaseIndentPattern: "^\\s*\\}",
		},
		onEnterRules: [
			// Only a description that is broken in two goes on: behind its end the design itself is typed.
			{
				beforeText: "^\\s*///.*\\S.*$",
				afterText: "\\S",
				action: { indent: "none", appendText: "/// " },
			},
		],
	};
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	if (process.argv.includes("--check")) {
		const stale = staleFiles();
		for (const file of stale) {
			console.error(
				`grammar/generated/${file} is stale; run node tests/generate/colouring.ts`,
			);
		}
		process.exitCode = stale.length > 0 ? 1 : 0;
	} else {
		for (const [file, text] of colouringFiles()) {
			writeFileSync(new URL(file, folder), text);
		}
	}
}
