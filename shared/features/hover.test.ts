// What a hover tells, and of what stretch of the text.

import { Buffer } from "node:buffer";
import { describe, expect, test } from "vitest";
import { snap } from "../../tests/harness/snapshot.ts";
import { hover } from "./hover.ts";

function told(source: string): string {
	const { snapshot, offset } = snap(source);
	const found = hover(snapshot, offset);
	if (!found) return "nothing";
	const { start, end } = found.span;
	expect(start <= offset && offset <= end).toBe(true);
	return `[${snapshot.text.slice(start, end)}]\n${found.markdown}`;
}

const stock = `
//- stock.rod
currency "EUR"
/// Birch, from the yard *by the canal*.
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64; price 92 per sheet }
}
board oak { species "white oak"; variant four-quarter { rough 1; planed 3/4; price 9.50 per board-foot } }
`;

const bench = (changes: readonly [string, string]) =>
	`//- main.rod
use ply, oak from "./stock.rod"

/// A low bench.
piece bench {
  unit in
  precision 1/32
  /// Over the case.
  given width = 54 from 40 to 66
  mark half = width / 2
  box case {
    outside width x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    caps left, right
    divider middle of ply.three-quarter centred dado 5/16
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
  part seat { of oak.four-quarter; size width x 5; bottom at 2 up from case.top }
}
${stock}`.replace(changes[0], changes[1]);

describe("words of the language", () => {
	test("a head: its form, what holds without it, an example", () => {
		expect(told("piece a {\n  pre<|>cision 1/16\n}")).toMatchInlineSnapshot(`
			"[precision]
			What sizes are rounded to when they are shown and cut.

			\`\`\`text
			precision LENGTH
			\`\`\`

			Left out: 1/32 in, or 0.5 mm.

			For example:

			\`\`\`storyrod
			precision 1/32
			\`\`\`"
		`);
	});

	test("a word in a line tells about the line", () => {
		expect(told(bench(["from 40", "fr<|>om 40"]))).toContain(
			"A size that the maker or a follower may set",
		);
	});

	test("a direction is not the part of that name", () => {
		expect(told(bench(["up from case.top", "right fr<|>om case.top"]))).toMatch(
			/^\[from\]/,
		);
		expect(
			told(bench(["centred dado 5/16", "2 ri<|>ght from left dado 5/16"])),
		).toMatch(/^\[right\]\n(.*\n)*Upright panels/);
	});
});

describe("sizes", () => {
	test("a number in both systems, with its rounding", () => {
		expect(told(bench(["14 5/8", "14 5<|>/8"]))).toMatchInlineSnapshot(
			`
			"[14 5/8]
			**\`14 5/8\`** as a length is 14 5/8 in = 371.475 mm

			Shown and cut to the nearest 1/32 in: exactly this."
		`,
		);
		expect(told(bench(["14 5/8", "<|>400 mm"]))).toMatchInlineSnapshot(`
			"[400 mm]
			**\`400 mm\`** is ~15.748 in = 400 mm

			Shown and cut to the nearest 1/32 in: 15 3/4 in (400 mm; rounded up by 0.002 in)."
		`);
	});

	test("numbers that measure something else", () => {
		const line = (text: string) => told(`piece a {\n  ${text}\n}`);
		expect(line("load 3<|>0 lb on b")).toMatchInlineSnapshot(`
			"[30 lb]
			**\`30 lb\`** is 30.0 lb = 13.6 kg"
		`);
		expect(line("room { temperature 7<|>0 F }")).toMatchInlineSnapshot(`
			"[70 F]
			**\`70 F\`** is 70 F = 21.1 C"
		`);
		expect(
			line("leg b { end top { angled 1<|>2 deg } }"),
		).toMatchInlineSnapshot(`
			"[12 deg]
			**\`12 deg\`** is 12 deg"
		`);
	});

	test("a given, where it is made and where it is used", () => {
		expect(told(bench(["width = 54", "wid<|>th = 54"]))).toMatchInlineSnapshot(`
			"[width]
			**\`width\`** = 54; as a length 54 in = 1371.6 mm

			Shown and cut to the nearest 1/32 in: exactly this.

			\`\`\`text
			width 54, as written
			\`\`\`

			Over the case\\.

			May be from 40 to 66."
		`);
		expect(told(bench(["outside width", "outside wid<|>th"]))).toContain(
			"[width]\n**`width`** = 54; as a length 54 in = 1371.6 mm",
		);
	});

	test("a derived size with its story", () => {
		expect(told(bench(["half =", "ha<|>lf ="]))).toMatchInlineSnapshot(`
			"[half]
			**\`half\`** = 27; as a length 27 in = 685.8 mm

			Shown and cut to the nearest 1/32 in: exactly this.

			\`\`\`text
			half 27 = width 54 / 2
			  width 54, as written
			\`\`\`"
		`);
	});
});

describe("things", () => {
	test("a part", () => {
		// 14 5/8 - 2 x 45/64 + 2 x 5/16 = 936/64 - 90/64 + 40/64 = 886/64 = 13 27/32
		expect(told(bench(["middle of", "mid<|>dle of"]))).toMatchInlineSnapshot(`
			"[middle]
			**\`case.middle\`**, divider of \`ply.three-quarter\`

			- Thick x width x length: **45/64 x 15 3/4 x 13 27/32 in** (~17.9 x ~400.1 x ~351.6 mm)
			- How many: 1
			- Grain: along the length, which runs up

			Why it is that size:

			\`\`\`text
			length 13 27/32 = 14 5/8 - 2 x 45/64 (ply.three-quarter as it measures) + 2 x 5/16
			width 15 3/4, as written
			thick 45/64 (~23/32), ply.three-quarter as it measures
			\`\`\`"
		`);
	});

	test("a panel, by its name in the box and from outside", () => {
		expect(told(bench(["caps left, right", "caps left, rig<|>ht"]))).toMatch(
			/^\[right\]\n\*\*`case\.right`\*\*, panel of `ply\.three-quarter`/,
		);
		expect(told(bench(["from case.top", "from case.to<|>p"]))).toMatch(
			/^\[case\.top\]\n\*\*`case\.top`\*\*/,
		);
	});

	test("a box", () => {
		// 54 - 2 x 45/64 + 2 x 1/4 = 3456/64 - 90/64 + 32/64 = 3398/64 = 53 3/32
		expect(told(bench(["box case", "box ca<|>se"]))).toMatchInlineSnapshot(`
			"[case]
			box \`case\`

			**Cut now** · thick x width x length in inches

			| Qty | Size | Part | Material |
			| --- | --- | --- | --- |
			| 2 | 45/64 x 15 3/4 x 53 3/32 | case\\: top, bottom | ply\\.three\\-quarter |
			| 2 | 45/64 x 15 3/4 x 14 5/8 | case\\: left, right | ply\\.three\\-quarter |
			| 1 | 45/64 x 15 3/4 x 13 27/32 | case\\.middle | ply\\.three\\-quarter |"
		`);
	});

	test("a piece", () => {
		expect(told(bench(["piece bench", "piece be<|>nch"]))).toContain(
			"A low bench\\.\n\n54 x 17 3/8 x 15 3/4 over everything",
		);
	});

	test("a material: what it is, what is used of it, what that costs", () => {
		expect(told(bench(["panels top", "panels <|>top"]))).toContain("case.top");
		const ply = told(bench(["right of ply", "right of p<|>ly"]));
		expect(ply).toContain("**`ply`**, sheet, birch plywood");
		expect(ply).toContain("measures 45/64 in (");
		expect(ply).toContain("; sold as 3/4 in; ");
		// Four panels and a divider; 92 EUR is the price of one sheet.
		expect(ply).toMatch(
			/- `ply\.three-quarter`: 5 parts, 1\d\.\d sq ft, 1 sheet of 96 x 48: 92\.00 EUR/,
		);
		expect(ply).toContain("Birch, from the yard \\*by the canal\\*\\.");
		const oak = told(bench(["of oak.four-quarter", "of oak.four<|>-quarter"]));
		expect(oak).toContain("9.50 EUR per board foot");
		// 96 x 6 x 1 / 144 = 4 board feet, at 9.50.
		expect(oak).toMatch(
			/- `oak\.four-quarter`: 1 part, \d\.\d\d board feet, 1 board of 96 x 6: 38\.00 EUR/,
		);
	});

	test("a material that nothing is made of", () => {
		expect(
			told(
				'sheet ply { species "birch plywood"; variant ha<|>lf { thick 15/32 } }\npiece a { }',
			),
		).toContain("Not used in `a`.");
	});
});

describe("joints", () => {
	test("a join: gap, range, stack-up and the share that fits", () => {
		const text = told(bench(["join top", "jo<|>in top"]));
		expect(text).toContain("**`case.top` to `case.left`**: dado, glue");
		// 3/4 - 45/64 = 3/64 = 0.047 in
		expect(text).toContain("gap **0.047 in**, may be ");
		expect(text).toMatch(
			/expected within [\d.]+ in either way, at worst [\d.]+ in either way: \*\*less than 1 %\*\* would fit/,
		);
		expect(text).toMatch(
			/ {2}- thickness of `ply\.three-quarter`: [\d.]+ in either way, \d+ % of the spread/,
		);
		expect(text).toContain("measure before it is cut: ");
		expect(text).toContain("How parts meet");
	});

	test("a line that makes joints by itself", () => {
		expect(told(bench(["divider middle", "divi<|>der middle"]))).toContain(
			"**`case.middle` to `case.bottom`**: dado",
		);
	});
});

describe("elsewhere", () => {
	test("nothing in comments, blanks and at the ends", () => {
		expect(told("// pi<|>ece\n")).toBe("nothing");
		expect(told("<|>")).toBe("nothing");
		expect(told("piece a { }\n\n<|>\n")).toBe("nothing");
		expect(told("foo b<|>ar")).toBe("nothing");
	});

	test("text of the maker stays text", () => {
		expect(told("/// **bold** [a](http://b) <img>\npiece a<|> { }")).toContain(
			"\\*\\*bold\\*\\* \\[a\\]\\(http\\://b\\) \\<img\\>",
		);
	});

	test("in a text with faults", () => {
		expect(
			told(`piece a {\n  box b {\n    pan<|>els top,\n  }\n  @@\n  part`),
		).toContain("Which of the four panels it has");
	});

	test("at every place it tells of a stretch that holds the place, or nothing", () => {
		const { snapshot } = snap(
			bench(["5/16\n", "5/16\n    shelf a at case.\n"]),
		);
		for (let offset = 0; offset <= snapshot.text.length; offset++) {
			const found = hover(snapshot, offset);
			if (!found) continue;
			expect(found.span.start).toBeLessThanOrEqual(offset);
			expect(found.span.end).toBeGreaterThanOrEqual(offset);
		}
	});
});

describe("a board's movement over the year", () => {
	const seat =
		"part seat { of oak.four-quarter; size width x 5; bottom at 2 up from case.top }";
	const at = "part se<|>at {";

	test("by the piece's room, with the cut of the grain that it is taken for", () => {
		// Wood Handbook Table 4-2 at 70 °F: 6.2 % at 30 %, 11.0 % at 60 %; 5 in x 0.00365 (Table 13-5) x 4.8 = 0.088 in.
		expect(
			told(
				bench([
					seat,
					`${seat.replace("part seat {", at)}\n  room { humidity 30 % to 60 %; temperature 70 F }`,
				]),
			).replaceAll("\\", ""),
		).toContain(
			"Over the year it moves 3/32 in across (6.2 to 11.0 % moisture, white oak, taken as flat-sawn)",
		);
	});

	test("by the cut that the stock says", () => {
		// 5 in x 0.00180 (Table 13-5, radial) x 4.8 = 0.043 in.
		expect(
			told(
				bench([
					seat,
					`${seat.replace("part seat {", at)}\n  room { humidity 30 % to 60 %; temperature 70 F }`,
				]).replace("planed 3/4;", "planed 3/4; sawn quarter;"),
			).replaceAll("\\", ""),
		).toContain(
			"Over the year it moves 3/64 in across (6.2 to 11.0 % moisture, quarter-sawn white oak)",
		);
	});

	test("nothing where the room is not given, nor of plywood", () => {
		expect(told(bench([seat, seat.replace("part seat {", at)]))).not.toContain(
			"Over the year",
		);
		expect(
			told(
				bench(["divider middle", "divider mid<|>dle"]).replace(
					"part seat {",
					"room { humidity 30 % to 60 % }\n  part seat {",
				),
			),
		).not.toContain("Over the year");
	});
});

describe("how far it sags", () => {
	const rack = (load: string, part = "o<|>ne"): string => `//- main.rod
sheet birch { species "birch plywood"; size 96 x 48; variant eighteen { sold-as 18 mm; thick 17.6 mm } }
piece rack {
  unit mm
  precision 0.5
  box rack {
    outside 900 x 420 x 210
    panels top, bottom, left, right of birch.eighteen
    shelf ${part} of birch.eighteen 190 above bottom on pins clearance 1.5
  }
  ${load}
}
`;
	const sagLine = (text: string): string =>
		text
			.split("\n")
			.filter((line) => line.startsWith("Sags "))
			.join();

	test("a shelf under its load, at first and over the years", () => {
		// By hand: I = 210 x 17.6^3 / 12; w = 18 x 9.80665 / 861.8 + 210 x 17.6 x 685e-9 x 9.80665 = 0.2297 N/mm; 5 w L^4 / 384 E I.
		expect(sagLine(told(rack("load 18 kg on rack.one")))).toMatchInlineSnapshot(
			`"Sags 1\\.72 mm over a span of 861\\.8 mm under 18 kg and its own weight, at most 1\\.44 mm at first; 3\\.1 mm over the years, at most 2\\.24 mm\\: more than a limit\\."`,
		);
	});

	test("a shelf with no load: books, and says so", () => {
		expect(sagLine(told(rack("")))).toMatchInlineSnapshot(
			`"Sags 2\\.92 mm over a span of 861\\.8 mm under books \\(37\\.2 kg per m; no load is given\\) and its own weight, at most 1\\.44 mm at first; 5\\.25 mm over the years, at most 2\\.24 mm\\: more than a limit\\."`,
		);
	});

	test("the picture is an image that an editor shows in Markdown, in at most 4000 letters", () => {
		const text = told(rack("load 18 kg on rack.one"));
		const found =
			/!\[([^\]]*)\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/.exec(
				text,
			);
		expect(found?.[1]).toContain("drawn 30 times as deep");
		expect(found?.[2]?.length).toBeLessThan(4000);
		const svg = Buffer.from(found?.[2] ?? "", "base64").toString("utf8");
		expect(svg).toMatch(
			/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" .*<\/svg>$/,
		);
		expect(svg).toContain(">18 kg</text>");
	});

	test("nothing of a side that carries nothing", () => {
		const text = told(rack("", "one").replace("left,", "le<|>ft,"));
		expect(sagLine(text)).toBe("");
	});
});
