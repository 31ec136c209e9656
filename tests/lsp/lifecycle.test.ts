// How the server ends: as it is told to, or with its client; and what does not end it.

import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import {
	createProtocolConnection,
	type ProtocolConnection,
	StreamMessageReader,
	StreamMessageWriter,
} from "vscode-languageserver/node";

const entry = join(import.meta.dirname, "../../server/hosts/node.ts");

interface Server {
	readonly child: ChildProcess;
	readonly connection: ProtocolConnection;
	/** The exit code, and the signal. */
	readonly ended: Promise<unknown>;
}

let server: Server | undefined;

afterEach(() => {
	server?.child.kill();
	server?.connection.dispose();
	server = undefined;
});

async function started(processId: number | null = null): Promise<Server> {
	const child = spawn(process.execPath, [entry, "--stdio"], {
		stdio: ["pipe", "pipe", "ignore"],
	});
	const connection = createProtocolConnection(
		new StreamMessageReader(child.stdout),
		new StreamMessageWriter(child.stdin),
	);
	// What cannot be written to a server that has ended is nobody's fault.
	child.stdin.on("error", () => {});
	connection.onError(() => {});
	connection.listen();
	server = { child, connection, ended: once(child, "exit") };
	await connection.sendRequest("initialize", {
		processId,
		rootUri: null,
		capabilities: {},
	});
	await connection.sendNotification("initialized", {});
	return server;
}

test("asked to shut down and to exit: 0", async () => {
	const { connection, ended } = await started();
	await connection.sendRequest("shutdown");
	await connection.sendNotification("exit");
	expect(await ended).toEqual([0, null]);
});

test("told to exit without having been asked to shut down: 1", async () => {
	const { connection, ended } = await started();
	await connection.sendNotification("exit");
	expect(await ended).toEqual([1, null]);
});

test("the pipe ends: it ends, too", async () => {
	const { child, ended } = await started();
	child.stdin?.end();
	expect(await ended).toEqual([1, null]);
});

test("the client's process is gone while somebody else holds the pipe: it ends", async () => {
	const client = spawn(process.execPath, ["-e", "setInterval(() => {}, 1e6)"]);
	const { ended } = await started(client.pid);
	client.kill();
	expect(await ended).toEqual([1, null]);
});

test("frames that are no messages do not end it", async () => {
	const { child, connection } = await started();
	const frame = (body: string): string =>
		`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
	for (const body of [
		'{"jsonrpc":"2.0","method":"$/cancelRequest"}',
		'{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":null}}',
		'{"jsonrpc":"2.0","id":null,"method":"textDocument/hover"}',
		'{"jsonrpc":"2.0","method":"textDocument/didOpen"}',
		'{"jsonrpc":"2.0","method":"textDocument/didChange","params":[1,2,3]}',
		"{ this is no JSON",
		"null",
		"7",
		"",
	])
		child.stdin?.write(frame(body));
	const answer = await connection.sendRequest("textDocument/documentSymbol", {
		textDocument: { uri: "untitled:a" },
	});
	expect(answer).toEqual([]);
});
