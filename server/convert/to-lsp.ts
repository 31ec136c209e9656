// From offsets and findings to what the protocol sends.

import {
	type Diagnostic,
	DiagnosticSeverity,
	DiagnosticTag,
	type Range,
	type TextEdit,
} from "vscode-languageserver";
import type { Edit, Span } from "../../grammar/index.ts";
import { checkAnchor, checkById } from "../../shared/checks/index.ts";
import { isAboutUnused } from "../../shared/features/diagnostics.ts";
import type { Finding, Origin, Severity } from "../../shared/model/types.ts";
import type { Context } from "../core/context.ts";
import type { SourceText } from "../core/source-text.ts";

export function toRange({ lines }: SourceText, { start, end }: Span): Range {
	return { start: lines.positionAt(start), end: lines.positionAt(end) };
}

export function toTextEdit(source: SourceText, { span, text }: Edit): TextEdit {
	return { range: toRange(source, span), newText: text };
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
	error: DiagnosticSeverity.Error,
	warning: DiagnosticSeverity.Warning,
	information: DiagnosticSeverity.Information,
	hint: DiagnosticSeverity.Hint,
};

/** Undefined if the file that the finding is about is gone. */
export function toDiagnostic(
	context: Context,
	finding: Finding,
): Diagnostic | undefined {
	const source = context.session.source(finding.origin.uri);
	if (!source) return undefined;
	const check = checkById(finding.id);
	const related = finding.related.flatMap(({ origin, message }) => {
		const location = toLocation(context, origin);
		return location ? [{ location, message }] : [];
	});
	return {
		range: toRange(source, finding.origin.span),
		severity: severities[finding.severity],
		code: finding.id,
		source: "storyrod",
		message: finding.message,
		...(check
			? {
					codeDescription: { href: context.host.checkPage(checkAnchor(check)) },
				}
			: {}),
		...(related.length > 0 ? { relatedInformation: related } : {}),
		...(isAboutUnused(finding) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
	};
}

export function toLocation(
	{ session }: Context,
	{ uri, span }: Origin,
): { uri: string; range: Range } | undefined {
	const source = session.source(uri);
	return (
		source && { uri: session.clientUri(uri), range: toRange(source, span) }
	);
}
