// The icons that the protocol has, for the things of the language.

import { CompletionItemKind, SymbolKind } from "vscode-languageserver";
import type { Declares } from "../../grammar/index.ts";
import type { CompletionItem } from "../../shared/features/completion.ts";

export const completionKinds: Readonly<
	Record<CompletionItem["kind"], CompletionItemKind>
> = {
	head: CompletionItemKind.Keyword,
	word: CompletionItemKind.EnumMember,
	file: CompletionItemKind.File,
	folder: CompletionItemKind.Folder,
	import: CompletionItemKind.Module,
	material: CompletionItemKind.Class,
	variant: CompletionItemKind.Class,
	stock: CompletionItemKind.Class,
	piece: CompletionItemKind.Module,
	component: CompletionItemKind.Interface,
	size: CompletionItemKind.Variable,
	box: CompletionItemKind.Struct,
	part: CompletionItemKind.Field,
	leg: CompletionItemKind.Struct,
	layer: CompletionItemKind.Field,
	trim: CompletionItemKind.Struct,
	veneer: CompletionItemKind.Struct,
	mount: CompletionItemKind.Struct,
	group: CompletionItemKind.Struct,
	finish: CompletionItemKind.Property,
	step: CompletionItemKind.Event,
	aid: CompletionItemKind.Property,
	face: CompletionItemKind.Property,
	edges: CompletionItemKind.Property,
	inside: CompletionItemKind.Property,
	floor: CompletionItemKind.Constant,
};

export const symbolKinds: Readonly<Record<Declares, SymbolKind>> = {
	import: SymbolKind.Module,
	material: SymbolKind.Class,
	variant: SymbolKind.EnumMember,
	piece: SymbolKind.Module,
	component: SymbolKind.Interface,
	size: SymbolKind.Variable,
	box: SymbolKind.Struct,
	part: SymbolKind.Field,
	leg: SymbolKind.Struct,
	layer: SymbolKind.Field,
	trim: SymbolKind.Struct,
	veneer: SymbolKind.Struct,
	mount: SymbolKind.Struct,
	group: SymbolKind.Struct,
	finish: SymbolKind.Property,
	step: SymbolKind.Event,
	aid: SymbolKind.Property,
};
