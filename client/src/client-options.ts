/** What both kinds of client have in common. */
import type * as vscode from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";

/** `schemes`: where documents may lie; everywhere if left out. */
export function clientOptions(
	output: vscode.LogOutputChannel,
	schemes?: readonly string[],
): LanguageClientOptions {
	return {
		documentSelector: schemes?.map((scheme) => ({
			language: "storyrod",
			scheme,
		})) ?? [{ language: "storyrod" }],
		outputChannel: output,
	};
}
