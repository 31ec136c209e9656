/** Where the editor enters the tests that run inside its extension host. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { endMark, startMark } from "../host/marks.ts";
import { runFiles } from "../mocha.ts";

/** Called by VS Code; a rejection makes the run's exit code 1. */
export async function run(): Promise<void> {
	process.setSourceMapsEnabled(true);
	const report = process.env.STORYROD_REPORT;
	if (!report) throw new Error("STORYROD_REPORT names no file");
	const files = readdirSync(__dirname)
		.filter((name) => name.endsWith(".test.cjs"))
		.sort()
		.map((name) => join(__dirname, name));
	console.log(startMark);
	try {
		const failures = await runFiles(files, report);
		if (failures > 0) throw new Error(`${failures} tests failed`);
	} catch (error) {
		console.error(error);
		throw error;
	} finally {
		console.log(endMark);
	}
}
