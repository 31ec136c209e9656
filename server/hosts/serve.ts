// Runs the language server in a Node process, over the transport that its arguments name.

import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { start } from "../core/start.ts";
import { nodeHost } from "./node-host.ts";

/** `--stdio`, `--node-ipc`, `--socket=N` or `--pipe=NAME` in the arguments of the process. Throws if none is there. */
export function serve(): void {
	start(createConnection(ProposedFeatures.all), nodeHost);
}
