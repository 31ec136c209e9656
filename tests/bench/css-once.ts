// Parses and validates one stylesheet in a process of its own: the start that ours is measured against.

import { readFileSync } from "node:fs";
import { getCSSLanguageService } from "vscode-css-languageservice";
import { TextDocument } from "vscode-languageserver-textdocument";

const file = process.argv[2] as string;
const service = getCSSLanguageService();
const document = TextDocument.create(
	"file:///a.css",
	"css",
	1,
	readFileSync(file, "utf8"),
);
const sheet = service.parseStylesheet(document);
process.stdout.write(`${service.doValidation(document, sheet).length}\n`);
