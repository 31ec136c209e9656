// The parser's raw statements to the syntax tree, with comments attached by where they stand.

import type { IToken } from "chevrotain";
import {
	blockWithoutHead,
	type FaultSink,
	twoBlocks,
	wordsAfterBlock,
} from "../errors.ts";
import { endOf } from "../lexer.ts";
import type { RawBlock, RawStatement } from "../parser.ts";
import { type Climb, noFaults, readItems, settleFaults } from "./climb.ts";
import { type DocReader, docReader } from "./comments.ts";
import { measureReader } from "./measure.ts";
import type {
	Block,
	Comment,
	FileNode,
	Item,
	Span,
	Statement,
} from "./nodes.ts";

interface Building {
	readonly docOf: DocReader;
	readonly report: FaultSink;
	/** The reader of items: one for all statements, as its state ends with each statement. */
	readonly climb: Climb;
}

export function buildFile(
	text: string,
	raw: readonly RawStatement[],
	comments: readonly Comment[],
	report: FaultSink,
): FileNode {
	const docs = docReader(text, comments);
	const faults = noFaults();
	const readMeasure = measureReader(text, (fault) => {
		(fault.severity === "error" ? faults.own : faults.soft).push(fault);
	});
	const building: Building = {
		docOf: docs.docOf,
		report,
		climb: {
			text,
			pieces: [],
			readMeasure,
			faults,
			at: 0,
			depth: 0,
			height: 0,
		},
	};
	const statements = buildStatements(building, raw);
	for (const fault of docs.dangling()) report.push(fault);
	return {
		kind: "file",
		span: { start: 0, end: text.length },
		statements,
		comments,
	};
}

function buildStatements(
	building: Building,
	raw: readonly RawStatement[],
): Statement[] {
	return raw.map((statement) => buildStatement(building, statement));
}

function buildStatement(building: Building, raw: RawStatement): Statement {
	const { docOf, report, climb } = building;
	const { faults } = climb;
	const { pieces, block: rawBlock } = raw;
	const first = pieces[0] ?? (rawBlock as RawBlock).open;
	const doc = docOf(first.startOffset);
	climb.pieces = pieces;
	climb.at = 0;
	const items = readItems(climb);
	if (!raw.apart && pieces.length > 0) {
		// What stands there may be wrong in itself, and then that is the thing to tell.
		faults.structure ??= wordsAfterBlock(tokenSpan(first));
	} else if (!raw.apart) {
		faults.structure = twoBlocks(tokenSpan(first));
	} else if (pieces.length === 0) {
		faults.structure = blockWithoutHead(tokenSpan(first));
	}
	settleFaults(faults, report);
	const block = rawBlock && buildBlock(building, rawBlock);
	const head = headOf(items[0]);
	const span = {
		start: first.startOffset,
		end: block ? block.span.end : endOf(pieces.at(-1) as IToken),
	};
	const headlineEnd = items.at(-1)?.span.end ?? span.end;
	return {
		kind: "statement",
		span,
		headline:
			headlineEnd === span.end ? span : { start: span.start, end: headlineEnd },
		head,
		headSpan:
			head === ""
				? { start: first.startOffset, end: first.startOffset }
				: (items[0] as Item).span,
		items,
		block,
		doc,
	};
}

function buildBlock(building: Building, raw: RawBlock): Block {
	return {
		kind: "block",
		span: { start: raw.open.startOffset, end: endOf(raw.close) },
		statements: buildStatements(building, raw.statements),
		closed: raw.close.image !== "",
	};
}

function headOf(item: Item | undefined): string {
	return item?.kind === "path" && item.segments.length === 1
		? (item.segments[0]?.text ?? "")
		: "";
}

function tokenSpan(token: IToken): Span {
	return { start: token.startOffset, end: endOf(token) };
}
