// Asks the client to tell when designs and settings change on disk: those in the open folders, and those that open designs
// use from elsewhere. Files of packages count as elsewhere: editors leave their folder out of what they watch.

import {
	type Connection,
	DidChangeWatchedFilesNotification,
	type FileSystemWatcher,
} from "vscode-languageserver";
import { settingsFileName } from "../../shared/checks/index.ts";
import type { Context } from "../core/context.ts";

const watched = [`**/*.rod`, `**/${settingsFileName}`];

export interface Watching {
	/** Asks for the first time. */
	begin(): Promise<void>;
	/** Other files may be used now. */
	follow(): Promise<void>;
}

export function watching(connection: Connection, context: Context): Watching {
	const { session } = context;
	let begun = false;
	let elsewhere: readonly string[] = [];
	let registered: { dispose(): void } | undefined;

	const register = async (watchers: FileSystemWatcher[]) => {
		try {
			return await connection.client.register(
				DidChangeWatchedFilesNotification.type,
				{ watchers },
			);
		} catch {
			// Files are then looked at again at each change.
			return undefined;
		}
	};
	const isElsewhere = (uri: string): boolean =>
		uri.includes("/node_modules/") || !session.workspace.has(uri);

	return {
		async begin() {
			if (!context.client.watchesFiles) return;
			begun =
				(await register(watched.map((globPattern) => ({ globPattern })))) !==
				undefined;
			if (begun)
				session.isWatched = (uri) =>
					!isElsewhere(uri) || elsewhere.includes(folderOf(uri));
		},
		async follow() {
			if (!begun || !context.client.watchesAnywhere) return;
			const folders = [
				...new Set(
					session
						.usedFiles()
						.filter((uri) => uri.startsWith("file:") && isElsewhere(uri))
						.map(folderOf),
				),
			].sort();
			if (folders.join("\n") === elsewhere.join("\n")) return;
			// Until the client has answered, they are looked at.
			elsewhere = [];
			registered?.dispose();
			registered = undefined;
			if (folders.length === 0) return;
			const made = await register(
				folders.map((baseUri) => ({
					globPattern: { baseUri, pattern: `{*.rod,${settingsFileName}}` },
				})),
			);
			if (!made) return;
			registered = made;
			elsewhere = folders;
		},
	};
}

function folderOf(uri: string): string {
	return uri.slice(0, uri.lastIndexOf("/"));
}
