// `npm run fuzz -- [--edits 1000000] [--seed 1]`: random edits over all shipped designs; one in twenty runs goes over the
// protocol. Ends with an error at the first fault.

import { parseArgs } from "node:util";
import { type FuzzResult, fuzz } from "./fuzz.ts";
import { TypedCore } from "./typed-core.ts";
import { TypedServer } from "./typed-server.ts";

const { values } = parseArgs({
	options: {
		edits: { type: "string", default: "1000000" },
		seed: { type: "string", default: "1" },
	},
});
const edits = Number(values.edits);
const seed = Number(values.seed);
if (!(edits > 0) || !Number.isInteger(seed)) {
	process.stderr.write("--edits and --seed are whole numbers\n");
	process.exit(2);
}

/** Milliseconds that nothing may take. */
const most = 1_000;
const overProtocol = Math.ceil(edits / 20);
const start = performance.now();

function tell(what: string, { edits, runs, requests, slowest }: FuzzResult) {
	const seconds = (performance.now() - start) / 1000;
	process.stdout.write(
		`${what}: ${edits} edits in ${runs} runs, ${requests} times looked, after ${seconds.toFixed(0)} s; slowest ${slowest.took.toFixed(0)} ms: ${slowest.what.slice(0, 300)}\n`,
	);
}

/** A line now and then shows that it is alive. */
function now(what: string): (result: FuzzResult) => void {
	let told = 0;
	return (result) => {
		if (result.edits - told < 10_000) return;
		told = result.edits;
		tell(what, result);
	};
}

// Whatever ends this process before its end is a fault.
process.exitCode = 1;
try {
	const core = await fuzz(new TypedCore(), edits - overProtocol, seed, {
		most,
		onRun: now("in the core"),
	});
	tell("in the core", core);
	const server = await fuzz(new TypedServer(), overProtocol, seed, {
		most,
		onRun: now("over the protocol"),
	});
	tell("over the protocol", server);
	process.exitCode = 0;
} catch (error) {
	console.error(error);
}
