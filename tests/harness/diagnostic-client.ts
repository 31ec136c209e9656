// Two editors as they come, seen from what their user sees: one is sent diagnostics, the other asks for them when it must,
// and only then: after its own changes, and when the server tells it to.

import type {
	ClientCapabilities,
	Diagnostic,
	DocumentDiagnosticReport,
	FullDocumentDiagnosticReport,
	UnchangedDocumentDiagnosticReport,
	WorkspaceDiagnosticReport,
} from "vscode-languageserver/node";
import { Editor, fullClient, pullingClient } from "./editor.ts";

export type ClientKind = "push" | "pull";

export interface ClientOptions {
	readonly disk: ReadonlyMap<string, string>;
	readonly folders?: readonly string[];
	/** Can watch files, also outside the folders; otherwise it tells of none. */
	readonly watches?: boolean;
	readonly settings?: unknown;
	/** What an editor kept from a server before. */
	readonly kept?: ReadonlyMap<string, Kept>;
}

interface Kept {
	readonly resultId: string | undefined;
	readonly diagnostics: readonly Diagnostic[];
}

type Report = FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport;

export class DiagnosticClient {
	readonly kind: ClientKind;
	readonly editor: Editor;
	/** What is shown of each file, by its uri. */
	private readonly table: Map<string, Kept>;
	private readonly opened = new Set<string>();
	private readonly toPull = new Set<string>();
	private pullsWorkspace = true;
	private refreshes = 0;

	private constructor(
		kind: ClientKind,
		editor: Editor,
		kept: ReadonlyMap<string, Kept>,
	) {
		this.kind = kind;
		this.editor = editor;
		this.table = new Map(kept);
	}

	static async start(
		kind: ClientKind,
		{ disk, folders, watches = true, settings, kept }: ClientOptions,
	): Promise<DiagnosticClient> {
		const base = kind === "pull" ? pullingClient : fullClient;
		const capabilities: ClientCapabilities = {
			...base,
			workspace: {
				...base.workspace,
				didChangeWatchedFiles: watches
					? { dynamicRegistration: true, relativePatternSupport: true }
					: {},
			},
		};
		const editor = await Editor.start(disk, capabilities, settings, folders);
		return new DiagnosticClient(kind, editor, kept ?? new Map());
	}

	async open(uri: string, text: string): Promise<void> {
		await this.editor.open(uri, text);
		this.opened.add(uri);
		this.toPull.add(uri);
	}

	async edit(uri: string, old: string, now: string): Promise<void> {
		await this.editor.edit(uri, old, now);
		this.toPull.add(uri);
	}

	async close(uri: string): Promise<void> {
		await this.editor.close(uri);
		this.opened.delete(uri);
		// A last time, as editors that also show the workspace do.
		this.toPull.add(uri);
	}

	/** The user's files change; the server hears of it if it has asked for that file. */
	async disk(changes: Readonly<Record<string, string | null>>): Promise<void> {
		await this.editor.changeDisk(changes);
	}

	/** What is shown when nothing is under way any more: codes by file, files without any left out. */
	async shown(): Promise<Record<string, string[]>> {
		await this.settle();
		const shown: [string, string[]][] = [];
		for (const [uri, diagnostics] of this.all())
			if (diagnostics.length > 0)
				shown.push([
					uri.replace(/^file:\/\/\/(shop\/)?/, ""),
					diagnostics.map(({ code }) => String(code)).sort(),
				]);
		return Object.fromEntries(shown.sort(([a], [b]) => (a < b ? -1 : 1)));
	}

	/** What is kept when the server is started anew. */
	kept(): ReadonlyMap<string, Kept> {
		return this.table;
	}

	private all(): Map<string, readonly Diagnostic[]> {
		if (this.kind === "pull")
			return new Map(
				[...this.table].map(([uri, { diagnostics }]) => [uri, diagnostics]),
			);
		return new Map(
			this.editor.published.map(({ uri, diagnostics }) => [uri, diagnostics]),
		);
	}

	private async settle(): Promise<void> {
		await this.editor.settled();
		if (this.kind === "push") return;
		for (;;) {
			if (this.editor.refreshes > this.refreshes) {
				this.refreshes = this.editor.refreshes;
				this.pullsWorkspace = true;
				for (const uri of this.opened) this.toPull.add(uri);
			}
			const [uri] = this.toPull;
			if (uri !== undefined) {
				this.toPull.delete(uri);
				await this.pull(uri);
			} else if (this.pullsWorkspace) {
				this.pullsWorkspace = false;
				await this.pullWorkspace();
			} else return;
			await this.editor.settled();
		}
	}

	private async pull(uri: string): Promise<void> {
		const previousResultId = this.table.get(uri)?.resultId;
		const report =
			await this.editor.connection.sendRequest<DocumentDiagnosticReport>(
				"textDocument/diagnostic",
				{ textDocument: { uri }, previousResultId },
			);
		this.take(uri, report);
		for (const [related, one] of Object.entries(report.relatedDocuments ?? {}))
			this.take(related, one);
	}

	private async pullWorkspace(): Promise<void> {
		const previousResultIds = [...this.table].flatMap(([uri, { resultId }]) =>
			resultId === undefined ? [] : [{ uri, value: resultId }],
		);
		const { items } =
			await this.editor.connection.sendRequest<WorkspaceDiagnosticReport>(
				"workspace/diagnostic",
				{ previousResultIds },
			);
		// What a document was told itself counts for it.
		for (const item of items)
			if (!this.opened.has(item.uri)) this.take(item.uri, item);
	}

	private take(uri: string, report: Report): void {
		if (report.kind === "full")
			this.table.set(uri, {
				resultId: report.resultId,
				diagnostics: report.items,
			});
		else if (report.resultId !== this.table.get(uri)?.resultId)
			throw new Error(`Unchanged, but not from what is kept: ${uri}`);
	}
}
