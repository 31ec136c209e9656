/** Mends and refactorings as the editor lists, works out and makes them. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import * as bench from "../record-bench.ts";
import { closeAll, openDesign, openText, place, until } from "./editing.ts";

const design = `sheet ply { variant half { thick 1/2 } }

piece a {
  part b { of ply.half; size 20 x 8 }
  part c { of ply.half; size 20 x 6; bottom at 9 from floor }
}
`;

/** The action with this title at a place, worked out, once the server offers it. */
function actionAt(
	document: vscode.TextDocument,
	at: vscode.Position,
	kind: vscode.CodeActionKind,
	title: RegExp,
): Promise<vscode.CodeAction> {
	let titles: readonly string[] = [];
	return until(
		`an action ${title}`,
		async () => {
			const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
				"vscode.executeCodeActionProvider",
				document.uri,
				new vscode.Range(at, at),
				kind.value,
				20,
			);
			titles = actions.map((each) => each.title);
			return actions.find((each) => title.test(each.title));
		},
		20_000,
		() => titles.join("; "),
	);
}

suite("Code actions", () => {
	teardown(closeAll);

	test("a size that stands twice becomes a given, and is given up again", async () => {
		const { document } = await openText(design);
		const there = await actionAt(
			document,
			place(document, "size 2<|>0 x 8"),
			vscode.CodeActionKind.RefactorExtract,
			/^Make `20` a given/,
		);
		assert.ok(there.edit, "the edit is worked out");
		assert.ok(await vscode.workspace.applyEdit(there.edit));
		assert.match(document.getText(), /^ {2}given length = 20$/m);
		assert.match(document.getText(), /size length x 6;/);
		const back = await actionAt(
			document,
			place(document, "given len<|>gth"),
			vscode.CodeActionKind.RefactorInline,
			/^Put `20` where `length` stands/,
		);
		assert.ok(back.edit && (await vscode.workspace.applyEdit(back.edit)));
		assert.equal(document.getText(), design);
	});

	test("a whole file is converted to the other unit, the largest change told", async () => {
		const { document } = await openDesign(bench.file);
		const action = await actionAt(
			document,
			new vscode.Position(0, 0),
			vscode.CodeActionKind.Source,
			/^Convert the file to millimetres: nothing changes by more than 0\.\d+ mm/,
		);
		assert.equal(action.kind?.value, "source.convertUnit.storyrod");
		assert.ok((action.edit?.size ?? 0) > 0, "the edit is worked out");
	});
});
