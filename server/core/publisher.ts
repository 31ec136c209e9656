// For clients that do not ask: sends the findings of all open documents to the files that they are about, and takes back
// what no longer holds.

import type { Connection, Diagnostic } from "vscode-languageserver";
import type { Context } from "./context.ts";
import { Told, together } from "./told.ts";

interface Published {
	/** As the client spelled the uri then. */
	readonly uri: string;
	readonly version: number | undefined;
	readonly diagnostics: readonly Diagnostic[];
}

export class Publisher {
	private readonly connection: Connection;
	private readonly context: Context;
	private readonly told: Told;
	private readonly published = new Map<string, Published>();

	constructor(connection: Connection, context: Context) {
		this.connection = connection;
		this.context = context;
		this.told = new Told(context);
	}

	/** Sends what differs from what was sent last, or belongs to a newer version. */
	publish(): void {
		const { host, session, guard } = this.context;
		const byFile = new Map<string, (readonly Diagnostic[])[]>();
		let failed = false;
		for (const uri of session.openUris()) {
			const told = guard("diagnostics", undefined, () => this.told.by(uri));
			// A fault of ours says nothing about the design: what was told before stays.
			if (!told) {
				failed = true;
				continue;
			}
			for (const [about, diagnostics] of told) {
				const lists = byFile.get(about);
				if (lists) lists.push(diagnostics);
				else byFile.set(about, [diagnostics]);
			}
		}
		// Another call follows when they are there.
		if (host.whenArrived?.()) return;
		if (!failed) {
			for (const uri of this.published.keys()) {
				if (!byFile.has(uri)) this.send(uri, []);
			}
		}
		for (const [uri, lists] of byFile) this.send(uri, together(lists));
	}

	private send(uri: string, diagnostics: readonly Diagnostic[]): void {
		const { session } = this.context;
		const version = session.versionOf(uri);
		const before = this.published.get(uri);
		const spelled = session.clientUri(uri);
		if (
			before?.version === version &&
			(before?.diagnostics === diagnostics ||
				JSON.stringify(before?.diagnostics) === JSON.stringify(diagnostics))
		)
			return;
		if (before && before.uri !== spelled) {
			void this.connection.sendDiagnostics({
				uri: before.uri,
				diagnostics: [],
			});
		}
		if (version === undefined && diagnostics.length === 0) {
			this.published.delete(uri);
			if (before && before.uri !== spelled) return;
		} else this.published.set(uri, { uri: spelled, version, diagnostics });
		void this.connection.sendDiagnostics({
			uri: spelled,
			...(version === undefined ? {} : { version }),
			diagnostics: [...diagnostics],
		});
	}
}
