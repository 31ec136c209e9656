// What designs tell, by the file it is about, as the protocol has it. Two designs that use the same file may both tell it.

import type { Diagnostic } from "vscode-languageserver";
import { toDiagnostic } from "../convert/to-lsp.ts";
import type { Context } from "./context.ts";
import type { Analysis } from "./session.ts";

export type ByFile = ReadonlyMap<string, readonly Diagnostic[]>;

const none: readonly Diagnostic[] = [];

/** Of one design; its own file is always there. Must be asked while the analysis is the newest. */
export function toldBy(context: Context, analysis: Analysis): ByFile {
	const byFile = new Map<string, Diagnostic[]>([[analysis.design.uri, []]]);
	for (const finding of analysis.findings) {
		const diagnostic = toDiagnostic(context, finding);
		if (!diagnostic) continue;
		const { uri } = finding.origin;
		const list = byFile.get(uri);
		if (list) list.push(diagnostic);
		else byFile.set(uri, [diagnostic]);
	}
	return byFile;
}

/** The same finding once, in the order in which they are told. The same object for the same single list. */
export function together(
	lists: readonly (readonly Diagnostic[])[],
): readonly Diagnostic[] {
	const filled = lists.filter((list) => list.length > 0);
	if (filled.length < 2) return filled[0] ?? none;
	const told = new Map<string, Diagnostic>();
	for (const one of filled.flat()) told.set(keyOf(one), one);
	return [...told.values()];
}

/** What the open designs tell; kept as long as an analysis stays the same. */
export class Told {
	private readonly context: Context;
	private readonly known = new WeakMap<Analysis, ByFile>();

	constructor(context: Context) {
		this.context = context;
	}

	/** Of an open design. */
	by(uri: string): ByFile {
		const analysis = this.context.session.analysis(uri);
		const known = this.known.get(analysis);
		if (known) return known;
		const told = toldBy(this.context, analysis);
		this.known.set(analysis, told);
		return told;
	}

	/** About one file, by all open designs that use it. */
	about(uri: string): readonly Diagnostic[] {
		const { session } = this.context;
		return together(
			session
				.openUris()
				.filter((one) => session.design(one).files.includes(uri))
				.map((one) => this.by(one).get(uri) ?? none),
		);
	}
}

function keyOf({ code, range: { start, end }, message }: Diagnostic): string {
	return `${code} ${start.line} ${start.character} ${end.line} ${end.character} ${message}`;
}
