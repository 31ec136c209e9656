// The CSS or the JSON language service as a server on standard input and output, with the same library under it as ours and
// nothing in between: it parses and validates at every change, without waiting.

import {
	getCSSLanguageService,
	type Stylesheet,
} from "vscode-css-languageservice";
import {
	getLanguageService,
	type JSONDocument,
} from "vscode-json-languageservice";
import {
	createConnection,
	type Diagnostic,
	type Hover,
	ProposedFeatures,
	type TextDocumentPositionParams,
	TextDocumentSyncKind,
	type WorkspaceEdit,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

/** What both services are asked for; one that cannot answers with null. */
interface Service {
	validate(document: TextDocument): Promise<Diagnostic[]>;
	hover(at: TextDocumentPositionParams): Promise<Hover | null> | Hover | null;
	complete(at: TextDocumentPositionParams): Promise<unknown> | unknown;
	rename(at: TextDocumentPositionParams, name: string): WorkspaceEdit | null;
}

let current: TextDocument;

function cssService(): Service {
	const service = getCSSLanguageService();
	let sheet: Stylesheet;
	return {
		async validate(document) {
			sheet = service.parseStylesheet(document);
			return service.doValidation(document, sheet);
		},
		hover: ({ position }) => service.doHover(current, position, sheet),
		complete: ({ position }) => service.doComplete(current, position, sheet),
		rename: ({ position }, name) =>
			service.doRename(current, position, name, sheet),
	};
}

function jsonService(): Service {
	const service = getLanguageService({});
	let tree: JSONDocument;
	return {
		validate(document) {
			tree = service.parseJSONDocument(document);
			return Promise.resolve(service.doValidation(document, tree));
		},
		hover: ({ position }) =>
			Promise.resolve(service.doHover(current, position, tree)),
		complete: ({ position }) => service.doComplete(current, position, tree),
		rename: () => null,
	};
}

const service = process.argv[2] === "css" ? cssService() : jsonService();
const connection = createConnection(ProposedFeatures.all);
connection.onInitialize(() => ({
	capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental },
}));
async function publish(): Promise<void> {
	const { uri, version } = current;
	const diagnostics = await service.validate(current);
	await connection.sendDiagnostics({ uri, version, diagnostics });
}
connection.onDidOpenTextDocument(({ textDocument }) => {
	const { uri, languageId, version, text } = textDocument;
	current = TextDocument.create(uri, languageId, version, text);
	return publish();
});
connection.onDidChangeTextDocument(({ textDocument, contentChanges }) => {
	current = TextDocument.update(current, contentChanges, textDocument.version);
	return publish();
});
connection.onHover((at) => service.hover(at));
connection.onCompletion(async (at) => (await service.complete(at)) as never);
connection.onRenameRequest((params) => service.rename(params, params.newName));
connection.listen();
