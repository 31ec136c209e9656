// textDocument/diagnostic and workspace/diagnostic

import {
	DocumentDiagnosticRequest,
	WorkspaceDiagnosticRequest,
} from "vscode-languageserver";
import type { Answers } from "../core/answers.ts";
import type { Reports } from "../core/reports.ts";

/** `ready` resolves when it is known what is set for the checks. */
export function answerDiagnostics(
	answers: Answers,
	reports: Reports,
	ready: Promise<void>,
): void {
	const whenSettled = true;
	answers.on(
		DocumentDiagnosticRequest.type,
		async (params) => {
			await ready;
			return reports.document(params);
		},
		{ whenSettled },
	);
	answers.on(
		WorkspaceDiagnosticRequest.type,
		async (params, token, progress, partial) => {
			await ready;
			return reports.workspace(params, token, progress, partial);
		},
		{ whenSettled },
	);
}
