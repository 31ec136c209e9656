/** Runs files of tests with mocha and leaves a report of the counts: the same inside the editor and beside it. */
import { writeFileSync } from "node:fs";
import Mocha from "mocha";

/** What the report holds, as JSON. */
export interface Report {
	readonly passes: number;
	readonly failures: number;
}

/** Resolves to the number of failures. Rejects if a file cannot be loaded or no test was found. */
export async function runFiles(
	files: readonly string[],
	reportFile: string,
): Promise<number> {
	const mocha = new Mocha({
		ui: "tdd",
		timeout: 60_000,
		slow: 1000,
		forbidOnly: true,
		forbidPending: true,
		failZero: true,
		color: process.env.CI === undefined,
	});
	for (const file of files) mocha.addFile(file);
	await mocha.loadFilesAsync();
	const { promise, resolve } = Promise.withResolvers<number>();
	const runner = mocha.run(resolve);
	const failures = await promise;
	const report: Report = { passes: runner.stats?.passes ?? 0, failures };
	writeFileSync(reportFile, JSON.stringify(report));
	return failures;
}
