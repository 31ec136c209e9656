// Wires a connection to a session: which message is handled by what.

import {
	CompletionRequest,
	type Connection,
	DocumentFormattingRequest,
	DocumentSymbolRequest,
	FoldingRangeRequest,
	HoverRequest,
} from "vscode-languageserver";
import { completionHandler } from "../handlers/completion.ts";
import { takeConfiguration } from "../handlers/configuration.ts";
import { answerDiagnostics } from "../handlers/diagnostics.ts";
import { documentSymbolHandler } from "../handlers/document-symbol.ts";
import { takeDocuments } from "../handlers/documents.ts";
import { foldingRangeHandler } from "../handlers/folding-range.ts";
import { formattingHandler } from "../handlers/formatting.ts";
import { hoverHandler } from "../handlers/hover.ts";
import { answerNotSupported } from "../handlers/refused.ts";
import { watching } from "../handlers/watching.ts";
import { Answers } from "./answers.ts";
import {
	agreedCapabilities,
	clientFeatures,
	plainClient,
	serverCapabilities,
} from "./capabilities.ts";
import { answerCodeActions, codeActionCapabilities } from "./code-actions.ts";
import type { Context } from "./context.ts";
import type { Host } from "./host.ts";
import { answerNavigation, navigationCapabilities } from "./navigation.ts";
import {
	answerPresentation,
	presentationCapabilities,
} from "./presentation.ts";
import { Publisher } from "./publisher.ts";
import { Refresher } from "./refresher.ts";
import { Reports } from "./reports.ts";
import { Session } from "./session.ts";
import { SettingsTeller } from "./settings-teller.ts";

/** Serves one connection until it ends. */
export function start(connection: Connection, host: Host): void {
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
	let onConfigured = (): void => {};
	const whenConfigured = new Promise<void>((resolve) => {
		onConfigured = resolve;
	});
	const session = new Session(host, () => {
		if (!configured) return;
		guard("publishing", undefined, () => {
			if (context.client.pullsDiagnostics) reports.refresh();
			else publisher.publish();
		});
		guard("settings", undefined, () => teller.tell(session));
		guard("refresh", undefined, () => refresher.settled());
		void watch.follow();
	});
	const context: Context = { host, session, client: plainClient, guard };
	host.onArrived?.((uris) => session.didArrive(uris));
	const publisher = new Publisher(connection, context);
	const reports = new Reports(connection, context);
	const watch = watching(connection, context);
	const refresher = new Refresher(connection, context);
	const answers = new Answers(connection, context);

	connection.onInitialize((params) => {
		context.client = clientFeatures(params);
		host.begin?.(params.initializationOptions);
		configured = !context.client.configuration;
		if (configured) onConfigured();
		session.encoding = context.client.encoding;
		const { workspaceFolders, rootUri } = params;
		session.workspace.setFolders(
			workspaceFolders?.map(({ uri }) => uri) ?? (rootUri ? [rootUri] : []),
		);
		return {
			capabilities: {
				...serverCapabilities,
				...agreedCapabilities(context.client),
				...codeActionCapabilities,
				...presentationCapabilities,
				...navigationCapabilities,
			},
			serverInfo: { name: "Storyrod" },
		};
	});
	const configure = takeConfiguration(connection, context, () => {
		// Before, nobody has been shown anything.
		if (configured) refresher.refresh();
		configured = true;
		onConfigured();
		session.refresh();
	});
	connection.onInitialized(async () => {
		await Promise.all([watch.begin(), configure()]);
	});
	takeDocuments(connection, context);
	answerDiagnostics(answers, reports, whenConfigured, () => {
		void watch.follow();
	});
	answers.on(HoverRequest.type, hoverHandler(context));
	answers.on(CompletionRequest.type, completionHandler(context));
	const whenSettled = true;
	answers.on(DocumentSymbolRequest.type, documentSymbolHandler(context), {
		whenSettled,
	});
	answers.on(FoldingRangeRequest.type, foldingRangeHandler(context), {
		whenSettled,
	});
	answers.on(DocumentFormattingRequest.type, formattingHandler(context));
	answerCodeActions(answers, context);
	answerPresentation(answers, context);
	answerNavigation(connection, answers, context);
	answerNotSupported(connection);
	connection.listen();
}
