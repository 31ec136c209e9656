// A scripted editor: a client joined to the server in memory, with files that only exist here.

import { PassThrough } from "node:stream";
import {
	type ClientCapabilities,
	createConnection,
	createProtocolConnection,
	type Diagnostic,
	type DidChangeWatchedFilesRegistrationOptions,
	type FileEvent,
	type InitializeResult,
	type Position,
	type ProtocolConnection,
	type PublishDiagnosticsParams,
	type Range,
	type Registration,
	type RegistrationParams,
	StreamMessageReader,
	StreamMessageWriter,
	type TextEdit,
	type UnregistrationParams,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Host } from "../../server/core/host.ts";
import { start } from "../../server/core/start.ts";
import { resolveRelative } from "../../shared/sources/sources.ts";
import { type FixtureFile, placeOf } from "./fixture.ts";

/** What a full client can do. */
export const fullClient: ClientCapabilities = {
	workspace: {
		configuration: true,
		didChangeConfiguration: { dynamicRegistration: true },
	},
	textDocument: {
		completion: { completionItem: { snippetSupport: true } },
		definition: { linkSupport: true },
		documentSymbol: { hierarchicalDocumentSymbolSupport: true },
	},
};

/** The same, but it asks for diagnostics. */
export const pullingClient: ClientCapabilities = {
	workspace: {
		...fullClient.workspace,
		diagnostics: { refreshSupport: true },
		didChangeWatchedFiles: {
			dynamicRegistration: true,
			relativePatternSupport: true,
		},
	},
	textDocument: {
		...fullClient.textDocument,
		diagnostic: { relatedDocumentSupport: true },
	},
};

export class Editor {
	/** How often the server told the client to ask for diagnostics again. */
	refreshes = 0;
	/** What the server registered later, by its id there. */
	readonly registered = new Map<string, Registration>();
	/** Files on disk by uri; a test may change them. */
	readonly disk: Map<string, string>;
	/** Everything that was published, oldest first. */
	readonly published: PublishDiagnosticsParams[] = [];
	/** What the user was told in a message of its own. */
	readonly told: string[] = [];
	/** What is set as `storyrod.checks`; the server asks for it. */
	settings: unknown = {};
	/** What is set as `storyrod.hints`. */
	hints: unknown = {};
	/** What else the server told the client to ask for again, by its method. */
	readonly askedAgain: string[] = [];
	/** What the server logged as an error. */
	readonly logged: string[] = [];
	/** How often the server read a file from disk. */
	reads = 0;
	/** Makes every read from disk a fault of the server. */
	failsToRead = false;
	readonly connection: ProtocolConnection;
	initialized: InitializeResult | undefined;
	private folders: readonly string[];
	private readonly documents = new Map<string, TextDocument>();
	private readonly waiting = new Set<() => void>();
	private readonly toServer = new PassThrough();

	private constructor(
		disk: ReadonlyMap<string, string>,
		folders: readonly string[],
	) {
		this.disk = new Map(disk);
		this.folders = folders;
		const up = this.toServer;
		const down = new PassThrough();
		const server = createConnection(
			new StreamMessageReader(up),
			new StreamMessageWriter(down),
		);
		start(server, this.host());
		this.connection = createProtocolConnection(
			new StreamMessageReader(down),
			new StreamMessageWriter(up),
		);
		this.connection.onNotification(
			"textDocument/publishDiagnostics",
			(params: PublishDiagnosticsParams) => {
				this.published.push(params);
				for (const look of [...this.waiting]) look();
			},
		);
		this.connection.onNotification(
			"window/logMessage",
			({ message, type }: { message: string; type: number }) => {
				if (type === 1) this.logged.push(message);
			},
		);
		this.connection.onNotification(
			"window/showMessage",
			({ message }: { message: string }) => {
				this.told.push(message);
				for (const look of [...this.waiting]) look();
			},
		);
		this.connection.onRequest(
			"workspace/configuration",
			({ items }: { items: readonly { section?: string }[] }) =>
				items.map(({ section }) =>
					section === "storyrod.checks"
						? this.settings
						: section === "storyrod.hints"
							? this.hints
							: null,
				),
		);
		this.connection.onRequest(
			"client/registerCapability",
			({ registrations }: RegistrationParams) => {
				for (const one of registrations) this.registered.set(one.id, one);
				return null;
			},
		);
		this.connection.onRequest(
			"client/unregisterCapability",
			({ unregisterations }: UnregistrationParams) => {
				for (const { id } of unregisterations) this.registered.delete(id);
				return null;
			},
		);
		for (const what of ["semanticTokens", "inlayHint", "codeLens"]) {
			this.connection.onRequest(`workspace/${what}/refresh`, () => {
				this.askedAgain.push(what);
				for (const look of [...this.waiting]) look();
				return null;
			});
		}
		this.connection.onRequest("workspace/diagnostic/refresh", () => {
			this.refreshes++;
			return null;
		});
		this.connection.listen();
	}

	static async start(
		disk: ReadonlyMap<string, string> = new Map(),
		capabilities: ClientCapabilities = fullClient,
		settings: unknown = {},
		folders: readonly string[] = [],
	): Promise<Editor> {
		const editor = new Editor(disk, folders);
		editor.settings = settings;
		editor.initialized = await editor.connection.sendRequest("initialize", {
			processId: null,
			rootUri: null,
			workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
			capabilities,
		});
		await editor.connection.sendNotification("initialized", {});
		return editor;
	}

	/** Changes what is set, and tells the server as an editor does. */
	async set(settings: unknown): Promise<void> {
		this.settings = settings;
		await this.connection.sendNotification("workspace/didChangeConfiguration", {
			settings: { storyrod: { checks: settings, hints: this.hints } },
		});
	}

	/** Ends the session; fails if the server logged a fault on the way. */
	async stop(): Promise<void> {
		await this.connection.sendRequest("shutdown");
		await this.connection.sendNotification("exit");
		this.end();
	}

	/** The same in a process that goes on: `exit` ends the process that the server runs in, and that is this one. */
	async shutDown(): Promise<void> {
		await this.connection.sendRequest("shutdown");
		this.end();
	}

	private end(): void {
		this.connection.dispose();
		if (this.logged.length > 0) throw new Error(this.logged.join("\n"));
	}

	async open(uri: string, text: string): Promise<void> {
		this.documents.set(uri, TextDocument.create(uri, "storyrod", 1, text));
		await this.connection.sendNotification("textDocument/didOpen", {
			textDocument: { uri, languageId: "storyrod", version: 1, text },
		});
	}

	openFile(file: FixtureFile): Promise<void> {
		return this.open(file.uri, file.text);
	}

	/** Replaces the only place where `old` stands. */
	async edit(uri: string, old: string, now: string): Promise<void> {
		const document = this.document(uri);
		const at = placeOf(document.getText(), old);
		await this.change(uri, [
			{
				range: {
					start: document.positionAt(at),
					end: document.positionAt(at + old.length),
				},
				text: now,
			},
		]);
	}

	async change(
		uri: string,
		contentChanges: { range?: Range; text: string }[],
	): Promise<void> {
		const version = this.version(uri) + 1;
		const changed = contentChanges.map(({ range, text }) =>
			range ? { range, text } : { text },
		);
		this.documents.set(
			uri,
			TextDocument.update(this.document(uri), changed, version),
		);
		await this.connection.sendNotification("textDocument/didChange", {
			textDocument: { uri, version },
			contentChanges: changed,
		});
	}

	/** Changes that reach the server in one piece, as they do while it is busy. */
	changeTogether(uri: string, texts: readonly string[]): void {
		const frames = texts.map((text) => {
			const document = this.document(uri);
			const version = document.version + 1;
			TextDocument.update(document, [{ text }], version);
			const body = JSON.stringify({
				jsonrpc: "2.0",
				method: "textDocument/didChange",
				params: {
					textDocument: { uri, version },
					contentChanges: [{ text }],
				},
			});
			return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
		});
		this.toServer.write(frames.join(""));
	}

	/** Sends messages as they are, in one piece: what no library would write, or as they lie ready after a busy while. */
	sendRaw(messages: readonly (object | string)[]): void {
		const frames = messages.map((message) => {
			const body =
				typeof message === "string"
					? message
					: JSON.stringify({ jsonrpc: "2.0", ...message });
			return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
		});
		this.toServer.write(frames.join(""));
	}

	async close(uri: string): Promise<void> {
		this.documents.delete(uri);
		await this.connection.sendNotification("textDocument/didClose", {
			textDocument: { uri },
		});
	}

	/** Writes a file on disk, or removes it, and tells the server as a watcher does. */
	async write(uri: string, text: string | undefined): Promise<void> {
		const type = text === undefined ? 3 : this.disk.has(uri) ? 2 : 1;
		if (text === undefined) this.disk.delete(uri);
		else this.disk.set(uri, text);
		await this.connection.sendNotification("workspace/didChangeWatchedFiles", {
			changes: [{ uri, type }],
		});
	}

	/** Files change at once, `null` takes one away; the server hears of those that it asked to hear of. */
	async changeDisk(
		changes: Readonly<Record<string, string | null>>,
	): Promise<void> {
		const events: FileEvent[] = [];
		for (const [uri, text] of Object.entries(changes)) {
			const type = text === null ? 3 : this.disk.has(uri) ? 2 : 1;
			if (text === null) this.disk.delete(uri);
			else this.disk.set(uri, text);
			if (this.isWatched(uri)) events.push({ uri, type });
		}
		if (events.length > 0)
			await this.connection.sendNotification(
				"workspace/didChangeWatchedFiles",
				{ changes: events },
			);
	}

	/** Folders are opened and closed. */
	async changeFolders(
		added: readonly string[],
		removed: readonly string[],
	): Promise<void> {
		const asFolder = (uri: string) => ({ uri, name: uri });
		this.folders = [...this.folders, ...added].filter(
			(uri) => !removed.includes(uri),
		);
		await this.connection.sendNotification(
			"workspace/didChangeWorkspaceFolders",
			{
				event: { added: added.map(asFolder), removed: removed.map(asFolder) },
			},
		);
	}

	/** As editors watch: a plain pattern means the open folders without their packages, one with a base that very folder. */
	private isWatched(uri: string): boolean {
		const folder = uri.slice(0, uri.lastIndexOf("/"));
		return [...this.registered.values()]
			.flatMap(
				({ method, registerOptions }) =>
					(method === "workspace/didChangeWatchedFiles" &&
						(registerOptions as DidChangeWatchedFilesRegistrationOptions)
							.watchers) ||
					[],
			)
			.some(({ globPattern }) =>
				typeof globPattern === "string"
					? this.folders.some((one) => uri.startsWith(`${one}/`)) &&
						!uri.includes("/node_modules/")
					: globPattern.baseUri === folder,
			);
	}

	/** Everything that was sent is in, worked out and told; what the server asked on the way is answered, and worked out too. */
	async settled(): Promise<void> {
		for (let trip = 0; trip < 3; trip++)
			await this.connection.sendRequest("textDocument/documentSymbol", {
				textDocument: { uri: "untitled:nothing" },
			});
	}

	/** Whether a document is open. */
	has(uri: string): boolean {
		return this.documents.has(uri);
	}

	text(uri: string): string {
		return this.document(uri).getText();
	}

	version(uri: string): number {
		return this.document(uri).version;
	}

	positionAt(uri: string, offset: number): Position {
		return this.document(uri).positionAt(offset);
	}

	/** A request about a document at an offset. */
	ask<T>(
		method: string,
		uri: string,
		offset: number,
		more: object = {},
	): Promise<T> {
		return this.connection.sendRequest(method, {
			textDocument: { uri },
			position: this.positionAt(uri, offset),
			...more,
		});
	}

	/** The text of a document after edits that the server sent. */
	applied(uri: string, edits: TextEdit[]): string {
		return TextDocument.applyEdits(this.document(uri), edits);
	}

	/** The diagnostics of the newest version of a document, as soon as they are there. */
	async diagnostics(uri: string): Promise<Diagnostic[]> {
		const version = this.documents.get(uri)?.version;
		return this.until(() => {
			const last = this.published.findLast((one) => one.uri === uri);
			return last && (version === undefined || last.version === version)
				? last.diagnostics
				: undefined;
		});
	}

	/** Waits until a file's published diagnostics fulfil a condition. */
	async until<T>(look: () => T | undefined): Promise<T> {
		const now = look();
		if (now !== undefined) return now;
		return new Promise((resolve) => {
			const again = (): void => {
				const found = look();
				if (found === undefined) return;
				this.waiting.delete(again);
				resolve(found);
			};
			this.waiting.add(again);
		});
	}

	/** The last diagnostics that were published for a file. */
	last(uri: string): Diagnostic[] | undefined {
		return this.published.findLast((one) => one.uri === uri)?.diagnostics;
	}

	/** Diagnostics as fixtures mark them: `severity id: message`, with the text that they are about. */
	shown(uri: string, diagnostics: readonly Diagnostic[]): string[] {
		const document = this.document(uri);
		const severities = ["error", "warning", "information", "hint"];
		return diagnostics.map(
			({ range, severity = 1, code, message }) =>
				`[${document.getText(range)}] ${severities[severity - 1]} ${code}: ${message}`,
		);
	}

	private document(uri: string): TextDocument {
		const document = this.documents.get(uri);
		if (!document) throw new Error(`Not open: ${uri}`);
		return document;
	}

	private host(): Host {
		return {
			read: (uri) => {
				this.reads++;
				if (this.failsToRead) throw new Error("The disk is on fire");
				return this.disk.get(uri);
			},
			stamp: (uri) => this.disk.get(uri),
			resolve: (from, path) => {
				const relative = resolveRelative(from, path);
				if (relative !== undefined || path.startsWith(".")) return relative;
				const installed = `file:///shop/node_modules/${path}`;
				return this.disk.has(installed) ? installed : undefined;
			},
			list: (folder) =>
				[...this.disk.keys()]
					.filter((uri) => uri.startsWith(folder) && uri.endsWith(".rod"))
					.map((uri) => uri.slice(folder.length).split("/"))
					.map(([name = "", ...more]) => ({
						name,
						isFolder: more.length > 0,
					})),
			settingsFile: (uri) => {
				const file = new URL(".storyrod.json", uri).href;
				return this.disk.has(file) ? file : undefined;
			},
			canonical: (uri) => uri.replaceAll("%2D", "-"),
			later: (task) => void setImmediate(task),
			checkPage: (anchor) => `file:///package/CHECKS.md#${anchor}`,
		};
	}
}
