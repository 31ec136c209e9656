// For clients that ask: what there is to tell about a document or about all designs of the workspace, and when a client
// must ask again because something changed that it does not know of.

import type {
	CancellationToken,
	Connection,
	Diagnostic,
	DocumentDiagnosticParams,
	DocumentDiagnosticReport,
	FullDocumentDiagnosticReport,
	ResultProgressReporter,
	UnchangedDocumentDiagnosticReport,
	WorkDoneProgressReporter,
	WorkspaceDiagnosticParams,
	WorkspaceDiagnosticReport,
	WorkspaceDiagnosticReportPartialResult,
	WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { rest } from "./answers.ts";
import type { Context } from "./context.ts";
import { resultIdOf } from "./result-id.ts";
import { Told, together } from "./told.ts";
import { WorkspaceScan } from "./workspace-scan.ts";

type Report = FullDocumentDiagnosticReport | UnchangedDocumentDiagnosticReport;

/** What a client was told last about a file. */
interface Last {
	readonly version: number | undefined;
	readonly resultId: string;
}

export class Reports {
	private readonly connection: Connection;
	private readonly context: Context;
	private readonly told: Told;
	private readonly scan: WorkspaceScan;
	/** By canonical uri; files that have nothing told about them and are not open are left out. */
	private readonly last = new Map<string, Last>();
	private asksForWorkspace = false;
	/** The client has been asked to ask again, and has not yet. */
	private refreshing = false;
	private outside = 0;

	constructor(connection: Connection, context: Context) {
		this.connection = connection;
		this.context = context;
		this.told = new Told(context);
		this.scan = new WorkspaceScan(context);
	}

	/** Of an open document, or of a file of the workspace that a client shows all the same. */
	document({
		textDocument,
		previousResultId,
	}: DocumentDiagnosticParams): DocumentDiagnosticReport {
		const { session, client } = this.context;
		this.refreshing = false;
		const uri = session.canonical(textDocument.uri);
		const report = this.report(uri, this.about(uri), previousResultId);
		if (!client.relatedDocuments) return report;
		const related = this.related(uri);
		return related ? { ...report, relatedDocuments: related } : report;
	}

	/** Of all designs in the open folders, and of files that were told about before. */
	async workspace(
		{ previousResultIds }: WorkspaceDiagnosticParams,
		token: CancellationToken,
		progress: WorkDoneProgressReporter,
		partial:
			| ResultProgressReporter<WorkspaceDiagnosticReportPartialResult>
			| undefined,
	): Promise<WorkspaceDiagnosticReport> {
		const { session, guard } = this.context;
		const previous = new Map(
			previousResultIds.map(({ uri, value }) => [
				session.canonical(uri),
				value,
			]),
		);
		progress.begin("Checking designs", 0, undefined, true);
		try {
			const designs = await session.workspace.designs(() =>
				rest(this.context, token),
			);
			this.scan.keepOnly(new Set(designs));
			session.lookAgain(this.scan.files());
			this.asksForWorkspace = true;
			this.refreshing = false;
			for (const [index, uri] of designs.entries()) {
				guard("workspace diagnostics", undefined, () => this.scan.take(uri));
				progress.report((100 * (index + 1)) / designs.length);
				await rest(this.context, token);
			}
			const files = new Set([
				...session.openUris(),
				...designs,
				...this.scan.all().keys(),
				...this.last.keys(),
				...previous.keys(),
			]);
			const items: WorkspaceDocumentDiagnosticReport[] = [];
			for (const uri of files) {
				const report = this.report(uri, this.about(uri), previous.get(uri));
				const item = {
					...report,
					uri: session.clientUri(uri),
					version: session.versionOf(uri) ?? null,
				};
				if (partial) {
					partial.report({ items: [item] });
					await rest(this.context, token);
				} else items.push(item);
			}
			return { items };
		} finally {
			progress.done();
		}
	}

	/** After changes: asks the client to ask again where what it was told no longer holds and it cannot know that. */
	refresh(): void {
		const { session, client } = this.context;
		const outside = session.changesOutside;
		const changedOutside = outside !== this.outside;
		this.outside = outside;
		if (!client.refreshesDiagnostics || this.refreshing) return;
		if (
			(this.asksForWorkspace && (changedOutside || this.scan.isOld())) ||
			this.holdsNoMore()
		) {
			this.refreshing = true;
			this.connection.languages.diagnostics.refresh();
		}
	}

	/** Whether something that was told is not true any more, in a document that the client has not changed itself. */
	private holdsNoMore(): boolean {
		const { session } = this.context;
		for (const [uri, { version, resultId }] of this.last) {
			if (session.versionOf(uri) !== version) continue;
			if (version === undefined && this.isAskedWith(uri)) continue;
			if (resultIdOf(this.about(uri)) !== resultId) return true;
		}
		return false;
	}

	/** A document that uses the file has changed: the client asks for it, and gets this file told along with it. */
	private isAskedWith(uri: string): boolean {
		const { session } = this.context;
		return session
			.openUris()
			.some(
				(one) =>
					session.versionOf(one) !== this.last.get(one)?.version &&
					session.design(one).files.includes(uri),
			);
	}

	private about(uri: string): readonly Diagnostic[] {
		const { session } = this.context;
		const open = this.told.about(uri);
		if (session.isOpen(uri)) return open;
		// A tab that is shown but not yet opened: nothing else tells of it.
		if (session.workspace.has(uri)) this.scan.take(uri);
		return together([open, ...this.scan.about(uri)]);
	}

	/** Used files that are not open: with something to tell, or with something told before. */
	private related(uri: string): Record<string, Report> | undefined {
		const { session } = this.context;
		if (!session.isOpen(uri)) return undefined;
		const reports: [string, Report][] = [];
		for (const file of session.design(uri).files) {
			if (session.isOpen(file)) continue;
			const diagnostics = this.about(file);
			if (diagnostics.length === 0 && !this.last.has(file)) continue;
			reports.push([file, this.report(file, diagnostics, undefined)]);
		}
		return reports.length > 0 ? Object.fromEntries(reports) : undefined;
	}

	private report(
		uri: string,
		diagnostics: readonly Diagnostic[],
		previous: string | undefined,
	): Report {
		const { session } = this.context;
		const version = session.versionOf(uri);
		const resultId = resultIdOf(diagnostics);
		if (version === undefined && diagnostics.length === 0)
			this.last.delete(uri);
		else this.last.set(uri, { version, resultId });
		return previous === resultId
			? { kind: "unchanged", resultId }
			: { kind: "full", resultId, items: [...diagnostics] };
	}
}
