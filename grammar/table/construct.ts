/** The shape of a row in the table of constructs: one kind of statement, where it may stand and what it says. */

/** A block (or the file itself) in which a set of statements may stand. */
export type ContextId =
	| "file"
	| "sheet"
	| "sheet-variant"
	| "board"
	| "board-variant"
	| "veneer-stock"
	| "veneer-variant"
	| "on-hand"
	| "fastener"
	| "fastener-variant"
	| "coating"
	| "piece"
	| "component"
	| "make"
	| "box"
	| "part"
	| "leg"
	| "shape"
	| "end"
	| "trim"
	| "veneer"
	| "ground"
	| "mount"
	| "wall"
	| "join"
	| "fasten"
	| "fastener-place"
	| "finish"
	| "room"
	| "shop"
	| "step"
	| "aid";

/** What a statement brings into being, if it declares a name: decides how the name may be used and is coloured. */
export type Declares =
	| "import"
	| "material"
	| "variant"
	| "piece"
	| "component"
	| "size"
	| "box"
	| "part"
	| "leg"
	| "layer"
	| "trim"
	| "veneer"
	| "mount"
	| "finish"
	| "step"
	| "aid"
	| "group";

export interface Construct {
	/** The word that a statement begins with. Unique within its context. */
	readonly head: string;
	/** One line for completion and hover. */
	readonly help: string;
	/**
	 * What may follow the head, in the notation of `form.ts`. Several forms are alternatives.
	 * `"block"` alone means that nothing but a block follows.
	 */
	readonly forms: readonly string[];
	/** The context of the block behind it; absent = a block is an error. */
	readonly block?: ContextId;
	/** The block may be left out. */
	readonly blockOptional?: boolean;
	/** May stand more than once in its context. */
	readonly repeats?: boolean;
	/** Its context is incomplete without it. */
	readonly required?: boolean;
	/** The line that makes a required one needless: its head, and the word that it begins with. */
	readonly unless?: readonly [head: string, word: string];
	readonly declares?: Declares;
	/** What holds when the line is left out, in words. */
	readonly defaults?: string;
	/** A line that a maker could write. */
	readonly example: string;
	/** Other spellings of the head that are read; the formatter writes `head`. */
	readonly aliases?: readonly string[];
}
