import { describe, expect, test } from "vitest";
import { brokenDesign, folderWith } from "../harness/cli.ts";

/** A screw that is 3/4 in too long, and a screw near an end that wants a pilot hole. */
const faulty = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32 }
}
board oak {
  species "white oak"
  variant four-quarter { rough 1; planed 3/4; widths 4 to 9; lengths 72 to 120 }
}

/// A step.
piece step {
  part board {
    of oak.four-quarter
    size 24 x 8
    bottom at 6 from floor
  }
  part foot {
    of oak.four-quarter
    size 7 x 2 // stands on edge
    lies deep facing side
    top at board.bottom
    left at board.left
  }
  // No glue: it comes off.
  join board to foot {
    screw #8 x 3 every 3 { from above; at 3/8 right from board.left }
  }
}
`;

describe("check --fix", () => {
	test("mends what mends itself, keeps the rest and its comments, and tells it", async () => {
		const folder = folderWith({ "step.rod": faulty });
		const { code, out, err } = await folder.run(["check", "--fix", "step.rod"]);
		expect(err).toBe("");
		expect(code).toBe(0);
		expect(out).toContain(
			"step.rod:27 fastener-through: Use a screw 2 1/2 in long\n",
		);
		expect(out).toContain("step.rod:27 edge-split: Pre-drill it\n");
		const mended = folder.read("step.rod");
		expect(mended).toBe(
			faulty.replace(
				"screw #8 x 3 every 3 { from above;",
				"screw #8 x 2 1/2 every 3 { pilot; from above;",
			),
		);
		const again = await folder.run(["check", "--fix", "step.rod"]);
		expect(again.out).toContain("Nothing that mends itself\n");
		expect(folder.read("step.rod")).toBe(mended);
		expect(folder.list()).toEqual(["step.rod"]);
	});

	test("--dry-run writes nothing and shows the lines", async () => {
		const folder = folderWith({ "step.rod": faulty });
		const { out } = await folder.run([
			"check",
			"--fix",
			"--dry-run",
			"step.rod",
		]);
		expect(folder.read("step.rod")).toBe(faulty);
		expect(out).toContain("  @ 27\n  -     screw #8 x 3 every 3");
		expect(out).toContain("  +     screw #8 x 2 1/2 every 3 { pilot;");
		expect(out).toContain(
			"2 mends in 1 file would be made; nothing is written\n",
		);
	});

	test("ends of lines and the mark at the beginning stay as they are", async () => {
		const text = `\ufeff${faulty.replaceAll("\n", "\r\n")}`;
		const folder = folderWith({ "step.rod": text });
		await folder.run(["check", "--fix", "step.rod"]);
		expect(folder.read("step.rod")).toBe(
			text.replace(
				"screw #8 x 3 every 3 { from above;",
				"screw #8 x 2 1/2 every 3 { pilot; from above;",
			),
		);
	});

	test("a file with errors of syntax is left as it is", async () => {
		const text = `${faulty}piece (\n`;
		const folder = folderWith({ "step.rod": text, "shelf.rod": brokenDesign });
		const { code, err } = await folder.run(["check", "--fix", "step.rod"]);
		expect(code).toBe(1);
		expect(err).toContain(
			"`step.rod` is left as it is: it has errors of syntax\n",
		);
		expect(folder.read("step.rod")).toBe(text);
	});

	test("what can be read in several ways is left to the maker", async () => {
		const text = faulty.replace("bottom at 6 from floor", "bottom at 6");
		const folder = folderWith({ "step.rod": text });
		const { out } = await folder.run(["check", "--fix", "step.rod"]);
		expect(out).toContain(
			"1 line can be read in several ways: choose yourself\n",
		);
		expect(folder.read("step.rod")).toContain("bottom at 6\n");
	});

	test("settings hold: what is off is not mended", async () => {
		const folder = folderWith({
			"step.rod": faulty,
			".storyrod.json": '{ "severity": { "edge-split": "off" } }',
		});
		await folder.run(["check", "--fix", "step.rod"]);
		expect(folder.read("step.rod")).not.toContain("pilot");
	});

	test.each([
		["check", "--dry-run", "step.rod"],
		["check", "--fix", "--set", "width=3", "step.rod"],
		["check", "--fix", "--stdin"],
	])("%s %s %s is wrong use", async (...args) => {
		const folder = folderWith({ "step.rod": faulty });
		const { code, err } = await folder.run(args, { stdin: faulty });
		expect(code).toBe(2);
		expect(err).toMatch(/--fix/);
		expect(folder.read("step.rod")).toBe(faulty);
	});

	test("in JSON, the list of findings stays alone on the output", async () => {
		const folder = folderWith({ "step.rod": faulty });
		const { out, err } = await folder.run([
			"check",
			"--fix",
			"--format",
			"json",
			"step.rod",
		]);
		expect(() => JSON.parse(out)).not.toThrow();
		expect(err).toContain("2 mends in 1 file\n");
	});
});
