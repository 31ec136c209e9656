import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { brokenDesign, folderWith, smallDesign } from "../harness/cli.ts";

async function bookcase() {
	const folder = folderWith({});
	await folder.run(["new", "bookcase"]);
	return folder;
}

describe("the lists of a bookcase", () => {
	test("cut list", async () => {
		const { out } = await (await bookcase()).run(["cutlist", "bookcase.rod"]);
		expect(out).toMatchInlineSnapshot(`
			"Cut list: bookcase
			44 x 60 x 11 1/4 over everything (width x height x depth).
			Thickness x width x length in inches to the nearest 1/32; the grain runs along the length.

			CUT NOW
			  Qty Thick     Width     Length Material           Part
			A   2 45/64 x  11 1/4 x 42 19/32 ply.three-quarter  case.top, case.bottom
			    groove to fit ~15/64, 1/4 deep, 3/4 from the rear edge, for case.back
			    dado to fit ~45/64, 1/4 deep, ~20 15/16 from the left end, for case.middle
			B   2 45/64 x  11 1/4 x       60 ply.three-quarter  case.left, case.right
			    groove to fit ~15/64, 1/4 deep, 3/4 from the rear edge, for case.back
			    dado to fit ~45/64, 1/4 deep, ~28 from the lower end, for case.fixed-left, case.fixed-right
			    mirrored from the groove on: case.right
			C   2 45/64 x 10 9/32 x 20 13/16 ply.three-quarter  case.loose-left, case.loose-right
			D   1 45/64 x       3 x 42 19/32 ply.three-quarter  tie.strip
			E   1 15/64 x      43 x       59 ply.quarter        case.back

			CUT TO FIT, WHEN THE ASSEMBLY HAS BEEN MEASURED
			  Qty Thick     Width     Length Material           Part
			F   1 45/64 x 10 9/32 x  59 3/32 ply.three-quarter  case.middle
			    after case.top, case.bottom, case.left, case.right: measure the height inside the dry
			      assembly, and the depth of the dadoes
			    2 x dado to fit ~45/64, 1/4 deep, ~27 17/32 from the lower end, for case.fixed-left,
			      case.fixed-right
			G   2 45/64 x 10 9/32 x  21 7/16 ply.three-quarter  case.fixed-left, case.fixed-right
			    after case.middle: measure the clear width for \`fixed-left\` in the dry assembly; the clear
			      width for \`fixed-right\` in the dry assembly

			TO CLAMP UP SQUARE
			  case: both diagonals ~74 13/32 from corner to corner outside, no more than ~5/32 apart
			"
		`);
	});

	test("buying list", async () => {
		const { out, err } = await (await bookcase()).run(["buy", "bookcase.rod"]);
		expect(err).toBe("");
		// Two sheets at 92 and one at 48: the parts are 11 1/4 and 10 9/32 wide, four such strips of 96 fill a sheet, and the
		// last shelf of 20 13/16 finds no place beside 60 + 21 7/16, twice, 2 x 42 19/32 and 59 3/32 + 20 13/16.
		expect(out).toMatch(/ply\.three-quarter +96 x 48 +2 sheets +USD 184\.00\n/);
		expect(out).toContain("      10 parts, 27.2 ft2 as sawn, kerf 1/8\n");
		expect(out).toMatch(/ply\.quarter +96 x 48 +1 sheet +USD 48\.00\n/);
		// From there to the offcuts nothing hangs on how the sheets are cut. 184 + 48 + 9 + 11 + 8 + 76 = 336.
		expect(
			out.slice(out.indexOf("FASTENERS"), out.indexOf("LEFT IN THE SHOP")),
		).toMatchInlineSnapshot(`
			"FASTENERS
			  screw #8 x 1 3/4   fixings.eight-long  12 (1 pack of 100)               USD 9.00
			  screw #10 x 3      fixings.wall        2 (1 pack of 50)                USD 11.00
			      into the wall, for the studs that the strip meets at the least

			GLUE AND FINISH
			  wood-glue          glue                1.4 fl oz (1 tin of 16 fl oz)    USD 8.00
			      2.7 ft2, spread on one side; 250 ft2 to the gallon
			  hard-oil           finish              1.05 qt (2 tins of 1 qt)        USD 76.00
			      263.0 ft2, all coats; 1000 ft2 to the gallon

			COST
			  USD 336.00

			"
		`);
		// A sheet of 2.4384 m x 1.2192 m weighs, at 685 and 690 kg/m3 (birch plywood of 18 and 6 mm, as the tables have it): with
		// 17.859 mm 36.4 kg = 80.2 lb, twice, and with 5.953 mm about 12.2 kg = 26.9 lb.
		expect(out).toMatch(
			/TO CARRY HOME\n {2}18[0-9]\.[0-9] lb of sheets and boards, the heaviest 80\.[0-9] lb\n/,
		);
		expect(out.slice(out.indexOf("WEIGHT\n"))).toMatchInlineSnapshot(`
			"WEIGHT
			  82.2 lb of wood
			  centre of gravity 22 in from the left, ~31 23/32 in up from the floor, ~4 13/16 in from the back

			WEIGHT BY PART
			  case.top           8.2 lb
			  case.bottom        8.2 lb
			  case.left         11.6 lb
			  case.right        11.6 lb
			  case.back         14.7 lb
			  case.middle       10.5 lb
			  case.fixed-left    3.8 lb
			  case.fixed-right   3.8 lb
			  case.loose-left    3.7 lb
			  case.loose-right   3.7 lb
			  tie.strip          2.2 lb
			"
		`);
	});

	test("why a shelf is so long", async () => {
		const { out } = await (await bookcase()).run([
			"explain",
			"bookcase.rod",
			"case.fixed-left.length",
		]);
		expect(out).toMatchInlineSnapshot(`
			"case.fixed-left.length 21 57/128 (~21 7/16) = (width 44 - 3 x 45/64 (ply.three-quarter as it measures)) / 2 + 2 x 1/4
			  width 44, as written
			  on the rule: ~21 7/16 in (~544.7 mm; rounded down by 0.0078 in)
			  moves with: -1 1/2 x thickness of \`ply.three-quarter\` (~0.02 in either way)
			"
		`);
	});

	test("set to another width", async () => {
		const folder = await bookcase();
		const { out } = await folder.run([
			"cutlist",
			"--format",
			"csv",
			"--set",
			"width=30",
			"bookcase.rod",
		]);
		// 30 - 2 x 45/64 = 28 19/32
		expect(out).toContain(",28 19/32,");
	});
});

describe("lists in general", () => {
	test("an error in the design is told beside the list, exit 1", async () => {
		const folder = folderWith({
			"tray.rod": smallDesign.replace("x 4 x 12", "x 4 x 12 deg"),
		});
		const { code, out, err } = await folder.run(["cutlist", "tray.rod"]);
		expect(code).toBe(1);
		expect(err).toContain("tray.rod:12:");
		expect(out).toContain("Cut list: tray");
	});

	test("several files in one document", async () => {
		const folder = folderWith({ "a.rod": smallDesign, "b.rod": smallDesign });
		const { out } = await folder.run(["buy", "--format", "json", "*.rod"]);
		const { lists } = JSON.parse(out) as {
			lists: { pieces: { file: string }[] }[];
		};
		expect(lists.map(({ pieces }) => pieces.map(({ file }) => file))).toEqual([
			["a.rod", "b.rod"],
		]);
	});

	test("a list for each piece, if asked", async () => {
		const folder = folderWith({ "a.rod": smallDesign, "b.rod": smallDesign });
		const { out } = await folder.run(["buy", "--each", "*.rod"]);
		expect(out.match(/^Buying list: tray$/gm)).toHaveLength(2);
		expect(out).not.toContain("SHARE OF THE COST");
	});

	test("from the standard input, and only one piece", async () => {
		const folder = folderWith({});
		const two = `${smallDesign}\npiece other {\n  part a {\n    of ply.half\n    size 10 x 4\n  }\n}\n`;
		const { code, out } = await folder.run(
			["cutlist", "--stdin", "--piece", "other", "--format", "csv"],
			{ stdin: two },
		);
		expect(code).toBe(0);
		expect(out.split("\r\n").length).toBe(3);
		expect(out).toContain("other,A,now,1,,,a,ply.half");
	});

	test("every format of every list is the same bytes twice", async () => {
		const folder = await bookcase();
		for (const command of ["cutlist", "buy"]) {
			for (const format of ["text", "md", "csv", "json"]) {
				const args = [command, "--format", format, "bookcase.rod"];
				expect(await folder.run(args)).toEqual(await folder.run(args));
			}
		}
	});
});

describe("what is written as JSON is as its schema says", () => {
	const ajv = new Ajv2020({
		strict: true,
		allErrors: true,
		allowUnionTypes: true,
	});
	const schemas = new URL("../../shared/outputs/schema/", import.meta.url);
	const validator = (name: string) =>
		ajv.compile(
			JSON.parse(
				readFileSync(new URL(`${name}.json`, schemas), "utf8"),
			) as object,
		);
	const validators = {
		cutlist: validator("cutlist"),
		buy: validator("buy"),
		check: validator("check"),
		explain: validator("explain"),
	};

	test.each(["hung-case", "shelf", "bench", "bookcase"])("%s", async (kind) => {
		const folder = folderWith({});
		await folder.run(["new", kind]);
		for (const [command, validate] of Object.entries(validators)) {
			const { out } = await folder.run([
				command,
				"--format",
				"json",
				`${kind}.rod`,
			]);
			validate(JSON.parse(out));
			expect(validate.errors, command).toBeNull();
		}
	});

	test("a design with errors, and one in millimetres", async () => {
		const folder = folderWith({
			"broken.rod": brokenDesign,
			"empty.rod": "",
			"metric.rod": smallDesign.replace(
				"piece tray {",
				"piece tray {\n  unit mm",
			),
		});
		for (const [command, validate] of Object.entries(validators)) {
			for (const file of ["broken.rod", "empty.rod", "metric.rod"]) {
				const { out } = await folder.run([command, "--format", "json", file]);
				validate(JSON.parse(out));
				expect(validate.errors, `${command} ${file}`).toBeNull();
			}
		}
	});

	test("a document with a field too many or too few is refused", () => {
		const { cutlist } = validators;
		expect(cutlist({ schemaVersion: 1, pieces: [] })).toBe(true);
		expect(cutlist({ schemaVersion: 1 })).toBe(false);
		expect(cutlist({ schemaVersion: 2, pieces: [] })).toBe(false);
		expect(cutlist({ schemaVersion: 1, pieces: [], more: 1 })).toBe(false);
	});
});
