// Spans made from the spans of nodes. They read through to them, so that they follow when a tree is moved along with an edit.

import type { Span } from "./nodes.ts";

/** From the start of one span to the end of another. */
export function spanOver(first: Span, last: Span): Span {
	return {
		get start() {
			return first.start;
		},
		get end() {
			return last.end;
		},
	};
}

/** The place directly behind a span. */
export function spanBehind(span: Span): Span {
	return {
		get start() {
			return span.end;
		},
		get end() {
			return span.end;
		},
	};
}

/** The first character of a span. */
export function spanOfFirst(span: Span): Span {
	return {
		get start() {
			return span.start;
		},
		get end() {
			return span.start + 1;
		},
	};
}
