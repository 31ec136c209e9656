// Names what was told by its content: also a server that was started anew knows whether it would tell the same.

import type { Diagnostic } from "vscode-languageserver";

const known = new WeakMap<readonly Diagnostic[], string>();

/** Equal lists have equal ids. Made of two mixed sums over the text and its length; not against malice. */
export function resultIdOf(diagnostics: readonly Diagnostic[]): string {
	if (diagnostics.length === 0) return "0";
	const before = known.get(diagnostics);
	if (before) return before;
	const text = JSON.stringify(diagnostics);
	const id = `${text.length}-${sumOf(text, 1)}-${sumOf(text, 2)}`;
	known.set(diagnostics, id);
	return id;
}

/** 64 bits, mixed so that every character moves all of them. */
function sumOf(text: string, start: number): string {
	let a = 0xdeadbeef ^ start;
	let b = 0x41c6ce57 ^ start;
	for (let i = 0; i < text.length; i++) {
		const code = text.charCodeAt(i);
		a = Math.imul(a ^ code, 2654435761);
		b = Math.imul(b ^ code, 1597334677);
	}
	a =
		Math.imul(a ^ (a >>> 16), 2246822507) ^
		Math.imul(b ^ (b >>> 13), 3266489909);
	b =
		Math.imul(b ^ (b >>> 16), 2246822507) ^
		Math.imul(a ^ (a >>> 13), 3266489909);
	return (b >>> 0).toString(36) + (a >>> 0).toString(36);
}
