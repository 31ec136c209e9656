/** Shows the lists of a piece, and who makes a component: what the lines over them lead to. */
import * as vscode from "vscode";
import type { BaseLanguageClient, StaticFeature } from "vscode-languageclient";

type Which = "cut" | "buy";

const scheme = "storyrod-list";

const commands = [
	"storyrod.showCutList",
	"storyrod.showBuyingList",
	"storyrod.showUses",
] as const;

/** Tells the server which lines may lead somewhere. To be called before the client is started. */
export function announceCommands(client: BaseLanguageClient): void {
	const feature: StaticFeature = {
		fillClientCapabilities: (capabilities) => {
			capabilities.experimental = {
				...(capabilities.experimental as object | undefined),
				commands,
			};
		},
		initialize: () => {},
		getState: () => ({ kind: "static" }),
		clear: () => {},
	};
	client.registerFeature(feature);
}

/** The commands; what is returned takes them away. */
export function registerLists(client: BaseLanguageClient): vscode.Disposable {
	const shown = new Map<string, string>();
	const changed = new vscode.EventEmitter<vscode.Uri>();
	const show = async (
		list: Which,
		uri?: string,
		piece?: string,
	): Promise<void> => {
		const asked = uri && piece ? { uri, piece } : await chosenPiece();
		if (!asked) return;
		const text = await client.sendRequest<string | null>("storyrod/list", {
			textDocument: { uri: asked.uri },
			piece: asked.piece,
			list,
		});
		if (text === null) return;
		const place = vscode.Uri.from({
			scheme,
			path: `/${asked.piece} ${list === "cut" ? "cut list" : "buying list"}.md`,
			query: asked.uri,
		});
		shown.set(place.toString(), text);
		changed.fire(place);
		await vscode.commands.executeCommand("markdown.showPreviewToSide", place);
	};
	return vscode.Disposable.from(
		changed,
		vscode.workspace.registerTextDocumentContentProvider(scheme, {
			onDidChange: changed.event,
			provideTextDocumentContent: (uri) => shown.get(uri.toString()) ?? "",
		}),
		vscode.commands.registerCommand(
			"storyrod.showCutList",
			(uri?: string, piece?: string) => show("cut", uri, piece),
		),
		vscode.commands.registerCommand(
			"storyrod.showBuyingList",
			(uri?: string, piece?: string) => show("buy", uri, piece),
		),
		vscode.commands.registerCommand("storyrod.showUses", showUses),
	);
}

/** From the palette: the piece around the cursor, or the one that is chosen. */
async function chosenPiece(): Promise<
	{ readonly uri: string; readonly piece: string } | undefined
> {
	const editor = vscode.window.activeTextEditor;
	if (editor?.document.languageId !== "storyrod") return undefined;
	const { uri } = editor.document;
	const symbols =
		(await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
			"vscode.executeDocumentSymbolProvider",
			uri,
		)) ?? [];
	const pieces = symbols.filter(
		({ detail }) => detail === "piece" || detail === "component",
	);
	const around = pieces.find(({ range }) =>
		range.contains(editor.selection.active),
	);
	const piece =
		around?.name ??
		(pieces.length > 1
			? await vscode.window.showQuickPick(pieces.map(({ name }) => name))
			: pieces[0]?.name);
	return piece === undefined ? undefined : { uri: uri.toString(), piece };
}

async function showUses(
	uri: string,
	{ line, character }: { readonly line: number; readonly character: number },
): Promise<void> {
	const place = vscode.Uri.parse(uri);
	const position = new vscode.Position(line, character);
	const found = await vscode.commands.executeCommand<vscode.Location[]>(
		"vscode.executeReferenceProvider",
		place,
		position,
	);
	await vscode.commands.executeCommand(
		"editor.action.showReferences",
		place,
		position,
		found,
	);
}
