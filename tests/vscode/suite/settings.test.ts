/** The settings of the checks, in the editor and in a file of the folder, hold as soon as they are written. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import {
	closeAll,
	codeOf,
	cured,
	diagnosed,
	diagnosticsOf,
	openDesign,
	until,
} from "./editing.ts";

/** A file watcher may take a while. */
const limit = 20_000;

/** The dado is 3/4 - 45/64 = 3/64 in = 1.19 mm wider than what it takes, where a glued one bears 0.25 mm. */
const loose = `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant three-quarter { sold-as 3/4; thick 45/64 }
}
piece bench {
  box case {
    outside 54 x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.three-quarter
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
}
`;

suite("Settings of the checks", () => {
	const setting = (): vscode.WorkspaceConfiguration =>
		vscode.workspace.getConfiguration("storyrod.checks");
	const set = (severity: object | undefined): Thenable<void> =>
		setting().update("severity", severity, vscode.ConfigurationTarget.Global);

	function fileNamed(name: string): vscode.Uri {
		const folder = vscode.workspace.workspaceFolders?.[0];
		assert.ok(folder, "a folder is open");
		return vscode.Uri.joinPath(folder.uri, name);
	}

	const write = (name: string, text: string): Thenable<void> =>
		vscode.workspace.fs.writeFile(
			fileNamed(name),
			new TextEncoder().encode(text),
		);

	async function openLoose(): Promise<vscode.TextDocument> {
		await write("loose.rod", loose);
		const { document } = await openDesign("loose.rod");
		await diagnosed(document, "fit-gap", limit);
		return document;
	}

	async function becomes(
		document: vscode.TextDocument,
		severity: vscode.DiagnosticSeverity,
	): Promise<void> {
		await until(
			"the severity changes",
			() =>
				diagnosticsOf(document).some(
					(each) => codeOf(each) === "fit-gap" && each.severity === severity,
				) || undefined,
			limit,
		);
	}

	teardown(async () => {
		await set(undefined);
		await closeAll();
		for (const name of ["loose.rod", ".storyrod.json"]) {
			try {
				await vscode.workspace.fs.delete(fileNamed(name));
			} catch {
				// The test made none, or took it away itself.
			}
		}
	});

	test("of the editor: another severity, off, and back", async () => {
		const document = await openLoose();
		await becomes(document, vscode.DiagnosticSeverity.Error);
		await set({ "fit-gap": "information" });
		await becomes(document, vscode.DiagnosticSeverity.Information);
		await set({ "fit-gap": "off" });
		await cured(document, "fit-gap", limit);
		await set(undefined);
		await becomes(document, vscode.DiagnosticSeverity.Error);
	});

	test("of a file `.storyrod.json`, that the editor's win over", async () => {
		const document = await openLoose();
		await write(".storyrod.json", '{ "severity": { "fit-gap": "warning" } }\n');
		await becomes(document, vscode.DiagnosticSeverity.Warning);
		await set({ "fit-gap": "hint" });
		await becomes(document, vscode.DiagnosticSeverity.Hint);
		await set(undefined);
		await becomes(document, vscode.DiagnosticSeverity.Warning);
		await vscode.workspace.fs.delete(fileNamed(".storyrod.json"));
		await becomes(document, vscode.DiagnosticSeverity.Error);
	});
});
