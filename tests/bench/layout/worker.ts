// A thread that lays out one instance after the other, as they are sent.

import { parentPort } from "node:worker_threads";
import type { Effort } from "../../../shared/cutting/index.ts";
import type { Instance } from "./instances.ts";
import { run } from "./run.ts";

parentPort?.on("message", (asked: { instance: Instance; effort: Effort }) => {
	parentPort?.postMessage(run(asked.instance, asked.effort));
});
