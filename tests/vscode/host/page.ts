/** What a person does in the editor's window, by mouse and keyboard. */
import type { Locator, Page } from "playwright-core";

const patience = { timeout: 60_000 };

/** Opens a file of the folder's top level by a double click in the explorer. */
export async function openFile(page: Page, name: string): Promise<void> {
	await page
		.locator(".explorer-folders-view .monaco-list-row")
		.filter({ has: page.getByText(name, { exact: true }) })
		.dblclick(patience);
	await page
		.locator(`.tab.active[data-resource-name="${name}"]`)
		.waitFor(patience);
	await page.locator(".editor-instance .view-line").first().waitFor(patience);
}

/** Runs a command by its title in the palette. */
export async function runCommand(page: Page, title: string): Promise<void> {
	await page.keyboard.press("F1");
	await page.locator(".quick-input-widget input[type=text]").fill(`>${title}`);
	await page
		.locator(".quick-input-widget .monaco-list-row", { hasText: title })
		.first()
		.click(patience);
}

/** The line of the open editor that shows this text; it must be in view. */
export function line(page: Page, text: string): Locator {
	return page.locator(".editor-instance .view-line", { hasText: text }).first();
}

/** Brings a line of the file into view: number from 1. */
export async function goToLine(page: Page, number: number): Promise<void> {
	await page.keyboard.press("Control+g");
	await page.locator(".quick-input-widget input[type=text]").fill(`:${number}`);
	await page.keyboard.press("Enter");
}

/**
 * Rests the mouse on a word and answers with the text of the hover that comes. Tries again for a while: the first hover
 * may be asked for before the extension has come alive.
 */
export async function hoverWord(
	page: Page,
	lineText: string,
	word: string,
): Promise<string> {
	const hover = hoverBox(page);
	for (let tries = 10; ; tries--) {
		// Measured anew each time: the breadcrumbs, once there, push the text down.
		const box = await wordBox(page, lineText, word);
		const x = box.x + box.width / 2;
		const y = box.y + box.height / 2;
		await page.mouse.move(x - 2, y);
		await page.mouse.move(x, y);
		try {
			await hover.waitFor({ timeout: 2000 });
			break;
		} catch (error) {
			if (tries === 0) throw error;
			await page.mouse.move(x, y + 200);
		}
	}
	// biome-ignore lint/performance/useDomNodeTextContent: its lines and cells must stay apart
	const text = await hover.innerText();
	return text.replaceAll("\u00a0", " ");
}

/** The hover that is shown. */
export function hoverBox(page: Page): Locator {
	return page
		.locator(".monaco-hover:not(.hidden) .monaco-hover-content")
		.first();
}

/** Puts the cursor behind a word by the mouse and enters a text at one go, so that nothing half-typed is told. */
export async function enterAfter(
	page: Page,
	lineText: string,
	word: string,
	text: string,
): Promise<void> {
	const box = await wordBox(page, lineText, word);
	await page.mouse.click(box.x + box.width, box.y + box.height / 2);
	await page.keyboard.insertText(text);
}

/** Shows the Problems view and answers with its rows as text, once there is one. */
export async function problems(page: Page): Promise<string[]> {
	await runCommand(page, "Problems: Focus on Problems View");
	const rows = page.locator(".markers-panel .monaco-list-row");
	await rows.first().waitFor(patience);
	return rows.allInnerTexts();
}

interface Box {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

/** A word's place in the window, in CSS pixels. Rejects if the line does not show the word. */
function wordBox(page: Page, lineText: string, word: string): Promise<Box> {
	return line(page, lineText).evaluate((element, sought): Box => {
		// A word may be coloured in several pieces, each a text node of its own; spaces are shown as no-break ones.
		const text = (element.textContent ?? "").replaceAll("\u00a0", " ");
		const start = text.indexOf(sought);
		if (start < 0) throw new Error(`no ${sought} in ${text}`);
		const end = start + sought.length;
		const range = new Range();
		const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
		let at = 0;
		for (let node = walker.nextNode(); node; node = walker.nextNode()) {
			const length = node.textContent?.length ?? 0;
			if (start >= at && start < at + length) range.setStart(node, start - at);
			if (end > at && end <= at + length) range.setEnd(node, end - at);
			at += length;
		}
		return range.getBoundingClientRect().toJSON() as Box;
	}, word);
}
