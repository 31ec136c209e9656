// What a hint in the text is, and which kinds there are: each can be turned off by itself.

export interface Hint {
	readonly kind: HintKind;
	/** Behind the character that it belongs to. */
	readonly offset: number;
	readonly label: string;
	/** What it is about, of its kind and place the only one: for telling later where it comes from. */
	readonly about: string;
}

export type HintKind = "sizes" | "thickness" | "totals" | "otherUnit";

export type HintChoice = Readonly<Record<HintKind, boolean>>;

/** In the order in which they are listed in the settings. */
export const hintKinds: Readonly<
	Record<HintKind, { readonly help: string; readonly usual: boolean }>
> = {
	sizes: {
		help: "Behind the name of a part: length x width x thickness, as it is cut",
		usual: true,
	},
	thickness: {
		help: "Behind a material: the thickness that it measures",
		usual: true,
	},
	totals: {
		help: "Behind a line that makes several things: how many they are in all, of trim how long together",
		usual: true,
	},
	otherUnit: {
		help: "Behind each size that is written: the same in inches or in millimetres",
		usual: false,
	},
};

export const usualHints: HintChoice = {
	sizes: hintKinds.sizes.usual,
	thickness: hintKinds.thickness.usual,
	totals: hintKinds.totals.usual,
	otherUnit: hintKinds.otherUnit.usual,
};

/** What is set under `storyrod.hints`; anything is taken, what makes no sense stays as it usually is. */
export function readHintChoice(value: unknown): HintChoice {
	const set = typeof value === "object" && value !== null ? value : {};
	const of = (kind: HintKind): boolean => {
		const own = Object.hasOwn(set, kind)
			? (set as Readonly<Record<string, unknown>>)[kind]
			: undefined;
		return typeof own === "boolean" ? own : usualHints[kind];
	};
	return {
		sizes: of("sizes"),
		thickness: of("thickness"),
		totals: of("totals"),
		otherUnit: of("otherUnit"),
	};
}
