// Wires a connection to a session: which message is handled by what.

import type { Connection } from "vscode-languageserver";
import { codeActionHandler } from "../handlers/code-action.ts";
import { completionHandler } from "../handlers/completion.ts";
import { takeConfiguration } from "../handlers/configuration.ts";
import { definitionHandler } from "../handlers/definition.ts";
import { documentSymbolHandler } from "../handlers/document-symbol.ts";
import { takeDocuments } from "../handlers/documents.ts";
import { foldingRangeHandler } from "../handlers/folding-range.ts";
import { formattingHandler } from "../handlers/formatting.ts";
import { hoverHandler } from "../handlers/hover.ts";
import { answerNotSupported } from "../handlers/refused.ts";
import {
	clientFeatures,
	plainClient,
	serverCapabilities,
} from "./capabilities.ts";
import type { Context } from "./context.ts";
import type { Host } from "./host.ts";
import { Publisher } from "./publisher.ts";
import { Session } from "./session.ts";
import { SettingsTeller } from "./settings-teller.ts";

/** Serves one connection until it ends. */
export function start(connection: Connection, host: Host): void {
	const publisher = new Publisher(connection);
	const teller = new SettingsTeller(connection);
	const guard: Context["guard"] = (what, fallback, work) => {
		try {
			return work();
		} catch (error) {
			const told =
				error instanceof Error ? (error.stack ?? error.message) : error;
			connection.console.error(`Fault in ${what}: ${told}`);
			return fallback;
		}
	};
	// What a maker has turned off must not be seen for a moment at the start.
	let configured = true;
	const session = new Session(host, () => {
		if (!configured) return;
		guard("publishing", undefined, () => publisher.publish(context));
		guard("settings", undefined, () => teller.tell(session));
	});
	const context: Context = { host, session, client: plainClient, guard };

	connection.onInitialize((params) => {
		context.client = clientFeatures(params);
		configured = !context.client.configuration;
		session.settings.folder =
			params.workspaceFolders?.[0]?.uri ?? params.rootUri ?? undefined;
		return {
			capabilities: serverCapabilities,
			serverInfo: { name: "Storyrod" },
		};
	});
	takeConfiguration(connection, context, () => {
		configured = true;
		session.refresh();
	});
	takeDocuments(connection, context);
	connection.onHover(hoverHandler(context));
	connection.onCompletion(completionHandler(context));
	connection.onDefinition(definitionHandler(context));
	connection.onDocumentSymbol(documentSymbolHandler(context));
	connection.onFoldingRanges(foldingRangeHandler(context));
	connection.onDocumentFormatting(formattingHandler(context));
	connection.onCodeAction(codeActionHandler(context));
	answerNotSupported(connection);
	connection.listen();
}
