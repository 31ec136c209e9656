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
	completionProvider: { triggerCharacters: [".", " "] },
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
}

export const plainClient: ClientFeatures = {
	snippets: false,
	definitionLinks: false,
	nestedSymbols: false,
};

export function clientFeatures(params: InitializeParams): ClientFeatures {
	const { textDocument } = params.capabilities;
	return {
		snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
		definitionLinks: textDocument?.definition?.linkSupport === true,
		nestedSymbols:
			textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
	};
}
