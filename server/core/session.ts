// The state of one connection: open documents, files that they use, and what was worked out from them.
//
// Everything is computed from the newest texts when it is first asked for, and kept as long as none of the texts that it
// was computed from has changed. After a change one refresh is run when the messages that have arrived are taken in.

import { TextDocument } from "vscode-languageserver-textdocument";
import type { CheckOptions } from "../../shared/checks/index.ts";
import { diagnose } from "../../shared/features/diagnostics.ts";
import type { Snapshot } from "../../shared/features/support/snapshot.ts";
import type {
	Beside,
	FolderEntry,
} from "../../shared/features/support/use-offers.ts";
import { CompileCache, compile } from "../../shared/model/compile.ts";
import type { Design, Finding } from "../../shared/model/types.ts";
import type { Sources } from "../../shared/sources/sources.ts";
import type { Host } from "./host.ts";
import { Settings } from "./settings.ts";
import { SourceText } from "./source-text.ts";

/** What is known of one open document with all that it uses. */
export interface Analysis {
	readonly design: Design;
	/** Of the syntax, the evaluation and the checks, in all files that were read. */
	readonly findings: readonly Finding[];
}

interface Kept extends Analysis {
	/** The texts that it was computed from. */
	readonly from: ReadonlyMap<string, string | undefined>;
	/** What was set for the checks then. */
	readonly options: CheckOptions;
}

/** Turns of the event loop without a change after which the messages that lay ready are taken to be in. */
const quietTurns = 3;
/** Turns after which a refresh runs even if changes keep coming. */
const mostTurns = 500;

export type Change = Parameters<typeof TextDocument.update>[1];

export class Session {
	/** What is set for the checks. */
	readonly settings: Settings;
	private readonly host: Host;
	private readonly onSettled: () => void;
	private readonly open = new Map<string, TextDocument>();
	private readonly files = new Map<string, string | undefined>();
	private readonly texts = new Map<string, SourceText>();
	private readonly analyses = new Map<string, Kept>();
	private readonly caches = new Map<string, CompileCache>();
	private readonly sources: Sources;
	/** Counts changes, so that a refresh can see whether more have come. */
	private changes = 0;
	private waiting = false;

	/** `onSettled` is called once after each group of changes. */
	constructor(host: Host, onSettled: () => void) {
		this.host = host;
		this.onSettled = onSettled;
		this.sources = {
			read: (uri) => this.read(uri),
			resolve: (from, path) => this.resolve(from, path),
		};
		this.settings = new Settings(host, (uri) => this.read(uri));
	}

	didOpen(
		uri: string,
		languageId: string,
		version: number,
		text: string,
	): void {
		this.open.set(
			this.host.canonical(uri),
			TextDocument.create(uri, languageId, version, text),
		);
		this.changed();
	}

	/** Changes to a document that is not open are not ours: they are passed over. */
	didChange(uri: string, changes: Change, version: number): void {
		const key = this.host.canonical(uri);
		const document = this.open.get(key);
		if (!document) return;
		this.open.set(key, TextDocument.update(document, changes, version));
		this.changed();
	}

	didClose(uri: string): void {
		const key = this.host.canonical(uri);
		this.open.delete(key);
		this.analyses.delete(key);
		this.caches.delete(key);
		this.files.delete(key);
		this.forgetUnused();
		this.changed();
	}

	/** Files that changed, came or went on disk. */
	didChangeFiles(uris: readonly string[]): void {
		for (const uri of uris) this.files.delete(this.host.canonical(uri));
		this.settings.forgetPlaces();
		this.changed();
	}

	/** Something that is no text changed: everything is told anew. */
	refresh(): void {
		this.changed();
	}

	/** Canonical uris of the open documents, in the order in which they were opened. */
	openUris(): string[] {
		return [...this.open.keys()];
	}

	/** The version of an open document. */
	versionOf(uri: string): number | undefined {
		return this.open.get(uri)?.version;
	}

	/** A canonical uri as the client spells it. */
	clientUri(uri: string): string {
		return this.open.get(uri)?.uri ?? uri;
	}

	resolve(from: string, path: string): string | undefined {
		const uri = this.host.resolve(from, path);
		return uri === undefined ? undefined : this.host.canonical(uri);
	}

	/** The text of an open document; undefined if the client has not opened it. */
	document(clientUri: string): SourceText | undefined {
		const uri = this.host.canonical(clientUri);
		return this.open.has(uri) ? this.source(uri) : undefined;
	}

	/** The text of a file, open or not. */
	source(uri: string): SourceText | undefined {
		const text = this.read(uri);
		if (text === undefined) return undefined;
		const known = this.texts.get(uri);
		if (known?.text === text) return known;
		const made = new SourceText(uri, text, known);
		this.texts.set(uri, made);
		return made;
	}

	/** The files around a file. */
	beside(source: SourceText): Beside {
		return {
			list: (folder) => this.listBeside(source.uri, folder),
			tree: (path) => {
				const uri = this.resolve(source.uri, path);
				return uri === undefined ? undefined : this.source(uri)?.result.tree;
			},
		};
	}

	/** A folder as a path of the file `from` has it; the file itself is left out. */
	private listBeside(
		from: string,
		folder: string,
	): readonly FolderEntry[] | undefined {
		// Only designs are resolved: any name in the folder leads to it.
		const inside = this.resolve(from, `${folder}a.rod`);
		if (inside === undefined) return undefined;
		const uri = inside.slice(0, inside.lastIndexOf("/") + 1);
		return this.host
			.list?.(uri)
			?.filter(
				({ name }) =>
					this.host.canonical(uri + encodeURIComponent(name)) !== from,
			);
	}

	/** What a feature looks at. */
	snapshot(source: SourceText): Snapshot {
		return {
			uri: source.uri,
			text: source.text,
			result: source.result,
			design: this.analysis(source.uri).design,
		};
	}

	/** Of the newest texts. */
	analysis(uri: string): Analysis {
		const options = this.settings.optionsFor(uri);
		const kept = this.analyses.get(uri);
		if (kept && this.isFresh(kept)) {
			if (kept.options === options) return kept;
			const findings = diagnose(kept.design, options);
			const checked = { ...kept, options, findings };
			this.analyses.set(uri, checked);
			return checked;
		}
		const cache = this.caches.get(uri) ?? new CompileCache();
		if (this.open.has(uri)) this.caches.set(uri, cache);
		const design = compile(this.sources, uri, { cache });
		const made: Kept = {
			design,
			options,
			findings: diagnose(design, options),
			from: new Map(design.files.map((file) => [file, this.read(file)])),
		};
		this.analyses.set(uri, made);
		return made;
	}

	private isFresh({ from }: Kept): boolean {
		for (const [uri, text] of from) if (this.read(uri) !== text) return false;
		return true;
	}

	/** Open documents win over what is on disk. */
	private read(uri: string): string | undefined {
		const document = this.open.get(uri);
		if (document) return document.getText();
		if (!this.files.has(uri)) this.files.set(uri, this.host.read(uri));
		return this.files.get(uri);
	}

	private forgetUnused(): void {
		const used = new Set(this.open.keys());
		for (const { from } of this.analyses.values()) {
			for (const uri of from.keys()) used.add(uri);
		}
		for (const uri of this.open.keys()) {
			const place = this.settings.placeOf(uri);
			if (place !== undefined) used.add(place);
		}
		for (const cache of [this.files, this.texts]) {
			for (const uri of cache.keys()) if (!used.has(uri)) cache.delete(uri);
		}
	}

	private changed(): void {
		this.changes++;
		if (this.waiting) return;
		this.waiting = true;
		this.wait(this.changes, quietTurns, mostTurns);
	}

	/** Each message arrives and is handled in turns of its own: wait until some turns have brought no change. */
	private wait(seen: number, quiet: number, left: number): void {
		this.host.later(() => {
			if (left > 0 && this.changes !== seen) {
				this.wait(this.changes, quietTurns, left - 1);
			} else if (left > 0 && quiet > 1) {
				this.wait(seen, quiet - 1, left - 1);
			} else {
				this.waiting = false;
				this.onSettled();
			}
		});
	}
}
