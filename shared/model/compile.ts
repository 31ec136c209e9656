// The door of the model: from texts to a design that checks, features and outputs can read. Pure, and never throws on a text.

import { type NameNode, parse, reservedNames } from "../../grammar/index.ts";
import { ParsedFiles } from "../sources/parsed-files.ts";
import type { Sources } from "../sources/sources.ts";
import type { SetValue } from "./constructs/sizes.ts";
import { Evaluation } from "./evaluation.ts";
import { evaluate } from "./expressions.ts";
import type { Frame } from "./frame.ts";
import { type Binding, nearest, Scope } from "./meaning.ts";
import { evaluatePiece, readDisplay, usualPrecision } from "./piece.ts";
import { type Row, type Rows, readRows } from "./rows.ts";
import { readCoating, readVariants } from "./stock.ts";
import type {
	Declaration,
	Design,
	Display,
	Finding,
	Piece,
	Stock,
} from "./types.ts";

export interface CompileOptions {
	/** Values for givens, as a maker writes them: `{ width: "36 in" }`. They hold in every piece that has such a given. */
	readonly set?: ReadonlyMap<string, string>;
	/** Keeps parse results between runs. */
	readonly parsed?: ParsedFiles;
}

/** Evaluates a file with all that it uses. */
export function compile(
	sources: Sources,
	uri: string,
	options: CompileOptions = {},
): Design {
	const evaluation = new Evaluation();
	const files = new Files(
		evaluation,
		sources,
		options.parsed ?? new ParsedFiles(),
	);
	const file = files.open(uri);
	if (!file) {
		return {
			...emptyDesign(uri),
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
		};
	}
	const pieces: Piece[] = [];
	const used = new Set<string>();
	for (const { row, declaration } of file.pieces) {
		const sets = readSets(file.frame, options.set ?? new Map(), row, used);
		pieces.push(
			evaluatePiece(file.frame, row, declaration, file.display, sets),
		);
	}
	tellUnusedSets(evaluation, uri, options.set, used);
	const stocks = file.stocks();
	return {
		uri,
		pieces,
		stocks,
		declarations: evaluation.declarations,
		references: evaluation.references,
		sizesAt: evaluation.sizesAt,
		findings: [...syntaxFindings(file), ...evaluation.findings].sort(
			(a, b) =>
				(a.origin.uri === uri ? 0 : 1) - (b.origin.uri === uri ? 0 : 1) ||
				a.origin.span.start - b.origin.span.start ||
				a.origin.span.end - b.origin.span.end,
		),
		files: files.uris(),
	};
}

function emptyDesign(uri: string): Design {
	return {
		uri,
		pieces: [],
		stocks: new Map(),
		declarations: [],
		references: [],
		sizesAt: [],
		findings: [],
		files: [uri],
	};
}

function syntaxFindings(file: OpenFile): Finding[] {
	return file.faults.map((fault) => ({
		id: fault.id,
		severity: fault.severity,
		origin: { uri: file.uri, span: fault.span },
		message: fault.message,
		related: [],
		fixes: fault.fix ? [fault.fix] : [],
	}));
}

interface OpenFile {
	readonly uri: string;
	readonly frame: Frame;
	readonly display: Display;
	readonly faults: ReturnType<typeof parse>["faults"];
	readonly pieces: readonly {
		readonly row: Row;
		readonly declaration: Declaration;
	}[];
	readonly stocks: () => ReadonlyMap<string, Stock>;
}

/** The files of one run: each is read once, also when they use each other in a circle. */
class Files {
	private readonly evaluation: Evaluation;
	private readonly sources: Sources;
	private readonly parsed: ParsedFiles;
	private readonly opened = new Map<string, OpenFile | undefined>();

	constructor(evaluation: Evaluation, sources: Sources, parsed: ParsedFiles) {
		this.evaluation = evaluation;
		this.sources = sources;
		this.parsed = parsed;
	}

	uris(): string[] {
		return [...this.opened.keys()];
	}

	open(uri: string): OpenFile | undefined {
		if (this.opened.has(uri)) return this.opened.get(uri);
		const parsed = this.parsed.get(this.sources, uri);
		if (!parsed) {
			this.opened.set(uri, undefined);
			return undefined;
		}
		const { evaluation } = this;
		const rows = readRows(evaluation, uri, parsed.result.tree, "file");
		const scope = new Scope();
		const start: Frame = { evaluation, uri, unit: "in", scope };
		const display = readDisplay(start, rows, {
			unit: "in",
			precision: usualPrecision.in,
		});
		const frame: Frame = { ...start, unit: display.unit };
		const pieces: { row: Row; declaration: Declaration }[] = [];
		const stockNames: Binding[] = [];
		const file: OpenFile = {
			uri,
			frame,
			display,
			faults: parsed.result.faults,
			pieces,
			stocks: () => collectStocks(stockNames),
		};
		this.opened.set(uri, file);
		for (const row of rows.all)
			this.declareRow(frame, rows, row, pieces, stockNames);
		return file;
	}

	private declareRow(
		frame: Frame,
		rows: Rows,
		row: Row,
		pieces: { row: Row; declaration: Declaration }[],
		stockNames: Binding[],
	): void {
		switch (row.head) {
			case "use":
				this.use(frame, row, stockNames);
				return;
			case "sheet":
			case "board":
			case "veneer":
			case "fastener":
			case "coating":
			case "component":
			case "piece":
				break;
			default:
				return;
		}
		const name = row.name("name");
		if (!name || !this.mayBeNamed(frame, name)) return;
		const declaration: Declaration = {
			kind:
				row.head === "piece" || row.head === "component"
					? row.head
					: "material",
			name: name.text,
			path: name.text,
			origin: row.origin,
			nameSpan: name.span,
			doc: row.statement.doc,
		};
		this.evaluation.declare(declaration);
		const binding = this.bindingOf(frame, rows, row, declaration);
		const before = frame.scope.declare(name.text, binding);
		if (before) {
			this.tellTwice(frame, name, before);
			return;
		}
		if (declaration.kind === "material") stockNames.push(binding);
		else pieces.push({ row, declaration });
	}

	private bindingOf(
		frame: Frame,
		rows: Rows,
		row: Row,
		declaration: Declaration,
	): Binding {
		const currency = (): string | undefined =>
			rows.first("currency")?.text("currency");
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
		if (row.head === "component")
			return {
				declaration,
				meaning: () => ({ kind: "component", component: { row, frame } }),
			};
		if (row.head === "piece")
			return { declaration, meaning: () => ({ kind: "label" }) };
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
			return;
		}
		const circle = uri === frame.uri;
		const file = this.open(uri);
		if (!file || circle) {
			this.evaluation.report(
				"no-file",
				origin,
				circle
					? "This file uses itself: take the line away"
					: `There is no file "${path}" beside this one`,
			);
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
			this.import(frame, name, uri, path, file, stockNames);
	}

	private import(
		frame: Frame,
		name: NameNode,
		_uri: string,
		path: string,
		file: OpenFile,
		stockNames: Binding[],
	): void {
		// Looked up when it is needed: files may use each other's names in a circle, as long as no size does.
		const found = (): Binding | undefined => file.frame.scope.own(name.text);
		const now = found();
		const placeholder: Declaration = now?.declaration ?? {
			kind: "import",
			name: name.text,
			path: name.text,
			origin: { uri: frame.uri, span: name.span },
			nameSpan: name.span,
			doc: "",
		};
		if (now) this.evaluation.refer(frame.uri, name.span, now.declaration);
		const busy = { now: false };
		const binding: Binding = {
			declaration: placeholder,
			meaning: () => {
				if (busy.now) {
					this.evaluation.report(
						"circle",
						{ uri: frame.uri, span: name.span },
						`\`${name.text}\` is only handed round between files that use each other: declare it in one of them`,
					);
					return undefined;
				}
				busy.now = true;
				try {
					return (now ?? found())?.meaning();
				} finally {
					busy.now = false;
				}
			},
		};
		const before = frame.scope.declare(name.text, binding);
		if (before) {
			this.tellTwice(frame, name, before);
			return;
		}
		stockNames.push(binding);
		if (!now && !found()) {
			const known = [...file.frame.scope.all()].map(([known]) => known);
			const near = nearest(name.text, known);
			this.evaluation.report(
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

	private mayBeNamed(frame: Frame, name: NameNode): boolean {
		if (!reservedNames.has(name.text)) return true;
		this.evaluation.report(
			"reserved-name",
			{ uri: frame.uri, span: name.span },
			`\`${name.text}\` is a word of the language: choose another name`,
		);
		return false;
	}

	private tellTwice(frame: Frame, name: NameNode, before: Binding): void {
		this.evaluation.report(
			"named-twice",
			{ uri: frame.uri, span: name.span },
			`\`${name.text}\` is named twice in this file: rename one`,
			{
				related: [
					{
						origin: {
							uri: before.declaration.origin.uri,
							span: before.declaration.nameSpan,
						},
						message: "The first one",
					},
				],
			},
		);
	}
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

/** Values from outside, read as a maker writes them, in the unit of the file. */
function readSets(
	frame: Frame,
	set: ReadonlyMap<string, string>,
	piece: Row,
	used: Set<string>,
): Map<string, SetValue> {
	const sets = new Map<string, SetValue>();
	for (const statement of piece.block?.statements ?? []) {
		if (statement.head !== "given") continue;
		const named = statement.items[1];
		const name = named?.kind === "path" ? named.segments[0]?.text : undefined;
		const text = name === undefined ? undefined : set.get(name);
		if (name === undefined || text === undefined) continue;
		used.add(name);
		const unit = piece.block?.statements.find((one) => one.head === "unit")
			?.items[1];
		const own = unit?.kind === "path" ? unit.segments[0]?.text : undefined;
		const value = readValue(
			{ ...frame, unit: own === "mm" || own === "in" ? own : frame.unit },
			text,
		);
		const origin = { uri: frame.uri, span: statement.span };
		if (value) sets.set(name, { size: value, origin });
		else
			frame.evaluation.report(
				"bad-value",
				origin,
				`"${text}" is no value for \`${name}\`: write it as in the design, \`36\` or \`900 mm\``,
			);
	}
	return sets;
}

function readValue(frame: Frame, text: string) {
	const { tree, faults } = parse(`given value = ${text}`);
	const statement = tree.statements[0];
	if (faults.length > 0 || tree.statements.length !== 1 || !statement)
		return undefined;
	const item = statement.items[3];
	if (statement.items.length !== 4 || !item || item.kind === "equals")
		return undefined;
	// Values from outside may not name things of the design: they come before it.
	return evaluate(
		{ ...frame, scope: new Scope(), evaluation: new Evaluation() },
		item,
	);
}

function tellUnusedSets(
	evaluation: Evaluation,
	uri: string,
	set: ReadonlyMap<string, string> | undefined,
	used: ReadonlySet<string>,
): void {
	for (const name of set?.keys() ?? []) {
		if (used.has(name)) continue;
		evaluation.report(
			"unknown-name",
			{ uri, span: { start: 0, end: 0 } },
			`No piece in this file has a given \`${name}\` that could be set`,
		);
	}
}
