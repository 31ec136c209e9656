// The door of the model: from texts to a design that checks, features and outputs can read. Pure, and never throws on a text.

import type { FileNode, Span, Statement } from "../../grammar/index.ts";
import { ParsedFiles } from "../sources/parsed-files.ts";
import type { Sources } from "../sources/sources.ts";
import {
	declarePiece,
	type Environment,
	isEnvironment,
	type NamedRow,
	readEnvironment,
	syntaxFindings,
} from "./environment.ts";
import { Evaluation } from "./evaluation.ts";
import { evaluatePiece } from "./piece.ts";
import { readRows } from "./rows.ts";
import { readSets, tellUnusedSets } from "./set-values.ts";
import type {
	Declaration,
	Design,
	Finding,
	Piece,
	Reference,
	SizeAt,
	Stock,
} from "./types.ts";

export interface CompileOptions {
	/** Values for givens, as a maker writes them: `width` -> `36 in`. They hold in every piece that has such a given. */
	readonly set?: ReadonlyMap<string, string>;
	/** Keeps what did not change from one run to the next. */
	readonly cache?: CompileCache;
}

interface MadePiece {
	readonly environment: Environment;
	readonly sets: string;
	readonly piece: Piece;
	readonly evaluation: Evaluation;
}

/** What runs on the same file hand on: trees, the environment, and the pieces whose text did not change. */
export class CompileCache {
	readonly parsed = new ParsedFiles();
	environment: Environment | undefined;
	pieces = new Map<Statement, MadePiece>();
}

/** Evaluates a file with all that it uses. */
export function compile(
	sources: Sources,
	uri: string,
	options: CompileOptions = {},
): Design {
	const cache = options.cache ?? new CompileCache();
	const set = options.set ?? new Map<string, string>();
	const file = cache.parsed.get(sources, uri);
	if (!file) return missing(uri);
	const environment = readEnvironment(
		sources,
		cache.parsed,
		file,
		cache.environment,
	);
	cache.environment = environment;

	const own = new Evaluation();
	const tree: FileNode = file.result.tree;
	const rows = readRows(
		own,
		uri,
		{
			...tree,
			statements: tree.statements.filter((one) => !isEnvironment(one)),
		},
		"file",
	);
	const taken = new Map<string, Declaration>();
	for (const [name, binding] of environment.frame.scope.all())
		taken.set(name, binding.declaration);
	const named: NamedRow[] = [
		...environment.components,
		...rows.all.flatMap((row) => declarePiece(own, row, taken) ?? []),
	].sort((a, b) => a.row.statement.span.start - b.row.statement.span.start);

	const used = new Set<string>();
	const made = new Map<Statement, MadePiece>();
	const settings = JSON.stringify([...set]);
	for (const one of named) {
		const { statement } = one.row;
		const last = cache.pieces.get(statement);
		made.set(
			statement,
			last?.environment === environment &&
				last.sets === settings &&
				set.size === 0
				? last
				: make(environment, one, set, settings, used),
		);
	}
	cache.pieces = made;
	tellUnusedSets(own, uri, set, used);
	return new Compiled(uri, environment, own, [...made.values()], () =>
		syntaxFindings(uri, file.result.faults),
	);
}

/** What is known of a text around an offset in it: a part of what the design tells, quick to look through. */
export type Nearby = Pick<Design, "references" | "declarations" | "sizesAt">;

/**
 * Of the piece or component in whose text an offset of the design's own file lies, worked out by itself; and of what the file
 * offers to all of them.
 */
export function nearby(design: Design, offset: number): Nearby {
	return design instanceof Compiled ? design.around(offset) : design;
}

function make(
	environment: Environment,
	{ row, declaration }: NamedRow,
	set: ReadonlyMap<string, string>,
	sets: string,
	used: Set<string>,
): MadePiece {
	const evaluation = new Evaluation();
	const frame = { ...environment.frame, evaluation };
	const piece = evaluatePiece(
		frame,
		row,
		declaration,
		environment.display,
		readSets(frame, set, row, used),
	);
	return { environment, sets, piece, evaluation };
}

/** A design put together from its pieces; the long lists are joined only when somebody asks for them. */
class Compiled implements Design {
	readonly uri: string;
	readonly pieces: readonly Piece[];
	readonly findings: readonly Finding[];
	readonly files: readonly string[];
	private readonly environment: Environment;
	private readonly made: readonly MadePiece[];
	private readonly evaluations: readonly Evaluation[];

	constructor(
		uri: string,
		environment: Environment,
		own: Evaluation,
		made: readonly MadePiece[],
		syntax: () => Finding[],
	) {
		this.uri = uri;
		this.pieces = made.map(({ piece }) => piece);
		this.files = environment.uris;
		this.environment = environment;
		this.made = made;
		this.evaluations = [
			environment.evaluation,
			own,
			...made.map(({ evaluation }) => evaluation),
		];
		this.findings = shortened(
			inPlaceOrder(uri, [
				...syntax(),
				...distinct(this.evaluations.flatMap((one) => one.findings)),
			]),
		);
	}

	get stocks(): ReadonlyMap<string, Stock> {
		return this.environment.stocks;
	}
	get declarations(): readonly Declaration[] {
		return [...this.declared().values()];
	}
	get references(): readonly Reference[] {
		const declared = this.declared();
		return this.evaluations.flatMap((one) =>
			one.references.map(({ origin, declaration }) => ({
				origin,
				declaration: declared.get(declaration.nameSpan) ?? declaration,
			})),
		);
	}
	get sizesAt(): readonly SizeAt[] {
		return this.evaluations.flatMap((one) => one.sizesAt);
	}

	around(offset: number): Nearby {
		const inside = this.made.find(
			({ piece: { declaration } }) =>
				declaration.origin.uri === this.uri &&
				declaration.origin.span.start <= offset &&
				offset <= declaration.origin.span.end,
		);
		const all = inside
			? [...this.evaluations.slice(0, 2), inside.evaluation]
			: this.evaluations.slice(0, 2);
		return {
			references: all.flatMap((one) => one.references),
			declarations: all.flatMap((one) => one.declarations),
			sizesAt: all.flatMap((one) => one.sizesAt),
		};
	}

	/** By the name in the text: one in a component is declared there, however many pieces make it. */
	private declared(): Map<Span, Declaration> {
		const declared = new Map<Span, Declaration>();
		for (const { declarations } of this.evaluations)
			for (const declaration of declarations)
				if (!declared.has(declaration.nameSpan))
					declared.set(declaration.nameSpan, declaration);
		return declared;
	}
}

/** So many findings are listed; a last one tells how many there are beside them. */
const mostListed = 2000;

/** A list that goes on and on helps nobody, and fills an editor. */
function shortened(findings: Finding[]): readonly Finding[] {
	const next = findings[mostListed];
	if (!next) return findings;
	const { uri, span } = next.origin;
	return [
		...findings.slice(0, mostListed),
		{
			id: "more-findings",
			severity: "error",
			origin: { uri, span },
			message: `There are ${findings.length - mostListed} more findings from here on, not listed: mend the ones above first`,
			related: [],
			fixes: [],
		},
	];
}

/** A component's fault shows in every piece that makes it: it is told once. */
function distinct(findings: readonly Finding[]): Finding[] {
	const seen = new Set<string>();
	return findings.filter(({ id, origin, message }) => {
		const key = `${id} ${origin.uri} ${origin.span.start} ${origin.span.end} ${message}`;
		if (seen.has(key)) return false;
		seen.add(key);
		return true;
	});
}

/** The file's own findings first, each file from top to bottom. */
function inPlaceOrder(uri: string, findings: Finding[]): Finding[] {
	return findings.sort(
		(a, b) =>
			Number(a.origin.uri !== uri) - Number(b.origin.uri !== uri) ||
			(a.origin.uri < b.origin.uri
				? -1
				: a.origin.uri > b.origin.uri
					? 1
					: 0) ||
			a.origin.span.start - b.origin.span.start ||
			a.origin.span.end - b.origin.span.end,
	);
}

function missing(uri: string): Design {
	return {
		uri,
		pieces: [],
		stocks: new Map(),
		declarations: [],
		references: [],
		sizesAt: [],
		findings: [
			{
				id: "no-file",
				severity: "error",
				origin: { uri, span: { start: 0, end: 0 } },
				message: "There is no such file",
				related: [],
				fixes: [],
			},
		],
		files: [uri],
	};
}
