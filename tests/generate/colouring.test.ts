// The colouring in the editor says what the lexer says: the generated grammar is fresh and agrees token by token.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fc from "fast-check";
import { expect, test } from "vitest";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";
import { endOf, lex } from "../../grammar/lexer.ts";
import {
	type ColourKind,
	type TokenName,
	tokenTable,
} from "../../grammar/tokens.ts";
import { colouringFiles, staleFiles } from "./colouring.ts";

const sample = readFileSync(
	new URL("../corpus/sample.rod", import.meta.url),
	"utf8",
);

test("the generated files are fresh", () => {
	expect(staleFiles(), "run node tests/generate/colouring.ts").toEqual([]);
});

const wasm = readFileSync(
	createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm"),
);
await oniguruma.loadWASM(new Uint8Array(wasm).buffer);

const registry = new textmate.Registry({
	onigLib: Promise.resolve({
		createOnigScanner: (patterns: string[]) =>
			new oniguruma.OnigScanner(patterns),
		createOnigString: (text: string) => new oniguruma.OnigString(text),
	}),
	loadGrammar: async () =>
		textmate.parseRawGrammar(
			colouringFiles().get("storyrod.tmLanguage.json") ?? "",
			"storyrod.tmLanguage.json",
		),
});
const loaded = await registry.loadGrammar("source.storyrod");
if (!loaded) throw new Error("the colouring grammar does not load");
const grammar = loaded;

interface Coloured {
	readonly start: number;
	readonly end: number;
	readonly scopes: readonly string[];
}

/** The editor's tokens of a text whose lines end with `\n`. */
function colour(text: string): Coloured[] {
	const out: Coloured[] = [];
	let state: textmate.StateStack = textmate.INITIAL;
	let lineStart = 0;
	for (const line of text.split("\n")) {
		const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
		for (const token of tokens) {
			out.push({
				start: lineStart + token.startIndex,
				end: lineStart + Math.min(token.endIndex, line.length),
				scopes: token.scopes,
			});
		}
		state = ruleStack;
		lineStart += line.length + 1;
	}
	return out;
}

function kindOf(scopes: readonly string[]): ColourKind {
	const has = (prefix: string) =>
		scopes.some((one) => one.startsWith(`${prefix}.`));
	if (has("comment")) return "comment";
	if (has("string")) return "string";
	if (has("constant.numeric")) return "number";
	if (has("keyword.operator")) return "operator";
	if (has("punctuation")) return "punctuation";
	if (has("invalid")) return "invalid";
	if (has("keyword") || has("storage") || has("variable") || has("entity"))
		return "name";
	return "none";
}

/** Kinds by the lexer, for each token that has one, with the text in front so that a difference can be read. */
function lexerKinds(text: string): string[] {
	const { tokens, comments } = lex(text);
	const all = [...tokens, ...comments].sort(
		(a, b) => a.startOffset - b.startOffset,
	);
	const out: string[] = [];
	for (const [i, token] of all.entries()) {
		const type = token.tokenType.name as TokenName;
		const before = all[i - 1];
		let kind: ColourKind = tokenTable[type].colour;
		// Behind a dot `x` is a name.
		if (
			token.image === "x" &&
			before?.image === "." &&
			endOf(before) === token.startOffset
		) {
			kind = "name";
		}
		if (kind !== "none") out.push(`${kind} ${token.image}`);
	}
	return out;
}

function editorKinds(text: string): string[] {
	const coloured = colour(text);
	const { tokens, comments } = lex(text);
	const all = [...tokens, ...comments].sort(
		(a, b) => a.startOffset - b.startOffset,
	);
	const out: string[] = [];
	let at = 0;
	for (const token of all) {
		const start = token.startOffset;
		const end = endOf(token);
		if (tokenTable[token.tokenType.name as TokenName].colour === "none")
			continue;
		while (at < coloured.length && (coloured[at] as Coloured).end <= start)
			at++;
		const kinds = new Set<string>();
		for (
			let i = at;
			i < coloured.length && (coloured[i] as Coloured).start < end;
			i++
		) {
			const one = coloured[i] as Coloured;
			if (one.end > one.start) kinds.add(kindOf(one.scopes));
		}
		out.push(`${[...kinds].join("+")} ${token.image}`);
	}
	return out;
}

function scopesOf(text: string, word: string): string | undefined {
	const at = text.indexOf(word);
	const found = colour(text).find((one) => one.start <= at && at < one.end);
	return found?.scopes.at(-1);
}

test("the sample is coloured as the lexer reads it", () => {
	expect(editorKinds(sample)).toEqual(lexerKinds(sample));
	expect(lexerKinds(sample).length).toBeGreaterThan(500);
});

test.each([
	`at 19 1/2" "note" 5' 2" 45 deg 18ga #8 40 % 68 F`,
	"at 3½ 5′ 2″ 45° 2-1/4 0.71",
	"at 42x30 18gauge 1e400 #8-32 5th",
	'use x from "./a" // x',
	"of case.x case.from.to x y",
	"given m = 3 m in-set 3 in-set from-here",
	'a "b \\" c" "open { ; x',
	"a (b, c) max(d) [e] <= >= == != < > = + - * / %",
	"a { b; c } d // {",
	"join a,\n  b to c\nd e",
	"given a = b +\n  c // d\n  e",
	"outside a x\n  b",
	"  x",
	"é-name ü 箱",
	"a ! $ & ? @ ^ ` | ~ \\ :",
])("coloured as read: %s", (text) => {
	expect(editorKinds(text)).toEqual(lexerKinds(text));
});

test("random lines are coloured as they are read", () => {
	const scraps = [
		..."{}()[],.;x×=+-*/<>\"'#%: ½″’°é",
		"  ",
		"\n  ",
		"a",
		"case",
		"from",
		"2 1/4",
		"5 ft 2 in",
		"18ga",
		"1e400",
		"042",
		"//",
		"///",
		"<=",
		"#8-32",
		"42x30",
		"given",
		"in",
		"mm",
	];
	fc.assert(
		fc.property(
			fc.array(fc.constantFrom(...scraps), { maxLength: 25 }),
			(parts) => {
				const text = parts.join("");
				expect(editorKinds(text)).toEqual(lexerKinds(text));
			},
		),
		{ numRuns: 2000 },
	);
});

test("the first word of a statement, phrase words and new names have colours of their own", () => {
	expect(scopesOf(sample, "piece")).toBe("keyword.control.storyrod");
	expect(scopesOf(sample, "record-bench")).toBe("entity.name.type.storyrod");
	expect(scopesOf("  top at 21 from floor", "top")).toBe(
		"keyword.control.storyrod",
	);
	expect(scopesOf("  top at 21 from floor", "from")).toBe(
		"storage.modifier.storyrod",
	);
	expect(scopesOf("a { glue; curve }", "curve")).toBe(
		"keyword.control.storyrod",
	);
	expect(scopesOf("join a,\n  b to c", "b")).toBe("variable.other.storyrod");
	expect(scopesOf("join a,\n  b to c\nd", "d")).toBe(
		"keyword.control.storyrod",
	);
	expect(scopesOf("leg left, right handed", "right")).toBe(
		"entity.name.type.storyrod",
	);
	expect(scopesOf("at max(a, b)", "max")).toBe("entity.name.function.storyrod");
	expect(scopesOf("case.top b", "case")).toBe("variable.other.storyrod");
});

test("the language configuration has patterns that work", () => {
	const configuration = JSON.parse(
		colouringFiles().get("language-configuration.json") ?? "",
	);
	const word = new RegExp(configuration.wordPattern, "g");
	expect("leg front-left 12 #8 case.top é-2".match(word)).toEqual([
		"leg",
		"front-left",
		"12",
		"#8",
		"case",
		"top",
		"é-2",
	]);
	const deeper = new RegExp(
		configuration.indentationRules.increaseIndentPattern,
	);
	const shallower = new RegExp(
		configuration.indentationRules.decreaseIndentPattern,
	);
	for (const line of ["box case {", "  a 3/4 { // why", 'b 15" {']) {
		expect(deeper.test(line), line).toBe(true);
	}
	for (const line of ["box case", "a { b }", "a // {", "}"]) {
		expect(deeper.test(line), line).toBe(false);
	}
	expect(shallower.test("  }")).toBe(true);
	expect(shallower.test("a }")).toBe(false);
	const enter = new RegExp(configuration.onEnterRules[0].beforeText);
	expect(enter.test("  /// A low bench")).toBe(true);
	expect(enter.test("  // plain")).toBe(false);
});
