// Writes a stylesheet of a given length, as ordinary as the large design is, for the language service beside ours.

/** At least `length` characters of whole rules. */
export function stylesheet(length: number): string {
	const rules: string[] = [];
	let written = 0;
	for (let index = 0; written < length; index++) {
		const rule = `/* Shelf ${index} of the catalogue. */
.bookcase-${index % 97} .shelf-${index} > li:hover {
	display: flex;
	width: ${60 + (index % 17)}px;
	margin: 0 ${index % 5}px 4px auto;
	padding: calc(${index % 7}px + 2 * 1em);
	border-bottom: 1px solid #${(index % 4096).toString(16).padStart(3, "0")};
	background: url("images/${index}.png") no-repeat center;
}
`;
		rules.push(rule);
		written += rule.length;
	}
	return rules.join("");
}
