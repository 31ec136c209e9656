// textDocument/prepareRename and textDocument/rename. What is refused is told by the error: editors show its message.

import {
	type CancellationToken,
	LSPErrorCodes,
	type PrepareRenameParams,
	type PrepareRenameResult,
	type RenameParams,
	ResponseError,
	type WorkspaceEdit,
} from "vscode-languageserver";
import {
	type Refusal,
	renamable,
	renaming,
} from "../../shared/features/rename.ts";
import { toOffset } from "../convert/from-lsp.ts";
import { toRange } from "../convert/to-lsp.ts";
import { toWorkspaceEdit } from "../convert/workspace-edit.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";
import { filesOf, inSlices } from "./asked-name.ts";

export function renameHandlers(context: Context, index: DesignIndex) {
	const { session } = context;
	return {
		prepare: ({
			textDocument,
			position,
		}: PrepareRenameParams): PrepareRenameResult | null => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const found = renamable(session.names(), source.uri, offset);
			if (!found) return null;
			if ("refused" in found) throw refusalOf(found);
			return { range: toRange(source, found.span), placeholder: found.name };
		},
		rename: async (
			{ textDocument, position, newName }: RenameParams,
			token: CancellationToken,
		): Promise<WorkspaceEdit | null> => {
			const source = session.document(textDocument.uri);
			if (!source) return null;
			const offset = toOffset(source, position);
			const uris = await filesOf(context, index, source, offset, token, [
				newName.trim(),
			]);
			const steps = renaming(session.names(), source.uri, offset, newName, {
				uris: uris ?? [source.uri],
				locked,
			});
			const found = await inSlices(context, steps, token);
			if (!found) return null;
			if ("refused" in found) throw refusalOf(found);
			const edit = toWorkspaceEdit(context, found.edits);
			if (edit) return edit;
			throw refusalOf({
				refused: "A file that mentions it went meanwhile: nothing was renamed",
			});
		},
	};
}

function refusalOf({ refused }: Refusal): ResponseError<void> {
	return new ResponseError(LSPErrorCodes.RequestFailed, refused);
}

/** What npm installed is written anew by npm. */
function locked(uri: string): string | undefined {
	return uri.includes("/node_modules/")
		? "that file belongs to an installed package"
		: undefined;
}
