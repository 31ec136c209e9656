// `storyrod layout`: what it prints, what it writes, and that it leaves nothing half done.

import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { brokenDesign, folderWith, smallDesign } from "../harness/cli.ts";

/** Sixteen shelves of 30 x 11 on sheets of 96 x 48: three rows of four by width, three by length: twelve to a sheet. */
const shelves = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32; price 70 }
}

piece rack {
${Array.from(
	{ length: 16 },
	(_, at) =>
		`  part s${at} { of ply.half; size 30 x 11; bottom at ${2 * at} up from floor }`,
).join("\n")}
}
`;

describe("layout", () => {
	test("tells sheets, price, what is proven and each cut", async () => {
		const folder = folderWith({ "tray.rod": smallDesign });
		const { code, out, err } = await folder.run(["layout", "tray.rod"]);
		expect(err).toBe("");
		expect(code).toBe(0);
		expect(out).toMatchInlineSnapshot(`
			"Layouts: tray
			Parts are width x length, sheets and offcuts length x width, in inches to the nearest 1/32; the
			  grain runs along the length. Letters are those of the cut list.

			ply.half
			--------
			1 sheet of 96 x 48, 70.00; 7 % of it becomes parts.
			Fewer cannot be enough: this is the least.
			  sheet 1  96 x 48  A, 2 x B  keep 14 15/16 x 35 7/8, 76 13/16 x 48

			LARGE CUTS, WITH A TRACK OR PANEL SAW
			  Sheet 1: 19 1/16 from the edge
			    ! large: hold it up on both sides of the cut, and have help to lift it
			    1  sheet 1  crosscut 48 long      48 x 19 1/16 for A, 2 x B  leaves offcut 76 13/16 x 48, keep it

			AT THE SAW
			  Fence at 12
			    2  sheet 1  rip 19 1/16 long      A                          leaves 35 7/8 x 19 1/16 for 2 x B
			  Fence at 4
			    3  sheet 1  crosscut 35 7/8 long  35 7/8 x 4 for 2 x B       leaves offcut 14 15/16 x 35 7/8, keep it
			  Stop at 12
			  4-5  sheet 1  rip 4 long            B                          leaves waste

			4 settings for 5 cuts.

			What the manual of the saw says comes before all of this: guard, riving knife and eye protection
			  in place, the blade at rest before a hand comes near it.
			"
		`);
	});

	test("two sheets where one is too small, with the fence set seldom", async () => {
		const folder = folderWith({ "rack.rod": shelves });
		const { out } = await folder.run(["layout", "rack.rod"]);
		expect(out).toContain("2 sheets of 96 x 48, 140.00;");
		expect(out).toContain(
			"No plan needs fewer than 2 sheets: this is the least.",
		);
		expect(out).toMatch(/\d settings for \d+ cuts; piece by piece it would be/);
	});

	test("a part that is larger than every sheet is told, the others are laid out", async () => {
		const folder = folderWith({
			"rack.rod": shelves.replace("size 30 x 11", "size 100 x 11"),
		});
		const { out } = await folder.run(["layout", "rack.rod"]);
		expect(out).toMatch(/Missing: [A-Z]: .*100/);
		expect(out).toContain("2 sheets of 96 x 48");
	});

	test("nothing to lay out", async () => {
		const folder = folderWith({ "a.rod": "piece a { }\n" });
		const { code, out } = await folder.run(["layout", "a.rod"]);
		expect(code).toBe(0);
		expect(out).toContain("Nothing to lay out.");
	});

	test("an error in the design is told beside it, exit 1", async () => {
		const folder = folderWith({ "b.rod": brokenDesign });
		const { code, err } = await folder.run(["layout", "b.rod"]);
		expect(code).toBe(1);
		expect(err).toContain("b.rod:2:");
	});

	test("a piece in millimetres and one in inches, each in its own", async () => {
		const both = `sheet ply { size 96 x 48; variant half { thick 1/2; price 70 } }
sheet birch { size 2440 mm x 1220 mm; variant twelve { thick 12 mm; price 80 } }
piece lid { part top { of ply.half; size 24 x 12 } }
piece tray { unit mm; part floor { of birch.twelve; size 600 x 300 } }
`;
		const folder = folderWith({ "both.rod": both });
		const { out } = await folder.run(["layout", "both.rod"]);
		expect(out).toMatch(/ply\.half\n-+\nAll sizes in inches/);
		expect(out).toMatch(/birch\.twelve\n-+\nAll sizes in millimetres/);
		expect(out).toContain("1 sheet of 2440 x 1220");
		const list = await folder.run(["buy", "both.rod"]);
		expect(list.out).toMatch(/2440 x 1220 +1 sheet/);
		expect(list.out).toContain("these sizes are in mm");
	});

	test("pieces share their sheets, or each has its own", async () => {
		const second = smallDesign
			.slice(smallDesign.indexOf("piece"))
			.replace("piece tray", "piece box-tray");
		const folder = folderWith({ "trays.rod": `${smallDesign}\n${second}` });
		const { out } = await folder.run(["layout", "trays.rod"]);
		expect(out.match(/1 sheet of 96 x 48/g)).toHaveLength(1);
		expect(out).toContain("Layouts: tray, box-tray");
		const { out: each } = await folder.run(["layout", "--each", "trays.rod"]);
		expect(each.match(/1 sheet of 96 x 48/g)).toHaveLength(2);
	});

	test("every form is the same bytes twice", async () => {
		const folder = folderWith({ "rack.rod": shelves });
		for (const format of ["text", "md", "json", "svg"]) {
			const args = ["layout", "--format", format, "rack.rod"];
			expect(await folder.run(args)).toEqual(await folder.run(args));
		}
	});

	test("pictures one after the other", async () => {
		const folder = folderWith({ "rack.rod": shelves });
		const { out } = await folder.run(["layout", "--format", "svg", "rack.rod"]);
		expect(out.match(/<svg /g)).toHaveLength(2);
		expect(out.match(/<\/svg>\n/g)).toHaveLength(2);
		expect(out).toContain("ply.half, sheet 2 of 2");
	});

	test("progress only at a terminal, and gone at the end", async () => {
		const folder = folderWith({ "rack.rod": shelves });
		const args = ["layout", "--effort", "quick", "rack.rod"];
		expect((await folder.run(args)).err).toBe("");
		const { err } = await folder.run(args, { isTerminal: true });
		if (err !== "") expect(err.endsWith("\r\u001b[K")).toBe(true);
	});
});

describe("what is written to a folder", () => {
	test("a picture of each sheet and the list", async () => {
		const folder = folderWith({ "rack.rod": shelves });
		const { code, err } = await folder.run([
			"layout",
			"rack.rod",
			"--out",
			"saw/rack",
		]);
		expect(code).toBe(0);
		const names = [
			"layout.md",
			"rack.ply.half.sheet-1.svg",
			"rack.ply.half.sheet-2.svg",
		];
		expect(
			folder.list().filter((name) => name.startsWith("saw/rack/")),
		).toEqual(names.map((name) => `saw/rack/${name}`));
		expect(err.trim().split("\n").sort()).toEqual(
			names.map((name) => `saw/rack/${name}`),
		);
		expect(folder.read("saw/rack/layout.md")).toContain("### `ply.half`");
		expect(folder.read("saw/rack/rack.ply.half.sheet-1.svg")).toMatch(
			/^<svg [\s\S]*<\/svg>\n$/,
		);
	});

	test("replaces what it wrote before", async () => {
		const folder = folderWith({
			"rack.rod": shelves,
			"out/layout.md": "an older one",
		});
		await folder.run(["layout", "rack.rod", "--out", "out"]);
		expect(folder.read("out/layout.md")).not.toContain("an older one");
		expect(folder.list().filter((name) => name.endsWith(".tmp"))).toEqual([]);
	});

	test("a file in the way is told, exit 2, and nothing is written", async () => {
		const folder = folderWith({ "rack.rod": shelves, out: "a file" });
		const { code, err } = await folder.run([
			"layout",
			"rack.rod",
			"--out",
			"out",
		]);
		expect(code).toBe(2);
		expect(err).toContain("`out` is not written: ");
		expect(folder.list()).toEqual(["out", "rack.rod"]);
	});

	test("a folder in the place of a file leaves no litter", async () => {
		const folder = folderWith({
			"rack.rod": shelves,
			"out/layout.md/x": "a folder of that name",
		});
		const { code } = await folder.run(["layout", "rack.rod", "--out", "out"]);
		expect(code).toBe(2);
		expect(folder.list().filter((name) => name.endsWith(".tmp"))).toEqual([]);
	});
});

test("the JSON is as its schema says", async () => {
	const ajv = new Ajv2020({
		strict: true,
		allErrors: true,
		allowUnionTypes: true,
	});
	const validate = ajv.compile(
		JSON.parse(
			readFileSync(
				new URL("../../shared/outputs/schema/layout.json", import.meta.url),
				"utf8",
			),
		) as object,
	);
	const folder = folderWith({
		"tray.rod": smallDesign,
		"rack.rod": shelves.replace("size 30 x 11", "size 100 x 11"),
		"metric.rod": smallDesign.replace(
			"piece tray {",
			"piece tray {\n  unit mm",
		),
		"broken.rod": brokenDesign,
		"empty.rod": "",
	});
	for (const kind of ["hung-case", "shelf", "bench", "bookcase"])
		await folder.run(["new", kind]);
	for (const file of folder.list().filter((name) => name.endsWith(".rod"))) {
		const { out } = await folder.run([
			"layout",
			"--effort",
			"quick",
			"--format",
			"json",
			file,
		]);
		validate(JSON.parse(out));
		expect(validate.errors, file).toBeNull();
	}
});
