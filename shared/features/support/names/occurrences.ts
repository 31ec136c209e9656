// Where something that has a name occurs: its declaration, and every place that means it.

import type { NameNode, Statement } from "../../../../grammar/index.ts";
import type { FileNames, NameWorld } from "./name-world.ts";
import type { Mention, Named, Target } from "./named.ts";
import { namesIn, type StatementNames } from "./read-names.ts";

/** What an offset is about. */
export interface Subject {
	/** The name at the offset. */
	readonly node: NameNode;
	readonly target: Target;
}

export interface Occurrence {
	readonly uri: string;
	readonly node: NameNode;
	/** Undefined for the declaration itself. */
	readonly mention: Mention | undefined;
	/** What stands behind the name in a name made from it. */
	readonly suffix: string;
	readonly mirrored: boolean;
}

/** Undefined where nothing is named, or where the name means nothing. */
export function subjectAt(
	world: NameWorld,
	uri: string,
	offset: number,
): Subject | undefined {
	const at = world.at(uri, offset);
	if (!at) return undefined;
	const { node, is } = at;
	if ("kind" in is)
		return {
			node,
			target: { kind: "named", named: is, suffix: "", mirrored: false },
		};
	const target = world.target(is);
	return target && { node, target };
}

/** Whether only the statement that declares it can mention it: what stands in a piece is seen by nobody else. */
export function isPrivate(named: Named): boolean {
	let top = named;
	while (top.holder) top = top.holder;
	return top.kind === "piece";
}

/**
 * In the files given, each in order of place. The declaration is among them if its file is. Files that neither declare it
 * nor use one that does cost only a look at their names.
 */
export function occurrences(
	world: NameWorld,
	target: Target,
	uris: Iterable<string>,
): Occurrence[] {
	const named = target.kind === "named" ? target.named : target.of;
	if (!named) return [];
	const name = target.kind === "named" ? named.name : target.words.at(-1);
	const found: Occurrence[] = [];
	for (const uri of isPrivate(named) ? [named.uri] : uris) {
		const file = world.file(uri);
		if (!file) continue;
		for (const statement of statementsFor(file, named)) {
			const here: Occurrence[] = [];
			if (target.kind === "named" && statement.at(named.node) === named)
				here.push({
					uri,
					node: named.node,
					mention: undefined,
					suffix: "",
					mirrored: false,
				});
			for (const at of statement.mentioning(name ?? "")) {
				const meant = world.target(at);
				if (!meant || !isSame(meant, target)) continue;
				const { suffix, mirrored } =
					meant.kind === "named" ? meant : { suffix: "", mirrored: false };
				const node = at.mention.segments[at.index];
				if (node)
					here.push({ uri, node, mention: at.mention, suffix, mirrored });
			}
			here.sort((a, b) => a.node.span.start - b.node.span.start);
			found.push(...here);
		}
	}
	return found;
}

function statementsFor(
	file: FileNames,
	named: Named,
): readonly StatementNames[] {
	if (!isPrivate(named)) return file.statements;
	const top = topStatement(file, named.node.span.start);
	return top ? [namesIn(file.uri, top)] : [];
}

/** The statement at the top of a file in which an offset lies. */
function topStatement(
	{ tree }: FileNames,
	offset: number,
): Statement | undefined {
	return tree.statements.find(
		({ span }) => span.start <= offset && offset <= span.end,
	);
}

function isSame(a: Target, b: Target): boolean {
	if (a.kind === "named") return b.kind === "named" && a.named === b.named;
	return (
		b.kind === "fixed" &&
		a.of === b.of &&
		a.words.length === b.words.length &&
		a.words.every((word, index) => word === b.words[index])
	);
}
