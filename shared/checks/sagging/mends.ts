// What would stop a part from sagging: more thickness, a support in the middle, a strip on its front edge. Each is bent anew.

import type { SectionLayer } from "../../mechanics/sections.ts";
import { numberOf } from "../../model/size.ts";
import type {
	Part,
	Piece,
	Design as Project,
	Stock,
} from "../../model/types.ts";
import { Rational } from "../../units/rational.ts";
import { show } from "../words.ts";
import { bentAs, type Design, type SagFigures, type Sagging } from "./sag.ts";
import { extent, woodOf } from "./stiffness.ts";

export interface Mends {
	/** Least thickness (of a rail: height) that would do, mm, and the material of the design that has it. */
	readonly thick:
		| { readonly least: number; readonly stock: Stock | undefined }
		| undefined;
	/** A support in the middle of the worst span would do. */
	readonly support: boolean;
	/** A strip glued to the front edge, flush above: mm. */
	readonly strip:
		| {
				readonly thick: number;
				readonly height: number;
				readonly wood: string;
		  }
		| undefined;
}

export function mendsOf(
	project: Project,
	piece: Piece,
	design: Design,
	sagging: Sagging,
	figures: SagFigures,
): Mends {
	return {
		thick: thicker(project, piece, design, figures),
		support: supported(design, sagging, figures),
		strip: stripped(project, piece, design, figures),
	};
}

function holds(design: Design, figures: SagFigures): boolean {
	const bent = bentAs(design, figures);
	return bent !== undefined && bent.used <= 1;
}

/** Marks that a mend is rounded up to, mm. */
function markOf({ display }: Piece): number {
	return display.unit === "in" ? 25.4 / 16 : 1;
}

function thicker(
	project: Project,
	piece: Piece,
	design: Design,
	figures: SagFigures,
): Mends["thick"] {
	const { own } = design;
	const mark = markOf(piece);
	const raised = (height: number): Design => ({
		...design,
		own: { ...own, height, bottom: own.bottom + own.height - height },
	});
	const first = Math.ceil(own.height / mark + 1e-9);
	// Of something absurdly thick, no more marks are tried than a rail has.
	const last = Math.min(first + 200, Math.floor((3 * own.height) / mark));
	for (let i = first; i <= last; i++) {
		if (!holds(raised(i * mark), figures)) continue;
		const stock = isFlat(design)
			? thinnestLike(project, design.part, (thick) =>
					holds(raised(thick), figures),
				)
			: undefined;
		return { least: i * mark, stock };
	}
	return undefined;
}

/** Lies on its face: its height is its thickness. */
function isFlat({ part }: Design): boolean {
	return Math.abs(extent(part, 1) - numberOf(part.thick)) < 1e-6;
}

/** The thinnest variant of the same material that is thick enough. */
function thinnestLike(
	project: Project,
	part: Part,
	enough: (thick: number) => boolean,
): Stock | undefined {
	const family = familyOf(part.stock);
	let best: Stock | undefined;
	for (const stock of project.stocks.values()) {
		if (familyOf(stock) !== family || !stock.thick) continue;
		if (stock.species !== part.stock.species) continue;
		const thick = numberOf(stock.thick);
		if (best?.thick && numberOf(best.thick) <= thick) continue;
		if (thick > numberOf(part.thick) && enough(thick)) best = stock;
	}
	return best;
}

function familyOf({ id }: Stock): string {
	const dot = id.indexOf(".");
	return dot < 0 ? id : id.slice(0, dot);
}

function supported(
	design: Design,
	{ worst }: Sagging,
	figures: SagFigures,
): boolean {
	if (worst.overhang) return false;
	const at = (worst.from + worst.to) / 2;
	return holds(
		{
			...design,
			supports: [...design.supports, { at, kind: "pinned" } as const].sort(
				(a, b) => a.at - b.at,
			),
		},
		figures,
	);
}

/** A strip higher than this is an apron, not a lip, mm. */
const highest = 76.2;

function stripped(
	project: Project,
	piece: Piece,
	design: Design,
	figures: SagFigures,
): Mends["strip"] {
	if (!isFlat(design) || design.part.role === "board") return undefined;
	const wood = stripWood(project, design);
	if (!wood) return undefined;
	const { own } = design;
	const mark = markOf(piece);
	const top = own.bottom + own.height;
	// An edge that has a strip gets a higher one in its place.
	const front = design.trimmed.findIndex(
		(strip) => numberOf(strip.min[2]) >= numberOf(design.part.max[2]) - 1,
	);
	const glued = design.glued.filter((_, i) => i !== front);
	for (let i = Math.ceil(own.height / mark); i * mark <= highest; i++) {
		const height = i * mark;
		const strip: SectionLayer = {
			elasticity: wood.elasticity,
			width: wood.thick,
			height,
			bottom: top - height,
		};
		if (holds({ ...design, glued: [...glued, strip] }, figures))
			return { thick: wood.thick, height, wood: wood.id };
	}
	return undefined;
}

/** The wood of the strip that is there, else the thinnest board of the design whose stiffness is known. */
function stripWood(
	project: Project,
	design: Design,
):
	| { readonly id: string; readonly thick: number; readonly elasticity: number }
	| undefined {
	const [own] = design.trimmed;
	const boards = [...project.stocks.values()].filter(
		({ kind }) => kind === "board",
	);
	let best: { id: string; thick: number; elasticity: number } | undefined;
	for (const stock of own ? [own.stock] : boards) {
		const elasticity = stock.stiffness?.along ?? woodOf(stock)?.elasticity;
		const thick = own
			? Math.min(extent(own, 0), extent(own, 2))
			: stock.thick && numberOf(stock.thick);
		if (elasticity === undefined || thick === undefined) continue;
		if (!best || thick < best.thick) best = { id: stock.id, thick, elasticity };
	}
	return best;
}

/** ", or ...": what would mend it, in words. */
export function mendText(
	piece: Piece,
	design: Design,
	{ thick, support, strip }: Mends,
): string {
	const { display } = piece;
	const ways: string[] = [];
	if (thick)
		ways.push(
			thick.stock
				? `\`${thick.stock.id}\` (${show(display, thick.stock.thick ?? Rational.ZERO)} thick)`
				: `${show(display, thick.least)} ${isFlat(design) ? "thick" : "high"}`,
		);
	if (support)
		ways.push(
			design.part.role === "board"
				? "a support in its middle"
				: "a divider or another support in its middle",
		);
	if (strip)
		ways.push(
			`a strip of \`${strip.wood}\` ${show(display, strip.thick)} x ${show(display, strip.height)} high glued to its front edge`,
		);
	if (ways.length === 0)
		return "give it a support or take some of the load off";
	return `${ways.join(", or ")} would do`;
}
