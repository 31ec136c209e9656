// textDocument/signatureHelp

import type {
	SignatureHelp,
	SignatureHelpParams,
	SignatureInformation,
} from "vscode-languageserver";
import {
	type Signature,
	signatureHelp,
} from "../../shared/features/signature-help.ts";
import { toOffset } from "../convert/from-lsp.ts";
import type { Context } from "../core/context.ts";

export function signatureHelpHandler(context: Context) {
	const { session, guard } = context;
	return ({
		textDocument,
		position,
	}: SignatureHelpParams): SignatureHelp | null =>
		guard("signatureHelp", null, () => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const help = signatureHelp(session.snapshot(source), offset);
			if (!help) return null;
			const active = help.signatures[help.active]?.active;
			return {
				signatures: help.signatures.map((one) => toSignature(context, one)),
				activeSignature: help.active,
				...(active === undefined ? {} : { activeParameter: active }),
			};
		});
}

function toSignature(
	{ client }: Context,
	{ label, documentation, parameters }: Signature,
): SignatureInformation {
	return {
		label,
		documentation: { kind: "markdown", value: documentation },
		parameters: parameters.map(({ start, end, documentation: own }) => ({
			label: client.labelOffsets ? [start, end] : label.slice(start, end),
			...(own === ""
				? {}
				: { documentation: { kind: "markdown" as const, value: own } }),
		})),
	};
}
