// Orders texts the same way on every machine.

/** Negative, zero or positive by UTF-16 code units, never by locale: fit for `sort`. */
export function compareStrings(a: string, b: string): -1 | 0 | 1 {
	return a < b ? -1 : a > b ? 1 : 0;
}
