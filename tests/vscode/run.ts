/** The editor tests: `node tests/vscode/run.ts [suite] [tour]`, both when none is named. Expects a built `dist/`. */
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { installEditors } from "./install.ts";
import { out } from "./paths.ts";

const known = ["suite", "tour"];
const named = process.argv.slice(2);
const stranger = named.find((name) => !known.includes(name));
if (stranger) {
	console.error(
		`Unknown \`${stranger}\`: name suite, tour, or nothing for both`,
	);
	process.exit(2);
}
const wanted = named.length > 0 ? named : known;

installEditors();
mkdirSync(out, { recursive: true });
const reportOf = (name: string): string => join(out, `${name}.report.json`);
for (const name of known) rmSync(reportOf(name), { force: true });

// These need what has just been installed.
const { runSuite } = await import("./run-suite.ts");
const { runTour } = await import("./run-tour.ts");
let passed = true;
if (wanted.includes("suite"))
	passed = (await runSuite(reportOf("suite"))) && passed;
if (wanted.includes("tour"))
	passed = (await runTour(reportOf("tour"))) && passed;
process.exit(passed ? 0 : 1);
