// The machine as an editor without a disk shows it: files are asked for over the connection, and told when they come.
//
// The core reads files at once; here a file that is not known yet has no text at first. It is asked for, and when it comes
// the session hears that it changed. Until then nothing is told about designs, so that no finding stands for a moment only.

import { settingsFileName } from "../../shared/checks/index.ts";
import type { ToldAtStart } from "../../shared/protocol/editor-files.ts";
import { compareStrings } from "../../shared/text/compare.ts";
import type { Host } from "../core/host.ts";

/** What the editor is asked for. Rejections count as files that are not there. */
export interface Editor {
	readFiles(uris: readonly string[]): Promise<readonly (string | null)[]>;
	listFiles(): Promise<readonly string[]>;
}

interface Known {
	readonly text: string | undefined;
	/** Grows with every text that comes. */
	readonly stamp: number;
	/** It has changed since: its text is asked for anew, and this one serves until then. */
	old: boolean;
}

export class EditorFiles implements Host {
	private readonly editor: Editor;
	private page = "";
	private readonly files = new Map<string, Known>();
	private readonly wanted = new Set<string>();
	/** Canonical uris; undefined until they have come. */
	private names: readonly string[] | undefined;
	private namesAsked = false;
	private asking = 0;
	private waiters: (() => void)[] = [];
	private stamps = 0;
	private arrived: (uris: readonly string[]) => void = () => {};

	constructor(editor: Editor) {
		this.editor = editor;
	}

	begin(told: unknown): void {
		const { checksPage } = (told ?? {}) as Partial<ToldAtStart>;
		if (typeof checksPage === "string") this.page = checksPage;
	}

	onArrived(arrived: (uris: readonly string[]) => void): void {
		this.arrived = arrived;
	}

	/** Files have been asked for and have not come: resolves when all have. */
	whenArrived(): Promise<void> | undefined {
		if (this.asking === 0 && this.wanted.size === 0) return undefined;
		return new Promise((resolve) => this.waiters.push(resolve));
	}

	read(uri: string): string | undefined {
		const known = this.files.get(uri);
		if (!known || known.old) this.want(uri);
		return known?.text;
	}

	stamp(uri: string): string | undefined {
		const known = this.files.get(uri);
		return known?.text === undefined ? undefined : `${known.stamp}`;
	}

	/** The editor tells that a file changed, came or went. */
	forget(uri: string): void {
		const known = this.files.get(uri);
		if (known) known.old = true;
		// It may have come or gone, and a folder with it.
		this.namesAsked = false;
	}

	resolve(from: string, path: string): string | undefined {
		if (!path.endsWith(".rod") || path.includes("\0")) return undefined;
		const folder = folderOf(from);
		if (folder === undefined) return undefined;
		if (/^\.\.?\//.test(path)) return joined(folder, path);
		if (!/^(?:@[\w.-]+\/)?[\w.-]+\/[^/]/.test(path) || path.includes("..")) {
			return undefined;
		}
		for (let at: string | undefined = folder; at !== undefined; ) {
			const candidate = joined(at, `node_modules/${path}`);
			if (candidate === undefined) return undefined;
			if (this.read(candidate) !== undefined) return candidate;
			at = folderOf(at.slice(0, -1));
		}
		return undefined;
	}

	list(
		folder: string,
	):
		| readonly { readonly name: string; readonly isFolder: boolean }[]
		| undefined {
		const at = this.canonical(folder);
		const inside = new Map<string, boolean>();
		for (const uri of this.namesKnown()) {
			if (!uri.startsWith(at)) continue;
			const [name = "", ...deeper] = uri.slice(at.length).split("/");
			const isFolder = deeper.length > 0;
			if (name.startsWith(".") || name === "node_modules") continue;
			if (!isFolder && !name.endsWith(".rod")) continue;
			inside.set(decoded(name), isFolder);
		}
		return [...inside]
			.map(([name, isFolder]) => ({ name, isFolder }))
			.sort((a, b) => compareStrings(a.name, b.name));
	}

	/** The nearest one above the design, of those in the workspace. */
	settingsFile(uri: string): string | undefined {
		const design = this.canonical(uri);
		let nearest: string | undefined;
		for (const name of this.namesKnown()) {
			if (!name.endsWith(`/${settingsFileName}`)) continue;
			const folder = name.slice(0, -settingsFileName.length);
			if (design.startsWith(folder) && name.length > (nearest?.length ?? 0)) {
				nearest = name;
			}
		}
		return nearest;
	}

	/** Editors escape more characters in a path than need be, and not always the same. */
	canonical(uri: string): string {
		const parts = /^([a-z][a-z\d+.-]*:\/\/[^/?#]*)(\/[^?#]*)(.*)$/i.exec(uri);
		if (!parts) return uri;
		const [, start, path = "", rest] = parts;
		const segments = path
			.split("/")
			.map((segment) => encodeURIComponent(decoded(segment)));
		return `${start}${segments.join("/")}${rest}`;
	}

	later(task: () => void): void {
		const { port1, port2 } = new MessageChannel();
		port1.addEventListener("message", () => {
			port1.close();
			task();
		});
		port1.start();
		port2.postMessage(undefined);
	}

	checkPage(anchor: string): string {
		return `${this.page}#${anchor}`;
	}

	private want(uri: string): void {
		if (!/^[a-z][a-z\d+.-]*:\/\//i.test(uri) || this.wanted.has(uri)) return;
		if (this.wanted.size === 0) this.later(() => void this.fetch());
		this.wanted.add(uri);
	}

	/** All that is wanted by now, in one question. */
	private async fetch(): Promise<void> {
		const uris = [...this.wanted];
		this.wanted.clear();
		for (const uri of uris) {
			const known = this.files.get(uri);
			if (known) known.old = false;
		}
		this.asking++;
		const texts = await this.editor.readFiles(uris).catch(() => []);
		this.asking--;
		for (const [index, uri] of uris.entries()) {
			this.files.set(uri, {
				text: texts[index] ?? undefined,
				stamp: ++this.stamps,
				old: this.files.get(uri)?.old ?? false,
			});
		}
		this.tell(uris);
	}

	private namesKnown(): readonly string[] {
		if (!this.namesAsked) {
			this.namesAsked = true;
			void this.fetchNames();
		}
		return this.names ?? [];
	}

	private async fetchNames(): Promise<void> {
		this.asking++;
		const uris = await this.editor.listFiles().catch(() => []);
		this.asking--;
		this.names = uris.map((uri) => this.canonical(uri));
		this.tell([]);
	}

	private tell(uris: readonly string[]): void {
		this.arrived(uris);
		if (this.asking > 0 || this.wanted.size > 0) return;
		const waiters = this.waiters;
		this.waiters = [];
		for (const resolve of waiters) resolve();
	}
}

/** With its slash at the end; undefined for a uri without folders, and above the topmost. */
function folderOf(uri: string): string | undefined {
	const parts = /^([a-z][a-z\d+.-]*:\/\/[^/?#]*\/)((?:[^?#]*\/)?)[^/?#]+/i.exec(
		uri,
	);
	return parts ? `${parts[1]}${parts[2]}` : undefined;
}

/** Undefined where `..` leads out of the topmost folder. */
function joined(folder: string, path: string): string | undefined {
	const start = /^[a-z][a-z\d+.-]*:\/\/[^/]*\//i.exec(folder)?.[0];
	if (start === undefined) return undefined;
	const segments: string[] = [];
	const escaped = path.split("/").map((segment) => encodeURIComponent(segment));
	for (const segment of [
		...folder.slice(start.length).split("/"),
		...escaped,
	]) {
		if (segment === "" || segment === ".") continue;
		if (segment !== "..") segments.push(segment);
		else if (segments.pop() === undefined) return undefined;
	}
	return `${start}${segments.join("/")}`;
}

/** A name as it is read; one that is escaped wrongly stays as it is. */
function decoded(segment: string): string {
	try {
		return decodeURIComponent(segment);
	} catch {
		return segment;
	}
}
