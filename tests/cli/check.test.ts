import { describe, expect, test } from "vitest";
import { brokenDesign, folderWith, smallDesign } from "../harness/cli.ts";

describe("check", () => {
	test("a clean design", async () => {
		const folder = folderWith({ "tray.rod": smallDesign });
		expect(await folder.run(["check", "tray.rod"])).toEqual({
			code: 0,
			out: "1 file: nothing to tell\n",
			err: "",
		});
	});

	test("an error with its place", async () => {
		const folder = folderWith({ "shelf.rod": brokenDesign });
		const { code, out } = await folder.run(["check", "shelf.rod"]);
		expect(code).toBe(1);
		expect(out).toMatchInlineSnapshot(`
			"shelf.rod:2:23 error wrong-dimension A length and an angle cannot be added
			  2 |   given width = 20 mm + 3 deg
			    |                       ^

			1 file: 1 error
			"
		`);
	});

	test("a value from outside that is out of range, or is set nowhere", async () => {
		const folder = folderWith({ "tray.rod": smallDesign });
		const nowhere = await folder.run(["check", "--set", "hight=3", "tray.rod"]);
		expect(nowhere.code).toBe(1);
		expect(nowhere.out).toContain("`hight`");
		const nonsense = await folder.run([
			"check",
			"--set",
			"width=)",
			"tray.rod",
		]);
		expect(nonsense.code).toBe(1);
	});

	test("colours only on a terminal and only where they are wanted", async () => {
		const folder = folderWith({ "shelf.rod": brokenDesign });
		const coloured = (env: Record<string, string>, isTerminal: boolean) =>
			folder
				.run(["check", "shelf.rod"], { env, isTerminal })
				.then(({ out }) => out.includes("\u001b["));
		expect(await coloured({}, true)).toBe(true);
		expect(await coloured({}, false)).toBe(false);
		expect(await coloured({ NO_COLOR: "1" }, true)).toBe(false);
		expect(await coloured({ NO_COLOR: "" }, true)).toBe(true);
		expect(await coloured({ TERM: "dumb" }, true)).toBe(false);
	});

	test("what a stranger's file holds cannot steer the terminal", async () => {
		const folder = folderWith({
			"a.rod": "piece a { \u001b]0;title\u0007 \u009b2J \u202e given }\n",
		});
		const { out } = await folder.run(["check", "a.rod"], {
			isTerminal: true,
			env: { NO_COLOR: "1" },
		});
		// biome-ignore lint/suspicious/noControlCharactersInRegex: none of these may come out
		expect(out).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202e]/);
	});

	test("long lines and many findings stay readable", async () => {
		const folder = folderWith({
			"long.rod": `piece a { ${"given w = 1 deg + 1 mm; ".repeat(400)} }\n`,
			"many.rod": "frobnicate\n".repeat(1_000),
		});
		const long = await folder.run(["check", "long.rod"], { columns: 80 });
		expect(long.code).toBe(1);
		const frames = long.out
			.split("\n")
			.filter((line) => /^ +\d* \|/.test(line));
		expect(frames.length).toBeGreaterThan(1);
		for (const line of frames) expect(line.length).toBeLessThanOrEqual(80);
		const many = await folder.run(["check", "many.rod"]);
		expect(many.out.split("\n").length).toBeLessThan(1_200);
	});

	test("a finding in a file that two designs share is told once, and the order does not depend on the arguments", async () => {
		const folder = folderWith({
			"shared.rod":
				'sheet ply {\n  species "birch plywood"\n  variant half { thick 15/32 deg }\n}\n',
			"one.rod":
				'use ply from "./shared.rod"\npiece one { part a { of ply.half; size 10 x 4 } }\n',
			"two.rod":
				'use ply from "./shared.rod"\npiece two { part a { of ply.half; size 10 x 4 } }\n',
		});
		const there = await folder.run(["check", "one.rod", "two.rod"]);
		const back = await folder.run(["check", "two.rod", "one.rod"]);
		expect(there).toEqual(back);
		const told = there.out.match(/^shared\.rod:3:/gm) ?? [];
		expect(told.length).toBe(1);
	});
});
