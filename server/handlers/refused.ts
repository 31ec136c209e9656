// The requests that the server does not answer, each with the reason. They are not announced, so no client should send
// them; one that does gets the protocol's own refusal instead of silence.

import {
	type Connection,
	ErrorCodes,
	ResponseError,
} from "vscode-languageserver";

export const refused: Readonly<Record<string, string>> = {
	"textDocument/declaration": "The same as the definition",
	"textDocument/documentColor": "The language has no colours",
	"textDocument/colorPresentation": "The language has no colours",
	"textDocument/inlineValue": "There is no debugger",
	"textDocument/linkedEditingRange":
		"A name may be used in lines that could not be read, and in other files: rename finds them, or refuses",
	"textDocument/moniker":
		"Designs are not published under names of their own: there is no index across projects",
	"textDocument/prepareTypeHierarchy":
		"Components have no kinds above them: the call hierarchy tells what depends on what",
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
