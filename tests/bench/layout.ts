// `npm run bench:layout -- FOLDER`: research instances of a folder through the public interface of the cutting room, every plan
// checked, beside the best values known. Options: `--kerf K`, `--family F` (part of a name), `--effort quick|usual|thorough`,
// `--workers N`. Ends with 1 if a plan is wrong, never for what it costs or how long it takes.

import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import type { Effort } from "../../shared/cutting/index.ts";
import { type Instance, readInstances } from "./layout/instances.ts";
import { type Run, run } from "./layout/run.ts";
import { familyTable, type Result, totals } from "./layout/table.ts";

const { positionals, values } = parseArgs({
	allowPositionals: true,
	options: {
		kerf: { type: "string", default: "0" },
		family: { type: "string", default: "" },
		effort: { type: "string", default: "thorough" },
		workers: { type: "string", default: "0" },
	},
});
const [folder] = positionals;
const efforts: readonly Effort[] = ["quick", "usual", "thorough"];
const effort = efforts.find((one) => one === values.effort);
const kerf = Number(values.kerf);
const threads = Number(values.workers);
if (
	folder === undefined ||
	effort === undefined ||
	!Number.isInteger(kerf) ||
	kerf < 0 ||
	!Number.isInteger(threads)
) {
	process.stderr.write(
		"npm run bench:layout -- FOLDER [--kerf K] [--family F] [--effort quick|usual|thorough] [--workers N]\n",
	);
	process.exit(2);
}

const instances = readInstances(folder, kerf, (file, why) =>
	process.stderr.write(`${file} is left out: ${why}\n`),
).filter(({ family }) => family.includes(values.family));
process.stdout.write(
	`Node ${process.version}, ${process.arch}; effort ${effort}, kerf ${kerf}, ${threads > 1 ? `${threads} threads` : "one thread"}\n`,
);
const results =
	threads > 1 ? await inThreads(threads, effort) : oneByOne(effort);
if (results.length > 0)
	process.stdout.write(`\n${familyTable(results)}\n${totals(results)}`);
const wrong = results.filter((result) => result.run.faults.length > 0);
for (const { instance, run: one } of wrong)
	process.stdout.write(
		`WRONG ${instance.variant} ${instance.id}: ${one.faults.join("; ")}\n`,
	);
process.exitCode = wrong.length > 0 ? 1 : 0;

function oneByOne(how: Effort): Result[] {
	return instances.map((instance) => ({ instance, run: run(instance, how) }));
}

/** Each thread takes the next instance when it is done with one. */
async function inThreads(count: number, how: Effort): Promise<Result[]> {
	const runs: Run[] = [];
	let next = 0;
	await Promise.all(
		Array.from({ length: count }, async () => {
			const worker = new Worker(new URL("./layout/worker.ts", import.meta.url));
			while (next < instances.length) {
				const index = next++;
				runs[index] = await ask(worker, instances[index] as Instance, how);
			}
			await worker.terminate();
		}),
	);
	return instances.map((instance, index) => ({
		instance,
		run: runs[index] as Run,
	}));
}

function ask(worker: Worker, instance: Instance, how: Effort): Promise<Run> {
	return new Promise((resolve, reject) => {
		worker.once("error", reject);
		worker.once("message", (answer: Run) => {
			worker.off("error", reject);
			resolve(answer);
		});
		worker.postMessage({ instance, effort: how });
	});
}
