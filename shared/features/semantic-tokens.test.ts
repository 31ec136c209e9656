// What words are coloured as: each expectation is a line of the text with what its words are, in their order.

import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/index.ts";
import {
	declaredKinds,
	type ImportKind,
	numbersPerToken,
	semanticTokens,
	tokensWithin,
} from "./semantic-tokens.ts";
import { tokenModifiers, tokenTypes } from "./support/tokens/legend.ts";

const stock = parse(`
sheet ply { variant half { thick 1/2 } }
board oak { variant thick { planed 2 } }
fastener fixings { variant eight { screw #8 x 1 } }
component base { given width = 30 }
`).tree;
const fromStock: ImportKind = (name) => declaredKinds(stock).get(name);

/** `word:type.modifier` for each token, by line. */
function coloured(text: string): string[] {
	const lines: string[][] = text.split("\n").map(() => []);
	const { tree } = parse(text);
	for (const { start, tokens } of semanticTokens(tree, fromStock)) {
		for (let at = 0; at < tokens.length; at += numbersPerToken) {
			const [offset = 0, length = 0, type = 0, modifiers = 0] =
				tokens.slice(at);
			const from = start + offset;
			const names = tokenModifiers
				.filter((_one, bit) => modifiers & (1 << bit))
				.map(({ name }) => `.${name}`);
			const line = text.slice(0, from).split("\n").length - 1;
			lines[line]?.push(
				`${text.slice(from, from + length)}:${tokenTypes[type]?.name}${names.join("")}`,
			);
		}
	}
	return lines.map((line) => line.join(" "));
}

describe("words by what they mean", () => {
	test("names that other files bring are what they are there", () => {
		expect(
			coloured(
				'use oak, base, lost from "./stock.rod"\npiece a { part b { of oak.thick }; make c from base { }; must lost > 1 }',
			),
		).toEqual([
			'use:keyword oak:class.declaration base:interface.declaration lost:variable.declaration from:modifier "./stock.rod":string',
			"piece:keyword a:namespace.declaration part:keyword b:part.declaration of:keyword oak:class thick:enumMember make:keyword c:struct.declaration from:modifier base:interface must:keyword lost:variable >:operator 1:number",
		]);
	});

	test("a word of the language is a name where the piece declares it, and only where a name stands", () => {
		expect(
			coloured(
				"piece a {\n  given across = 3\n  part b { lies across facing up; size across x 2 }\n}",
			).slice(1, 3),
		).toEqual([
			"given:keyword across:variable.declaration =:operator 3:number",
			"part:keyword b:part.declaration lies:keyword across:modifier facing:modifier up:modifier size:keyword across:variable 2:number",
		]);
	});

	test("a given may be set, a mark not; in a component a given is a parameter", () => {
		expect(
			coloured(
				"component c {\n  given w = 3\n  mark v = w / 2\n  part b { size v x w }\n}\npiece p { make d from c { set w = 4 } }",
			).slice(1),
		).toEqual([
			"given:keyword w:parameter.declaration =:operator 3:number",
			"mark:keyword v:variable.declaration.readonly =:operator w:parameter /:operator 2:number",
			"part:keyword b:part.declaration size:keyword v:variable.readonly w:parameter",
			"",
			"piece:keyword p:namespace.declaration make:keyword d:struct.declaration from:modifier c:interface set:keyword w:parameter =:operator 4:number",
		]);
	});

	test("behind a dot: panels, dividers, sizes and faces", () => {
		expect(
			coloured(
				"piece a {\n  box case { divider middle of ply.half centred }\n  mark m = case.middle.length - case.left.thick + case.width\n}",
			)[2],
		).toBe(
			"mark:keyword m:variable.declaration.readonly.unused =:operator case:struct middle:part length:property.readonly -:operator case:struct left:part thick:property.readonly +:operator case:struct width:property.readonly",
		);
	});

	test("inside a leg its layers stand by their own names", () => {
		expect(
			coloured(
				"piece a {\n  leg l {\n    layer inner of x 2 wide from floor up to l\n    join inner to l { glue }\n  }\n}",
			)[3],
		).toBe("join:keyword inner:part to:modifier l:struct glue:keyword");
	});

	test("numbers and their units", () => {
		expect(
			coloured("precision 5 ft 2 1/2 in\ntolerance 40%\nscrew #8 x 45 mm"),
		).toEqual([
			"precision:keyword 5:number ft:unit 2 1/2:number in:unit",
			"tolerance:keyword 40:number %:unit",
			"screw:keyword #8:number 45:number mm:unit",
		]);
	});

	test("functions, comments and descriptions", () => {
		expect(coloured("/// Low.\npiece a { mark m = max(1, 2) } // end")).toEqual(
			[
				"/// Low.:comment.documentation",
				"piece:keyword a:namespace.declaration mark:keyword m:variable.declaration.readonly.unused =:operator max:function.readonly.defaultLibrary 1:number 2:number // end:comment",
			],
		);
	});
});

describe("names that nothing uses", () => {
	test("sizes of a piece", () => {
		expect(
			coloured(
				"piece a {\n  given w = 3\n  given v = 4\n  precision w\n}",
			).slice(1, 3),
		).toEqual([
			"given:keyword w:variable.declaration =:operator 3:number",
			"given:keyword v:variable.declaration.unused =:operator 4:number",
		]);
	});

	test("imports; fasteners are found by their size, so they need no mention", () => {
		const head = 'use oak, fixings from "./stock.rod"\n';
		expect(coloured(`${head}piece a { }`)[0]).toContain(
			"oak:class.declaration.unused fixings:class.declaration from",
		);
		expect(coloured(`${head}piece a { part b { of oak.thick } }`)[0]).toContain(
			"oak:class.declaration fixings",
		);
	});
});

test("half-typed lines keep the colours of what can be read", () => {
	expect(
		coloured(
			"piece a {\n  given w = 3\n  box case {\n    divider middle of\n    outside w x\n  }\n}",
		).slice(3, 5),
	).toEqual([
		"divider:keyword middle:part.declaration of:modifier",
		"outside:keyword w:variable",
	]);
});

test("only a part of the text: whole tokens that it meets", () => {
	const text = "unit in\nprecision 1/32\npiece a { unit mm }";
	const at = text.indexOf("1/32");
	const groups = tokensWithin(semanticTokens(parse(text).tree), {
		start: at + 1,
		end: at + 6,
	});
	const words = groups.flatMap(({ start, tokens }) =>
		Array.from({ length: tokens.length / numbersPerToken }, (_one, index) => {
			const from = start + (tokens[index * numbersPerToken] as number);
			return text.slice(
				from,
				from + (tokens[index * numbersPerToken + 1] as number),
			);
		}),
	);
	expect(words).toEqual(["1/32", "piece"]);
});
