// workspace/willRenameFiles: paths that must be written anew where files and folders move. workspace/didRenameFiles: what
// was known of the old places is forgotten.

import type {
	CancellationToken,
	RenameFilesParams,
	WorkspaceEdit,
} from "vscode-languageserver";
import {
	type Move,
	movedTo,
	pathEdits,
} from "../../shared/features/file-moves.ts";
import { toWorkspaceEdit } from "../convert/workspace-edit.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";

export function fileOperationHandlers(context: Context, index: DesignIndex) {
	const { session } = context;
	const movesOf = ({ files }: RenameFilesParams): Move[] =>
		files.map(({ oldUri, newUri }) => ({
			from: session.canonical(oldUri).replace(/\/$/, ""),
			to: session.canonical(newUri).replace(/\/$/, ""),
		}));
	return {
		willRename: async (
			params: RenameFilesParams,
			token: CancellationToken,
		): Promise<WorkspaceEdit | null> => {
			const moves = movesOf(params);
			const isMoved = (uri: string): boolean => movedTo(uri, moves) !== uri;
			const files = await index.touching(isMoved, token);
			const edits = pathEdits(session.names(), files, moves);
			return edits.size > 0 ? (toWorkspaceEdit(context, edits) ?? null) : null;
		},
		didRename: (params: RenameFilesParams): void => {
			const moves = movesOf(params);
			session.didChangeFiles([
				...moves.flatMap(({ from, to }) => [from, to]),
				...session
					.usedFiles()
					.filter((uri) => movedTo(uri, moves) !== uri)
					.flatMap((uri) => [uri, movedTo(uri, moves)]),
			]);
		},
	};
}
