// Sends the findings of all open documents to the files that they are about, and takes back what no longer holds.

import type { Connection, Diagnostic } from "vscode-languageserver";
import type { Finding } from "../../shared/model/types.ts";
import { toDiagnostic } from "../convert/to-lsp.ts";
import type { Context } from "./context.ts";

interface Published {
	/** As the client spelled the uri then. */
	readonly uri: string;
	readonly version: number | undefined;
	readonly content: string;
}

export class Publisher {
	private readonly connection: Connection;
	private readonly published = new Map<string, Published>();

	constructor(connection: Connection) {
		this.connection = connection;
	}

	/** Sends what differs from what was sent last, or belongs to a newer version. */
	publish(context: Context): void {
		const { session } = context;
		const byFile = new Map<string, Map<string, Finding>>();
		let failed = false;
		for (const uri of session.openUris()) {
			const analysis = context.guard("diagnostics", undefined, () =>
				session.analysis(uri),
			);
			// A fault of ours says nothing about the design: what was told before stays.
			if (!analysis) {
				failed = true;
				continue;
			}
			if (!byFile.has(uri)) byFile.set(uri, new Map());
			for (const finding of analysis.findings) {
				const file = byFile.get(finding.origin.uri) ?? new Map();
				byFile.set(finding.origin.uri, file);
				// Two designs that use the same file may both tell it.
				file.set(keyOf(finding), finding);
			}
		}
		if (!failed) {
			for (const uri of this.published.keys()) {
				if (!byFile.has(uri)) this.send(context, uri, []);
			}
		}
		for (const [uri, findings] of byFile) {
			this.send(
				context,
				uri,
				[...findings.values()].flatMap(
					(finding) => toDiagnostic(context, finding) ?? [],
				),
			);
		}
	}

	private send(
		{ session }: Context,
		uri: string,
		diagnostics: Diagnostic[],
	): void {
		const version = session.versionOf(uri);
		const content = JSON.stringify(diagnostics);
		const before = this.published.get(uri);
		const spelled = session.clientUri(uri);
		if (before?.version === version && before?.content === content) return;
		if (before && before.uri !== spelled) {
			void this.connection.sendDiagnostics({
				uri: before.uri,
				diagnostics: [],
			});
		}
		if (version === undefined && diagnostics.length === 0) {
			this.published.delete(uri);
			if (before && before.uri !== spelled) return;
		} else this.published.set(uri, { uri: spelled, version, content });
		void this.connection.sendDiagnostics({
			uri: spelled,
			...(version === undefined ? {} : { version }),
			diagnostics,
		});
	}
}

function keyOf({ id, origin: { span }, message }: Finding): string {
	return `${id} ${span.start} ${span.end} ${message}`;
}
