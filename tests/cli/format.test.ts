import { chmodSync, lstatSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith, smallDesign } from "../harness/cli.ts";

const untidy = "piece  a {\n    // kept\n given   width=20\n}\n";
const tidy = "piece a {\n  // kept\n  given width = 20\n}\n";
const unreadable = "piece a {\n  given width = (20\n}\n";

describe("format", () => {
	test("writes in place and names what it changed", async () => {
		const folder = folderWith({ "a.rod": untidy, "b.rod": tidy });
		expect(await folder.run(["format", "*.rod"])).toEqual({
			code: 0,
			out: "a.rod\n",
			err: "",
		});
		expect(folder.read("a.rod")).toBe(tidy);
		expect(folder.list()).toEqual(["a.rod", "b.rod"]);
	});

	test("--check changes nothing and tells what would change", async () => {
		const folder = folderWith({ "a.rod": untidy, "b.rod": tidy });
		expect(await folder.run(["format", "--check", "a.rod", "b.rod"])).toEqual({
			code: 1,
			out: "a.rod\n",
			err: "",
		});
		expect(folder.read("a.rod")).toBe(untidy);
		expect((await folder.run(["format", "--check", "b.rod"])).code).toBe(0);
	});

	test("--diff changes nothing and shows the lines that would change", async () => {
		const folder = folderWith({ "a.rod": untidy, "b.rod": tidy });
		expect(await folder.run(["format", "--diff", "a.rod", "b.rod"])).toEqual({
			code: 1,
			out: `--- a.rod
+++ a.rod
@@ -1,4 +1,4 @@
-piece  a {
-    // kept
- given   width=20
+piece a {
+  // kept
+  given width = 20
 }
`,
			err: "",
		});
		expect(folder.read("a.rod")).toBe(untidy);
		expect(await folder.run(["format", "--diff", "b.rod"])).toEqual({
			code: 0,
			out: "",
			err: "",
		});
	});

	test("--check and --diff of the standard input", async () => {
		const folder = folderWith({});
		const run = (option: string, stdin: string) =>
			folder.run(["format", option, "--stdin"], { stdin });
		expect((await run("--check", untidy)).code).toBe(1);
		expect((await run("--check", tidy)).code).toBe(0);
		expect((await run("--diff", untidy)).out).toContain("+  given width = 20");
		expect(await run("--diff", tidy)).toEqual({ code: 0, out: "", err: "" });
		const broken = await run("--diff", unreadable);
		expect([broken.code, broken.out]).toEqual([1, ""]);
	});

	test("what cannot be read is left as it is, the others are written", async () => {
		const folder = folderWith({ "a.rod": unreadable, "b.rod": untidy });
		const { code, out, err } = await folder.run(["format", "a.rod", "b.rod"]);
		expect(code).toBe(1);
		expect(out).toBe("b.rod\n");
		expect(err).toContain("`a.rod` is left as it is: it has errors of syntax");
		expect(folder.read("a.rod")).toBe(unreadable);
		expect(folder.read("b.rod")).toBe(tidy);
	});

	test("a file in another encoding is left as it is", async () => {
		const folder = folderWith({ "a.rod": untidy });
		const latin = Buffer.from("// gr\u00f6\u00dfe\npiece  a { }\n", "latin1");
		const { writeFileSync, readFileSync } = await import("node:fs");
		writeFileSync(join(folder.path, "l.rod"), latin);
		const { code, err } = await folder.run(["format", "l.rod"]);
		expect(code).toBe(2);
		expect(err).toContain("it is not text in UTF-8");
		expect(readFileSync(join(folder.path, "l.rod")).equals(latin)).toBe(true);
	});

	test("keeps the byte order mark, the rights and the link", async () => {
		const folder = folderWith({ "real.rod": `\ufeff${untidy}` });
		chmodSync(join(folder.path, "real.rod"), 0o640);
		symlinkSync("real.rod", join(folder.path, "link.rod"));
		expect((await folder.run(["format", "link.rod"])).code).toBe(0);
		expect(folder.read("real.rod")).toBe(`\ufeff${tidy}`);
		expect(statSync(join(folder.path, "real.rod")).mode & 0o777).toBe(0o640);
		expect(lstatSync(join(folder.path, "link.rod")).isSymbolicLink()).toBe(
			true,
		);
	});

	test("a folder that must not be written leaves the file whole", async () => {
		const folder = folderWith({ "a.rod": untidy });
		chmodSync(folder.path, 0o555);
		try {
			const { code } = await folder.run(["format", "a.rod"]);
			// The superuser may write anywhere.
			if (process.getuid?.() !== 0) expect(code).toBe(2);
			expect([untidy, tidy]).toContain(folder.read("a.rod"));
		} finally {
			chmodSync(folder.path, 0o755);
		}
		expect(folder.list()).toEqual(["a.rod"]);
	});

	test("from the standard input to the standard output", async () => {
		const folder = folderWith({});
		expect(await folder.run(["format", "--stdin"], { stdin: untidy })).toEqual({
			code: 0,
			out: tidy,
			err: "",
		});
		const broken = await folder.run(["format", "--stdin"], {
			stdin: unreadable,
		});
		expect([broken.code, broken.out]).toEqual([1, unreadable]);
	});

	test("a clean design stays as it is", async () => {
		const folder = folderWith({ "tray.rod": smallDesign });
		expect((await folder.run(["format", "--check", "tray.rod"])).code).toBe(0);
	});
});
