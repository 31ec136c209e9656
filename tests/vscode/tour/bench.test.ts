/** The main job as a maker sees it: the cut list in a hover, a warning that comes with an edit and goes with its undo. */
import assert from "node:assert/strict";
import { rmSync } from "node:fs";
import { join } from "node:path";
import {
	enterAfter,
	hoverBox,
	hoverWord,
	line,
	openFile,
	problems,
} from "../host/page.ts";
import { type EditorServer, startServer } from "../host/server.ts";
import { openWorkbench, type Workbench } from "../host/workbench.ts";
import { extensionRoot, out } from "../paths.ts";
import * as bench from "../record-bench.ts";
import { copyDesigns } from "../run-suite.ts";

/** How soon a warning must follow the edit, in milliseconds. */
const soon = 1000;

suite("Tour of the record bench", () => {
	let folder: string;
	let server: EditorServer;
	let workbench: Workbench;

	suiteSetup(async () => {
		folder = copyDesigns();
		server = await startServer();
		workbench = await openWorkbench(server, {
			folder,
			extension: extensionRoot,
		});
	});

	suiteTeardown(async () => {
		await workbench?.browser.close();
		server?.stop();
		if (folder) rmSync(folder, { recursive: true, force: true });
	});

	const picture = (name: string): Promise<unknown> =>
		workbench.page.screenshot({ path: join(out, `${name}.png`) });

	test("the design opens, coloured, and is shown as Storyrod", async () => {
		const { page } = workbench;
		await openFile(page, bench.file);
		await page
			.locator("#status\\.editor\\.mode", { hasText: "Storyrod" })
			.waitFor();
		await page.waitForFunction(
			() => {
				const line = [...document.querySelectorAll(".view-line")].find((each) =>
					each.textContent?.startsWith("piece"),
				);
				const pieces = [...(line?.querySelectorAll("[class*=mtk]") ?? [])];
				return (
					new Set(pieces.map((each) => getComputedStyle(each).color)).size >= 2
				);
			},
			undefined,
			{ timeout: 10_000 },
		);
		await picture("1-open");
	});

	test("the hover on the piece shows its cut list", async () => {
		const text = await hoverWord(
			workbench.page,
			bench.pieceLine,
			bench.pieceName,
		);
		await picture("2-cut-list");
		assert.match(text, /14 5\/8/);
		assert.match(text, /left/);
	});

	test("the hover on the bottom shows a picture of how it sags", async () => {
		const { page } = workbench;
		await page.keyboard.press("Escape");
		const text = await hoverWord(page, bench.panelsLine, "bottom");
		assert.match(text, /Sags 0\.\d+ in/);
		const drawn = hoverBox(page).locator("img[src^='data:image/svg+xml']");
		await drawn.scrollIntoViewIfNeeded({ timeout: 10_000 });
		await picture("2-sag");
		const width = await drawn.evaluate((image) =>
			image instanceof HTMLImageElement && image.complete
				? image.naturalWidth
				: 0,
		);
		assert.equal(width, 380);
	});

	test("a dado made too wide is underlined within a second", async () => {
		const { page } = workbench;
		await page.keyboard.press("Escape");
		await page.mouse.move(0, 0);
		assert.equal(await underlined(), 0);
		await enterAfter(page, bench.dadoLine, bench.dadoDepth, bench.tooWide);
		const start = performance.now();
		await page.locator(".squiggly-error").first().waitFor({ timeout: 10_000 });
		const took = performance.now() - start;
		await picture("3-too-wide");
		console.log(`    underlined ${Math.round(took)} ms after the edit`);
		assert.ok(took < soon, `underlined after ${Math.round(took)} ms`);
	});

	test("the Problems view tells it", async () => {
		const rows = await problems(workbench.page);
		await picture("4-problems");
		assert.ok(
			rows.some((row) => row.includes("fit-gap")),
			rows.join("\n"),
		);
	});

	test("undoing cures it", async () => {
		const { page } = workbench;
		await line(page, bench.dadoLine).click();
		const start = performance.now();
		const edited = page.locator(".view-line", {
			hasText: `${bench.dadoLine} wide`,
		});
		while ((await edited.count()) > 0) {
			assert.ok(performance.now() - start < 10_000, "undone");
			await page.keyboard.press("Control+z");
		}
		await page
			.locator(".squiggly-error")
			.first()
			.waitFor({ state: "detached", timeout: soon });
		await picture("5-cured");
	});

	function underlined(): Promise<number> {
		return workbench.page.locator(".squiggly-error").count();
	}
});
