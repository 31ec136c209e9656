// The requests that the server does not answer, each with the reason. They are not announced, so no client should send
// them; one that does gets the protocol's own refusal instead of silence.

import {
	type Connection,
	ErrorCodes,
	ResponseError,
} from "vscode-languageserver";

export const refused: Readonly<Record<string, string>> = {
	"textDocument/declaration": "The same as the definition",
	"textDocument/typeDefinition": "Not made yet",
	"textDocument/implementation": "Not made yet",
	"textDocument/references": "Not made yet",
	"textDocument/documentHighlight": "Not made yet",
	"textDocument/rename": "Not made yet",
	"textDocument/prepareRename": "Not made yet",
	"textDocument/signatureHelp": "Completion and hover show the form of a line",
	"textDocument/codeLens": "Not made yet",
	"textDocument/documentLink": "Go to definition opens used files",
	"textDocument/documentColor": "The language has no colours",
	"textDocument/colorPresentation": "The language has no colours",
	"textDocument/inlayHint": "Not made yet",
	"textDocument/inlineValue": "There is no debugger",
	"textDocument/linkedEditingRange":
		"A name may be used in lines that could not be read, and in other files: rename finds them, or refuses",
	"textDocument/moniker":
		"Designs are not published under names of their own: there is no index across projects",
	"textDocument/prepareCallHierarchy": "Not made yet",
	"textDocument/prepareTypeHierarchy": "The language has no inheritance",
	"workspace/symbol": "Not made yet",
	"workspace/executeCommand": "The server has no commands",
};

export function answerNotSupported(connection: Connection): void {
	connection.onRequest(
		(method) =>
			new ResponseError(
				ErrorCodes.MethodNotFound,
				`\`${method}\` is not supported: ${refused[method] ?? "unknown request"}`,
			),
	);
}
