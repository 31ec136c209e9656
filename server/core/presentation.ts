// What is shown beside the text and how it is laid out: what is offered of it, and which request is answered by what.

import {
	CodeLensRequest,
	CodeLensResolveRequest,
	DocumentOnTypeFormattingRequest,
	DocumentRangeFormattingRequest,
	DocumentRangesFormattingRequest,
	InlayHintRequest,
	InlayHintResolveRequest,
	SelectionRangeRequest,
	SemanticTokensDeltaRequest,
	SemanticTokensRangeRequest,
	SemanticTokensRequest,
	type ServerCapabilities,
	SignatureHelpRequest,
} from "vscode-languageserver";
import { semanticTokensLegend } from "../convert/semantic-tokens.ts";
import { codeLensHandlers } from "../handlers/code-lens.ts";
import { inlayHintHandlers } from "../handlers/inlay-hint.ts";
import { ListRequest, listHandler } from "../handlers/list.ts";
import { onTypeFormattingHandler } from "../handlers/on-type-formatting.ts";
import { rangeFormattingHandlers } from "../handlers/range-formatting.ts";
import { selectionRangeHandler } from "../handlers/selection-range.ts";
import { semanticTokensHandlers } from "../handlers/semantic-tokens.ts";
import { signatureHelpHandler } from "../handlers/signature-help.ts";
import type { Answers } from "./answers.ts";
import type { Context } from "./context.ts";
import { designIndex } from "./design-index.ts";

export const presentationCapabilities: ServerCapabilities = {
	semanticTokensProvider: {
		legend: semanticTokensLegend,
		full: { delta: true },
		range: true,
	},
	inlayHintProvider: { resolveProvider: true },
	signatureHelpProvider: { triggerCharacters: [" ", ","] },
	codeLensProvider: { resolveProvider: true },
	selectionRangeProvider: true,
	documentRangeFormattingProvider: { rangesSupport: true },
	documentOnTypeFormattingProvider: {
		firstTriggerCharacter: "}",
		moreTriggerCharacter: ["\n"],
	},
};

export function answerPresentation(answers: Answers, context: Context): void {
	const whenSettled = true;
	const tokens = semanticTokensHandlers(context);
	answers.on(SemanticTokensRequest.type, tokens.full, { whenSettled });
	answers.on(SemanticTokensDeltaRequest.type, tokens.delta, { whenSettled });
	answers.on(SemanticTokensRangeRequest.type, tokens.range, { whenSettled });
	const hints = inlayHintHandlers(context);
	answers.on(InlayHintRequest.type, hints.list, { whenSettled });
	answers.on(InlayHintResolveRequest.type, hints.resolve);
	const lenses = codeLensHandlers(context, designIndex(context));
	answers.on(CodeLensRequest.type, lenses.list, { whenSettled });
	answers.on(CodeLensResolveRequest.type, lenses.resolve);
	answers.on(ListRequest.type, listHandler(context));
	answers.on(SignatureHelpRequest.type, signatureHelpHandler(context));
	answers.on(SelectionRangeRequest.type, selectionRangeHandler(context));
	const range = rangeFormattingHandlers(context);
	answers.on(DocumentRangeFormattingRequest.type, range.one);
	answers.on(DocumentRangesFormattingRequest.type, range.many);
	answers.on(
		DocumentOnTypeFormattingRequest.type,
		onTypeFormattingHandler(context),
	);
}
