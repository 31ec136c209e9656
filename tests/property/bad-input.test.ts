// The worst that can be fed in: each gets an answer with a place and a mend, and nothing throws or hangs.

import { describe, expect, test } from "vitest";
import { runChecks } from "../../shared/checks/index.ts";
import { CompileCache, compile } from "../../shared/model/compile.ts";
import type { Design, Finding } from "../../shared/model/types.ts";

import { cutList } from "../../shared/outputs/cut-list.ts";
import { cutListJson } from "../../shared/outputs/cut-list-json.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { boughtAtOnce } from "../harness/bought.ts";
import { designTexts } from "../harness/design-texts.ts";

const main = "/designs/main.rod";

interface Answer {
	readonly design: Design;
	readonly findings: readonly Finding[];
}

/** Everything that is made of a design, in one go. Each finding must have a place in its text, and a line of words. */
function answer(text: string, beside: Record<string, string> = {}): Answer {
	const texts = new Map([
		...designTexts,
		...Object.entries(beside).map(([name, one]): [string, string] => [
			`/designs/${name}`,
			one,
		]),
		[main, text],
	]);
	const design = compile(sourcesOf(texts), main, { cache: new CompileCache() });
	const findings = [...design.findings, ...runChecks(design)];
	for (const { origin, message } of findings) {
		const length = texts.get(origin.uri)?.length ?? 0;
		expect(origin.span.start).toBeGreaterThanOrEqual(0);
		expect(origin.span.end).toBeGreaterThanOrEqual(origin.span.start);
		expect(origin.span.end).toBeLessThanOrEqual(length);
		expect(message).toMatch(/^[^\n]{10,}[^.\n]$/);
		expect(message).not.toMatch(/undefined|NaN|Infinity|\[object/);
	}
	for (const piece of design.pieces) {
		JSON.stringify(cutListJson([{ file: main, list: cutList(piece) }]));
		boughtAtOnce(piece, design.stocks);
		for (const part of piece.parts) {
			expect(Number.isFinite(part.volume)).toBe(true);
		}
	}
	return { design, findings };
}

function ids({ findings }: Answer): string[] {
	return [...new Set(findings.map((one) => one.id))];
}

/** The text at the place of the first finding with this id. */
function placeOf(text: string, { findings }: Answer, id: string): string {
	const found = findings.find((one) => one.id === id);
	expect(
		found,
		`no ${id} among ${findings.map((one) => one.id)}`,
	).toBeDefined();
	const { start, end } = (found as Finding).origin.span;
	return text.slice(start, end);
}

function messageOf({ findings }: Answer, id: string): string {
	return findings.find((one) => one.id === id)?.message ?? "";
}

const ply = `sheet ply {
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
`;

/** A whole case with these lines more. */
const pieceWith = (lines: string) => `${ply}
piece bench {
  unit in
  box case {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
  }
${lines}
}
`;

/** Random, but the same each time. */
function noise(length: number): string {
	let state = 12345;
	const some: string[] = [];
	const alphabet =
		"abcdefgxyz0123456789 \t\n{}()[],;.=<>+-*/\"'#%@$_\\éß×½“”📐\u0000\u00a0";
	const signs = [...alphabet];
	for (let i = 0; i < length; i++) {
		state = (Math.imul(state, 1103515245) + 12345) >>> 0;
		some.push(signs[(state >>> 8) % signs.length] as string);
	}
	return some.join("");
}

describe("a text that is hardly one", () => {
	test("an empty file, blanks, a lone comment", () => {
		for (const text of ["", " \n\t\n", "// nothing\n", "\ufeff"])
			expect(answer(text).design.pieces).toEqual([]);
	});

	test("a file that is missing", () => {
		const design = compile(sourcesOf(new Map()), main);
		expect(design.findings.map((one) => one.id)).toEqual(["no-file"]);
	});

	test("half a file", () => {
		for (const [, text] of designTexts) {
			const found = answer(text.slice(0, text.length >> 1));
			expect(found.findings.length).toBeGreaterThan(0);
		}
	});

	test("ten megabytes of noise", () => {
		const found = answer(noise(10_000_000));
		expect(ids(found)).toContain("more-faults");
		expect(found.findings.length).toBeLessThan(5000);
	}, 120_000);

	test("ten megabytes of noise on one line, and of one word", () => {
		answer(noise(2_000_000).replaceAll("\n", " "));
		answer("piece ".repeat(1_600_000));
	}, 120_000);

	test("a hundred thousand nested blocks", () => {
		const text = `${"box a {\n".repeat(100_000)}${"}\n".repeat(100_000)}`;
		expect(ids(answer(text))).toContain("nested-too-deep");
		expect(ids(answer("box a {\n".repeat(100_000)))).toContain(
			"missing-close-brace",
		);
		answer("{".repeat(100_000));
		answer("}".repeat(100_000));
	}, 120_000);

	test("a hundred thousand brackets", () => {
		const text = pieceWith(
			`  given a = ${"(".repeat(100_000)}1${")".repeat(100_000)}`,
		);
		expect(ids(answer(text))).toContain("brackets-too-deep");
	});
});

describe("numbers", () => {
	test.each([
		["1e400", "number-too-large"],
		["1e3", "tangled-number"],
		["9".repeat(10_000), "number-too-large"],
		[`0.${"1".repeat(10_000)}`, "number-too-large"],
		[`1/${"7".repeat(10_000)}`, "number-too-large"],
		["1/0", "zero-denominator"],
		["8 / 0", "divided-by-zero"],
		["999999999999999999999", "too-large"],
		["1 m * 999999", "too-large"],
	])("number %#: refused as it should be", (number, id) => {
		const text = pieceWith(
			`  given wide = ${number}\n  part shelf { of ply.three-quarter; size wide x 4 }`,
		);
		const found = answer(text);
		expect(ids(found)).toContain(id);
		const { length } = placeOf(text, found, id);
		expect(length).toBeGreaterThan(0);
	});

	test("powers that grow without end", () => {
		const lines = ["  given a0 = 99"];
		for (let i = 1; i < 60; i++)
			lines.push(`  given a${i} = a${i - 1} * a${i - 1}`);
		expect(ids(answer(pieceWith(lines.join("\n"))))).toContain("too-large");
	});

	test("sizes of nothing and less than nothing, everywhere", () => {
		for (const size of ["0", "-3"]) {
			const texts = [
				...[...designTexts].map(([, text]) =>
					text.replace(/(?<![\w.#/-])\d+(?: \d+\/\d+|\/\d+)?(?![\w/])/g, size),
				),
				...[...designTexts].flatMap(([, text]) =>
					[...text.matchAll(/(?<![\w.#/-])\d+(?: \d+\/\d+|\/\d+)?(?![\w/])/g)]
						.filter((_, index) => index % 3 === 0)
						.map(
							(one) =>
								text.slice(0, one.index) +
								size +
								text.slice(one.index + one[0].length),
						),
				),
			];
			for (const text of texts) answer(text);
		}
		const text = pieceWith("").replace("30 x 20 x 12", "0 x -20 x 12");
		expect(answer(text).findings.length).toBeGreaterThan(0);
	}, 120_000);
});

describe("names", () => {
	test("a name twice, with the first one beside it", () => {
		const text = pieceWith("  given a = 1\n  given a = 2");
		const found = answer(text);
		expect(placeOf(text, found, "named-twice")).toBe("a");
		const related = found.findings.find((one) => one.id === "named-twice")
			?.related[0];
		expect(related?.origin.span.start).toBe(text.indexOf("a = 1"));
	});

	test("pieces, materials and parts of one name", () => {
		const text = `${pieceWith("  box case { outside 1 x 1 x 1 }")}${pieceWith("")}`;
		expect(ids(answer(text))).toContain("named-twice");
	});

	test("a circle of names is told as one", () => {
		const text = pieceWith("  given a = b\n  given b = c\n  given c = a");
		const found = answer(text);
		expect(messageOf(found, "circle")).toMatch(/`a`.*`b`.*`c`|`a`.*`c`.*`b`/);
	});

	test.each(["forwards", "backwards"])(
		"a hundred thousand givens in a chain, %s",
		(way) => {
			const lines = Array.from({ length: 100_000 }, (_, index) =>
				index === 0 ? "  given a0 = 1" : `  given a${index} = a${index - 1}`,
			);
			if (way === "backwards") lines.reverse();
			const found = answer(pieceWith(lines.join("\n")));
			const deep = found.findings.filter((one) => one.id === "too-deep");
			if (way === "backwards") expect(deep.length).toBeGreaterThan(0);
			else expect(deep).toEqual([]);
		},
		120_000,
	);

	test("dimensions that do not go together", () => {
		for (const [size, id] of [
			["3 kg", "wrong-dimension"],
			["30 deg + 2 in", "wrong-dimension"],
			["2 in * 3 in", "wrong-dimension"],
			["4 kg / 2 in", "wrong-dimension"],
			['"wide"', "not-a-size"],
			["ply.three-quarter", "not-a-size"],
			["18ga", "wrong-dimension"],
		] as const) {
			const text = pieceWith(
				`  part shelf { of ply.three-quarter; size ${size} x 4 }`,
			);
			const found = answer(text);
			expect(ids(found), size).toContain(id);
			expect(placeOf(text, found, id)).not.toBe("");
		}
	});

	test("a mount on nothing", () => {
		for (const [line, id] of [
			["", "missing-line"],
			["on nothing.back", "unknown-name"],
			["on case.back", "not-a-part"],
			["on case", "not-a-part"],
		] as const) {
			const text = pieceWith(
				`  mount hook { ${line}; of ply.three-quarter; height 3; bevel 45 deg }`,
			);
			const found = answer(text);
			expect(found.findings.map((one) => one.id).join(" "), line).toContain(id);
		}
	});
});

describe("files", () => {
	test("that use themselves", () => {
		const text = `use a from "./main.rod"\n${pieceWith("")}`;
		expect(placeOf(text, answer(text), "no-file")).toBe('"./main.rod"');
	});

	test("that use each other in a circle of two and of three", () => {
		for (const ring of [
			["b.rod", "main.rod"],
			["b.rod", "c.rod", "main.rod"],
		]) {
			const beside: Record<string, string> = {};
			ring.slice(0, -1).forEach((name, index) => {
				beside[name] = `use a from "./${ring[index + 1]}"\n`;
			});
			const text = `use a from "./b.rod"\n${pieceWith("  part p { of a; size 2 x 3 }")}`;
			const found = answer(text, beside);
			expect(found.findings.length).toBeGreaterThan(0);
			expect(ids(found)).toContain("circle");
		}
	});

	test("that are not there, are broken, or are no files", () => {
		for (const [path, id] of [
			["./nowhere.rod", "no-file"],
			["/etc/passwd", "no-file"],
			["../../../../x.rod", "no-file"],
			["", "no-file"],
			["./b.rod", "used-file-broken"],
		] as const) {
			const text = `use a from "${path}"\n${pieceWith("")}`;
			const found = answer(text, { "b.rod": "sheet a {{ ( \n }}}" });
			expect(ids(found), path).toContain(id);
		}
	});
});

describe("very much of one thing", () => {
	test("a box of ten thousand shelves", () => {
		const lines = Array.from(
			{ length: 10_000 },
			(_, index) =>
				`    shelf s${index} of ply.three-quarter ${index / 1000} above bottom dado 1/4`,
		).join("\n");
		const text = pieceWith("").replace(
			"    caps left, right",
			`    caps left, right\n${lines}`,
		);
		const found = answer(text);
		expect(found.design.pieces[0]?.parts.length).toBe(10_004);
	}, 120_000);

	test("ten thousand shelves in one line, evenly", () => {
		const names = Array.from({ length: 10_000 }, (_, index) => `s${index}`);
		const text = pieceWith("").replace(
			"    caps left, right",
			`    caps left, right\n    shelf ${names.join(", ")} of ply.three-quarter equal`,
		);
		expect(answer(text).findings.length).toBeGreaterThan(0);
	}, 120_000);

	test("ten thousand joins, loads, pieces", () => {
		answer(
			pieceWith(
				"  join case.top to case.left { glue; screw #8 x 2 every 1 }\n".repeat(
					10_000,
				),
			),
		);
		answer(pieceWith("  load 3 kg on case.top\n".repeat(10_000)));
		answer(ply + "piece a { unit in }\n".repeat(10_000));
	}, 120_000);

	test("fasteners a hair apart", () => {
		const text = pieceWith(
			"  join case.top to case.left { glue; screw #8 x 2 every 0.00001 }",
		);
		expect(answer(text).findings.length).toBeGreaterThan(0);
	});
});
