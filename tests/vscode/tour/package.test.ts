/** The packed extension, installed as a user installs it, comes alive in an editor that knows nothing of the sources. */
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { hoverWord, openFile } from "../host/page.ts";
import {
	dataOptions,
	makeDataFolder,
	serverMain,
	startServer,
} from "../host/server.ts";
import { openWorkbench } from "../host/workbench.ts";
import { packExtension, packedFiles } from "../package.ts";
import { out } from "../paths.ts";
import * as bench from "../record-bench.ts";
import { copyDesigns } from "../run-suite.ts";

suite("The package", () => {
	const file = join(out, "storyrod.vsix");

	test("holds what runs and nothing of the sources", () => {
		packExtension(file);
		const files = packedFiles();
		for (const needed of [
			"dist/client/extension.cjs",
			"dist/server/language-server.mjs",
			"dist/THIRD-PARTY.txt",
			"shared/checks/CHECKS.md",
			"grammar/generated/storyrod.tmLanguage.json",
			"client/snippets/storyrod.json",
			"package.nls.json",
			"LICENSE",
		])
			assert.ok(files.includes(needed), needed);
		const sources = /\.(ts|map)$|^tests\/|node_modules/;
		// The types that a program sees which imports the layouts, and no others.
		const types =
			/^dist\/layouts\/(index|job|(boards|sheets)\/(index|search))\.d\.ts$/;
		assert.deepEqual(
			files.filter((name) => sources.test(name) && !types.test(name)),
			[],
		);
		assert.ok(statSync(file).size < 2_000_000, `${statSync(file).size} bytes`);
	});

	test("installs and answers a hover", async () => {
		const data = makeDataFolder();
		execFileSync(process.execPath, [
			serverMain,
			...["--install-extension", file],
			"--accept-server-license-terms",
			...dataOptions(data),
		]);
		const folder = copyDesigns();
		const server = await startServer(data);
		const { browser, page } = await openWorkbench(server, { folder });
		try {
			await openFile(page, bench.file);
			const text = await hoverWord(page, bench.pieceLine, bench.pieceName);
			assert.match(text, /14 5\/8/);
		} finally {
			await page.screenshot({ path: join(out, "6-installed.png") });
			await browser.close();
			server.stop();
			rmSync(folder, { recursive: true, force: true });
		}
	});
});
