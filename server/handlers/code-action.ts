// textDocument/codeAction and codeAction/resolve: mends are sent with their edits, what a refactoring changes is worked out
// when it is chosen. One that cannot keep its promise is refused then, with the reason.

import {
	type CancellationToken,
	type CodeAction,
	CodeActionKind,
	type CodeActionParams,
	CodeActionTriggerKind,
	LSPErrorCodes,
	ResponseError,
} from "vscode-languageserver";
import type { Span } from "../../grammar/index.ts";
import { codeActions } from "../../shared/features/code-actions.ts";
import { refactorings } from "../../shared/features/refactorings.ts";
import {
	type FinishedChange,
	finished,
} from "../../shared/features/support/finished-change.ts";
import type {
	Asked,
	Offer,
} from "../../shared/features/support/refactoring.ts";
import { toChangedFiles } from "../convert/changed-files.ts";
import { toSpan } from "../convert/from-lsp.ts";
import { toDiagnostic, toTextEdit } from "../convert/to-lsp.ts";
import type { Context } from "../core/context.ts";
import { NearbyDesigns } from "../core/nearby-designs.ts";
import type { SourceText } from "../core/source-text.ts";

/** What an action carries until it is chosen. */
interface ActionData {
	readonly uri: string;
	readonly version: number | undefined;
	readonly span: Span;
	readonly wholeFile: boolean;
	/** Of the offer. */
	readonly id: string;
}

export function codeActionHandlers(context: Context) {
	const { session } = context;
	const nearby = new NearbyDesigns(context);

	const askedAt = async (
		source: SourceText,
		span: Span,
		wholeFile: boolean,
		token: CancellationToken,
	): Promise<Asked> => {
		const version = session.versionOf(source.uri);
		const files = await nearby.around(source, token);
		if (session.versionOf(source.uri) !== version) throw textChanged();
		return {
			snapshot: session.snapshot(source),
			span,
			findings: session.analysis(source.uri).findings,
			around: {
				files,
				resolve: (path, from = source.uri) => session.resolve(from, path),
				evaluate: (text, newFile) =>
					session.designWith(
						source.uri,
						new Map([
							[source.uri, text],
							...(newFile ? [[newFile.uri, newFile.text] as const] : []),
						]),
					),
				canCreate: context.client.codeActions.creates,
				wholeFile,
			},
		};
	};

	const mends = (
		source: SourceText,
		span: Span,
		offers: readonly Offer[],
	): CodeAction[] =>
		codeActions(session.analysis(source.uri).findings, source.uri, span).map(
			({ title, finding, edits, preferred }) => {
				const diagnostic = toDiagnostic(context, finding);
				return {
					title,
					kind: CodeActionKind.QuickFix,
					// The very name in another file is more likely meant than one that is only alike.
					isPreferred:
						preferred && !offers.some((offer) => offer.finding === finding),
					diagnostics: diagnostic ? [diagnostic] : [],
					edit: {
						changes: {
							[session.clientUri(source.uri)]: edits.map((edit) =>
								toTextEdit(source, edit),
							),
						},
					},
				};
			},
		);

	const toAction = (
		asked: Asked,
		offer: Offer,
		isAutomatic: boolean,
	): CodeAction[] => {
		const { uri } = asked.snapshot;
		const { disabled, resolves } = context.client.codeActions;
		const { finding, preferred } = offer;
		const diagnostic = finding && toDiagnostic(context, finding);
		const action: CodeAction = {
			title: offer.title,
			kind: offer.kind,
			...(preferred === undefined ? {} : { isPreferred: preferred }),
			...(diagnostic ? { diagnostics: [diagnostic] } : {}),
		};
		const refused = (reason: string): CodeAction[] =>
			disabled && !isAutomatic ? [{ ...action, disabled: { reason } }] : [];
		if (offer.disabled !== undefined) return refused(offer.disabled);
		if (resolves) {
			const data: ActionData = {
				uri,
				version: session.versionOf(uri),
				span: asked.span,
				wholeFile: asked.around.wholeFile,
				id: offer.id,
			};
			return [{ ...action, data }];
		}
		const change = changeOf(asked, offer);
		return typeof change === "string"
			? refused(change)
			: [
					{
						...action,
						edit: toChangedFiles(context, uri, offer.title, change),
					},
				];
	};

	return {
		list: async (
			{ textDocument, range, context: { only, triggerKind } }: CodeActionParams,
			token: CancellationToken,
		): Promise<CodeAction[]> => {
			const source = session.document(textDocument.uri);
			if (!source) return [];
			const isWanted = (kind: string): boolean =>
				!only || only.some((one) => isOfKind(kind, one));
			const span = toSpan(source, range);
			const wholeFile = only?.some((one) => isOfKind(one, "source")) ?? false;
			const asked = await askedAt(source, span, wholeFile, token);
			const offers = refactorings(asked, isWanted);
			return [
				...(isWanted(CodeActionKind.QuickFix)
					? mends(source, span, offers)
					: []),
				...offers.flatMap((offer) =>
					toAction(
						asked,
						offer,
						triggerKind === CodeActionTriggerKind.Automatic,
					),
				),
			];
		},
		resolve: async (
			action: CodeAction,
			token: CancellationToken,
		): Promise<CodeAction> => {
			const { data } = action;
			if (action.edit || !isActionData(data)) return action;
			const source = session.document(data.uri);
			if (!source || session.versionOf(source.uri) !== data.version)
				throw textChanged();
			const asked = await askedAt(source, data.span, data.wholeFile, token);
			const offer = refactorings(asked).find(({ id }) => id === data.id);
			if (!offer) throw textChanged();
			const change = changeOf(asked, offer);
			if (typeof change === "string")
				throw new ResponseError(LSPErrorCodes.RequestFailed, change);
			return {
				...action,
				edit: toChangedFiles(context, source.uri, offer.title, change),
			};
		},
	};
}

function changeOf(asked: Asked, offer: Offer): FinishedChange | string {
	const change = offer.disabled ?? offer.change();
	return typeof change === "string" ? change : finished(asked, change);
}

/** `refactor.extract` is a `refactor`. */
function isOfKind(kind: string, wanted: string): boolean {
	return wanted === "" || kind === wanted || kind.startsWith(`${wanted}.`);
}

function textChanged(): ResponseError<void> {
	return new ResponseError(
		LSPErrorCodes.ContentModified,
		"The text has changed since",
	);
}

function isActionData(value: unknown): value is ActionData {
	if (typeof value !== "object" || value === null) return false;
	const { uri, span, id } = value as Partial<ActionData>;
	return (
		typeof uri === "string" &&
		typeof id === "string" &&
		typeof span?.start === "number" &&
		typeof span.end === "number"
	);
}
