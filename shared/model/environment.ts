// What a file offers to its pieces: its own materials and components, and those that it takes from files beside it.

import type {
	FileNode,
	NameNode,
	Statement,
	SyntaxFault,
} from "../../grammar/index.ts";
import { reservedNames } from "../../grammar/index.ts";
import type { ParsedFile, ParsedFiles } from "../sources/parsed-files.ts";
import type { Sources } from "../sources/sources.ts";
import { readDisplay, usualPrecision } from "./display.ts";
import { Evaluation } from "./evaluation.ts";
import type { Frame } from "./frame.ts";
import { type Binding, nearest, Scope } from "./meaning.ts";
import { type Row, type Rows, readRows } from "./rows.ts";
import { readCoating, readVariants } from "./stock.ts";
import type { Declaration, Display, Finding, Stock } from "./types.ts";

/** A `piece` or `component` with its name. */
export interface NamedRow {
	readonly row: Row;
	readonly declaration: Declaration;
}

/** All that a file's pieces can see, with what was found while it was read. */
export interface Environment {
	readonly uri: string;
	readonly frame: Frame;
	readonly display: Display;
	readonly components: readonly NamedRow[];
	readonly stocks: ReadonlyMap<string, Stock>;
	readonly evaluation: Evaluation;
	/** Every file that was read for it, the file itself first; also those that are missing. */
	readonly uris: readonly string[];
	/** What it was made from: equal members mean an equal environment. */
	readonly madeFrom: readonly unknown[];
}

/** Whether a statement of a file belongs to its environment; pieces stand on their own. */
export function isEnvironment(statement: Statement): boolean {
	return statement.head !== "piece";
}

/** Reads the environment of a file, or keeps the one of the last run where nothing that it is made from has changed. */
export function readEnvironment(
	sources: Sources,
	parsed: ParsedFiles,
	file: ParsedFile,
	last: Environment | undefined,
): Environment {
	const statements = file.result.tree.statements.filter(isEnvironment);
	if (last && sameMakings(last, sources, parsed, statements)) return last;
	const evaluation = new Evaluation();
	const files = new Files(evaluation, sources, parsed);
	const open = files.open(file, statements);
	const stocks = open.stocks();
	return {
		uri: file.uri,
		frame: open.frame,
		display: open.display,
		components: open.components,
		stocks,
		evaluation,
		uris: files.uris(),
		madeFrom: [...statements, ...files.used()],
	};
}

function sameMakings(
	last: Environment,
	sources: Sources,
	parsed: ParsedFiles,
	statements: readonly Statement[],
): boolean {
	const now: unknown[] = [
		...statements,
		...last.uris.slice(1).map((uri) => parsed.get(sources, uri)),
	];
	return (
		now.length === last.madeFrom.length &&
		now.every((one, index) => one === last.madeFrom[index])
	);
}

/** The name of a `piece` or `component`; undefined, and told, if it may not be one or is taken. */
export function declarePiece(
	evaluation: Evaluation,
	row: Row,
	taken: Map<string, Declaration>,
): NamedRow | undefined {
	const name = row.name("name");
	if (!name || !mayBeNamed(evaluation, row.uri, name)) return undefined;
	const declaration = declarationOf(row, name);
	evaluation.declare(declaration);
	const before = taken.get(name.text);
	if (before) {
		tellTwice(evaluation, row.uri, name, before);
		return undefined;
	}
	taken.set(name.text, declaration);
	return { row, declaration };
}

/** The faults of a text's syntax as findings. */
export function syntaxFindings(
	uri: string,
	faults: readonly SyntaxFault[],
): Finding[] {
	return faults.map((fault) => ({
		id: fault.id,
		severity: fault.severity,
		origin: { uri, span: fault.span },
		message: fault.message,
		related: [],
		fixes: fault.fix ? [fault.fix] : [],
	}));
}

interface OpenFile {
	readonly uri: string;
	readonly frame: Frame;
	readonly display: Display;
	readonly faults: readonly SyntaxFault[];
	readonly components: NamedRow[];
	readonly stocks: () => ReadonlyMap<string, Stock>;
}

/** The files of one run: each is read once, also when they use each other in a circle. */
class Files {
	private readonly evaluation: Evaluation;
	private readonly sources: Sources;
	private readonly parsed: ParsedFiles;
	private readonly opened = new Map<
		string,
		{ readonly file: ParsedFile | undefined; open: OpenFile | undefined }
	>();

	constructor(evaluation: Evaluation, sources: Sources, parsed: ParsedFiles) {
		this.evaluation = evaluation;
		this.sources = sources;
		this.parsed = parsed;
	}

	uris(): string[] {
		return [...this.opened.keys()];
	}

	/** The parsed files behind the first. */
	used(): (ParsedFile | undefined)[] {
		return [...this.opened.values()].slice(1).map(({ file }) => file);
	}

	open(file: ParsedFile, statements: readonly Statement[]): OpenFile {
		const { evaluation } = this;
		const { uri } = file;
		const tree: FileNode = { ...file.result.tree, statements };
		const entry: { file: ParsedFile; open: OpenFile | undefined } = {
			file,
			open: undefined,
		};
		this.opened.set(uri, entry);
		const rows = readRows(evaluation, uri, tree, "file");
		const scope = new Scope();
		const start: Frame = { evaluation, uri, unit: "in", scope };
		const display = readDisplay(start, rows, {
			unit: "in",
			precision: usualPrecision.in,
		});
		const frame: Frame = { ...start, unit: display.unit };
		const components: NamedRow[] = [];
		const stockNames: Binding[] = [];
		const open: OpenFile = {
			uri,
			frame,
			display,
			faults: file.result.faults,
			components,
			stocks: () => collectStocks(stockNames),
		};
		entry.open = open;
		for (const row of rows.all)
			this.declareRow(frame, rows, row, components, stockNames);
		return open;
	}

	private openUsed(uri: string): OpenFile | undefined {
		const known = this.opened.get(uri);
		if (known) return known.open;
		const file = this.parsed.get(this.sources, uri);
		if (!file) {
			this.opened.set(uri, { file: undefined, open: undefined });
			return undefined;
		}
		return this.open(file, file.result.tree.statements.filter(isEnvironment));
	}

	private declareRow(
		frame: Frame,
		rows: Rows,
		row: Row,
		components: NamedRow[],
		stockNames: Binding[],
	): void {
		if (row.head === "use") {
			this.use(frame, row, stockNames);
			return;
		}
		const name = row.name("name");
		if (!name || !row.construct.declares) return;
		if (!mayBeNamed(this.evaluation, row.uri, name)) return;
		const declaration = declarationOf(row, name);
		this.evaluation.declare(declaration);
		const binding = this.bindingOf(frame, rows, row, declaration);
		const before = frame.scope.declare(name.text, binding);
		if (before) {
			tellTwice(this.evaluation, row.uri, name, before.declaration);
			return;
		}
		if (row.head === "component") components.push({ row, declaration });
		else stockNames.push(binding);
	}

	private bindingOf(
		frame: Frame,
		rows: Rows,
		row: Row,
		declaration: Declaration,
	): Binding {
		const currency = (): string | undefined =>
			rows.first("currency")?.text("currency");
		if (row.head === "component")
			return {
				declaration,
				meaning: () => ({ kind: "component", component: { row, frame } }),
			};
		if (row.head === "coating") {
			const stock = this.evaluation.lazy(declaration.name, row.headline, () =>
				readCoating(frame, row, declaration, currency()),
			);
			return {
				declaration,
				meaning: () => {
					const made = stock();
					return made && { kind: "stock", stock: made };
				},
			};
		}
		const variants = this.evaluation.lazy(declaration.name, row.headline, () =>
			readVariants(frame, row, declaration.name, currency),
		);
		return {
			declaration,
			meaning: () => {
				const made = variants();
				return made && { kind: "material", variants: made };
			},
		};
	}

	private use(frame: Frame, row: Row, stockNames: Binding[]): void {
		const path = row.text("path");
		const expression = row.expression("path");
		if (path === undefined || !expression) return;
		const origin = row.at(expression.span);
		const uri = this.sources.resolve(frame.uri, path);
		if (uri === undefined) {
			this.evaluation.report(
				"no-file",
				origin,
				`"${path}" is no file beside this one: write it as "./stock.rod"`,
			);
			this.missing(frame, row);
			return;
		}
		const circle = uri === frame.uri;
		const file = circle ? undefined : this.openUsed(uri);
		if (!file) {
			this.evaluation.report(
				"no-file",
				origin,
				circle
					? "This file uses itself: take the line away"
					: `There is no file "${path}" beside this one`,
			);
			// What a file that uses itself declares is there without that line.
			if (!circle) this.missing(frame, row);
			return;
		}
		const faults = file.faults.filter((fault) => fault.severity === "error");
		if (faults.length > 0)
			this.evaluation.report(
				"used-file-broken",
				origin,
				`"${path}" has ${faults.length === 1 ? "a line" : `${faults.length} lines`} that cannot be read: what stands there may be missing here`,
				{
					severity: "warning",
					related: faults.slice(0, 3).map((fault) => ({
						origin: { uri, span: fault.span },
						message: fault.message,
					})),
				},
			);
		for (const name of row.names("names"))
			this.take(frame, name, path, file, stockNames);
	}

	/** The names of a file that is not there mean nothing, and that is told once, at its path. */
	private missing(frame: Frame, row: Row): void {
		for (const name of row.names("names")) {
			const declaration = importOf(frame, name);
			const binding = { declaration, meaning: () => undefined };
			const before = frame.scope.declare(name.text, binding);
			if (before)
				tellTwice(this.evaluation, frame.uri, name, before.declaration);
		}
	}

	/** Brings a name of another file into the scope. */
	private take(
		frame: Frame,
		name: NameNode,
		path: string,
		file: OpenFile,
		stockNames: Binding[],
	): void {
		const { evaluation } = this;
		// Looked up when it is needed: files may use each other's names in a circle, as long as no size does.
		const found = (): Binding | undefined => file.frame.scope.own(name.text);
		const now = found();
		const declaration = now?.declaration ?? importOf(frame, name);
		if (now) evaluation.refer(frame.uri, name.span, now.declaration);
		let busy = false;
		const binding: Binding = {
			declaration,
			meaning: () => {
				if (busy) {
					evaluation.report(
						"circle",
						{ uri: frame.uri, span: name.span },
						`\`${name.text}\` is only handed round between files that use each other: declare it in one of them`,
					);
					return undefined;
				}
				busy = true;
				try {
					return (now ?? found())?.meaning();
				} finally {
					busy = false;
				}
			},
		};
		const before = frame.scope.declare(name.text, binding);
		if (before) {
			tellTwice(evaluation, frame.uri, name, before.declaration);
			return;
		}
		stockNames.push(binding);
		if (now) return;
		const known = [...file.frame.scope.all()].map(([one]) => one);
		const near = nearest(name.text, known);
		evaluation.report(
			"unknown-name",
			{ uri: frame.uri, span: name.span },
			`"${path}" declares no \`${name.text}\`${
				near
					? `: did you mean \`${near}\`?`
					: known.length > 0
						? `: it has ${known
								.slice(0, 12)
								.map((one) => `\`${one}\``)
								.join(", ")}`
						: ""
			}`,
			near
				? {
						fix: {
							title: `Change to \`${near}\``,
							edits: [{ span: name.span, text: near }],
						},
					}
				: {},
		);
	}
}

/** A name that nothing stands behind. */
function importOf(frame: Frame, name: NameNode): Declaration {
	return {
		kind: "import",
		name: name.text,
		path: name.text,
		origin: { uri: frame.uri, span: name.span },
		nameSpan: name.span,
		doc: "",
	};
}

function declarationOf(row: Row, name: NameNode): Declaration {
	return {
		kind: row.construct.declares ?? "material",
		name: name.text,
		path: name.text,
		origin: row.origin,
		nameSpan: name.span,
		doc: row.statement.doc,
	};
}

function mayBeNamed(
	evaluation: Evaluation,
	uri: string,
	name: NameNode,
): boolean {
	if (!reservedNames.has(name.text)) return true;
	evaluation.report(
		"reserved-name",
		{ uri, span: name.span },
		`\`${name.text}\` is a word of the language: choose another name`,
	);
	return false;
}

function tellTwice(
	evaluation: Evaluation,
	uri: string,
	name: NameNode,
	before: Declaration,
): void {
	evaluation.report(
		"named-twice",
		{ uri, span: name.span },
		`\`${name.text}\` is named twice in this file: rename one`,
		{
			related: [
				{
					origin: { uri: before.origin.uri, span: before.nameSpan },
					message: "The first one",
				},
			],
		},
	);
}

function collectStocks(bindings: readonly Binding[]): Map<string, Stock> {
	const stocks = new Map<string, Stock>();
	for (const binding of bindings) {
		const meaning = binding.meaning();
		if (meaning?.kind === "stock") stocks.set(meaning.stock.id, meaning.stock);
		if (meaning?.kind !== "material") continue;
		for (const variant of meaning.variants.values()) {
			const stock = variant.meaning();
			if (stock?.kind === "stock") stocks.set(stock.stock.id, stock.stock);
		}
	}
	return stocks;
}
