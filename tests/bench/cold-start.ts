// From nothing to the first diagnostics: a process is started, reads one file and answers.

import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = (path: string) =>
	fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Milliseconds until the command has told what it finds and ended, from the sources. */
export function checkCommand(file: string): Promise<number> {
	return untilExit([root("server/cli/main.ts"), "check", file]);
}

/** The same from the bundle; undefined if it has not been built. */
export async function bundledCommand(
	file: string,
): Promise<number | undefined> {
	const bundle = root("dist/server/storyrod.mjs");
	if (!existsSync(bundle)) return undefined;
	return untilExit([bundle, "check", file]);
}

/** Milliseconds until a process has loaded the CSS language service, and parsed and validated the file. */
export function cssService(file: string): Promise<number> {
	return untilExit([root("tests/bench/css-once.ts"), file]);
}

function untilExit(args: readonly string[]): Promise<number> {
	const start = performance.now();
	return new Promise((resolve, reject) => {
		spawn(process.execPath, args, { stdio: "ignore" })
			.on("error", reject)
			.on("exit", () => resolve(performance.now() - start));
	});
}

/**
 * Milliseconds until the bundled language server has published the diagnostics of a file that an editor opens; undefined
 * if it has not been built.
 */
export async function languageServer(
	file: string,
	text: string,
): Promise<number | undefined> {
	const bundle = root("dist/server/language-server.mjs");
	if (!existsSync(bundle)) return undefined;
	const start = performance.now();
	const child = spawn(process.execPath, [bundle, "--stdio"], {
		stdio: ["pipe", "pipe", "ignore"],
	});
	const answers = messagesOf(child);
	const uri = pathToFileURL(file).href;
	send(child, {
		id: 1,
		method: "initialize",
		params: { processId: process.pid, rootUri: null, capabilities: {} },
	});
	let took: number | undefined;
	for await (const answer of answers) {
		if (answer.id === 1) {
			send(child, { method: "initialized", params: {} });
			const textDocument = { uri, languageId: "storyrod", version: 1, text };
			send(child, { method: "textDocument/didOpen", params: { textDocument } });
		} else if (answer.method === "textDocument/publishDiagnostics") {
			took = performance.now() - start;
			break;
		}
	}
	child.kill();
	return took;
}

interface Message {
	readonly id?: number;
	readonly method?: string;
}

function send(child: ChildProcess, message: object): void {
	const body = JSON.stringify({ jsonrpc: "2.0", ...message });
	child.stdin?.write(
		`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
	);
}

async function* messagesOf(child: ChildProcess): AsyncGenerator<Message> {
	let waiting = Buffer.alloc(0);
	for await (const chunk of child.stdout ?? []) {
		waiting = Buffer.concat([waiting, chunk as Buffer]);
		for (;;) {
			const head = waiting.indexOf("\r\n\r\n");
			const length = /Content-Length: (\d+)/i.exec(
				waiting.toString("utf8", 0, Math.max(0, head)),
			)?.[1];
			const from = head + 4;
			if (head < 0 || length === undefined) break;
			const end = from + Number(length);
			if (waiting.length < end) break;
			yield JSON.parse(waiting.toString("utf8", from, end)) as Message;
			waiting = waiting.subarray(end);
		}
	}
}
