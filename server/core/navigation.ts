// Ways through designs over files, and new names: what is offered of it, and which request is answered by what.

import {
	CallHierarchyIncomingCallsRequest,
	CallHierarchyOutgoingCallsRequest,
	CallHierarchyPrepareRequest,
	type Connection,
	DefinitionRequest,
	DidRenameFilesNotification,
	DocumentHighlightRequest,
	DocumentLinkRequest,
	ImplementationRequest,
	PrepareRenameRequest,
	ReferencesRequest,
	RenameRequest,
	type ServerCapabilities,
	TypeDefinitionRequest,
	WillRenameFilesRequest,
	WorkspaceSymbolRequest,
} from "vscode-languageserver";
import { callHierarchyHandlers } from "../handlers/call-hierarchy.ts";
import { definitionHandler } from "../handlers/definition.ts";
import { documentHighlightHandler } from "../handlers/document-highlight.ts";
import { documentLinkHandler } from "../handlers/document-link.ts";
import { fileOperationHandlers } from "../handlers/file-operations.ts";
import { madeFromHandlers } from "../handlers/made-from.ts";
import { referencesHandler } from "../handlers/references.ts";
import { renameHandlers } from "../handlers/rename.ts";
import { workspaceSymbolHandler } from "../handlers/workspace-symbol.ts";
import type { Answers } from "./answers.ts";
import type { Context } from "./context.ts";
import { designIndex } from "./design-index.ts";

/** `renameProvider` depends on the client; files that move are part of the workspace. */
export const navigationCapabilities: ServerCapabilities = {
	referencesProvider: true,
	documentHighlightProvider: true,
	documentLinkProvider: { resolveProvider: false },
	workspaceSymbolProvider: true,
	typeDefinitionProvider: true,
	implementationProvider: true,
	callHierarchyProvider: true,
};

export function answerNavigation(
	connection: Connection,
	answers: Answers,
	context: Context,
): void {
	const index = designIndex(context);
	const rename = renameHandlers(context, index);
	const made = madeFromHandlers(context, index);
	const calls = callHierarchyHandlers(context, index);
	const files = fileOperationHandlers(context, index);
	answers.on(DefinitionRequest.type, definitionHandler(context));
	answers.on(ReferencesRequest.type, referencesHandler(context, index));
	answers.on(DocumentHighlightRequest.type, documentHighlightHandler(context));
	answers.on(PrepareRenameRequest.type, rename.prepare);
	answers.on(RenameRequest.type, rename.rename);
	answers.on(
		WorkspaceSymbolRequest.type,
		workspaceSymbolHandler(context, index),
	);
	answers.on(DocumentLinkRequest.type, documentLinkHandler(context), {
		whenSettled: true,
	});
	answers.on(TypeDefinitionRequest.type, made.from);
	answers.on(ImplementationRequest.type, made.of);
	answers.on(CallHierarchyPrepareRequest.type, calls.prepare);
	answers.on(CallHierarchyIncomingCallsRequest.type, calls.incoming);
	answers.on(CallHierarchyOutgoingCallsRequest.type, calls.outgoing);
	answers.on(WillRenameFilesRequest.type, files.willRename);
	connection.onNotification(DidRenameFilesNotification.type, (params) =>
		context.guard("didRenameFiles", undefined, () => files.didRename(params)),
	);
}
