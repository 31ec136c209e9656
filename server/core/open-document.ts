// A document as the client has it open: its text follows the changes that the client tells.

import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import { indexLines, type LineIndex } from "../../shared/text/line-index.ts";
import {
	encodedLines,
	type PositionEncoding,
} from "../../shared/text/position-encoding.ts";

export interface OpenDocument {
	/** As the client spells it. */
	readonly uri: string;
	readonly version: number;
	readonly text: string;
	/** Its positions are counted as agreed with the client. */
	readonly lines: LineIndex;
}

export function openDocument(
	uri: string,
	version: number,
	text: string,
	encoding: PositionEncoding,
): OpenDocument {
	const lines = encodedLines(text, indexLines(text), encoding);
	return { uri, version, text, lines };
}

/** One change after the other, each in the text that the one before left. Places outside the text mean its nearest place. */
export function changedDocument(
	{ uri, text: old, lines: before }: OpenDocument,
	changes: readonly TextDocumentContentChangeEvent[],
	version: number,
	encoding: PositionEncoding,
): OpenDocument {
	let text = old;
	let lines = before;
	for (const change of changes) {
		if (!("range" in change)) {
			text = change.text;
			lines = encodedLines(text, indexLines(text), encoding);
			continue;
		}
		const a = lines.offsetAt(change.range.start);
		const b = lines.offsetAt(change.range.end);
		const start = Math.min(a, b);
		const end = Math.max(a, b);
		text = text.slice(0, start) + change.text + text.slice(end);
		lines = lines.edited(text, start, end);
	}
	return { uri, version, text, lines };
}
