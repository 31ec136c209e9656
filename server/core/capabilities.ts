// What the server offers, and what it must know of the client.

import {
	type InitializeParams,
	type InitializeResult,
	TextDocumentSyncKind,
} from "vscode-languageserver";
import type { PositionEncoding } from "../../shared/text/position-encoding.ts";
import { commandsIn } from "./client-commands.ts";
import { fileOperations } from "./file-operations.ts";

/** What every client is offered. */
export const serverCapabilities: InitializeResult["capabilities"] = {
	textDocumentSync: {
		openClose: true,
		change: TextDocumentSyncKind.Incremental,
		save: { includeText: false },
	},
	workspace: {
		workspaceFolders: { supported: true, changeNotifications: true },
		fileOperations,
	},
	hoverProvider: true,
	completionProvider: { triggerCharacters: [".", " ", '"', "/"] },
	definitionProvider: true,
	documentSymbolProvider: true,
	foldingRangeProvider: true,
	documentFormattingProvider: true,
};

/** What depends on the client: how positions are counted, what it asks before it renames, whether it asks for diagnostics. */
export function agreedCapabilities({
	preparesRename,
	pullsDiagnostics,
	encoding,
}: ClientFeatures): InitializeResult["capabilities"] {
	return {
		positionEncoding: encoding,
		renameProvider: preparesRename ? { prepareProvider: true } : true,
		...(pullsDiagnostics
			? {
					diagnosticProvider: {
						identifier: "storyrod",
						interFileDependencies: true,
						workspaceDiagnostics: true,
						workDoneProgress: true,
					},
				}
			: {}),
	};
}

export interface ClientFeatures {
	/** What positions count: the first of ours that the client knows. */
	readonly encoding: PositionEncoding;
	/** Asks for diagnostics: it is sent none unasked. */
	readonly pullsDiagnostics: boolean;
	/** Takes reports about used files along with that of a document. */
	readonly relatedDocuments: boolean;
	/** Can be told to ask for diagnostics again. */
	readonly refreshesDiagnostics: boolean;
	/** Tells changes of files that it is asked to watch. */
	readonly watchesFiles: boolean;
	/** Watches folders outside the workspace, too. */
	readonly watchesAnywhere: boolean;
	/** Asks whether a name can be changed before it asks for a new one. */
	readonly preparesRename: boolean;
	/** Looks at the versions of the documents that edits are for. */
	readonly documentChanges: boolean;
	/** What it can be told to ask for again. */
	readonly refreshes: {
		readonly semanticTokens: boolean;
		readonly inlayHints: boolean;
		readonly codeLenses: boolean;
	};
	/** What it does with mends and refactorings. */
	readonly codeActions: {
		/** Asks for the edit when one is chosen. */
		readonly resolves: boolean;
		/** Shows those that cannot be had, with the reason. */
		readonly disabled: boolean;
		/** Can make a file by an edit. */
		readonly creates: boolean;
		/** Asks the user to confirm what an edit says. */
		readonly annotates: boolean;
	};
	/** What it can do besides, as `client-commands.ts` has it. */
	readonly commands: readonly string[];
	/** Takes the parameters of a signature as places in its label. */
	readonly labelOffsets: boolean;
	readonly snippets: boolean;
	readonly definitionLinks: boolean;
	readonly nestedSymbols: boolean;
	/** Can be asked what is set. */
	readonly configuration: boolean;
	/** Tells changes of what is set only to those who register. */
	readonly configurationChanges: boolean;
}

export const plainClient: ClientFeatures = {
	encoding: "utf-16",
	pullsDiagnostics: false,
	relatedDocuments: false,
	refreshesDiagnostics: false,
	watchesFiles: false,
	watchesAnywhere: false,
	commands: [],
	labelOffsets: false,
	refreshes: { semanticTokens: false, inlayHints: false, codeLenses: false },
	preparesRename: false,
	documentChanges: false,
	codeActions: {
		resolves: false,
		disabled: false,
		creates: false,
		annotates: false,
	},
	snippets: false,
	definitionLinks: false,
	nestedSymbols: false,
	configuration: false,
	configurationChanges: false,
};

/** UTF-16 first: the texts are held so, and need no counting. */
const encodings: readonly PositionEncoding[] = ["utf-16", "utf-8", "utf-32"];

export function clientFeatures(params: InitializeParams): ClientFeatures {
	const { textDocument, workspace, general } = params.capabilities;
	const watching = workspace?.didChangeWatchedFiles;
	return {
		encoding:
			encodings.find((one) => general?.positionEncodings?.includes(one)) ??
			"utf-16",
		pullsDiagnostics: textDocument?.diagnostic !== undefined,
		relatedDocuments: textDocument?.diagnostic?.relatedDocumentSupport === true,
		refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
		watchesFiles: watching?.dynamicRegistration === true,
		watchesAnywhere: watching?.relativePatternSupport === true,
		preparesRename: textDocument?.rename?.prepareSupport === true,
		documentChanges: workspace?.workspaceEdit?.documentChanges === true,
		refreshes: {
			semanticTokens: workspace?.semanticTokens?.refreshSupport === true,
			inlayHints: workspace?.inlayHint?.refreshSupport === true,
			codeLenses: workspace?.codeLens?.refreshSupport === true,
		},
		codeActions: {
			resolves:
				textDocument?.codeAction?.dataSupport === true &&
				textDocument.codeAction.resolveSupport?.properties.includes("edit") ===
					true,
			disabled: textDocument?.codeAction?.disabledSupport === true,
			creates:
				workspace?.workspaceEdit?.documentChanges === true &&
				workspace.workspaceEdit.resourceOperations?.includes("create") === true,
			annotates:
				workspace?.workspaceEdit?.documentChanges === true &&
				workspace.workspaceEdit.changeAnnotationSupport !== undefined,
		},
		commands: commandsIn(params.capabilities.experimental),
		labelOffsets:
			textDocument?.signatureHelp?.signatureInformation?.parameterInformation
				?.labelOffsetSupport === true,
		snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
		definitionLinks: textDocument?.definition?.linkSupport === true,
		nestedSymbols:
			textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
		configuration: workspace?.configuration === true,
		configurationChanges:
			workspace?.didChangeConfiguration?.dynamicRegistration === true,
	};
}
