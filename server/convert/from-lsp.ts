// From the protocol's lines and characters to offsets.

import type { Position, Range } from "vscode-languageserver";
import type { Span } from "../../grammar/index.ts";
import type { SourceText } from "../core/source-text.ts";

/** Positions outside the text are taken to its nearest place. */
export function toOffset({ lines }: SourceText, position: Position): number {
	return lines.offsetAt(position);
}

/** A range whose ends are swapped is turned round. */
export function toSpan(source: SourceText, { start, end }: Range): Span {
	const a = toOffset(source, start);
	const b = toOffset(source, end);
	return { start: Math.min(a, b), end: Math.max(a, b) };
}
