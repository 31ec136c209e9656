// Materials: from the lines of a stock file to what parts are made of.

import type { ContextId, Statement } from "../../grammar/index.ts";
import { panelNamed, panelSorts } from "../tables/panels.ts";
import { woodNamed, woods } from "../tables/woods.ts";
import {
	type AreaUnit,
	areaUnits,
	psi,
	volumeUnits,
} from "../units/derived.ts";
import { Rational } from "../units/rational.ts";
import { countOf, evaluateAs, positiveLength } from "./expressions.ts";
import { fastenerSize } from "./fastener-sizes.ts";
import type { Frame } from "./frame.ts";
import { type Binding, nearest } from "./meaning.ts";
import { type Row, type Rows, readRows } from "./rows.ts";
import { fact, fedBy, numberOf, type Size } from "./size.ts";
import { priceIn } from "./stock-price.ts";
import { readSizes } from "./stock-sizes.ts";
import type {
	Declaration,
	FastenerKind,
	FastenerSize,
	Stock,
	StockKind,
} from "./types.ts";

const contextsOfKind: Readonly<
	Record<string, { readonly kind: StockKind; readonly variant: ContextId }>
> = {
	sheet: { kind: "sheet", variant: "sheet-variant" },
	board: { kind: "board", variant: "board-variant" },
	veneer: { kind: "veneer", variant: "veneer-variant" },
	fastener: { kind: "fastener", variant: "fastener-variant" },
};

/** How far a planed board is off: common practice, no source. */
const planerTolerance = 0.2;

/** The variants of a `sheet`, `board`, `veneer` or `fastener` statement, each worked out when first needed. */
export function readVariants(
	frame: Frame,
	row: Row,
	group: string,
	currency: () => string | undefined,
): ReadonlyMap<string, Binding> {
	const { evaluation, uri } = frame;
	const sort = contextsOfKind[row.head];
	const variants = new Map<string, Binding>();
	if (!sort || !row.construct.block) return variants;
	const rows = readRows(evaluation, uri, row.block, row.construct.block, {
		label: `\`${group}\``,
		origin: row.headline,
	});
	for (const variant of rows.every("variant")) {
		const name = variant.name("name");
		if (!name) continue;
		const declaration: Declaration = {
			kind: "variant",
			name: name.text,
			path: `${group}.${name.text}`,
			origin: variant.origin,
			nameSpan: name.span,
			doc: variant.statement.doc,
		};
		const before = variants.get(name.text);
		if (before) {
			evaluation.report(
				"named-twice",
				{ uri, span: name.span },
				`\`${group}\` has two variants called \`${name.text}\`: rename one`,
				{
					related: [
						{
							origin: { uri, span: before.declaration.nameSpan },
							message: "The first one",
						},
					],
				},
			);
			continue;
		}
		evaluation.declare(declaration);
		const work = evaluation.lazy(declaration.path, variant.headline, () =>
			readStock(
				frame,
				sort.kind,
				sort.variant,
				rows,
				variant,
				declaration,
				currency(),
			),
		);
		variants.set(name.text, {
			declaration,
			meaning: () => {
				const stock = work();
				return stock && { kind: "stock", stock };
			},
		});
	}
	return variants;
}

/** A `coating` statement: it has no variants. */
export function readCoating(
	frame: Frame,
	row: Row,
	declaration: Declaration,
	currency: string | undefined,
): Stock {
	const rows = readRows(frame.evaluation, frame.uri, row.block, "coating");
	const covers = rows.first("covers");
	const area = covers && numberIn(frame, covers, "area");
	const areaUnit = covers?.word("area-unit") as AreaUnit | undefined;
	const perUnit = covers?.word("volume-unit") as
		| keyof typeof volumeUnits
		| undefined;
	const tin = rows.first("tin");
	const volume = tin && numberIn(frame, tin, "volume");
	const tinUnit = tin?.word("volume-unit") as
		| keyof typeof volumeUnits
		| undefined;
	const litre = volumeUnits.litre;
	return {
		...empty("coating", declaration, row),
		price: priceIn(frame, rows.first("price")),
		per: rows.first("price") ? "tin" : undefined,
		currency,
		coating: {
			kind: (rows.first("kind")?.word("kind") ?? "finish") as
				| "finish"
				| "ground"
				| "glue"
				| "filler",
			coversPerLitre:
				area && areaUnit && perUnit
					? area
							.mul(areaUnits[areaUnit])
							.div(areaUnits.m2)
							.mul(litre)
							.div(volumeUnits[perUnit])
							.toNumber()
					: undefined,
			tin:
				volume && tinUnit
					? volume.mul(volumeUnits[tinUnit]).div(litre).toNumber()
					: undefined,
		},
	};
}

function empty(kind: StockKind, declaration: Declaration, _row: Row): Stock {
	return {
		kind,
		id: declaration.path,
		declaration,
		species: undefined,
		thick: undefined,
		soldAs: undefined,
		surfaced: undefined,
		tolerance: 0,
		sizes: [],
		widths: undefined,
		lengths: undefined,
		soldLengths: [],
		onHand: [],
		trim: undefined,
		keep: undefined,
		grain: true,
		sawn: undefined,
		stiffness: undefined,
		shrinkage: undefined,
		price: undefined,
		per: undefined,
		currency: undefined,
		density: undefined,
		densitySource: "not known",
		fastener: undefined,
		coating: undefined,
		adhesiveAbove: undefined,
		adhesiveBacked: false,
	};
}

function readStock(
	frame: Frame,
	kind: StockKind,
	context: ContextId,
	group: Rows,
	variant: Row,
	declaration: Declaration,
	currency: string | undefined,
): Stock {
	const { evaluation, uri } = frame;
	const rows = readRows(evaluation, uri, variant.block, context, {
		label: `\`${declaration.path}\``,
		origin: variant.headline,
	});
	const own = (head: string): Row | undefined =>
		rows.first(head) ?? group.first(head);
	const base = empty(kind, declaration, variant);
	const priced = {
		price: priceIn(frame, rows.first("price")),
		per: rows.first("price")
			? kind === "board"
				? ((rows.first("price")?.word("per") ?? "board-foot") as
						| "board-foot"
						| "foot"
						| "metre")
				: kind === "fastener"
					? ("pack" as const)
					: ("sheet" as const)
			: undefined,
		currency,
	};
	if (kind === "fastener")
		return { ...base, ...priced, fastener: readFastener(frame, rows, variant) };

	const speciesRow = own("species");
	const species = speciesRow?.text("species");
	const bare =
		positiveLength(
			frame,
			(rows.first("thick") ?? rows.first("planed"))?.expression("thick"),
			"A thickness",
		) ?? undefined;
	const panel = species === undefined ? undefined : panelNamed(species);
	const wood = species === undefined ? undefined : woodNamed(species);
	if (speciesRow && species !== undefined && !panel && !wood)
		tellSpecies(frame, speciesRow, species, own("density") !== undefined);
	const stated = positiveLength(
		frame,
		own("tolerance")?.expression("tolerance"),
		"A tolerance",
	);
	const tolerance = stated
		? numberOf(stated)
		: kind === "board"
			? planerTolerance
			: kind === "veneer"
				? 0
				: bare
					? (panel?.tolerance(numberOf(bare)) ?? 0.4)
					: 0;
	const density = densityOf(frame, own("density"));
	return {
		...base,
		...priced,
		species,
		thick: bare && withTolerance(bare, declaration.path, tolerance),
		soldAs: positiveLength(
			frame,
			(rows.first("sold-as") ?? rows.first("rough"))?.expression("thick"),
			"A thickness",
		),
		surfaced: positiveLength(
			frame,
			rows.first("surfaced")?.expression("thick"),
			"A thickness",
		),
		tolerance,
		...readSizes(frame, rows, group),
		grain: own("face-grain")?.word("grain") !== "none",
		sawn: own("sawn")?.word("cut") as Stock["sawn"],
		stiffness: stiffnessOf(frame, own("stiffness")),
		shrinkage: shrinkageOf(frame, own("shrinks")),
		density: density ?? panel?.density ?? wood?.density,
		densitySource: density
			? "as the stock file says"
			: (panel?.source ?? wood?.source ?? "not known"),
		adhesiveBacked: rows.first("adhesive-backed") !== undefined,
		adhesiveAbove: (() => {
			const minimum = evaluateAs(
				frame,
				rows.first("adhesive-backed")?.expression("minimum"),
				"temperature",
			);
			return minimum && numberOf(minimum);
		})(),
	};
}

/** MPa in a GPa and in a million pounds-force per square inch. */
const stiffnessUnits: Readonly<Record<string, number>> = {
	GPa: 1000,
	Mpsi: psi.toNumber() * 1e6,
};

function stiffnessOf(frame: Frame, row: Row | undefined): Stock["stiffness"] {
	const unit = stiffnessUnits[row?.word("unit") ?? ""];
	const along = row && positiveNumber(frame, row, "along");
	if (!row || !along || !unit) return undefined;
	const across = row.expression("across")
		? positiveNumber(frame, row, "across")
		: undefined;
	return { along: along * unit, across: across && across * unit };
}

function shrinkageOf(frame: Frame, row: Row | undefined): Stock["shrinkage"] {
	const percent = (slot: string): number | undefined => {
		const size = evaluateAs(frame, row?.expression(slot), "ratio");
		if (!size || !row) return undefined;
		const share = numberOf(size);
		if (share > 0 && share < 0.5) return share * 100;
		frame.evaluation.report(
			"no-size",
			row.at(row.expression(slot)?.span ?? row.statement.span),
			"A shrinkage is more than 0 % and less than 50 %",
		);
		return undefined;
	};
	const tangential = percent("tangential");
	const radial = percent("radial");
	return tangential && radial ? { tangential, radial } : undefined;
}

function positiveNumber(
	frame: Frame,
	row: Row,
	slot: string,
): number | undefined {
	const value = numberIn(frame, row, slot);
	if (!value || value.sign() > 0) return value?.toNumber();
	frame.evaluation.report(
		"no-size",
		row.at(row.expression(slot)?.span ?? row.statement.span),
		"A stiffness is more than 0",
	);
	return undefined;
}

/** The thickness of a material, as it measures: every part of it moves with the same source. */
export function withTolerance(
	thick: Size,
	id: string,
	tolerance: number,
	how = "as it measures",
): Size {
	const told = fact(`${id} ${how}`, { ...thick, feeds: [] });
	return tolerance > 0
		? fedBy(told, {
				id: `thickness:${id}`,
				label: `thickness of \`${id}\``,
				tolerance,
			})
		: told;
}

function tellSpecies(
	frame: Frame,
	row: Row,
	species: string,
	hasDensity: boolean,
): void {
	if (hasDensity) return;
	const names = [
		...panelSorts.map((sort) => sort.name),
		...woods.map((wood) => wood.name),
	];
	const near = nearest(species.toLowerCase(), names);
	const expression = row.expression("species");
	frame.evaluation.report(
		"unknown-species",
		row.at(expression?.span ?? row.statement.span),
		`The tables have no \`${species}\`, so its weight is not known: ${near ? `did you mean "${near}"?` : "add a `density` line, as in `density 680 kg per m3`"}`,
		{
			severity: "information",
			...(near && expression
				? {
						fix: {
							title: `Change to "${near}"`,
							edits: [{ span: expression.span, text: `"${near}"` }],
						},
					}
				: {}),
		},
	);
}

function densityOf(frame: Frame, row: Row | undefined): number | undefined {
	const mass = evaluateAs(frame, row?.expression("mass"), "mass");
	if (!mass) return undefined;
	const cubicFoot = areaUnits.ft2.mul(Rational.of(3048, 10));
	const perCubicMetre =
		row?.word("volume") === "ft3"
			? Rational.of(1_000_000_000).div(cubicFoot)
			: Rational.ONE;
	return mass.value.mul(perCubicMetre).toNumber();
}

function numberIn(frame: Frame, row: Row, slot: string): Rational | undefined {
	return evaluateAs(frame, row.expression(slot), "number")?.value;
}

function readFastener(
	frame: Frame,
	rows: Rows,
	variant: Row,
):
	| { readonly size: FastenerSize; readonly pack: number | undefined }
	| undefined {
	const kinds: readonly FastenerKind[] = [
		"screw",
		"brad",
		"pin",
		"nail",
		"dowel",
		"biscuit",
	];
	for (const kind of kinds) {
		const row = rows.first(kind);
		if (!row) continue;
		const size = fastenerSize(frame, kind, row.expression("size"));
		return (
			size && {
				size,
				pack: countOf(frame, rows.first("pack")?.expression("pack")),
			}
		);
	}
	frame.evaluation.report(
		"missing-line",
		variant.headline,
		"This variant does not say what it is: add a line as in `screw #8 x 1 1/4`",
	);
	return undefined;
}

/** The name that a material statement declares. */
export function declarationOfStock(
	uri: string,
	statement: Statement,
	row: Row,
): Declaration | undefined {
	const name = row.name("name");
	return (
		name && {
			kind: "material",
			name: name.text,
			path: name.text,
			origin: { uri, span: statement.span },
			nameSpan: name.span,
			doc: statement.doc,
		}
	);
}
