/**
 * Runs every check of the project, as `npm test` does: the editors that its tests need, build, types, style, unit tests,
 * editor tests. A step that fails does not keep the later ones from running. Ends with one line of counts over both test
 * runners.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";

interface Counts {
	readonly passed: number;
	readonly failed: number;
}

interface Step {
	readonly name: string;
	/** What npm runs, a script of the manifest and its arguments. */
	readonly run: readonly string[];
	/** Reports of the step's tests, each read with `read`. */
	readonly reports?: readonly string[];
	readonly read?: (report: Record<string, number>) => Counts;
}

const root = join(import.meta.dirname, "..");
const unitReport = join(root, "dist/unit.report.json");
const editorReports = ["suite", "tour"].map((name) =>
	join(root, `tests/vscode/out/${name}.report.json`),
);

const steps: readonly Step[] = [
	{ name: "Editors for the tests", run: ["install:vscode"] },
	{ name: "Build", run: ["build"] },
	{ name: "Types", run: ["check:types"] },
	{ name: "Types of the editor tests", run: ["check:types:vscode"] },
	{ name: "Style", run: ["check:style"] },
	{
		name: "Unit tests",
		run: [
			"test:unit",
			"--",
			"--reporter=default",
			"--reporter=json",
			`--outputFile.json=${unitReport}`,
		],
		reports: [unitReport],
		read: ({ numPassedTests = 0, numFailedTests = 0 }) => ({
			passed: numPassedTests,
			failed: numFailedTests,
		}),
	},
	{
		name: "Editor tests",
		run: ["test:vscode"],
		reports: editorReports,
		read: ({ passes = 0, failures = 0 }) => ({
			passed: passes,
			failed: failures,
		}),
	},
];

/** Runs a step and counts its tests. A step that fails without a failed test (a compiler, a crash) counts as one failure. */
function runStep(step: Step): Counts {
	console.log(`\n== ${step.name}`);
	for (const report of step.reports ?? []) rmSync(report, { force: true });
	const { status } = spawnSync("npm", ["run", "--silent", ...step.run], {
		cwd: root,
		stdio: ["ignore", "inherit", "inherit"],
		shell: process.platform === "win32", // npm is a .cmd there
	});
	let passed = 0;
	let failed = 0;
	for (const report of step.reports ?? []) {
		const counts = existsSync(report)
			? step.read?.(JSON.parse(readFileSync(report, "utf8")))
			: { passed: 0, failed: 1 }; // its runner did not come to its end
		passed += counts?.passed ?? 0;
		failed += counts?.failed ?? 0;
	}
	if (status !== 0 && failed === 0) failed = 1;
	return { passed, failed };
}

const results = steps.map((step) => ({ step, counts: runStep(step) }));

const broken = results.filter(({ counts }) => counts.failed > 0);
const total = (of: keyof Counts): number =>
	results.reduce((sum, { counts }) => sum + counts[of], 0);
console.log(
	broken.length > 0
		? `\nFailed: ${broken.map(({ step }) => step.name).join(", ")}`
		: "\nAll steps passed",
);
console.log(`${total("passed")} passed, ${total("failed")} failed`);
process.exit(broken.length > 0 ? 1 : 0);
