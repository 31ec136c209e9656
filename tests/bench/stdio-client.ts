// A client as bare as can be, so that what is timed is the server: messages over the pipes of a child process.

import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";

interface Message {
	readonly id?: number;
	readonly method?: string;
	readonly params?: { readonly version?: number };
	readonly result?: unknown;
	readonly error?: { readonly message: string };
}

type Answered = (message: Message) => void;

export class StdioClient {
	/** When the process was asked for. */
	readonly started = performance.now();
	private readonly child: ChildProcess;
	private readonly answers = new Map<number, Answered>();
	private readonly versions = new Map<number, () => void>();
	private readonly parts: Buffer[] = [];
	private length = 0;
	/** Bytes of the message that is coming, once its header is in. */
	private wanted: number | undefined;
	private ids = 0;

	constructor(args: readonly string[]) {
		this.child = spawn(process.execPath, args, {
			stdio: ["pipe", "pipe", "inherit"],
		});
		this.child.stdout?.on("data", (data: Buffer) => this.take(data));
	}

	async initialize(): Promise<unknown> {
		const result = await this.request("initialize", {
			processId: process.pid,
			rootUri: null,
			capabilities: {
				textDocument: {
					semanticTokens: {
						requests: { full: { delta: true } },
						tokenTypes: [],
						tokenModifiers: [],
						formats: ["relative"],
					},
				},
			},
		});
		this.notify("initialized", {});
		return result;
	}

	notify(method: string, params: object): void {
		this.send({ method, params });
	}

	request<T = unknown>(method: string, params: object): Promise<T> {
		this.ids += 1;
		const id = this.ids;
		return new Promise<T>((resolve, reject) => {
			this.answers.set(id, ({ result, error }) =>
				error
					? reject(new Error(`${method}: ${error.message}`))
					: resolve(result as T),
			);
			this.send({ id, method, params });
		});
	}

	/** Resolves when the diagnostics of a version of the document have come. */
	diagnosed(version: number): Promise<void> {
		return new Promise((resolve) => this.versions.set(version, resolve));
	}

	/** Megabytes that the process has in memory; undefined where the system does not tell. */
	resident(): number | undefined {
		try {
			const status = readFileSync(`/proc/${this.child.pid}/status`, "utf8");
			const kilobytes = /^VmRSS:\s+(\d+)/m.exec(status)?.[1];
			return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
		} catch {
			return undefined;
		}
	}

	async end(): Promise<void> {
		await this.request("shutdown", {});
		const ended = new Promise((resolve) => this.child.once("exit", resolve));
		this.notify("exit", {});
		await ended;
	}

	private send(message: object): void {
		const body = JSON.stringify({ jsonrpc: "2.0", ...message });
		this.child.stdin?.write(
			`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
		);
	}

	private take(data: Buffer): void {
		this.parts.push(data);
		this.length += data.length;
		for (;;) {
			if (this.wanted === undefined) {
				const all = this.joined();
				const header = all.indexOf("\r\n\r\n");
				if (header < 0) return;
				const found = /Content-Length: (\d+)/i.exec(
					all.toString("latin1", 0, header),
				);
				this.wanted = Number(found?.[1]);
				this.put(all.subarray(header + 4));
			}
			if (this.length < this.wanted) return;
			const all = this.joined();
			const body = all.toString("utf8", 0, this.wanted);
			this.put(all.subarray(this.wanted));
			this.wanted = undefined;
			this.handle(JSON.parse(body) as Message);
		}
	}

	private joined(): Buffer {
		return this.parts.length === 1
			? (this.parts[0] as Buffer)
			: Buffer.concat(this.parts);
	}

	private put(rest: Buffer): void {
		this.parts.length = 0;
		this.parts.push(rest);
		this.length = rest.length;
	}

	private handle(message: Message): void {
		const { id, method, params } = message;
		if (method === "textDocument/publishDiagnostics") {
			const version = params?.version ?? -1;
			this.versions.get(version)?.();
			this.versions.delete(version);
		} else if (method !== undefined && id !== undefined) {
			this.send({ id, result: null });
		} else if (id !== undefined) {
			this.answers.get(id)?.(message);
			this.answers.delete(id);
		}
	}
}
