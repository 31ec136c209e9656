// Mends and refactorings: what is offered of them, and which request is answered by what.

import {
	CodeActionRequest,
	CodeActionResolveRequest,
	type ServerCapabilities,
} from "vscode-languageserver";
import { refactoringKinds } from "../../shared/features/refactorings.ts";
import { codeActionHandlers } from "../handlers/code-action.ts";
import type { Answers } from "./answers.ts";
import type { Context } from "./context.ts";

export const codeActionCapabilities: ServerCapabilities = {
	codeActionProvider: {
		codeActionKinds: [...refactoringKinds],
		resolveProvider: true,
	},
};

export function answerCodeActions(answers: Answers, context: Context): void {
	const handlers = codeActionHandlers(context);
	answers.on(CodeActionRequest.type, handlers.list);
	answers.on(CodeActionResolveRequest.type, handlers.resolve);
}
