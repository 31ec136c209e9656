// Sends the findings of all open documents to the files that they are about, and takes back what no longer holds.

import type { Connection, Diagnostic } from "vscode-languageserver";
import type { Finding } from "../../shared/model/types.ts";
import { toDiagnostic } from "../convert/to-lsp.ts";
import type { Context } from "./context.ts";

interface Published {
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
		const byFile = new Map<string, Finding[]>();
		for (const uri of session.openUris()) {
			byFile.set(uri, byFile.get(uri) ?? []);
			for (const finding of context.guard("diagnostics", [], () => [
				...session.analysis(uri).findings,
			])) {
				const file = byFile.get(finding.origin.uri) ?? [];
				byFile.set(finding.origin.uri, file);
				if (!file.some((one) => isSame(one, finding))) file.push(finding);
			}
		}
		for (const uri of this.published.keys()) {
			if (!byFile.has(uri)) this.send(context, uri, []);
		}
		for (const [uri, findings] of byFile) {
			if (session.versionOf(uri) === undefined && findings.length === 0) {
				if (this.published.has(uri)) this.send(context, uri, []);
				continue;
			}
			this.send(
				context,
				uri,
				findings.flatMap((finding) => toDiagnostic(context, finding) ?? []),
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
		if (before?.version === version && before?.content === content) return;
		if (version === undefined && diagnostics.length === 0) {
			this.published.delete(uri);
		} else this.published.set(uri, { version, content });
		void this.connection.sendDiagnostics({
			uri: session.clientUri(uri),
			...(version === undefined ? {} : { version }),
			diagnostics,
		});
	}
}

/** Told by two designs that use the same file. */
function isSame(a: Finding, b: Finding): boolean {
	return (
		a.id === b.id &&
		a.origin.span.start === b.origin.span.start &&
		a.origin.span.end === b.origin.span.end &&
		a.message === b.message
	);
}
