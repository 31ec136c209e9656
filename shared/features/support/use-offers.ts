// What a `use … from "…"` line can take: files beside this one in its path, and in front of `from` the names that the file has.
//
// Read from the characters around the cursor: while such a line is typed, its text is open and its names are missing.

import type { FileNode, Span } from "../../../grammar/index.ts";
import { type KnownName, namesOf } from "./known-names.ts";
import { placedIn } from "./place.ts";
import type { Snapshot } from "./snapshot.ts";

/** A file or folder as it is called in its folder. */
export interface FolderEntry {
	readonly name: string;
	readonly isFolder: boolean;
}

/** The files around the one that is looked at. */
export interface Beside {
	/** Designs and folders in a folder that is written as in a path: `./`, `../shop/`. Undefined if there is no such folder. */
	readonly list: (folder: string) => readonly FolderEntry[] | undefined;
	/** The file that a path means. */
	readonly tree: (path: string) => FileNode | undefined;
}

export type UsePlace =
	| {
			readonly kind: "path";
			/** What stands between the quote and the cursor. */
			readonly typed: string;
	  }
	| {
			readonly kind: "names";
			/** The path behind `from`. */
			readonly path: string;
			/** Names that are in the line already. */
			readonly taken: readonly string[];
	  };

/** How far around the cursor a line is looked for. */
const reach = 2_000;

/** Where in a `use` line the cursor is; undefined outside of one, or where it leads to no file. */
export function usePlaceAt(
	{ text, result }: Snapshot,
	offset: number,
): UsePlace | undefined {
	const isComment = result.tree.comments.some(
		({ span }) => span.start < offset && offset <= span.end,
	);
	if (isComment) return undefined;
	const before = text.slice(Math.max(0, offset - reach), offset);
	const path =
		/(?:^|[\r\n;{}])[ \t]*use\b[^";{}]*\bfrom[ \t]*"([^"\r\n]*)$/.exec(before);
	if (path) return { kind: "path", typed: path[1] ?? "" };
	const names = /(?:^|[\r\n;{}])[ \t]*use[ \t]+([^";{}]*)$/.exec(before)?.[1];
	// A line goes on in the next one only behind a comma.
	if (names === undefined || /[^,\s][ \t]*[\r\n]/.test(names)) return undefined;
	if (/\bfrom\b/.test(names)) return undefined;
	const after = /^([^";{}\r\n]*)\bfrom[ \t]*"([^"\r\n]+)"/.exec(
		text.slice(offset, offset + reach),
	);
	if (!after) return undefined;
	const written = names.replace(/[^\s,]*$/, "");
	return {
		kind: "names",
		path: after[2] ?? "",
		taken: `${written},${after[1]}`.split(/[\s,]+/).filter((one) => one !== ""),
	};
}

/** What a path may go on with: `./stock.rod`; behind a slash only the name. */
export function pathOffers(
	typed: string,
	{ list }: Beside,
): readonly { readonly entry: FolderEntry; readonly insert: string }[] {
	const slash = typed.lastIndexOf("/");
	const folder = slash < 0 ? "./" : typed.slice(0, slash + 1);
	if (!/^\.\.?\//.test(folder)) return [];
	const up: readonly FolderEntry[] =
		slash < 0 || /^(?:\.\.\/)+$/.test(folder)
			? [{ name: "..", isFolder: true }]
			: [];
	return [...(list(folder) ?? []), ...up].map((entry) => ({
		entry,
		insert: `${slash < 0 && entry.name !== ".." ? "./" : ""}${entry.name}${entry.isFolder ? "/" : ""}`,
	}));
}

/** The part of a path that an offer takes the place of. */
export function pathReplaces(typed: string, offset: number): Span {
	return {
		start: offset - (typed.length - (typed.lastIndexOf("/") + 1)),
		end: offset,
	};
}

/** Materials and components that a file declares, in its order. */
export function namesOffered(tree: FileNode): readonly KnownName[] {
	return tree.statements.flatMap((statement) => {
		const kind = placedIn("file", statement).construct?.declares;
		if (kind !== "material" && kind !== "component") return [];
		return namesOf(statement, "file").map((name) => ({
			name,
			kind,
			doc: statement.doc,
		}));
	});
}
