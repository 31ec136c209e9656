// Writes the reference of the language from the table: every context with its lines, forms, defaults and examples.

import type { Construct, ContextId } from "./construct.ts";
import { directionWords } from "./directions.ts";
import { readForm, type SlotType, showForm, slotTypeLabels } from "./form.ts";

const titles: Readonly<Record<ContextId, string>> = {
	file: "A file",
	piece: "A piece",
	component: "A component",
	make: "A thing made from a component",
	box: "A box",
	part: "A single part",
	leg: "A leg",
	shape: "The shape of a leg's face",
	end: "An angled end",
	trim: "Trim",
	veneer: "Veneer on a piece",
	ground: "The ground under veneer",
	mount: "A mount on the wall",
	wall: "The wall of a mount",
	join: "A joint",
	fasten: "What holds a trim or mount",
	"fastener-place": "Where a fastener goes",
	finish: "A finish",
	room: "The room",
	shop: "The shop",
	step: "A step of the build",
	aid: "An aid",
	sheet: "Stock: sheet goods",
	"sheet-variant": "A variant of sheet goods",
	board: "Stock: solid wood",
	"board-variant": "A variant of solid wood",
	"veneer-stock": "Stock: veneer",
	"veneer-variant": "A variant of veneer",
	"on-hand": "Stock: what is on hand",
	fastener: "Stock: fasteners",
	"fastener-variant": "A variant of fasteners",
	coating: "Stock: coatings and glue",
};

/** The page as Markdown. */
export function languagePage(
	contexts: Readonly<Record<ContextId, readonly Construct[]>>,
): string {
	const ids = Object.keys(titles) as ContextId[];
	return [
		"# The language",
		"",
		"Generated from the table of constructs in `grammar/table`; change that, not this page. A line begins with a word that says what it is; the blocks below list the lines that each block takes. `[ … ]` may be left out, and neighbours in brackets may come in any order. Words in capitals stand for:",
		"",
		...(Object.entries(slotTypeLabels) as [SlotType, string][]).map(
			([type, label]) => `- \`${type.toUpperCase()}\`: ${label}`,
		),
		"",
		`Directions, seen from the front: ${Object.keys(directionWords)
			.map((word) => `\`${word}\``)
			.join(
				", ",
			)}. A place is measured from something: \`2 right from seat.left\`, \`12 above bottom\` (clear of it), \`floor\`. A panel of a box named as a datum means its outside face; \`case.bottom.inside\` is the inner one.`,
		"",
		"Blocks: " +
			ids.map((id) => `[${titles[id]}](#${anchor(titles[id])})`).join(" · "),
		"",
		...ids.flatMap((id) => [
			`## ${titles[id]}`,
			"",
			"| line | what it says | left out |",
			"| --- | --- | --- |",
			...contexts[id].map(rowOf),
			"",
			"```storyrod",
			...contexts[id].map((construct) => construct.example),
			"```",
			"",
		]),
	].join("\n");
}

function rowOf(construct: Construct): string {
	const forms = construct.forms
		.map((form) => `\`${showForm(construct.head, readForm(form))}\``)
		.join(" or ");
	const aliases = construct.aliases
		? ` (also read: ${construct.aliases.map((alias) => `\`${alias}\``).join(", ")})`
		: "";
	const block = construct.block
		? ` { [${titles[construct.block].toLowerCase()}](#${anchor(titles[construct.block])}) }`
		: "";
	const missing = construct.required
		? `an error${construct.unless ? `, except with \`${construct.unless.join(" ")}\`` : ""}`
		: (construct.defaults ?? "nothing");
	return `| ${escaped(forms)}${block} | ${escaped(construct.help)}${aliases}${construct.repeats ? "; may be repeated" : ""} | ${escaped(missing)} |`;
}

function escaped(text: string): string {
	return text.replaceAll("|", "\\|");
}

function anchor(title: string): string {
	return title
		.toLowerCase()
		.replace(/[^a-z0-9 -]/g, "")
		.replaceAll(" ", "-");
}
