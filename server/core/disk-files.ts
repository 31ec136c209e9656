// The files that are not open in the editor: each is read once, until it is told or seen that it has changed.

import type { Host } from "./host.ts";

export class DiskFiles {
	private readonly host: Host;
	private readonly texts = new Map<
		string,
		{ readonly text: string | undefined; readonly stamp: string | undefined }
	>();
	/** Where paths lead: looking for a package asks the disk for many files. */
	private readonly paths = new Map<string, string | undefined>();

	constructor(host: Host) {
		this.host = host;
	}

	read(uri: string): string | undefined {
		const known = this.texts.get(uri);
		if (known) return known.text;
		// In this order: a change between the two is then seen as one.
		const stamp = this.host.stamp(uri);
		const text = this.host.read(uri);
		this.texts.set(uri, { text, stamp });
		return text;
	}

	/** The canonical uri that a path in a file means. */
	resolve(from: string, path: string): string | undefined {
		const key = `${from}\n${path}`;
		if (!this.paths.has(key)) {
			const uri = this.host.resolve(from, path);
			this.paths.set(key, uri === undefined ? uri : this.host.canonical(uri));
		}
		return this.paths.get(key);
	}

	/** It changed, came or went. */
	forget(uri: string): void {
		this.texts.delete(uri);
	}

	/** Files came or went: a path may lead elsewhere. */
	forgetPaths(): void {
		this.paths.clear();
	}

	/** Looks whether files changed that nobody watches. */
	lookAgain(uris: Iterable<string>): boolean {
		let changed = false;
		for (const uri of uris) {
			const known = this.texts.get(uri);
			if (!known || known.stamp === this.host.stamp(uri)) continue;
			this.texts.delete(uri);
			changed = true;
		}
		return changed;
	}

	keepOnly(uris: ReadonlySet<string>): void {
		for (const uri of this.texts.keys())
			if (!uris.has(uri)) this.texts.delete(uri);
		this.forgetPaths();
	}
}
