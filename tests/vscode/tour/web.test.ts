/** The same language service in a browser alone: a worker serves it, and used files come from the editor. */
import assert from "node:assert/strict";
import { rmSync } from "node:fs";
import { join } from "node:path";
import {
	enterAfter,
	hoverWord,
	line,
	openFile,
	problems,
	runCommand,
} from "../host/page.ts";
import { openWebWorkbench, type WebWorkbench } from "../host/web-workbench.ts";
import { extensionRoot, out } from "../paths.ts";
import * as bench from "../record-bench.ts";
import { copyDesigns } from "../run-suite.ts";

suite("Tour of the record bench in VS Code for the web", () => {
	let folder: string;
	let workbench: WebWorkbench;

	suiteSetup(async () => {
		folder = copyDesigns();
		workbench = await openWebWorkbench({ folder, extension: extensionRoot });
	});

	suiteTeardown(async () => {
		await workbench?.close();
		if (folder) rmSync(folder, { recursive: true, force: true });
	});

	const picture = (name: string): Promise<unknown> =>
		workbench.page.screenshot({ path: join(out, `${name}.png`) });

	test("the hover on the piece shows its cut list, with stock that only the editor has", async () => {
		const { page } = workbench;
		await openFile(page, bench.file);
		const text = await hoverWord(page, bench.pieceLine, bench.pieceName);
		await picture("web-1-cut-list");
		assert.match(text, /14 5\/8/);
		assert.match(text, /ply\.three-quarter/);
	});

	test("nothing is found wrong, as on a desktop", async () => {
		const { page } = workbench;
		await page.keyboard.press("Escape");
		await page.mouse.move(0, 0);
		assert.equal(await page.locator(".squiggly-error").count(), 0);
	});

	test("a dado made too wide is underlined and told", async () => {
		const { page } = workbench;
		await enterAfter(page, bench.dadoLine, bench.dadoDepth, bench.tooWide);
		await page.locator(".squiggly-error").first().waitFor({ timeout: 10_000 });
		const rows = await problems(page);
		await picture("web-2-too-wide");
		assert.ok(
			rows.some((row) => row.includes("fit-gap")),
			rows.join("\n"),
		);
	});

	test("undoing cures it", async () => {
		const { page } = workbench;
		await line(page, bench.dadoLine).click();
		const edited = page.locator(".view-line", {
			hasText: `${bench.dadoLine} wide`,
		});
		for (let tries = 0; (await edited.count()) > 0; tries++) {
			assert.ok(tries < 20, "undone");
			await page.keyboard.press("Control+z");
		}
		await page
			.locator(".squiggly-error")
			.first()
			.waitFor({ state: "detached", timeout: 10_000 });
	});

	test("a changed stock file is seen by the design that uses it", async () => {
		const { page } = workbench;
		await openFile(page, "stock.rod");
		await enterAfter(
			page,
			"variant three-quarter { sold-as 3/4; thick 45/64",
			"three-quarter",
			"s",
		);
		await runCommand(page, "File: Save");
		await openFile(page, bench.file);
		await page.locator(".squiggly-error").first().waitFor({ timeout: 20_000 });
		await picture("web-3-stock");
		const rows = await problems(page);
		assert.ok(
			rows.some((row) => row.includes("three-quarter")),
			rows.join("\n"),
		);
	});
});
