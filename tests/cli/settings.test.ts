// Settings on the command line: a named file, or the nearest one of each design.

import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type Folder, folderWith } from "../harness/cli.ts";

// 3/4 wide for a sheet that measures 45/64: `fit-nominal`, a warning; the gap of 3/64 is `fit-gap`, an error.
const design = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
piece bench {
  box case {
    outside 54 x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
}
`;

const severity = (id: string, as: string): string =>
	JSON.stringify({ severity: { [id]: as } });

/** Grade and id of what is told. */
async function told(
	folder: Folder,
	...args: string[]
): Promise<readonly string[]> {
	const { out } = await folder.run(["check", "--format", "json", ...args]);
	const { findings } = JSON.parse(out) as {
		findings: readonly { severity: string; id: string }[];
	};
	return findings.map((one) => `${one.severity} ${one.id}`);
}

describe("settings", () => {
	test("of a named file rule severity, figures and the exit code", async () => {
		const folder = folderWith({
			"bench.rod": design,
			"loose.json": '{ "severity": { "fit-gap": "warning" } }',
			"wide.json":
				'{ "severity": { "fit-gap": "off" }, "figures": { "fit-nominal.difference": 1.2 } }',
		});
		expect(await told(folder, "bench.rod")).toEqual([
			"error fit-gap",
			"warning fit-nominal",
		]);
		expect((await folder.run(["check", "bench.rod"])).code).toBe(1);
		const loose = ["--settings", "loose.json", "bench.rod"];
		expect(await told(folder, ...loose)).toEqual([
			"warning fit-gap",
			"warning fit-nominal",
		]);
		expect((await folder.run(["check", ...loose])).code).toBe(0);
		expect((await folder.run(["cutlist", ...loose])).code).toBe(0);
		// Label and sheet differ by 3/64 in = 1.19 mm.
		expect(await told(folder, "--settings", "wide.json", "bench.rod")).toEqual(
			[],
		);
	});

	test("are found beside each design or above it, up to a folder with .git", async () => {
		const folder = folderWith({
			".storyrod.json": severity("fit-gap", "off"),
			"a/b/bench.rod": design,
			"own/bench.rod": design,
			"own/.storyrod.json": severity("fit-gap", "hint"),
			"repo/in/bench.rod": design,
		});
		mkdirSync(join(folder.path, "repo", ".git"));
		expect(await told(folder, "a/b/bench.rod")).not.toContain("error fit-gap");
		expect(await told(folder, "own/bench.rod")).toContain("hint fit-gap");
		expect(await told(folder, "repo/in/bench.rod")).toContain("error fit-gap");
		folder.write("repo/.storyrod.json", severity("fit-gap", "information"));
		expect(await told(folder, "repo/in/bench.rod")).toContain(
			"information fit-gap",
		);
		expect(await told(folder, "a", "own", "repo")).toEqual([
			// One design after the other, the graver first.
			"warning fit-nominal",
			"warning fit-nominal",
			"hint fit-gap",
			"warning fit-nominal",
			"information fit-gap",
		]);
		const standard = await folder.run(["check", "--stdin"], { stdin: design });
		expect(standard.code).toBe(0);
	});

	test("that are wrong are told with the nearest name; the rest holds, and the exit code is 2", async () => {
		const folder = folderWith({
			"bench.rod": design,
			".storyrod.json":
				'{ "severity": { "fit-gpa": "off", "fit-gap": "off" }, "figures": { "fit-nominal.diference": 1 } }',
		});
		const { code, out, err } = await folder.run(["check", "bench.rod"]);
		expect([code, err]).toEqual([
			2,
			"`.storyrod.json`: There is no check `fit-gpa`: did you mean `fit-gap`?\n`.storyrod.json`: There is no figure `fit-nominal.diference`: did you mean `fit-nominal.difference`?\n",
		]);
		expect(out).not.toContain("fit-gap");
		expect(out).toContain("fit-nominal");
		const list = await folder.run(["cutlist", "bench.rod"]);
		expect([list.code, list.out.includes("Cut list: bench")]).toEqual([
			2,
			true,
		]);
	});

	test("that are no JSON, or not there, never crash", async () => {
		const folder = folderWith({
			"bench.rod": design,
			"bad.json": "{ severity",
		});
		const bad = await folder.run([
			"check",
			"--settings",
			"bad.json",
			"bench.rod",
		]);
		expect(bad.code).toBe(2);
		expect(bad.err).toMatch(/^`bad\.json`: It is no JSON: .*\n$/);
		const gone = await folder.run([
			"check",
			"--settings",
			"none.json",
			"bench.rod",
		]);
		expect(gone).toEqual({
			code: 2,
			out: "",
			err: "`none.json` cannot be read: there is no such file\n",
		});
	});

	test("are told of in the help", async () => {
		const { out } = await folderWith({}).run(["check", "--help"]);
		expect(out).toContain("--settings FILE");
		expect(out).toContain(".git");
		for (const line of out.split("\n"))
			expect(line.length).toBeLessThanOrEqual(90);
	});
});
