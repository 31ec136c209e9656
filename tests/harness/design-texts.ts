// The shipped designs and the sample as texts in one folder, so that a test can change them and they still find their stock.

import { readdirSync, readFileSync } from "node:fs";

const folder = new URL("../../shared/designs/", import.meta.url);

/** `/designs/NAME.rod` -> text. The sample stands among them. */
export const designTexts: ReadonlyMap<string, string> = new Map([
	...readdirSync(folder)
		.filter((name) => name.endsWith(".rod"))
		.sort()
		.map((name): [string, string] => [
			`/designs/${name}`,
			readFileSync(new URL(name, folder), "utf8"),
		]),
	[
		"/designs/sample.rod",
		readFileSync(new URL("../corpus/sample.rod", import.meta.url), "utf8"),
	],
]);
