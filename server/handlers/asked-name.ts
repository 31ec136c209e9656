// What requests about a name in many files begin with: which thing it is, and where it may be mentioned.

import {
	type CancellationToken,
	LSPErrorCodes,
	ResponseError,
} from "vscode-languageserver";
import { subjectAt } from "../../shared/features/support/names/occurrences.ts";
import { rest } from "../core/answers.ts";
import type { Context } from "../core/context.ts";
import type { DesignIndex } from "../core/design-index.ts";
import type { SourceText } from "../core/source-text.ts";

/**
 * The files in which the thing at an offset may be mentioned; `names` are others that it is looked for by. Undefined where
 * nothing is named. Throws where the text has changed meanwhile: the offset is of the text as it was.
 */
export async function filesOf(
	{ session }: Context,
	index: DesignIndex,
	source: SourceText,
	offset: number,
	token: CancellationToken,
	names: readonly string[] = [],
): Promise<readonly string[] | undefined> {
	const target = subjectAt(session.names(), source.uri, offset)?.target;
	if (!target) return undefined;
	const named = target.kind === "named" ? target.named : target.of;
	if (!named) return [];
	const name =
		target.kind === "named" ? named.name : (target.words.at(-1) ?? "");
	const version = session.versionOf(source.uri);
	const files = await index.mentioning(named, [name, ...names], token);
	if (session.versionOf(source.uri) === version) return files;
	throw changedSince();
}

/** So many steps are taken before other messages come through. */
const atOnce = 8;

/** Works in slices; throws if the request was cancelled, or if anything changed meanwhile. */
export async function inSlices<T>(
	context: Context,
	steps: Generator<void, T>,
	token: CancellationToken,
): Promise<T> {
	const { session } = context;
	const state = (): string =>
		[
			session.changesOutside,
			...session.openUris().map((uri) => session.versionOf(uri)),
		].join(" ");
	const before = state();
	for (let count = 1; ; count++) {
		const { done, value } = steps.next();
		if (done) return value;
		if (count % atOnce > 0) continue;
		await rest(context, token);
		if (state() !== before) throw changedSince();
	}
}

function changedSince(): ResponseError<void> {
	return new ResponseError(
		LSPErrorCodes.ContentModified,
		"The text has changed since",
	);
}
