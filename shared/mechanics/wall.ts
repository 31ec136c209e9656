// How many studs a strip on the wall crosses, wherever along the wall it is set.

export interface StudCount {
	/** However the strip falls. */
	readonly least: number;
	/** If it is set so. */
	readonly most: number;
}

/** Length and spacing in mm. A strip as long as the spacing has one stud under it for sure. */
export function studsUnder(length: number, spacing: number): StudCount {
	if (!(length > 0) || !(spacing > 0)) return { least: 0, most: 0 };
	// A length made of sizes that are exact may miss the whole number by a hair.
	const least = Math.floor(length / spacing + 1e-9);
	return { least, most: least + 1 };
}

/** Thread in the stud, mm: what is left of the screw behind the strip and what covers the studs, at most two thirds of its length. */
export function threadInWall(
	screw: number,
	strip: number,
	cover: number,
): { readonly reach: number; readonly thread: number } {
	const reach = Math.max(0, screw - strip - cover);
	// Threads of wood screws: at least two thirds of the length (ASME B18.6.1).
	return { reach, thread: Math.min(reach, (2 / 3) * screw) };
}
