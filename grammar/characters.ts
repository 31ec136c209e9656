// Which characters make words and numbers, as the insides of character classes, so that lexer, faults and colouring agree.

/** Letters a word may begin with. Ranges are listed, never complemented: the lexer's first-character table needs that. */
export const letter = [
	"A-Za-z_",
	"\\u00c0-\\u00d6\\u00d8-\\u00f6\\u00f8-\\u024f", // Latin, without × and ÷
	"\\u1e00-\\u1eff",
	"\\u0386\\u0388-\\u03f5\\u03f7-\\u03ff", // Greek
	"\\u0400-\\u0481\\u048a-\\u052f", // Cyrillic
	"\\u0531-\\u0556\\u0561-\\u0587", // Armenian
	"\\u05d0-\\u05ea", // Hebrew
	"\\u0620-\\u064a", // Arabic
	"\\u0904-\\u0939", // Devanagari
	"\\u0e01-\\u0e30", // Thai
	"\\u3041-\\u3096\\u30a1-\\u30fa", // Japanese syllables
	"\\u3400-\\u4dbf\\u4e00-\\u9fff", // Chinese characters
	"\\uac00-\\ud7a3", // Korean
].join("");

/** What may follow inside a word: letters, digits and marks that stand above or below a letter. */
export const wordCharacter = `${letter}0-9\\u0300-\\u036f`;

/** `½ ⅓ ¼ …` with their values. */
export const vulgarFractions: ReadonlyMap<string, string> = new Map([
	["¼", "1/4"],
	["½", "1/2"],
	["¾", "3/4"],
	["⅐", "1/7"],
	["⅑", "1/9"],
	["⅒", "1/10"],
	["⅓", "1/3"],
	["⅔", "2/3"],
	["⅕", "1/5"],
	["⅖", "2/5"],
	["⅗", "3/5"],
	["⅘", "4/5"],
	["⅙", "1/6"],
	["⅚", "5/6"],
	["⅛", "1/8"],
	["⅜", "3/8"],
	["⅝", "5/8"],
	["⅞", "7/8"],
]);

export const vulgarFraction = "\\u00bc-\\u00be\\u2150-\\u215e";

/** Blanks that a word processor leaves behind: no-break, thin, wide and the like, and stray byte order marks. */
export const oddBlank =
	"\\u000b\\f\\u00a0\\u1680\\u2000-\\u200d\\u202f\\u205f\\u2060\\u3000\\ufeff";

/** A division slash or a fraction slash. */
export const fractionSlash = "[/\\u2044]";

/** A hyphen or what an editor makes of one. */
export const hyphen = "[-\\u2010\\u2011\\u2013]";

export const oneBlank = "[ \\u00a0\\u202f\\u2009]";

const digits = "[0-9]+";

/** `2 1/4`, `2-1/4`, `3/4`, `0.71`, `2`, `2½`. */
export const numberPattern = `(?:${digits}(?:${oneBlank}${digits}${fractionSlash}${digits}|${hyphen}${digits}${fractionSlash}${digits}|${fractionSlash}${digits}|\\.${digits}|(?:${oneBlank}|${hyphen})?[${vulgarFraction}])?|[${vulgarFraction}])`;

/** Unit words; longer ones that begin with a shorter one need no order, as a word boundary follows. */
export const unitWords = [
	"in",
	"ft",
	"mm",
	"cm",
	"m",
	"deg",
	"lb",
	"oz",
	"kg",
	"ga",
	"g",
	"F",
	"C",
] as const;

/** No word character behind, and no hyphen that would make a longer word of it (`3 in-set`). */
export const unitEnd = `(?![${wordCharacter}]|-[${letter}])`;

export const footMark = `(?:ft${unitEnd}|['\\u2032\\u2019\\u2018](?!['\\u2032\\u2019]))`;
export const inchMark = `(?:in${unitEnd}|["\\u2033\\u201c\\u201d]|''|\\u2032\\u2032|\\u2019\\u2019)`;
