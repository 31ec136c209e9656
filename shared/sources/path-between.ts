// The path by which one file uses another: what `use … from` has between its quotes.

/** `../shop/my stock.rod`: the shortest, not escaped. Undefined between places that no path leads between. */
export function pathBetween(from: string, to: string): string | undefined {
	const root = /^[a-z][a-z0-9+.-]*:\/\/[^/]*/i;
	const scheme = root.exec(from)?.[0] ?? "";
	if (scheme !== (root.exec(to)?.[0] ?? "")) return undefined;
	const start = from.slice(scheme.length).split("/").slice(0, -1);
	const end = to.slice(scheme.length).split("/");
	if (start[0] !== end[0] || start.length === 0) return undefined;
	let common = 0;
	while (
		common < start.length &&
		common < end.length - 1 &&
		start[common] === end[common]
	)
		common++;
	const up = start.slice(common).map(() => "..");
	return [
		...(up.length > 0 ? up : ["."]),
		...end.slice(common).map(unescaped),
	].join("/");
}

function unescaped(segment: string): string {
	try {
		return decodeURIComponent(segment);
	} catch {
		return segment;
	}
}
