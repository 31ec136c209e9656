// Where texts come from. The core never opens a file: whoever runs it hands over a `Sources`.

/** A set of texts by uri, as they stand at one moment. */
export interface Sources {
	/** The text, or undefined if there is none. */
	read(uri: string): string | undefined;
	/** The uri that a `use … from "path"` in the file `from` means, or undefined where it must not be followed. */
	resolve(from: string, path: string): string | undefined;
}

/** A `Sources` over a map, for tests and for pages that hold their texts. Paths resolve as in a folder tree. */
export function sourcesOf(texts: ReadonlyMap<string, string>): Sources {
	return {
		read: (uri) => texts.get(uri),
		resolve: resolveRelative,
	};
}

/** `./stock.rod` beside `file:///a/b.rod` is `file:///a/stock.rod`. Only relative paths are followed. */
export function resolveRelative(
	from: string,
	path: string,
): string | undefined {
	if (!/^\.\.?\//.test(path)) return undefined;
	const scheme = /^[a-z][a-z0-9+.-]*:\/\/[^/]*/i.exec(from)?.[0] ?? "";
	const folders = from.slice(scheme.length).split("/").slice(0, -1);
	for (const segment of path.split("/")) {
		if (segment === "." || segment === "") continue;
		if (segment === "..") {
			if (folders.length <= (scheme ? 1 : 0)) return undefined;
			folders.pop();
		} else folders.push(encodeSegment(segment, scheme !== ""));
	}
	return scheme + folders.join("/");
}

function encodeSegment(segment: string, uri: boolean): string {
	return uri ? encodeURIComponent(decodeSafely(segment)) : segment;
}

function decodeSafely(segment: string): string {
	try {
		return decodeURIComponent(segment);
	} catch {
		return segment;
	}
}
