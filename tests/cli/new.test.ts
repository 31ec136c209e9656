import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { kinds } from "../../server/cli/commands/new.ts";
import { starter } from "../../server/cli/package-files.ts";
import { folderWith } from "../harness/cli.ts";

test("the starters and the schemas travel with the package", () => {
	const { files } = JSON.parse(
		readFileSync(new URL("../../package.json", import.meta.url), "utf8"),
	) as { files: string[] };
	for (const kind of [...Object.keys(kinds), "stock"]) {
		expect(starter(kind)).toContain("\n");
	}
	expect(files).toContain("shared/library/starters/*.rod");
	expect(files).toContain("shared/outputs/schema/*.json");
});

describe("new", () => {
	test.each(Object.keys(kinds))(
		"a %s checks clean, is laid out and has a list",
		async (kind) => {
			const folder = folderWith({});
			const made = await folder.run(["new", kind]);
			expect(made.code).toBe(0);
			expect(folder.list()).toEqual([`${kind}.rod`, "stock.rod"].sort());
			expect(await folder.run(["check", "."])).toEqual({
				code: 0,
				out: "2 files: nothing to tell\n",
				err: "",
			});
			expect((await folder.run(["format", "--check", "."])).out).toBe("");
			const list = await folder.run(["cutlist", `${kind}.rod`]);
			expect(list.code).toBe(0);
			expect(list.err).toBe("");
			expect(list.out).toContain(`Cut list: ${kind}`);
			const buying = await folder.run(["buy", `${kind}.rod`]);
			expect(buying.out).not.toContain("no price known");
			expect(buying.out).not.toContain("density not known");
		},
	);

	test.each(Object.keys(kinds))(
		"a %s keeps its joints over the whole range of its givens",
		async (kind) => {
			const folder = folderWith({});
			await folder.run(["new", kind]);
			const text = folder.read(`${kind}.rod`);
			const givens = [
				...text.matchAll(
					/given (\S+) += \S+(?: \S+)? +from (\S+(?: \d+\/\d+)?) to (\S+(?: \d+\/\d+)?)/g,
				),
			];
			expect(givens.length).toBeGreaterThan(0);
			for (const [, name, low, high] of givens) {
				for (const value of [low, high]) {
					const { out } = await folder.run([
						"check",
						"--set",
						`${name}=${value}`,
						`${kind}.rod`,
					]);
					expect(out, `${name}=${value}`).not.toContain(" error ");
				}
			}
		},
	);

	test("takes a name and a folder; the stock file that is there stays", async () => {
		const folder = folderWith({ "shop/stock.rod": "// mine\n" });
		const { code, out } = await folder.run(["new", "bench", "shop/hall-bench"]);
		expect([code, out]).toEqual([
			0,
			"shop/hall-bench.rod\n\nNow: storyrod cutlist shop/hall-bench.rod\n     storyrod check shop/hall-bench.rod\n",
		]);
		expect(folder.read("shop/stock.rod")).toBe("// mine\n");
		expect(folder.read("shop/hall-bench.rod")).toContain("piece hall-bench {");
	});

	test.each(Object.keys(kinds))(
		"a %s of another name tells its own commands, in line",
		async (kind) => {
			const folder = folderWith({});
			await folder.run(["new", kind, "a-much-longer-name"]);
			const text = folder.read("a-much-longer-name.rod");
			expect(text).not.toMatch(new RegExp(`(?<![\\w-])${kind}\\.rod`));
			const lines = text
				.split("\n")
				.filter((line) => line.startsWith("//   storyrod "));
			expect(lines).toHaveLength(3);
			const columns = lines.map((line) => line.lastIndexOf("  "));
			expect(new Set(columns).size).toBe(1);
			for (const line of lines)
				expect(line).toMatch(/ a-much-longer-name\.rod {2,}what /);
			expect((await folder.run(["format", "--check", "."])).out).toBe("");
			await folder.run(["new", kind, "b"]);
			expect(folder.read("b.rod")).toContain("\n//   storyrod buy b.rod");
		},
	);

	test("never writes over a file", async () => {
		const folder = folderWith({ "bench.rod": "// mine\n" });
		const { code, out, err } = await folder.run(["new", "bench"]);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toBe("`bench.rod` is not written: it is there already\n");
		expect(folder.read("bench.rod")).toBe("// mine\n");
		expect(folder.list()).toEqual(["bench.rod"]);
	});

	test("a folder that is not there is told", async () => {
		const { code, err } = await folderWith({}).run([
			"new",
			"bench",
			"no/bench",
		]);
		expect([code, err]).toEqual([
			2,
			"`no/bench.rod` is not written: there is no such file\n",
		]);
	});
});
