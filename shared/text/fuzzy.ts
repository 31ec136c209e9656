// How well a name fits what was typed to find it: letters in order, better where words begin and where they stand together.

/**
 * 0 for the name itself, more the worse it fits; undefined where the letters do not occur in this order. Case does not
 * matter; blanks and dots in the query are passed over.
 */
export function fuzzyDistance(query: string, name: string): number | undefined {
	const wanted = query.toLowerCase().replace(/[\s.]+/g, "");
	const text = name.toLowerCase();
	if (wanted === text) return 0;
	let distance = 1;
	let at = 0;
	for (const letter of wanted) {
		const found = text.indexOf(letter, at);
		if (found < 0) return undefined;
		const begins = found === 0 || /[-._\s]/.test(text.charAt(found - 1));
		// A gap is cheap where it leads to the start of a word.
		if (found > at) distance += begins ? 2 : 4 + Math.min(found - at, 8);
		at = found + letter.length;
	}
	return distance + Math.min(text.length - at, 20) / 20;
}
