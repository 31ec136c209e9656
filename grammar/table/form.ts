/**
 * The notation in which the table says what may follow a head word, and its reader.
 *
 *     of <material:material> [rabbet <rabbet:length>] [applied]
 *
 * - a plain word stands for itself;
 * - `<slot:type>` takes one thing; `<side:left|right>` one of the words named, `<caps:left,right>` a list of them;
 * - `[ … ]` may be left out; neighbouring brackets may come in any order, each at most once.
 */

export type SlotType =
	| "new-name"
	| "new-names"
	| "length"
	| "lengths"
	| "angle"
	| "mass"
	| "temperature"
	| "percent"
	| "count"
	| "number"
	| "value"
	| "sizes2"
	| "sizes3"
	| "sizes2-3"
	| "fastener"
	| "size-number"
	| "material"
	| "ref"
	| "refs"
	| "text"
	| "condition"
	| "position"
	| "positions";

const slotTypes: ReadonlySet<string> = new Set<SlotType>([
	"new-name",
	"new-names",
	"length",
	"lengths",
	"angle",
	"mass",
	"temperature",
	"percent",
	"count",
	"number",
	"value",
	"sizes2",
	"sizes3",
	"sizes2-3",
	"fastener",
	"size-number",
	"material",
	"ref",
	"refs",
	"text",
	"condition",
	"position",
	"positions",
]);

/** How a slot's type is told to a user: "a length". */
export const slotTypeLabels: Readonly<Record<SlotType, string>> = {
	"new-name": "a new name",
	"new-names": "one or more new names",
	length: "a length",
	lengths: "one or more lengths",
	angle: "an angle",
	mass: "a weight",
	temperature: "a temperature",
	percent: "a percentage",
	count: "a whole number",
	number: "a number",
	value: "a value",
	sizes2: "two sizes (`a x b`)",
	sizes3: "three sizes (`a x b x c`)",
	"sizes2-3": "two or three sizes (`a x b x c`)",
	fastener: "a fastener's size (`#8 x 1 1/4`, `18ga x 7/8`, `5/16 x 1 3/8`)",
	"size-number": "a size number (`#10`)",
	material: "a material (`ply.three-quarter`)",
	ref: "a name",
	refs: "one or more names",
	text: "a text in quotes",
	condition: "a comparison (`a <= b`)",
	position: "a place (`2 from front`, `190 above bottom`)",
	positions: "one or more places (`2, 5 up from bottom`)",
};

export type FormElement =
	| { readonly kind: "word"; readonly word: string }
	| { readonly kind: "slot"; readonly slot: string; readonly type: SlotType }
	| {
			readonly kind: "choice";
			readonly slot: string;
			readonly words: readonly string[];
			readonly many: boolean;
	  }
	| { readonly kind: "optional"; readonly elements: readonly FormElement[] };

export interface Form {
	readonly notation: string;
	readonly elements: readonly FormElement[];
}

/** Reads the notation. Throws on a mistake in the table itself, never on a user's text. */
export function readForm(notation: string): Form {
	if (notation === "block") return { notation, elements: [] };
	const tokens = notation.match(/\[|\]|<[^>]+>|[^\s[\]<>]+/g) ?? [];
	let at = 0;
	const sequence = (inBracket: boolean): FormElement[] => {
		const elements: FormElement[] = [];
		while (at < tokens.length) {
			const token = tokens[at++] as string;
			if (token === "]") {
				if (!inBracket) throw new Error(`Stray ] in form: ${notation}`);
				return elements;
			}
			if (token === "[") {
				elements.push({ kind: "optional", elements: sequence(true) });
			} else if (token.startsWith("<")) elements.push(slotOf(token, notation));
			else elements.push({ kind: "word", word: token });
		}
		if (inBracket) throw new Error(`Open [ in form: ${notation}`);
		return elements;
	};
	return { notation, elements: sequence(false) };
}

function slotOf(token: string, notation: string): FormElement {
	const [slot, type] = token.slice(1, -1).split(":");
	if (!slot || !type) throw new Error(`Bad slot ${token} in ${notation}`);
	if (slotTypes.has(type))
		return { kind: "slot", slot, type: type as SlotType };
	const many = type.includes(",");
	return { kind: "choice", slot, words: type.split(many ? "," : "|"), many };
}

/** Every plain word of a form, choices included: none of them can be a name in that place. */
export function wordsOf(form: Form): string[] {
	const words: string[] = [];
	const visit = (elements: readonly FormElement[]): void => {
		for (const element of elements) {
			if (element.kind === "word") words.push(element.word);
			else if (element.kind === "choice") words.push(...element.words);
			else if (element.kind === "optional") visit(element.elements);
		}
	};
	visit(form.elements);
	return words;
}

/** The form as a user reads it: `back of MATERIAL [rabbet LENGTH]`. */
export function showForm(head: string, form: Form): string {
	const show = (element: FormElement): string => {
		switch (element.kind) {
			case "word":
				return element.word;
			case "slot":
				return element.type.toUpperCase();
			case "choice":
				return element.many
					? element.words.join(", ")
					: element.words.join("|");
			case "optional":
				return `[${element.elements.map(show).join(" ")}]`;
		}
	};
	return [head, ...form.elements.map(show)].join(" ");
}
