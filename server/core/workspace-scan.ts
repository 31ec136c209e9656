// What the designs in the open folders tell that nobody has opened: worked out one by one, and kept as messages only.

import type { Diagnostic } from "vscode-languageserver";
import type { Context } from "./context.ts";
import type { State } from "./session.ts";
import { type ByFile, toldBy } from "./told.ts";

interface Scanned {
	readonly state: State;
	readonly told: ByFile;
}

export class WorkspaceScan {
	private readonly context: Context;
	private readonly scanned = new Map<string, Scanned>();

	constructor(context: Context) {
		this.context = context;
		context.session.keepAlso = () => this.files();
	}

	/** Works a design out, if anything that it is made from has changed; an open one is left to its document. */
	take(uri: string): void {
		const { session } = this.context;
		if (session.isOpen(uri)) {
			this.scanned.delete(uri);
			return;
		}
		const known = this.scanned.get(uri);
		if (known && session.isCurrent(uri, known.state)) return;
		// Its memory goes with it if this fails.
		this.scanned.delete(uri);
		const { analysis, state } = session.examine(uri);
		this.scanned.set(uri, { state, told: toldBy(this.context, analysis) });
	}

	/** Forgets designs that are no longer there. */
	keepOnly(uris: ReadonlySet<string>): void {
		for (const uri of this.scanned.keys())
			if (!uris.has(uri)) this.scanned.delete(uri);
	}

	/** What they tell about a file. */
	about(uri: string): (readonly Diagnostic[])[] {
		return [...this.scanned.values()].flatMap(({ told }) => {
			const list = told.get(uri);
			return list ? [list] : [];
		});
	}

	/** All files that they tell something about, by what they tell. */
	all(): Map<string, (readonly Diagnostic[])[]> {
		const all = new Map<string, (readonly Diagnostic[])[]>();
		for (const { told } of this.scanned.values())
			for (const [uri, list] of told) {
				const lists = all.get(uri);
				if (lists) lists.push(list);
				else all.set(uri, [list]);
			}
		return all;
	}

	/** Whether something that they were made from has changed since. */
	isOld(): boolean {
		const { session } = this.context;
		for (const [uri, { state }] of this.scanned)
			if (!session.isOpen(uri) && !session.isCurrent(uri, state)) return true;
		return false;
	}

	/** Files that they were made from. */
	files(): Set<string> {
		const files = new Set<string>();
		for (const { state } of this.scanned.values())
			for (const uri of state.from.keys()) files.add(uri);
		return files;
	}
}
