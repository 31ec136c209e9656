// Which designs there are in the open folders, open in the editor or not.

import type { Host } from "./host.ts";

/** Nobody keeps more designs together; links that lead in a circle end here, too. */
const mostDesigns = 10_000;
const mostFolders = 20_000;
const deepest = 24;

export class WorkspaceFiles {
	private readonly host: Host;
	private open: readonly string[] = [];
	private known: readonly string[] | undefined;
	/** Counts what makes a list old, also one that is still being made. */
	private revision = 0;

	constructor(host: Host) {
		this.host = host;
	}

	/** Uris of the folders, each with a slash at its end; the first one counts for what is in no file yet. */
	get folders(): readonly string[] {
		return this.open;
	}

	setFolders(uris: readonly string[]): void {
		this.open = [...new Set(uris.map((uri) => this.spelled(uri)))];
		this.forget();
	}

	changeFolders(added: readonly string[], removed: readonly string[]): void {
		const gone = new Set(removed.map((uri) => this.spelled(uri)));
		this.setFolders([...this.open.filter((uri) => !gone.has(uri)), ...added]);
	}

	/** Whether a file lies in one of the folders. */
	has(uri: string): boolean {
		return this.open.some((folder) => uri.startsWith(folder));
	}

	/** Files came or went. */
	forget(): void {
		this.revision++;
		this.known = undefined;
	}

	/** Canonical uris, in order, each once. `pause` is awaited between folders, so that messages come through. */
	async designs(pause: () => Promise<void>): Promise<readonly string[]> {
		if (this.known) return this.known;
		const { open, revision } = this;
		const found = new Set<string>();
		const left = open.map((uri) => ({ uri, depth: 0 })).reverse();
		for (let seen = 0; seen < mostFolders; seen++) {
			const folder = left.pop();
			if (!folder || found.size >= mostDesigns) break;
			const entries = this.host.list?.(folder.uri) ?? [];
			for (const { name, isFolder } of entries) {
				const uri = folder.uri + encodeURIComponent(name);
				if (!isFolder) found.add(this.host.canonical(uri));
				else if (folder.depth < deepest)
					left.push({ uri: `${uri}/`, depth: folder.depth + 1 });
			}
			await pause();
		}
		const designs = [...found];
		if (this.revision === revision) this.known = designs;
		return designs;
	}

	private spelled(uri: string): string {
		const folder = this.host.canonical(uri);
		return folder.endsWith("/") ? folder : `${folder}/`;
	}
}
