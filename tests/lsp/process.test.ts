// The server as a process of its own: it starts, answers over stdio and over Node's IPC, and ends.

import { type ChildProcess, fork, spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import {
	createProtocolConnection,
	IPCMessageReader,
	IPCMessageWriter,
	type ProtocolConnection,
	type PublishDiagnosticsParams,
	StreamMessageReader,
	StreamMessageWriter,
} from "vscode-languageserver/node";

const entry = join(import.meta.dirname, "../../server/hosts/node.ts");
let folder: string;

beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), "rod lsp-"));
	writeFileSync(
		join(folder, "stock.rod"),
		'sheet ply { species "birch plywood"; variant half { thick 15/32 } }\n',
	);
	const installed = join(folder, "node_modules", "woods");
	cpSync(join(folder, "stock.rod"), join(installed, "more stock.rod"));
});

afterAll(() => rmSync(folder, { recursive: true }));

const text = `use ply from "./stock.rod"
piece a {
  part b { of ply.haf; size 3 x 2 }
}
`;

async function session(
	connection: ProtocolConnection,
	child: ChildProcess,
): Promise<void> {
	const ended = once(child, "exit");
	const uri = pathToFileURL(join(folder, "a.rod")).href;
	const published = new Promise<PublishDiagnosticsParams>((resolve) =>
		connection.onNotification("textDocument/publishDiagnostics", resolve),
	);
	connection.listen();
	await connection.sendRequest("initialize", {
		processId: process.pid,
		rootUri: null,
		capabilities: {},
	});
	await connection.sendNotification("initialized", {});
	await connection.sendNotification("textDocument/didOpen", {
		textDocument: { uri, languageId: "storyrod", version: 1, text },
	});
	const { diagnostics } = await published;
	expect(diagnostics.map(({ code }) => code)).toContain("unknown-name");
	await connection.sendRequest("shutdown");
	await connection.sendNotification("exit");
	expect(await ended).toEqual([0, null]);
	connection.dispose();
}

test("over stdio", async () => {
	const child = spawn(process.execPath, [entry, "--stdio"], {
		stdio: ["pipe", "pipe", "inherit"],
	});
	await session(
		createProtocolConnection(
			new StreamMessageReader(child.stdout),
			new StreamMessageWriter(child.stdin),
		),
		child,
	);
});

test("over Node's IPC, as the editor starts it", async () => {
	const child = fork(entry, ["--node-ipc"], { execArgv: [] });
	await session(
		createProtocolConnection(
			new IPCMessageReader(child),
			new IPCMessageWriter(child),
		),
		child,
	);
});
