// The state of one connection: open documents, files that they use, and what was worked out from them.
//
// Everything is computed from the newest texts when it is first asked for, phase by phase (the tree, the design, the
// findings), and kept as long as none of the texts that it was computed from has changed. After a change one refresh is run
// when the messages that have arrived are taken in.

import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import type { CheckOptions } from "../../shared/checks/index.ts";
import { diagnose } from "../../shared/features/diagnostics.ts";
import { NameWorld } from "../../shared/features/support/names/name-world.ts";
import type { Snapshot } from "../../shared/features/support/snapshot.ts";
import type {
	Beside,
	FolderEntry,
} from "../../shared/features/support/use-offers.ts";
import { CompileCache, compile } from "../../shared/model/compile.ts";
import type { Design, Finding } from "../../shared/model/types.ts";
import type { PositionEncoding } from "../../shared/text/position-encoding.ts";
import { DiskFiles } from "./disk-files.ts";
import type { Host } from "./host.ts";
import {
	changedDocument,
	type OpenDocument,
	openDocument,
} from "./open-document.ts";
import { Settings } from "./settings.ts";
import { SourceText } from "./source-text.ts";
import { Turns } from "./turns.ts";
import { WorkspaceFiles } from "./workspace-files.ts";

/** What is known of one design with all that it uses. */
export interface Analysis {
	readonly design: Design;
	/** Of the syntax, the evaluation and the checks, in all files that were read. */
	readonly findings: readonly Finding[];
}

/** What a design was worked out from. */
interface Makings {
	/** The texts. */
	readonly from: ReadonlyMap<string, string | undefined>;
	/** Where the paths in it led then, each with the file it stands in. */
	readonly paths: readonly Path[];
}

/** What findings were worked out from. */
export interface State extends Makings {
	/** What was set for the checks. */
	readonly options: CheckOptions;
}

interface Kept extends Makings {
	readonly design: Design;
	/** With what was set for the checks then; made when it is first asked for. */
	checked?: { readonly options: CheckOptions; readonly analysis: Analysis };
}

interface Path {
	readonly from: string;
	readonly path: string;
	readonly uri: string | undefined;
}

/** Nobody chooses from more. */
const mostBeside = 1_000;

export class Session {
	/** What is set for the checks. */
	readonly settings: Settings;
	/** The folders that are open in the editor. */
	readonly workspace: WorkspaceFiles;
	/** Waits until what has been sent is in. */
	readonly turns: Turns;
	/** What positions count, as agreed with the client. */
	encoding: PositionEncoding = "utf-16";
	/** Whether the client tells changes of a file that is not open. */
	isWatched: (uri: string) => boolean = () => false;
	/** Files that somebody else still needs. */
	keepAlso: () => Iterable<string> = () => [];
	/** Counts what changed outside the open documents, as far as it is known. */
	changesOutside = 0;
	/** Counts how often texts have come that were read before. */
	arrivals = 0;
	private readonly host: Host;
	private readonly open = new Map<string, OpenDocument>();
	private readonly disk: DiskFiles;
	private readonly texts = new Map<string, SourceText>();
	private readonly kept = new Map<string, Kept>();
	private readonly caches = new Map<string, CompileCache>();

	/** `onSettled` is called once after each group of changes. */
	constructor(host: Host, onSettled: () => void) {
		this.host = host;
		this.disk = new DiskFiles(host);
		this.workspace = new WorkspaceFiles(host);
		this.turns = new Turns(
			(task) => host.later(task),
			() => {
				this.lookAgain();
				onSettled();
			},
		);
		this.settings = new Settings(
			host,
			(uri) => this.read(uri),
			() => this.workspace.folders[0],
		);
	}

	didOpen(uri: string, version: number, text: string): void {
		this.open.set(
			this.host.canonical(uri),
			openDocument(uri, version, text, this.encoding),
		);
		this.turns.changed();
	}

	/** Changes to a document that is not open are not ours: they are passed over. */
	didChange(
		uri: string,
		changes: readonly TextDocumentContentChangeEvent[],
		version: number,
	): void {
		const key = this.host.canonical(uri);
		const document = this.open.get(key);
		if (!document) return;
		this.open.set(
			key,
			changedDocument(document, changes, version, this.encoding),
		);
		this.turns.changed();
	}

	didClose(uri: string): void {
		const key = this.host.canonical(uri);
		this.open.delete(key);
		this.kept.delete(key);
		this.caches.delete(key);
		this.disk.forget(key);
		this.forgetUnused();
		this.changesOutside++;
		this.turns.changed();
	}

	/** Files that changed, came or went on disk. */
	didChangeFiles(uris: readonly string[]): void {
		for (const uri of uris) {
			const file = this.host.canonical(uri);
			this.host.forget?.(file);
			this.disk.forget(file);
		}
		this.filesMoved();
		this.turns.changed();
	}

	/** Texts have come that were not there yet when they were read. */
	didArrive(uris: readonly string[]): void {
		this.arrivals++;
		for (const uri of uris) this.disk.forget(uri);
		this.filesMoved();
		this.turns.changed();
	}

	/** Something that is no text changed: everything is told anew. */
	refresh(): void {
		this.changesOutside++;
		this.turns.changed();
	}

	/** Files may have come or gone: what was looked up is looked up anew. */
	filesMoved(): void {
		this.changesOutside++;
		this.disk.forgetPaths();
		this.settings.forgetPlaces();
		this.workspace.forget();
	}

	/** Looks whether files changed that the client does not watch: those that open designs use, and others that are asked for. */
	lookAgain(others: Iterable<string> = []): void {
		const files = new Set(others);
		for (const [uri, { from, paths }] of this.kept) {
			for (const used of from.keys()) files.add(used);
			const place = this.settings.placeOf(uri);
			if (place !== undefined) files.add(place);
			if (paths.some((one) => this.mayLeadElsewhere(one)))
				this.disk.forgetPaths();
		}
		for (const uri of files)
			if (this.open.has(uri) || this.isWatched(uri)) files.delete(uri);
		if (this.disk.lookAgain(files)) this.changesOutside++;
	}

	/** A path to a package leads to the nearest one: another may have been installed. */
	private mayLeadElsewhere({ path, uri }: Path): boolean {
		return uri === undefined || (!path.startsWith(".") && !this.isWatched(uri));
	}

	/** Files that designs were worked out from last. */
	usedFiles(): string[] {
		const open = [...this.kept.values()].flatMap(({ from }) => [
			...from.keys(),
		]);
		return [...open, ...this.keepAlso()];
	}

	/** Canonical uris of the open documents, in the order in which they were opened. */
	openUris(): string[] {
		return [...this.open.keys()];
	}

	isOpen(uri: string): boolean {
		return this.open.has(uri);
	}

	/** The version of an open document. */
	versionOf(uri: string): number | undefined {
		return this.open.get(uri)?.version;
	}

	/** The one spelling of a uri. */
	canonical(uri: string): string {
		return this.host.canonical(uri);
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
		known?.retire();
		const made = new SourceText(uri, text, {
			encoding: this.encoding,
			lines: this.open.get(uri)?.lines,
			tree: () => {
				// The tree of the evaluation is of the newest text.
				if (!this.open.has(uri) || this.read(uri) !== text) return undefined;
				return this.cacheOf(uri).parsed.get(this.sources(), uri)?.result;
			},
		});
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
			)
			.slice(0, mostBeside);
	}

	/** What a feature looks at: each phase is worked out when it is first asked for. */
	snapshot(source: SourceText): Snapshot {
		const designOf = (): Design => this.design(source.uri);
		return {
			uri: source.uri,
			text: source.text,
			get result() {
				return source.result;
			},
			get design() {
				return designOf();
			},
		};
	}

	/** What names mean in the newest texts: of no use any more after the next change. */
	names(): NameWorld {
		return new NameWorld({
			tree: (uri) => this.source(uri)?.result.tree,
			text: (uri) => this.source(uri)?.text,
			resolve: (from, path) => this.resolve(from, path),
		});
	}

	/** Of the newest texts, not checked. */
	design(uri: string): Design {
		return this.keptOf(uri).design;
	}

	/** What a design would be with other texts, beside the newest of the rest; nothing of it is kept. */
	designWith(uri: string, texts: ReadonlyMap<string, string>): Design {
		const { read, resolve } = this.sources();
		return compile(
			{ read: (one) => texts.get(one) ?? read(one), resolve },
			uri,
		);
	}

	/** Of the newest texts, checked. */
	analysis(uri: string): Analysis {
		return this.checked(this.keptOf(uri), this.settings.optionsFor(uri));
	}

	/** Of the newest texts, checked, with what it was worked out from: for a design that nobody has open. */
	examine(uri: string): { readonly analysis: Analysis; readonly state: State } {
		const options = this.settings.optionsFor(uri);
		const kept = this.keptOf(uri);
		const { from, paths } = kept;
		return {
			analysis: this.checked(kept, options),
			state: { from, paths, options },
		};
	}

	/** Whether nothing has changed of what the findings of a design were worked out from. */
	isCurrent(uri: string, state: State): boolean {
		return (
			this.settings.optionsFor(uri) === state.options &&
			this.leadsTheSame(state) &&
			this.isFresh(state)
		);
	}

	private checked(kept: Kept, options: CheckOptions): Analysis {
		if (kept.checked?.options !== options) {
			const { design } = kept;
			const lines = (uri: string) => this.source(uri)?.lines;
			const analysis = { design, findings: diagnose(design, lines, options) };
			kept.checked = { options, analysis };
		}
		return kept.checked.analysis;
	}

	private keptOf(uri: string): Kept {
		const known = this.kept.get(uri);
		if (known) {
			// What is kept between runs takes it that paths lead where they led.
			if (!this.leadsTheSame(known)) this.caches.delete(uri);
			else if (this.isFresh(known)) return known;
		}
		const paths: Path[] = [];
		const design = compile(this.sources(paths), uri, {
			cache: this.cacheOf(uri),
		});
		const made: Kept = {
			design,
			from: new Map(design.files.map((file) => [file, this.read(file)])),
			// None is followed where nothing that holds paths has changed.
			paths: paths.length > 0 ? paths : (known?.paths ?? []),
		};
		if (this.open.has(uri)) this.kept.set(uri, made);
		return made;
	}

	/** Kept while the document is open. */
	private cacheOf(uri: string): CompileCache {
		const known = this.caches.get(uri);
		if (known) return known;
		const cache = new CompileCache();
		if (this.open.has(uri)) this.caches.set(uri, cache);
		return cache;
	}

	/** The newest texts; `followed` takes in which paths were followed. */
	private sources(followed: Path[] = []) {
		return {
			read: (uri: string) => this.read(uri),
			resolve: (from: string, path: string) => {
				const uri = this.disk.resolve(from, path);
				followed.push({ from, path, uri });
				return uri;
			},
		};
	}

	private leadsTheSame({ paths }: Makings): boolean {
		return paths.every(
			({ from, path, uri }) => this.disk.resolve(from, path) === uri,
		);
	}

	private isFresh({ from }: Makings): boolean {
		for (const [uri, text] of from) if (this.read(uri) !== text) return false;
		return true;
	}

	/** Open documents win over what is on disk. */
	private read(uri: string): string | undefined {
		const document = this.open.get(uri);
		return document ? document.text : this.disk.read(uri);
	}

	/** Forgets files that nobody has open, that no open design uses, and that nobody else needs. */
	forgetUnused(): void {
		const used = new Set([...this.open.keys(), ...this.keepAlso()]);
		for (const { from } of this.kept.values()) {
			for (const uri of from.keys()) used.add(uri);
		}
		for (const uri of this.open.keys()) {
			const place = this.settings.placeOf(uri);
			if (place !== undefined) used.add(place);
		}
		this.disk.keepOnly(used);
		for (const uri of this.texts.keys())
			if (!used.has(uri)) this.texts.delete(uri);
	}
}
