// Asks the client to ask again for what is shown beside the text, where that changed while the text itself did not: another file
// that it uses was edited, a setting was changed.

import type { Connection } from "vscode-languageserver";
import type { Design } from "../../shared/model/types.ts";
import type { Context } from "./context.ts";

interface Known {
	readonly version: number | undefined;
	/** Unknown of a text that has just been edited: its client asks by itself, and nothing is worked out before it does. */
	readonly design: Design | undefined;
}

export class Refresher {
	private readonly connection: Connection;
	private readonly context: Context;
	private known = new Map<string, Known>();

	constructor(connection: Connection, context: Context) {
		this.connection = connection;
		this.context = context;
	}

	/** To be called once after each group of changes. */
	settled(): void {
		const { session } = this.context;
		const known = new Map<string, Known>();
		let isStale = false;
		for (const uri of session.openUris()) {
			const version = session.versionOf(uri);
			const before = this.known.get(uri);
			const isEdited = !before || before.version !== version;
			const design = isEdited ? undefined : session.design(uri);
			if (!isEdited && before.design !== design) isStale = true;
			known.set(uri, { version, design });
		}
		this.known = known;
		if (isStale) this.refresh();
	}

	/** Everything may look different. */
	refresh(): void {
		const { refreshes } = this.context.client;
		const methods = {
			semanticTokens: "workspace/semanticTokens/refresh",
			inlayHints: "workspace/inlayHint/refresh",
			codeLenses: "workspace/codeLens/refresh",
		} as const;
		for (const [what, method] of Object.entries(methods)) {
			if (!refreshes[what as keyof typeof methods]) continue;
			this.connection.sendRequest(method).catch(() => {
				// A client that cannot asks at the next edit.
			});
		}
	}
}
