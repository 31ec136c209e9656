// Writes rows as comma-separated values by RFC 4180, safe to open in a spreadsheet.

/**
 * Records end with CRLF; a field with a comma, a quote or a line break stands in quotes, quotes doubled (RFC 4180,
 * section 2).
 *
 * Spreadsheets run a field that begins like a formula, so that a stranger's design could act on the reader's machine
 * (CWE-1236). Such a field gets an apostrophe in front, which tells the spreadsheet that it is text: fields that begin
 * with `=`, `+`, `-`, `@` (their wide forms, too), a tab or a line break, alone or after blanks. A plain number
 * (`-3/4`, `-2 1/4`, `+0.5`) is left as it is.
 */
export function csv(rows: readonly (readonly string[])[]): string {
	return rows.map((row) => `${row.map(field).join(",")}\r\n`).join("");
}

const formula = /^[ \u00a0]*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
const plainNumber = /^[+-]?(?:\d+(?:\.\d+)?|(?:\d+ )?\d+\/\d+)$/;

function field(value: string): string {
	const guarded =
		formula.test(value) && !plainNumber.test(value) ? `'${value}` : value;
	return /[",\r\n]/.test(guarded)
		? `"${guarded.replaceAll('"', '""')}"`
		: guarded;
}
