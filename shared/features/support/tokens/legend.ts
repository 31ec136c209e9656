// The one table of what a name or word is coloured as by its meaning: the protocol's legend, the extension's manifest and the
// scopes of the colouring grammar that a theme falls back on are all written from it.

import type { Declares } from "../../../../grammar/index.ts";

/** One type of token. */
export interface TokenType {
	readonly name: string;
	readonly help: string;
	/** Of a type that is our own: the protocol's type that it is shown as where a theme does not know it. */
	readonly like?: string;
	/** TextMate scopes, most telling first, for themes that know no meaning of words. */
	readonly scopes: readonly string[];
}

/** In the order of their numbers on the wire. */
export const tokenTypes = [
	{
		name: "keyword",
		help: "The word that a line begins with",
		scopes: ["keyword.control"],
	},
	{
		name: "modifier",
		help: "A word of the language inside a line",
		like: "keyword",
		scopes: ["storage.modifier"],
	},
	{ name: "comment", help: "A comment", scopes: ["comment.line"] },
	{ name: "string", help: "A text in quotes", scopes: ["string.quoted"] },
	{ name: "number", help: "A number", scopes: ["constant.numeric"] },
	{
		name: "unit",
		help: "The unit of a number",
		like: "number",
		scopes: ["keyword.other.unit", "constant.numeric"],
	},
	{
		name: "operator",
		help: "A sign between sizes",
		scopes: ["keyword.operator"],
	},
	{
		name: "function",
		help: "A function of sizes",
		scopes: ["entity.name.function"],
	},
	{ name: "namespace", help: "A piece", scopes: ["entity.name.type"] },
	{
		name: "interface",
		help: "A component",
		scopes: ["entity.name.type", "variable.other"],
	},
	{
		name: "class",
		help: "A material, with or without its variant",
		scopes: ["entity.name.type", "variable.other"],
	},
	{
		name: "enumMember",
		help: "A variant of a material",
		scopes: ["variable.other.enummember", "variable.other.property"],
	},
	{
		name: "struct",
		help: "A thing made of parts: a box, a leg, trim, veneer, a mount, what a component makes",
		scopes: ["entity.name.type", "variable.other"],
	},
	{
		name: "part",
		help: "One piece of wood",
		like: "property",
		scopes: ["entity.name.type", "variable.other.property"],
	},
	{
		name: "variable",
		help: "A size by name: a given, or a mark",
		scopes: ["variable.other"],
	},
	{
		name: "parameter",
		help: "A given of a component, which its user may set",
		scopes: ["variable.parameter", "variable.other"],
	},
	{
		name: "property",
		help: "A size, face or edge of a thing",
		scopes: ["variable.other.property"],
	},
	{
		name: "event",
		help: "A step of the build, a finish or an aid",
		scopes: ["entity.name.type", "variable.other"],
	},
] as const satisfies readonly TokenType[];

export type TokenTypeName = (typeof tokenTypes)[number]["name"];

export interface TokenModifier {
	readonly name: string;
	readonly help: string;
	/** Not one of the protocol's own. */
	readonly own?: true;
}

/** In the order of their bits on the wire. */
export const tokenModifiers = [
	{ name: "declaration", help: "The name is made here" },
	{
		name: "readonly",
		help: "Cannot be set from outside: it follows from others",
	},
	{ name: "documentation", help: "Describes the line below it" },
	{ name: "defaultLibrary", help: "Built into the language" },
	{ name: "unused", help: "Nothing uses this name", own: true },
] as const satisfies readonly TokenModifier[];

export type TokenModifierName = (typeof tokenModifiers)[number]["name"];

export const typeNumber = numbered(tokenTypes);
const bits = numbered(tokenModifiers);

/** The modifiers as one number. */
export function modifierBits(...names: readonly TokenModifierName[]): number {
	return names.reduce((sum, name) => sum | (1 << bits[name]), 0);
}

/** What a declared name is coloured as. An import is what it brings, which is looked up. */
export const typeOfDeclared: Readonly<
	Record<Exclude<Declares, "import">, TokenTypeName>
> = {
	material: "class",
	variant: "enumMember",
	piece: "namespace",
	component: "interface",
	size: "variable",
	box: "struct",
	part: "part",
	leg: "struct",
	layer: "part",
	trim: "struct",
	veneer: "struct",
	mount: "struct",
	group: "struct",
	finish: "event",
	step: "event",
	aid: "event",
};

function numbered<Name extends string>(
	rows: readonly { readonly name: Name }[],
): Readonly<Record<Name, number>> {
	return Object.fromEntries(
		rows.map(({ name }, index) => [name, index]),
	) as Record<Name, number>;
}
