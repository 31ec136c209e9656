// A text with what is worked out from it once: its lines and its tree.

import { type ParseResult, parse } from "../../grammar/index.ts";
import { indexLines, type LineIndex } from "../../shared/text/line-index.ts";
import {
	encodedLines,
	type PositionEncoding,
} from "../../shared/text/position-encoding.ts";

/** Where the lines and the tree of a text are had from, if it need not be read anew. */
export interface Readings {
	readonly encoding: PositionEncoding;
	readonly lines?: LineIndex | undefined;
	/** The tree that the evaluation uses; undefined if there is none of this very text. */
	readonly tree?: (() => ParseResult | undefined) | undefined;
}

export class SourceText {
	/** Canonical. */
	readonly uri: string;
	readonly text: string;
	private readonly readings: Readings;
	private index: LineIndex | undefined;
	private parsed: ParseResult | undefined;

	constructor(uri: string, text: string, readings: Readings) {
		this.uri = uri;
		this.text = text;
		this.readings = readings;
		this.index = readings.lines;
	}

	/** Positions are counted as agreed with the client. */
	get lines(): LineIndex {
		this.index ??= encodedLines(
			this.text,
			indexLines(this.text),
			this.readings.encoding,
		);
		return this.index;
	}

	/** Read when it is first asked for. Trees move along with the text: this one is not to be used after a change. */
	get result(): ParseResult {
		this.parsed ??= this.readings.tree?.() ?? parse(this.text);
		return this.parsed;
	}

	/** Another text has taken the place of this one: whoever still asks for its tree gets one of its own. */
	retire(): void {
		this.parsed = undefined;
	}
}
