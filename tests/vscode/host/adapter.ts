#!/usr/bin/env node
/**
 * Stands in for a desktop VS Code where none can be had: takes the command line that @vscode/test-electron gives it,
 * runs the tests in a headless one, prints what they print and ends with their result.
 */
import { resolve } from "node:path";
import { format, parseArgs } from "node:util";
import { out } from "../paths.ts";
import { endMark, startMark } from "./marks.ts";
import { startServer } from "./server.ts";
import { openWorkbench } from "./workbench.ts";

/** The window's own words, now and then, amid the tests'. */
const noise = /spdlog\.node|^\[(AccountPolicyGate|AgentHost)/;

const longest = 180_000;
const stuckPicture = resolve(out, "stuck.png");

const { values, positionals } = parseArgs({
	strict: false, // the many other options of VS Code
	allowPositionals: true,
	options: {
		extensionDevelopmentPath: { type: "string" },
		extensionTestsPath: { type: "string" },
	},
});

function path(value: string | boolean | undefined): string {
	if (typeof value === "string") return value;
	throw new Error("Both the extension and its tests must be named");
}

const run: { phase: "before" | "running" | "after" } = { phase: "before" };
const early: string[] = [];

function onLog(type: string, args: readonly unknown[]): void {
	const text = format(...args);
	if (text === startMark) run.phase = "running";
	else if (text === endMark) run.phase = "after";
	else if (run.phase === "before") early.push(text);
	else if (run.phase === "running" && !noise.test(text))
		(type === "error" ? process.stderr : process.stdout).write(`${text}\n`);
}

const ended = Promise.withResolvers<number>();
const limit = setTimeout(() => ended.resolve(124), longest);
const server = await startServer();
const { browser, page } = await openWorkbench(server, {
	folder: resolve(positionals[0] ?? "."),
	extension: path(values.extensionDevelopmentPath),
	tests: path(values.extensionTestsPath),
	onLog,
	onExit: ended.resolve,
});
const code = await ended.promise;
clearTimeout(limit);
const finished = run.phase === "after";
if (!finished) {
	const what = run.phase === "before" ? "never began" : "did not end";
	console.error(`${early.join("\n")}\nThe tests ${what}: ${stuckPicture}`);
	await page.screenshot({ path: stuckPicture }).catch(console.error);
}
await browser.close();
server.stop();
process.exit(finished ? code : code || 1);
