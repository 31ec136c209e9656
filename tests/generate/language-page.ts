// Writes the reference of the language, grammar/LANGUAGE.md, from the table of constructs. With --check it only tells if it is stale.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { contexts } from "../../grammar/table/index.ts";
import { languagePage } from "../../grammar/table/page.ts";

export const languagePagePath = fileURLToPath(
	new URL("../../grammar/LANGUAGE.md", import.meta.url),
);

export function wantedLanguagePage(): string {
	return languagePage(contexts);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const wanted = wantedLanguagePage();
	if (!process.argv.includes("--check"))
		writeFileSync(languagePagePath, wanted);
	else if (readFileSync(languagePagePath, "utf8") !== wanted) {
		process.stderr.write(
			"grammar/LANGUAGE.md is stale: run `node tests/generate/language-page.ts`\n",
		);
		process.exitCode = 1;
	}
}
