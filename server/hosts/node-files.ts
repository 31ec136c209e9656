// File access of the command line: texts as they stand at one moment, and files that change only as a whole.

import {
	closeSync,
	fchmodSync,
	fsyncSync,
	mkdirSync,
	openSync,
	readFileSync,
	realpathSync,
	renameSync,
	rmSync,
	statSync,
	writeSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Sources } from "../../shared/sources/sources.ts";
import { nodeHost } from "./node-host.ts";

/** Larger files are no designs, bytes. */
const largest = 32 * 1024 * 1024;

/** A file that cannot be read or written, with the reason in a maker's words. */
export class FileFault extends Error {
	override readonly name = "FileFault";
}

export interface TextFile {
	readonly text: string;
	/** It began with a byte order mark, which is not in `text`. */
	readonly marked: boolean;
}

/** Throws `FileFault` for what is no file, too large, or not UTF-8. */
export function readTextFile(path: string): TextFile {
	let bytes: Uint8Array;
	try {
		const stat = statSync(path);
		// A device or a pipe could have no end.
		if (!stat.isFile()) throw new FileFault("it is not a file");
		if (stat.size > largest) {
			throw new FileFault(`it is larger than ${largest / 1024 / 1024} MB`);
		}
		bytes = readFileSync(path);
	} catch (error) {
		throw error instanceof FileFault ? error : new FileFault(reason(error));
	}
	return decode(bytes);
}

/** Throws `FileFault` where bytes are not UTF-8. */
export function decode(bytes: Uint8Array): TextFile {
	const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
	try {
		return {
			text: new TextDecoder("utf-8", { fatal: true }).decode(bytes),
			marked,
		};
	} catch {
		throw new FileFault("it is not text in UTF-8");
	}
}

/**
 * The files on this machine as the core reads them: each is read once, so that one run sees one state. `given` are texts
 * that do not stand in a file, by uri. Only `.rod` files are read: a design cannot make the tool show another file.
 */
export function nodeSources(
	given: ReadonlyMap<string, string> = new Map(),
): Sources {
	const texts = new Map<string, string | undefined>(given);
	return {
		read(uri) {
			if (texts.has(uri)) return texts.get(uri);
			const text = textAt(uri);
			texts.set(uri, text);
			return text;
		},
		resolve: (from, path) =>
			path.endsWith(".rod") ? nodeHost.resolve(from, path) : undefined,
	};
}

export function uriOf(path: string): string {
	return pathToFileURL(path).href;
}

/** Undefined for a uri that is no file. */
export function pathOf(uri: string): string | undefined {
	try {
		return uri.startsWith("file:") ? fileURLToPath(uri) : undefined;
	} catch {
		return undefined;
	}
}

/**
 * Replaces a file's text at once: a reader, or a machine that loses its power, sees the old text or the new one. Follows
 * links and keeps the file's rights. Throws `FileFault`.
 */
export function replaceFile(path: string, { text, marked }: TextFile): void {
	let temporary: string | undefined;
	try {
		const target = realpathSync(path);
		const { mode } = statSync(target);
		temporary = join(
			dirname(target),
			`.${basename(target)}.${process.pid}.tmp`,
		);
		const file = openSync(temporary, "wx");
		try {
			fchmodSync(file, mode);
			writeAll(file, new TextEncoder().encode(marked ? `\ufeff${text}` : text));
			fsyncSync(file);
		} finally {
			closeSync(file);
		}
		renameSync(temporary, target);
	} catch (error) {
		if (temporary !== undefined) rmSync(temporary, { force: true });
		throw new FileFault(reason(error));
	}
}

/** Makes a file; throws `FileFault` if there is one already. */
export function createFile(path: string, text: string): void {
	try {
		const file = openSync(path, "wx");
		try {
			writeAll(file, new TextEncoder().encode(text));
		} finally {
			closeSync(file);
		}
	} catch (error) {
		throw new FileFault(reason(error));
	}
}

/**
 * Writes files into a folder, which is made if it is not there; files of the same names are replaced. Each is whole at any time,
 * and none is touched before all could be written: a run that is broken off leaves what was there. Throws `FileFault`.
 */
export function writeIntoFolder(
	folder: string,
	files: readonly { readonly name: string; readonly text: string }[],
): void {
	const temporary = new Map<string, string>();
	try {
		mkdirSync(folder, { recursive: true });
		for (const { name, text } of files) {
			const path = join(folder, `.${name}.${process.pid}.tmp`);
			const file = openSync(path, "wx");
			temporary.set(path, join(folder, name));
			try {
				writeAll(file, new TextEncoder().encode(text));
				fsyncSync(file);
			} finally {
				closeSync(file);
			}
		}
		for (const [path, target] of temporary) {
			renameSync(path, target);
			temporary.delete(path);
		}
	} catch (error) {
		for (const path of temporary.keys()) rmSync(path, { force: true });
		throw new FileFault(reason(error));
	}
}

function writeAll(file: number, bytes: Uint8Array): void {
	for (let done = 0; done < bytes.length; ) {
		done += writeSync(file, bytes, done);
	}
}

function textAt(uri: string): string | undefined {
	const path = pathOf(uri);
	if (path === undefined || !path.endsWith(".rod")) return undefined;
	try {
		return readTextFile(path).text;
	} catch (error) {
		if (error instanceof FileFault) return undefined;
		throw error;
	}
}

const reasons: Readonly<Record<string, string>> = {
	ENOENT: "there is no such file",
	EACCES: "it must not be read or written",
	EPERM: "it must not be read or written",
	EISDIR: "it is a folder",
	ENOTDIR: "there is no such folder",
	EEXIST: "it is there already",
	ENOSPC: "the disk is full",
	EROFS: "the disk can only be read",
};

function reason(error: unknown): string {
	const { code, message } = error as NodeJS.ErrnoException;
	return (code !== undefined && reasons[code]) || message;
}
