// What the server offers, and what it must know of the client.

import {
	type InitializeParams,
	type InitializeResult,
	TextDocumentSyncKind,
} from "vscode-languageserver";

/** Positions are UTF-16, the default of the protocol. */
export const serverCapabilities: InitializeResult["capabilities"] = {
	positionEncoding: "utf-16",
	textDocumentSync: {
		openClose: true,
		change: TextDocumentSyncKind.Incremental,
	},
	hoverProvider: true,
	completionProvider: { triggerCharacters: [".", " ", '"', "/"] },
	definitionProvider: true,
	documentSymbolProvider: true,
	foldingRangeProvider: true,
	documentFormattingProvider: true,
	codeActionProvider: { codeActionKinds: ["quickfix"] },
};

export interface ClientFeatures {
	readonly snippets: boolean;
	readonly definitionLinks: boolean;
	readonly nestedSymbols: boolean;
	/** Can be asked what is set. */
	readonly configuration: boolean;
	/** Tells changes of what is set only to those who register. */
	readonly configurationChanges: boolean;
}

export const plainClient: ClientFeatures = {
	snippets: false,
	definitionLinks: false,
	nestedSymbols: false,
	configuration: false,
	configurationChanges: false,
};

export function clientFeatures(params: InitializeParams): ClientFeatures {
	const { textDocument, workspace } = params.capabilities;
	return {
		snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
		definitionLinks: textDocument?.definition?.linkSupport === true,
		nestedSymbols:
			textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
		configuration: workspace?.configuration === true,
		configurationChanges:
			workspace?.didChangeConfiguration?.dynamicRegistration === true,
	};
}
