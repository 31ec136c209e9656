// A name that nothing here declares, but a file beside does: takes it from there.

import { type Edit, type FileNode, walk } from "../../../grammar/index.ts";
import { putBehind, touches } from "../support/bodies.ts";
import type { Asked, NearbyFile, Offer } from "../support/refactoring.ts";
import type { Snapshot } from "../support/snapshot.ts";
import { namesOffered } from "../support/use-offers.ts";

/** Nobody chooses from more. */
const mostOffers = 5;

export function addImport(asked: Asked): Offer[] {
	const { snapshot, span, findings, around } = asked;
	const offers: Offer[] = [];
	for (const finding of findings) {
		const { id, origin } = finding;
		if (id !== "unknown-name" || origin.uri !== snapshot.uri) continue;
		if (!touches(origin.span, span)) continue;
		const name = firstName(snapshot, origin.span.start, origin.span.end);
		if (!name || offers.some((one) => one.id.startsWith(`add-import ${name} `)))
			continue;
		const from = around
			.files()
			.filter(
				(file) =>
					file.mentions(name) &&
					namesOffered(file.tree).some((one) => one.name === name),
			)
			.slice(0, mostOffers);
		offers.push(
			...from.map(
				(file): Offer => ({
					id: `add-import ${name} ${file.path}`,
					kind: "quickfix",
					title: `Take \`${name}\` from "${file.path}"`,
					finding,
					preferred: from.length === 1,
					change: () => ({
						edits: [useEdit(asked, name, file)],
						keeps: "nothing",
					}),
				}),
			),
		);
	}
	return offers;
}

/** The name, if it is the first of a path: what stands behind a dot is looked up elsewhere. */
function firstName(
	{ result }: Snapshot,
	start: number,
	end: number,
): string | undefined {
	let found: string | undefined;
	walk(result.tree, (node) => {
		if (node.span.start > start || node.span.end < end) return false;
		const first = node.kind === "path" ? node.segments[0] : undefined;
		if (first?.span.start === start && first.span.end === end)
			found = first.text;
		return true;
	});
	return found;
}

/** Joins a line that takes names from the same file, or adds one behind the others. */
function useEdit(
	{ snapshot, around }: Asked,
	name: string,
	{ path, uri }: NearbyFile,
): Edit {
	const { text, result } = snapshot;
	const { tree } = result;
	const uses = tree.statements.filter(({ head }) => head === "use");
	for (const line of uses) {
		const from = line.items.at(-1);
		const names = line.items[1];
		if (
			from?.kind === "text" &&
			around.resolve(from.value) === uri &&
			names &&
			(names.kind === "path" || names.kind === "list") &&
			line.items.length === 4
		)
			return {
				span: { start: names.span.end, end: names.span.end },
				text: `, ${name}`,
			};
	}
	const line = `use ${name} from "${path}"`;
	const last = uses.at(-1);
	if (last) return putBehind(snapshot, last, line);
	const at = beforeFirst(text, tree);
	return { span: { start: at, end: at }, text: `${line}\n\n` };
}

/** In front of the first line and the comments that belong to it; behind those at the top that stand alone. */
function beforeFirst(text: string, tree: FileNode): number {
	const first = tree.statements[0];
	if (!first) return text.length;
	let at = first.span.start;
	for (const { span, ownLine } of tree.comments.toReversed()) {
		if (span.end > at) continue;
		const between = text.slice(span.end, at);
		if (!ownLine || (between.match(/\r\n|\r|\n/g) ?? []).length > 1) break;
		at = span.start;
	}
	return at;
}
