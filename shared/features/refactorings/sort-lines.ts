// The lines of a block in the order in which the language lists them, materials by name; comments go with their lines.

import {
	type Block,
	type ContextId,
	contexts,
	type Edit,
	type FileNode,
	type Statement,
} from "../../../grammar/index.ts";
import { compareStrings } from "../../text/compare.ts";
import { commentsOf } from "../support/bodies.ts";
import { namesOf } from "../support/known-names.ts";
import { placeAt, placedIn } from "../support/place.ts";
import { type Asked, type Offer, refusal } from "../support/refactoring.ts";
import type { Snapshot } from "../support/snapshot.ts";

/** Blocks in which the order of lines means something: coats and sanding, the points of a curve, a step after a step. */
const inOrder: ReadonlySet<ContextId> = new Set<ContextId>([
	"finish",
	"ground",
	"shape",
	"fasten",
	"fastener-place",
	"join",
]);

export function sortLines(asked: Asked): Offer[] {
	const { snapshot, span } = asked;
	const { tree } = snapshot.result;
	const place = placeAt(tree, span.start);
	const { statement, construct } = place.statement ?? {};
	// On the line of a block that block is meant, inside of it the block around.
	const own = statement?.block && construct?.block !== undefined;
	const body = own ? (statement.block as Block) : place.body;
	const context = own ? construct.block : place.context;
	if (!context || inOrder.has(context) || body.statements.length < 2) return [];
	const holder = own ? statement : place.around.at(-1)?.statement;
	const label = holder
		? (namesOf(holder, own ? place.context : place.around.at(-1)?.context)[0] ??
			holder.head)
		: undefined;
	const title = `Sort the lines of ${label ? `\`${label}\`` : "the file"}`;
	const id = "sort-lines";
	const kind = "refactor.rewrite";
	const runs = runsOf(snapshot, body);
	const sorted = runs.map((run) => inTableOrder(run, context));
	if (runs.every((run, index) => isSame(run, sorted[index] ?? []))) return [];
	if (body.statements.some((one) => !isRead(snapshot, one, context)))
		return [
			refusal(
				id,
				kind,
				title,
				"A line in this block cannot be read: mend it first",
			),
		];
	return [
		{
			id,
			kind,
			title,
			change: () => ({
				edits: runs.flatMap((run, index) =>
					exchanged(snapshot, run, sorted[index] ?? []),
				),
			}),
		},
	];
}

function isSame(a: readonly Statement[], b: readonly Statement[]): boolean {
	return a.every((one, index) => one === b[index]);
}

function isRead(
	{ result }: Snapshot,
	statement: Statement,
	context: ContextId,
): boolean {
	return (
		placedIn(context, statement).construct !== undefined &&
		!result.faults.some(
			({ severity, span }) =>
				severity === "error" &&
				span.start >= statement.span.start &&
				span.start <= statement.span.end,
		)
	);
}

/** Lines between which no comment stands on its own: such a one is a heading, and nothing goes over it. */
function runsOf(snapshot: Snapshot, body: FileNode | Block): Statement[][] {
	const { comments } = snapshot.result.tree;
	const runs: Statement[][] = [];
	let before: Statement | undefined;
	for (const statement of body.statements) {
		const { above } = commentsOf(snapshot, statement);
		const start = above[0]?.span.start ?? statement.span.start;
		const from = before
			? (commentsOf(snapshot, before).behind?.span.end ?? before.span.end)
			: start;
		const heading = comments.some(
			({ span }) => span.start >= from && span.end <= start,
		);
		if (heading || runs.length === 0) runs.push([]);
		runs.at(-1)?.push(statement);
		before = statement;
	}
	return runs;
}

function inTableOrder(
	run: readonly Statement[],
	context: ContextId,
): Statement[] {
	const rank = (statement: Statement): number => {
		const { construct } = placedIn(context, statement);
		return construct
			? contexts[context].indexOf(construct)
			: Number.MAX_SAFE_INTEGER;
	};
	const name = (statement: Statement): string =>
		placedIn(context, statement).construct?.declares === "material"
			? (namesOf(statement, context)[0] ?? "")
			: "";
	return run
		.map((statement, index) => ({
			statement,
			index,
			rank: rank(statement),
			name: name(statement),
		}))
		.sort(
			(a, b) =>
				a.rank - b.rank || compareStrings(a.name, b.name) || a.index - b.index,
		)
		.map(({ statement }) => statement);
}

/** Puts lines, each with its comments, where others of the same run stand. */
function exchanged(
	snapshot: Snapshot,
	run: readonly Statement[],
	sorted: readonly Statement[],
): Edit[] {
	return run.flatMap((statement, index) => {
		const other = sorted[index];
		if (!other || other === statement) return [];
		const put = wholeOf(snapshot, other);
		const { start, end } = wholeOf(snapshot, statement);
		// A comment goes to the end of its line: nothing may come behind it.
		const hasComment = commentsOf(snapshot, other).behind !== undefined;
		const goesOn = /^[ \t]*(?:;|[^\s])/.test(snapshot.text.slice(end));
		return [
			{
				span: { start, end },
				text: `${snapshot.text.slice(put.start, put.end)}${hasComment && goesOn ? "\n" : ""}`,
			},
		];
	});
}

function wholeOf(
	snapshot: Snapshot,
	statement: Statement,
): { readonly start: number; readonly end: number } {
	const { above, behind } = commentsOf(snapshot, statement);
	return {
		start: above[0]?.span.start ?? statement.span.start,
		end: behind?.span.end ?? statement.span.end,
	};
}
