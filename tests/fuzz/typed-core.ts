// The core of the server in this process: a session without a protocol, as fast as it goes.

import type { Host } from "../../server/core/host.ts";
import { Session } from "../../server/core/session.ts";
import { completion } from "../../shared/features/completion.ts";
import { definition } from "../../shared/features/definition.ts";
import { folding } from "../../shared/features/folding.ts";
import { hover } from "../../shared/features/hover.ts";
import { outline } from "../../shared/features/outline.ts";
import { references } from "../../shared/features/references.ts";
import { rename } from "../../shared/features/rename.ts";
import { format } from "../../shared/format/format.ts";
import { resolveRelative } from "../../shared/sources/sources.ts";
import { indexLines } from "../../shared/text/line-index.ts";
import type { Chance } from "./chance.ts";
import { type Typed, toldOf } from "./fuzz.ts";
import type { TypedEdit } from "./typist.ts";

export class TypedCore implements Typed {
	private session = sessionOn(new Map());
	private readonly texts = new Map<string, string>();
	private version = 1;

	async start(disk: ReadonlyMap<string, string>): Promise<void> {
		this.session = sessionOn(disk);
	}

	async open(uri: string, text: string): Promise<void> {
		this.texts.set(uri, text);
		this.session.didOpen(uri, 1, text);
	}

	async edit(uri: string, edit: TypedEdit, text: string): Promise<void> {
		const before = this.texts.get(uri) as string;
		this.texts.set(uri, text);
		const lines = indexLines(before);
		const range = {
			start: lines.positionAt(edit.start),
			end: lines.positionAt(edit.end),
		};
		// The middle of a line break has no name of its own: such an edit comes as a whole text.
		const named =
			lines.offsetAt(range.start) === edit.start &&
			lines.offsetAt(range.end) === edit.end;
		this.session.didChange(
			uri,
			[named ? { range, text: edit.text } : { text }],
			++this.version,
		);
	}

	async close(uri: string): Promise<void> {
		this.session.didClose(uri);
		this.texts.delete(uri);
	}

	async told(uri: string): Promise<readonly string[]> {
		const findings = this.session
			.openUris()
			.flatMap((one) => this.session.analysis(one).findings);
		const source = this.session.document(uri);
		if (source?.text !== this.texts.get(uri))
			throw new Error("The session has another text");
		return toldOf(uri, this.texts.get(uri) as string, findings);
	}

	async ask(uri: string, offset: number, chance: Chance): Promise<void> {
		const { session } = this;
		const source = session.document(uri);
		if (!source) throw new Error(`Not open: ${uri}`);
		const snapshot = session.snapshot(source);
		hover(snapshot, offset);
		completion(snapshot, offset, {
			afterBlank: chance.is(0.5),
			onlyPaths: chance.is(0.2),
			beside: session.beside(source),
		});
		const names = session.names();
		definition(names, uri, offset);
		references(names, uri, offset, [uri]);
		rename(names, uri, offset, "other", {
			uris: [uri],
			locked: () => undefined,
		});
		outline(source.text, source.result.tree);
		folding(source.text, source.result.tree);
		format(source.text);
	}

	async end(): Promise<void> {
		// What a session does after changes runs in turns of its own.
		await this.session.turns.settled();
	}
}

function sessionOn(disk: ReadonlyMap<string, string>): Session {
	const host: Host = {
		read: (uri) => disk.get(uri),
		stamp: (uri) => disk.get(uri),
		resolve: resolveRelative,
		settingsFile: () => undefined,
		canonical: (uri) => uri,
		later: (task) => void setImmediate(task),
		checkPage: (anchor) => anchor,
	};
	return new Session(host, () => {});
}
