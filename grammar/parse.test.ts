// Each decision about how a text is read, as a readable input: the tree it gives, or the marks below its faulty places.

import { expect, test } from "vitest";
import {
	applyFix,
	faultIds,
	fixedText,
	remarked,
	treeText,
} from "../tests/harness/tree-text.ts";
import { parse } from "./parse.ts";

/** A text that reads without fault as this tree. */
function reads(text: string, tree: string): void {
	expect(faultIds(text), text).toEqual([]);
	expect(treeText(text), text).toBe(tree);
}

/** A text with its faults marked, and what is read all the same. */
function faults(marked: string, tree?: string): void {
	const { text, marks } = remarked(marked);
	expect(marks).toBe(marked);
	if (tree !== undefined) expect(treeText(text), text).toBe(tree);
}

/** The fault's own fix gives this text, and that text is sound. */
function mends(text: string, mended: string): void {
	expect(faultIds(text), text).toHaveLength(1);
	expect(fixedText(text)).toBe(mended);
	expect(faultIds(mended), mended).toEqual([]);
}

test("every word is a name: the construct table decides what it means", () => {
	reads("top cut 5 deg", "top cut 5[deg]");
	reads("from of to", "from of to");
	reads("width-of-it é-1 _a", "width-of-it é-1 _a");
	reads("κουτί 箱 короб", "κουτί 箱 короб");
});

test("`x` separates sizes, of lower rank than a sum, of higher than a comma", () => {
	reads("outside a x b - 1 x c", "outside <a x (b - 1) x c>");
	reads("screw #8 x 45", "screw <#8 x 45>");
	reads("sizes 1 x 2, 3 x 4", "sizes [<1 x 2>, <3 x 4>]");
	reads("outside 10×5", "outside <10 x 5>");
	reads("of case.x", "of case.x");
	reads("at 2 x 3/4", "at <2 x 3/4>");
});

test("`x` is no name", () => {
	faults("given x = 5\n      ^ x-reserved", "given x = 5");
	faults('use x from "./a.rod"\n    ^ x-reserved', 'use x from "./a.rod"');
	faults("use a, x from b\n       ^ x-reserved", "use [a, x] from b");
	faults("piece x {}\n      ^ x-reserved", "piece x {}");
	faults("at x.y\n   ^ x-reserved");
});

test("a size is missing beside `x`", () => {
	faults("outside 5 x\n          ^ missing-operand", "outside <5 x ?>");
	faults("a = x 5\n    ^ missing-operand", "a = ? 5");
});

test("numbers and words that grew together", () => {
	faults("at 42x30\n   ^^^^^ tangled-number", "at ?");
	mends("at 42x30", "at 42 x 30");
	mends("at 42x30x5.5", "at 42 x 30 x 5.5");
	mends("pin 18gauge", "pin 18ga");
	mends("at 5inches", "at 5 in");
	mends("at 5lbs", "at 5 lb");
	mends("at 450MM", "at 450mm");
	mends("at 5ft2in", "at 5 ft 2 in");
	mends("at 1e3", "at 1000");
	mends("at 1.5e-2", "at 0.015");
	mends("at 2.50e1", "at 25");
	mends("at 42 x30", "at 42 x 30");
	mends("at 42 X 30", "at 42 x 30");
	faults("the 5th shelf\n    ^^^ tangled-number", "the ? shelf");
	faults("at 1e400\n   ^^^^^ number-too-large", "at ?");
	faults(
		"at 1234567890123456789012345678901\n   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ number-too-large",
	);
});

test("a number is one token with its unit", () => {
	reads("at 2 1/4", "at 9/4");
	reads("at 2-1/4", "at 9/4");
	reads("at 3/4", "at 3/4");
	reads("at 0.71", "at 71/100");
});

test("every unit", () => {
	reads("a 19 1/2 in b", "a 39/2[in] b");
	reads('a 19 1/2" b', "a 39/2[in] b");
	reads("a 5 ft b", "a 5[ft] b");
	reads("a 5' b", "a 5[ft] b");
	// 5 x 12 + 2 = 62
	reads("a 5 ft 2 in b", "a 62[ft-in] b");
	reads("a 5' 2\" b", "a 62[ft-in] b");
	reads("a 5'2\" b", "a 62[ft-in] b");
	// 5 x 12 + 2 1/2 = 125/2
	reads("a 5'-2 1/2\" b", "a 125/2[ft-in] b");
	reads("a 450 mm b 45cm c 1.2 m", "a 450[mm] b 45[cm] c 12/10[m]");
	reads(
		"a 45 deg b 30 lb c 8 oz d 14 kg e 5 g",
		"a 45[deg] b 30[lb] c 8[oz] d 14[kg] e 5[g]",
	);
	reads(
		"a 68 F b 20 C c 40 % d 40%",
		"a 68[F] b 20[C] c 40[percent] d 40[percent]",
	);
	reads("a 18ga b 18 ga c #8", "a 18[gauge] b 18[gauge] c #8");
});

test("unit words are units only after a number", () => {
	reads("given m = 3 m", "given m = 3[m]");
	reads("unit in", "unit in");
	reads("a 2 * m", "a (2 * m)");
	reads("a 3 in-set", "a 3 in-set");
	reads("a 3  in", "a 3 in");
	reads("a 68 f", "a 68 f");
	reads("a 5in - 3in", "a (5[in] - 3[in])");
});

test("what a word processor makes of signs is read, with a hint", () => {
	for (const [typed, plain] of [
		["a 3½", "a 3 1/2"],
		["a ½", "a 1/2"],
		["a 3 ¾ in", "a 3 3/4 in"],
		["a 3⁄4", "a 3/4"],
		["a 5′ 2″", "a 5' 2\""],
		["a 5’ 2”", "a 5' 2\""],
		["a 5''", 'a 5"'],
		["a 45°", "a 45 deg"],
		["a 68 °F", "a 68 F"],
		["a 20°C", "a 20 C"],
		["a 2\u00a01/4", "a 2 1/4"],
		["a 2–1/4", "a 2-1/4"],
		["a b − c", "a b - c"],
		["a b – c", "a b - c"],
		["a b ÷ c", "a b / c"],
		["a b ≤ c", "a b <= c"],
		["a “the door”", 'a "the door"'],
	] as const) {
		expect(treeText(typed), typed).toBe(treeText(plain));
		expect(parse(typed).faults.map((one) => one.severity)).toEqual(["hint"]);
		mends(typed, plain);
	}
});

test("two sizes side by side are one fault, with what was probably meant", () => {
	faults("at 2  1/4\n   ^^^^^^ two-sizes");
	mends("at 2  1/4", "at 2 1/4");
	mends("at 2 1 /4", "at 2 1/4");
	mends("at 1 000", "at 1000");
	mends("at 12 250", "at 12250");
	mends("at 2 -1/4", "at 2 - 1/4");
	mends("at 5 ft 2", "at 5 ft 2 in");
	mends("at 5' 2", "at 5' 2\"");
	mends("at (2  1/4)", "at (2 1/4)");
	faults("at 3 mm 4 mm\n   ^^^^^^^^^ two-sizes", "at 3[mm] 4[mm]");
	reads("at 2 1/4, 5 1/2", "at [9/4, 11/2]");
	reads("biscuit #10  1 3/4 down", "biscuit #10 7/4 down");
});

test("a size before a place wants the place led in by `at`", () => {
	mends(
		"shelf one bay 1 dado 3/16 36 above bottom",
		"shelf one bay 1 dado 3/16 at 36 above bottom",
	);
	mends(
		"shelf one bay 1 190 above bottom",
		"shelf one bay 1 at 190 above bottom",
	);
	mends(
		"shelf one dado 3/16 2 1/2 up from side.top",
		"shelf one dado 3/16 at 2 1/2 up from side.top",
	);
	// Without a datum it is no place.
	mends("at 2  1/4", "at 2 1/4");
	mends("at 12 250 up", "at 12250 up");
});

test("needless zeros and commas inside a number", () => {
	mends("at 042", "at 42");
	mends("at 007/8", "at 7/8");
	faults("at 1,000\n   ^^^^^ thousands-comma", "at [1, 0]");
	mends("at 1,000", "at 1000");
	faults("at 1,250\n   ^^^^^ thousands-comma", "at [1, 250]");
	mends("at 1,250", "at 1250");
	reads("at 1, 250", "at [1, 250]");
	reads("at 100,20", "at [100, 20]");
	reads("at 0", "at 0");
	reads("at 0.5", "at 5/10");
});

test("the same needless zero is told each time", () => {
	expect(faultIds("a 1 000\nb 000\nc 000")).toEqual([
		"two-sizes",
		"leading-zero",
		"leading-zero",
	]);
});

test("fractions that cannot be", () => {
	faults("at 1/0\n   ^^^ zero-denominator", "at 0");
	faults("at 2 5/4\n   ^^^^^ improper-fraction", "at 13/4");
	reads("at 5/4", "at 5/4");
	// 5 x 12 + 14 = 74
	faults("at 5' 14\"\n   ^^^^^^ improper-fraction", "at 74[ft-in]");
});

test("a fraction binds tighter than a division", () => {
	reads("at 12 / 3/4", "at (12 / 3/4)");
	reads("at 1 + 2 * 3", "at (1 + (2 * 3))");
	reads("at 8 - 2 - 1", "at ((8 - 2) - 1)");
	reads("at 8 / 2 * 3", "at ((8 / 2) * 3)");
});

test("operators have a blank on both sides", () => {
	faults("at w/3/4\n    ^ operator-spacing", "at (w / 3/4)");
	mends("at w/3/4", "at w / 3/4");
	mends("at w+1", "at w + 1");
	mends("at w* 2", "at w * 2");
	mends("at 3-1", "at 3 - 1");
	mends("at a+b*c", "at a + b * c");
	mends("at (w -1)", "at (w - 1)");
});

test("a hyphen inside a word is the word's", () => {
	reads("at front-left", "at front-left");
	faults("at width-1/2\n   ^^^^^^^ operator-spacing");
	mends("at width-1/2", "at width - 1/2");
	reads("at width - 1/2", "at (width - 1/2)");
});

test("a sign touches its number", () => {
	reads("at -1/2", "at (-1/2)");
	reads("at -2 1/4", "at (-9/4)");
	reads("at +1/2", "at (+1/2)");
	reads("at width -1/2", "at width (-1/2)");
	reads("a = -w", "a = (-w)");
	reads("a = 2 * -w", "a = (2 * (-w))");
	mends("a = - 5", "a = -5");
});

test("thread names are texts", () => {
	mends("bolt 1/4-20", 'bolt "1/4-20"');
	mends("screw #8-32", 'screw "#8-32"');
	faults("screw #\n      ^ tangled-size-number", "screw ?");
	faults("screw #12345\n      ^^^^^^ tangled-size-number", "screw ?");
});

test("a quote directly after a digit is a mark, else it opens a text", () => {
	reads('note 19 1/2" "note"', 'note 39/2[in] "note"');
	reads('note 19 1/2 "note"', 'note 39/2 "note"');
	faults(
		'note 15"the door"\n                ^ open-text',
		"note 15[in] the door ?",
	);
});

test("texts and their escapes", () => {
	reads('a "b // c { d"', 'a "b // c { d"');
	reads('a "say \\"so\\" \\\\ now"', 'a "say \\"so\\" \\\\ now"');
	faults('a "b\\qc"\n    ^^ unknown-escape', 'a "b\\\\qc"');
	mends('a "b\\qc"', 'a "b\\\\qc"');
	mends("a 'b c'", 'a "b c"');
	faults("a 'b\n  ^ stray-sign", "a ? b");
});

test("an open text costs its line only", () => {
	faults('a "b c\n  ^^^^ open-text\nd e', "a ?\nd e");
});

test("dots are tight on both sides", () => {
	reads("of case.front.edges", "of case.front.edges");
	faults("at case.  dado 1/4\n       ^ missing-after-dot", "at case dado 1/4");
	faults("at case.\n       ^ missing-after-dot\ndado 1/4", "at case\ndado 1/4");
	mends("at case .top", "at case.top");
	faults("at case.12\n       ^^^ missing-after-dot", "at case");
});

test("half a decimal is no number", () => {
	mends("at .5", "at 0.5");
	mends("at 2.", "at 2");
	mends("at 3 in.", "at 3 in");
	faults("at 1.2.3\n   ^^^^^ point-without-digits");
});

test("the bracket of a call touches its name", () => {
	reads("at max(a, b)", "at max(a, b)");
	reads("at max (a, b)", "at max group([a, b])");
	reads("at floor()", "at floor()");
	reads("at max(min(a, b), 2 + c)", "at max(min(a, b), (2 + c))");
	faults("at case.max(a)\n   ^^^^^^^^ dotted-call");
});

test("a comma binds tighter than standing side by side", () => {
	reads(
		"join top, bottom to left, right",
		"join [top, bottom] to [left, right]",
	);
	reads(
		"case front edges, case back edges",
		"case front [edges, case] back edges",
	);
});

test("commas that join nothing", () => {
	faults("join top,\n        ^ missing-after-comma", "join top");
	faults("join a,, b\n      ^ missing-after-comma", "join [a, b]");
	faults(", a\n^ stray-comma", "a");
	faults("a = , b\n    ^ stray-comma", "a = b");
});

test("operators that join nothing", () => {
	faults("a b +\n    ^ missing-operand", "a (b + ?)");
	faults("a b * * c\n    ^ missing-operand", "a ((b * ?) * c)");
	faults("* 5\n^ missing-operand", "(? * 5)");
	faults("must a <=\n       ^^ missing-operand", "must (a <= ?)");
	faults("a -\n  ^ missing-operand", "(a - ?)");
});

test("comparisons", () => {
	reads('must a + b <= 17 "why"', 'must ((a + b) <= 17) "why"');
	reads("must a != b", "must (a != b)");
	faults("must 1 < a < 3\n           ^ chained-comparison");
	mends("must a => b", "must a >= b");
	mends("must a <> b", "must a != b");
	reads("must a = b", "must a = b");
});

test("brackets", () => {
	reads("at (a + b) * 2", "at (group((a + b)) * 2)");
	faults("a (b\n  ^ open-bracket", "a group(b)");
	faults("a b)\n   ^ stray-bracket", "a b ?");
	faults("a (b c) d\n     ^ junk-in-brackets", "a group(b) d");
	faults("a () b\n  ^^ empty-brackets", "a group(?) b");
	mends("a [b, c]", "a (b, c)");
	mends("a (b))", "a (b)");
});

test("signs without meaning", () => {
	mends("width: 5", "width 5");
	faults("a € 😀 b\n  ^ stray-sign\n    ^^ stray-sign", "a ? ? b");
	faults("a b % c\n    ^ stray-percent", "a b ? c");
	faults("a \u0001 b\n  ^ stray-sign", "a ? b");
});

test("a newline ends a statement", () => {
	reads("a b\nc d", "a b\nc d");
	reads("a b\n    c d", "a b\nc d");
	reads("a b; c d;; e", "a b\nc d\ne");
	reads("\n\na\n\n\n", "a");
});

test("after a comma or an operator a deeper line goes on", () => {
	reads("join a,\n  b to c", "join [a, b] to c");
	reads("given a =\n  b +\n  c", "given a = (b + c)");
	reads("outside a x\n  b x\n  c", "outside <a x b x c>");
});

test("a line that is not deeper does not go on", () => {
	faults(
		"join top,\n        ^ missing-after-comma\nback of ply",
		"join top\nback of ply",
	);
	faults(
		"a {\n  b c +\n      ^ missing-operand\n  d e\n}",
		"a { b (c + ?); d e }",
	);
});

test("a leading comma or operator does not go on", () => {
	expect(treeText("a b\n  , c")).toBe("a b\nc");
	expect(faultIds("a b\n  , c")).toEqual(["stray-comma"]);
});

test("inside brackets deeper lines go on, and a closing bracket does in any column", () => {
	reads("a max(b,\n  c\n) d\ne", "a max(b, c) d\ne");
	faults("a (b\n  ^ open-bracket\nc d", "a group(b)\nc d");
});

test("a brace may stand below its header", () => {
	reads("a b\n{\n  c\n}\nd", "a b { c }\nd");
});

test("blocks", () => {
	reads("a { b; c { d } }\ne", "a { b; c { d } }\ne");
	reads("a {}", "a {}");
	faults("{ a }\n^ block-without-head", "{ a }");
	faults("a { b } { c }\n        ^ two-blocks", "a { b }\n{ c }");
	faults("a { b } c d\n        ^ words-after-block", "a { b }\nc d");
	mends("a { b } c d", "a { b } ; c d");
});

test("a lost closing brace is found by the indentation", () => {
	faults(
		"piece a {\n  box b {\n        ^ missing-close-brace\n    c\n  d\n}\ne",
		"piece a { box b { c }; d }\ne",
	);
	mends(
		"piece a {\n  box b {\n    c\n  d\n}\ne",
		"piece a {\n  box b {\n    c\n  }\n  d\n}\ne",
	);
	faults("a { b; c\n  ^ missing-close-brace\nd", "a { b; c }\nd");
	mends("a {\n  b", "a {\n  b\n}");
});

test("a lost opening brace is found by the indentation", () => {
	faults(
		"piece a\n^^^^^^^ missing-open-brace\n  b\n  c {\n    d\n  }\n}\ne",
		"piece a { b; c { d } }\ne",
	);
	mends("piece a\n  b\n}\ne", "piece a {\n  b\n}\ne");
});

test("a closing brace too many is dropped", () => {
	faults(
		"a {\n  b {\n    c }\n      ^ stray-close-brace\n  }\n  d\n}\ne",
		"a { b { c }; d }\ne",
	);
	faults("a\n}\n^ stray-close-brace\nb", "a\nb");
});

test("of the closing braces on a line the one in a statement's middle is too many", () => {
	faults(
		"a { b; c } d; e }\n         ^ stray-close-brace\nf",
		"a { b; c d; e }\nf",
	);
});

test("the mend of a lost closing brace leaves the comments of the next statement alone", () => {
	mends("a {\n  b // why\n\n/// next\nc", "a {\n  b // why\n}\n\n/// next\nc");
});

test("what is wrong in itself behind a block is told rather than that it stands there", () => {
	mends("a { b } )", "a { b } ");
	mends("a { b },", "a { b }");
});

test("a header that goes on over a comma gets its own brace's column", () => {
	faults(
		"a b,\n  c {\n  d\n}\ne {\n  ^ missing-close-brace\n",
		"a [b, c] { d }\ne {}",
	);
});

test("a `{` too many is dropped where only one block is closed", () => {
	mends("a { b {\n  c\n}\nd", "a  b {\n  c\n}\nd");
});

test("a brace that an open text swallowed is no fault of its own", () => {
	faults(
		'a {\n  b c "d {\n      ^^^^ open-text\n    e\n  }\n  f\n}',
		"a { b c ? { e }; f }",
	);
	faults(
		'a {\n  b { c "d }\n        ^^^^ open-text\n  e\n}',
		"a { b { c ? }; e }",
	);
});

test("balanced braces are never read by the indentation", () => {
	reads("a {\nb {\nc\n}\n      d\n}", "a { b { c }; d }");
});

test("comments stand beside the tree", () => {
	const { tree, faults } = parse("a b, // one\n  c // two\n// three\nd");
	expect(faults).toEqual([]);
	expect(tree.comments.map((one) => [one.text, one.ownLine, one.doc])).toEqual([
		["one", false, false],
		["two", false, false],
		["three", true, false],
	]);
	expect(treeText("a b, // one\n  c // two\n// three\nd")).toBe("a [b, c]\nd");
});

test("`///` lines describe the statement below them", () => {
	const { tree, faults } = parse(
		"/// one\n///   two\n// three\na {\n  /// four\r\n  b\n}",
	);
	expect(faults).toEqual([]);
	expect(tree.statements[0]?.doc).toBe("one\n  two");
	expect(tree.statements[0]?.block?.statements[0]?.doc).toBe("four");
});

test("a `///` line that describes nothing brings a hint", () => {
	faults("/// a\n^^^^^ dangling-doc\n\nb", "b");
	faults("a /// b\n  ^^^^^ dangling-doc", "a");
	faults("a {\n  /// b\n  ^^^^^ dangling-doc\n}", "a {}");
	mends("a /// b", "a // b");
});

test("the head is the first item if it is a plain word", () => {
	const heads = parse('box a\ncase.top b\n5 c\n"d" e;\n{ f }\nmax(a) b').tree;
	expect(heads.statements.map((one) => one.head)).toEqual([
		"box",
		"",
		"",
		"",
		"",
		"",
	]);
	expect(heads.statements[0]?.headSpan).toEqual({ start: 0, end: 3 });
});

test("byte order mark, tabs and odd blanks", () => {
	reads("\ufeffa b", "a b");
	reads("a {\n\tb\t\tc\n}", "a { b c }");
	mends("a\u00a0b", "a b");
	mends("a \u200bb", "a b");
});

test("tabs count for the indentation", () => {
	reads("\ta b,\n\t\tc", "a [b, c]");
	faults("\ta b,\n\t   ^ missing-after-comma\n\tc", "a b\nc");
});

test("one damaged statement brings one error", () => {
	for (const text of [
		"join (top, bottom to left + , right",
		"a + * ( ) ] x , . b",
		'a "b + * (',
		"a 2  1/4 + , * (",
		"a 42x30 + , * (",
		"a . . . b",
	]) {
		expect(
			parse(text).faults.filter((one) => one.severity === "error"),
			text,
		).toHaveLength(1);
	}
});

test("messages are one line, begin with a capital or a quoted word and have no full stop", () => {
	const all = parse(
		'a 042 1,000 \'b\' "c\\q" #8-32 1/4-20 42x30 1e400 5th x ? % : (\n{ a } b\n} c\na.\na ..b\nmust a<b<c\n///\na [1 2] ()\n\u00a0 { "',
	).faults;
	expect(all.length).toBeGreaterThan(15);
	for (const { message } of all) {
		expect(message).toMatch(/^[A-Z`][^\n]*[^.\n]$/);
	}
});

test("applying a fix removes its fault and adds none", () => {
	const texts = ["a 3½ x 042", "a w/2 - 1", "width: 5", "a (w -1, b)", "a [b]"];
	for (const text of texts) {
		for (const fault of parse(text).faults) {
			if (!fault.fix) continue;
			const after = faultIds(applyFix(text, fault));
			expect(after.length, text).toBe(parse(text).faults.length - 1);
		}
	}
});
