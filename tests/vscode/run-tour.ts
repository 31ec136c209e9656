/** Runs the tests in `tour/`: a person's way through the editor's window, with pictures. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { runFiles } from "./mocha.ts";
import { here } from "./paths.ts";

/** Resolves to whether all tests passed. */
export async function runTour(report: string): Promise<boolean> {
	const folder = join(here, "tour");
	const files = readdirSync(folder)
		.filter((name) => name.endsWith(".test.ts"))
		.sort()
		.map((name) => join(folder, name));
	return (await runFiles(files, report)) === 0;
}
