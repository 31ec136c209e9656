// textDocument/diagnostic and workspace/diagnostic

import {
	DocumentDiagnosticRequest,
	WorkspaceDiagnosticRequest,
} from "vscode-languageserver";
import type { Answers } from "../core/answers.ts";
import type { Reports } from "../core/reports.ts";

/** `ready` resolves when it is known what is set for the checks; `reported` is called after each report: files were read. */
export function answerDiagnostics(
	answers: Answers,
	reports: Reports,
	ready: Promise<void>,
	reported: () => void = () => {},
): void {
	const whenSettled = true;
	answers.on(
		DocumentDiagnosticRequest.type,
		async (params) => {
			await ready;
			const report = reports.document(params);
			reported();
			return report;
		},
		{ whenSettled },
	);
	answers.on(
		WorkspaceDiagnosticRequest.type,
		async (params, token, progress, partial) => {
			await ready;
			const report = await reports.workspace(params, token, progress, partial);
			reported();
			return report;
		},
		{ whenSettled },
	);
}
