// What a design means once it is evaluated: materials, parts with their solids and places, joints with their fits.
// Plain data; made by `compile.ts`, read by checks, features and outputs.

import type { Declares, Edit, Span } from "../../grammar/index.ts";
import type { Placement } from "../geometry/place.ts";
import type { Solid, Vec3 } from "../geometry/solid.ts";
import type { Rational } from "../units/rational.ts";
import type { Size } from "./size.ts";

/** A place in a text. */
export interface Origin {
	readonly uri: string;
	readonly span: Span;
}

export type Severity = "error" | "warning" | "information" | "hint";

/** Something to tell about a text: from the syntax, the evaluation or a check. */
export interface Finding {
	/** Stable id, kebab-case: of the check, or of the fault in syntax or evaluation. */
	readonly id: string;
	readonly severity: Severity;
	readonly origin: Origin;
	/** One line: what is wrong, by how much, what would mend it. */
	readonly message: string;
	readonly related: readonly {
		readonly origin: Origin;
		readonly message: string;
	}[];
	readonly fixes: readonly Fix[];
}

/** A mechanical mend. Edits all lie in the finding's own file. */
export interface Fix {
	readonly title: string;
	readonly edits: readonly Edit[];
}

/** A name that a text brings into being. */
export interface Declaration {
	readonly kind: Declares;
	readonly name: string;
	/** Full path in its file, `record-bench.case.middle`. */
	readonly path: string;
	/** The whole statement. */
	readonly origin: Origin;
	/** The name alone. */
	readonly nameSpan: Span;
	readonly doc: string;
}

/** A name as it is used, and what it means: for go to definition, hover and rename. */
export interface Reference {
	readonly origin: Origin;
	readonly declaration: Declaration;
}

export type StockKind = "sheet" | "board" | "veneer" | "fastener" | "coating";

/** A variant of a material, as the stock file has it. */
export interface Stock {
	readonly kind: StockKind;
	/** `ply.three-quarter`; a coating has no variants: `hard-oil`. */
	readonly id: string;
	readonly declaration: Declaration;
	readonly species: string | undefined;
	/** Of a sheet, board or veneer: the thickness that parts are computed from, fed by its tolerance. */
	readonly thick: Size | undefined;
	/** The label's thickness (sheet), the thickness by quarters (board). */
	readonly soldAs: Size | undefined;
	readonly surfaced: Size | undefined;
	/** Half range of the thickness, mm. */
	readonly tolerance: number;
	/** length x width, the grain along the first. Sheets and veneer. */
	readonly sizes: readonly SoldSize[];
	readonly widths: { readonly low: Size; readonly high: Size } | undefined;
	readonly lengths: { readonly low: Size; readonly high: Size } | undefined;
	/** The lengths that a batten or moulding is sold in. */
	readonly soldLengths: readonly Size[];
	/** In the shop already. */
	readonly onHand: readonly OnHand[];
	/** Cut off each factory edge of a sheet first. */
	readonly trim: Size | undefined;
	/** The smallest offcut that is worth keeping, as the stock file says. */
	readonly keep: { readonly length: Size; readonly width: Size } | undefined;
	/** Parts must follow the face grain. */
	readonly grain: boolean;
	/** How boards are cut from the log; undefined = not said. */
	readonly sawn: "flat" | "quarter" | "rift" | undefined;
	/** As the stock file says; else the tables' value of the species holds. MPa in bending, along the grain and across. */
	readonly stiffness:
		| { readonly along: number; readonly across: number | undefined }
		| undefined;
	/** As the stock file says: green to oven-dry, per cent of the green size. */
	readonly shrinkage:
		| { readonly tangential: number; readonly radial: number }
		| undefined;
	readonly price: Rational | undefined;
	readonly per:
		| "sheet"
		| "board-foot"
		| "foot"
		| "metre"
		| "pack"
		| "tin"
		| undefined;
	readonly currency: string | undefined;
	/** kg per m3; undefined if neither the stock file nor the tables know it. */
	readonly density: number | undefined;
	readonly densitySource: string;
	/** Of a fastener. */
	readonly fastener:
		| { readonly size: FastenerSize; readonly pack: number | undefined }
		| undefined;
	/** Of a coating; areas in m2, volumes in litres. */
	readonly coating:
		| {
				readonly kind: "finish" | "ground" | "glue" | "filler";
				readonly coversPerLitre: number | undefined;
				readonly tin: number | undefined;
		  }
		| undefined;
	/** Coldest shop that an adhesive-backed veneer bonds in, °C. */
	readonly adhesiveAbove: number | undefined;
	readonly adhesiveBacked: boolean;
}

/** A size that a sheet or a veneer is sold in; the grain runs along its length. */
export interface SoldSize {
	readonly length: Size;
	readonly width: Size;
	/** Of one of this size; absent: the price of the stock holds. */
	readonly price?: Rational | undefined;
	/** The dealer has only so many; absent: as many as wanted. */
	readonly inStock?: number | undefined;
}

/** Sheets, boards or pieces of them that lie in the shop. */
export interface OnHand {
	readonly length: Size;
	readonly width: Size;
	readonly count: number;
	/** From where to where along the length; `across` undefined = over the whole width. */
	readonly defects: readonly {
		readonly from: Size;
		readonly to: Size;
		readonly across: { readonly from: Size; readonly to: Size } | undefined;
	}[];
}

export type FastenerKind =
	| "screw"
	| "brad"
	| "pin"
	| "nail"
	| "dowel"
	| "biscuit";

export interface FastenerSize {
	readonly kind: FastenerKind;
	/** Screw or biscuit number, nail gauge; undefined where only a diameter is given. */
	readonly number: number | undefined;
	/** mm; of a biscuit its thickness. */
	readonly diameter: number;
	/** Along its axis, exact; of a biscuit its width across the joint. */
	readonly length: Size;
	/** As a maker writes it: `#10 x 1 1/4`. */
	readonly label: string;
	/** Where its length is written, in the text of the fastener's line. */
	readonly lengthSpan?: Span;
	/** Where the number of a biscuit is written. */
	readonly numberSpan?: Span;
}

export type StageName = "rough" | "heavy" | "trimmed" | "final";

/** A size that a part has on its way. */
export interface Stage {
	readonly stage: StageName;
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
}

export type PartRole =
	| "panel"
	| "back"
	| "divider"
	| "shelf"
	| "board"
	| "layer"
	| "trim"
	| "veneer"
	| "cleat"
	| "wall-strip"
	| "aid";

/** A place where wood is taken out of a part for another. */
export interface Housing {
	readonly kind: "dado" | "groove" | "rabbet" | "mortise";
	/** Across the housing. */
	readonly width: Size;
	/** Into the face. */
	readonly depth: Size;
	/** From which face or edge it is set out, in words: "from the left end". */
	readonly datum: string;
	/** Distance from that datum to its near side. */
	readonly at: Size;
	/** Path of the part that it takes. */
	readonly takes: string;
	/** In world coordinates, mm. */
	readonly box: { readonly min: Vec3; readonly max: Vec3 };
}

/** An end or edge that is not square, or is worked. */
export interface EdgeWork {
	/** `left end`, `top edge`, `both ends`. */
	readonly where: string;
	readonly work: "mitre" | "bevel" | "angle" | "tenon" | "shape" | "taper";
	/** In words for the cut list: `45°`, `falls outward 12°, long point inside`. */
	readonly text: string;
}

export type Way = "x" | "y" | "z";

/** One piece of wood in its place. */
export interface Part {
	/** `record-bench.case.left`: unique in a design. */
	readonly id: string;
	/** Within its piece: `case.left`. */
	readonly path: string;
	/** The last name of the path. */
	readonly name: string;
	readonly role: PartRole;
	readonly declaration: Declaration;
	/** Path of the box, leg, trim … that it belongs to; its own path if it stands alone. */
	readonly owner: string;
	readonly stock: Stock;
	/** Along the grain, across it, through it. Final size. */
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size;
	/** Exact corners in the world, mm: [x, y, z]. */
	readonly min: readonly [Size, Size, Size];
	readonly max: readonly [Size, Size, Size];
	/** How its own axes (along the grain, across, through) lie in the world. */
	readonly place: Placement;
	/** In world coordinates, housings taken out. Computed once, when first asked for. */
	readonly solid: Solid;
	/** mm3, from the solid. */
	readonly volume: number;
	/** World coordinates, mm. */
	readonly centre: Vec3;
	/** In order of time; the final size is not repeated. Empty if it is cut straight to size. */
	readonly stages: readonly Stage[];
	readonly cut: {
		readonly when: "now" | "to-fit" | "last";
		/** Paths of the parts whose assembly is measured first, or that must stand before. */
		readonly after: readonly string[];
		readonly reading: string | undefined;
	};
	readonly hand: "left" | "right" | undefined;
	/** The first operation from which left and right differ ("end top angled"); undefined: they stay alike. */
	readonly handedFrom: string | undefined;
	readonly edges: readonly EdgeWork[];
	readonly housings: readonly Housing[];
	/** A reading replaced one of its sizes. */
	readonly measured: readonly ("length" | "width" | "thick")[];
	readonly notes: readonly string[];
	/** Glued up from this many strips. */
	readonly strips: number | undefined;
}

export type JointKind =
	| "butt"
	| "dado"
	| "groove"
	| "rabbet"
	| "mitre"
	| "tenon"
	| "pins"
	| "face"
	| "trim"
	| "veneer"
	| "cleat";

/** One gap that a joint must have: opening less member. */
export interface Fit {
	/** What it is: "thickness in the dado", "length between the sides". */
	readonly what: string;
	/** The place that the member goes into, with all that feeds it. */
	readonly opening: Size;
	readonly member: Size;
	readonly gap: Size;
	/** Allowed gap, mm. */
	readonly low: Rational;
	readonly high: Rational;
	/** Where the range comes from: "glued dado: common practice", "as the design says". */
	readonly rangeFrom: string;
	/** What to measure before the member is cut. */
	readonly measure: string;
	/** The text that a wrong gap is to be told at; the joint's if absent. */
	readonly origin: Origin;
	/** The written size that would mend it, if one was written: its place and which way it moves the gap. */
	readonly written:
		| {
				readonly span: Span;
				readonly size: Size;
				/** d(gap)/d(written). */
				readonly weight: number;
		  }
		| undefined;
}

/** Fasteners of one line, at their places. */
export interface FastenerRun {
	readonly size: FastenerSize;
	/** False for a tack: never counted as strength. */
	readonly counted: boolean;
	readonly origin: Origin;
	/** The part that it enters first, and the one that it holds in. */
	readonly through: Part;
	readonly into: Part;
	/** World: where each enters, and the way it is driven (unit vector). Of dowels and biscuits: the middle, and the axis across the joint. */
	readonly points: readonly Vec3[];
	readonly direction: Vec3;
	/** Degrees from straight. */
	readonly angle: number;
	readonly every: Size | undefined;
	/** Diameter in mm if pre-drilled; 0 = pre-drilled, diameter left to practice; undefined = not. */
	readonly pilot: number | undefined;
	/** Depth in mm that the head is let in; 0 = flush; undefined = on the face. */
	readonly countersink: number | undefined;
	/** Heads are set and filled. */
	readonly filled: boolean;
	/** Where another line of its block can be written: behind its brace, or, if it has none, behind the headline. */
	readonly lineSpan: Span;
	readonly hasBlock: boolean;
}

export interface Joint {
	/** Path of the joined parts: `case.top~case.left`. */
	readonly id: string;
	readonly kind: JointKind;
	readonly origin: Origin;
	/** The part with the housing, or the one that is lapped; for a butt the one whose face is met. */
	readonly host: Part;
	/** The part that enters or meets it. */
	readonly member: Part;
	/** The maker named exactly this pair (`a to b`), so it must touch. */
	readonly named: boolean;
	readonly glue: boolean;
	/** Name of the glue's coating, if given. */
	readonly glueName: string | undefined;
	readonly fasteners: readonly FastenerRun[];
	readonly fits: readonly Fit[];
	/** Distance between them where they do not touch, mm; 0 if they do. */
	readonly apart: number;
}

export interface Given {
	readonly declaration: Declaration;
	readonly size: Size;
	readonly low: Size | undefined;
	readonly high: Size | undefined;
	/** Set from outside: command line, preview, a component's user. */
	readonly set: boolean;
	readonly valueSpan: Span;
}

export interface BoxInfo {
	readonly path: string;
	readonly declaration: Declaration;
	/** Over the panels and back, without trim. */
	readonly outside: {
		readonly width: Size;
		readonly height: Size;
		readonly depth: Size;
	};
	readonly inside: {
		readonly width: Size;
		readonly height: Size;
		readonly depth: Size;
	};
	readonly min: readonly [Size, Size, Size];
	readonly max: readonly [Size, Size, Size];
	readonly panels: Readonly<
		Partial<Record<"top" | "bottom" | "left" | "right" | "back", Part>>
	>;
	readonly dividers: readonly Part[];
	readonly shelves: readonly Part[];
	readonly backing: "rabbet" | "groove" | "inset" | "applied" | "none";
	/** From the rear plane of the box to the back's rear face. */
	readonly behind: Size;
	readonly bays: readonly {
		readonly left: Part | undefined;
		readonly right: Part | undefined;
		readonly width: Size;
	}[];
}

export interface TrimInfo {
	readonly path: string;
	readonly declaration: Declaration;
	readonly strips: readonly {
		readonly part: Part;
		/** The panel whose edge it covers. */
		readonly covers: Part;
		/** Thickness of that edge. */
		readonly edge: Size;
		readonly width: Size;
		/** Left over each face before it is flushed: [one, other]. */
		readonly proud: readonly [Size, Size];
		/** The maker wrote the width. */
		readonly widthSpan: Span | undefined;
	}[];
	readonly thick: Size;
	readonly origin: Origin;
}

export interface LegInfo {
	readonly path: string;
	readonly declaration: Declaration;
	readonly layers: readonly Part[];
	readonly hand: "left" | "right" | undefined;
	readonly foot: Size;
	readonly head: Size;
	/** Where shaping takes wood: world boxes or profiles are in the layers' solids; this is the sawn blank, world mm. */
	readonly blank: { readonly min: Vec3; readonly max: Vec3 };
	/** Smallest depth (front to back) and breadth (left to right) that is left, mm, and the height at which. */
	readonly thinnest: {
		readonly depth: number;
		readonly breadth: number;
		readonly depthAt: number;
		readonly breadthAt: number;
	};
	readonly shapes: readonly {
		readonly face: "front" | "back" | "inside" | "outside";
		readonly origin: Origin;
	}[];
}

export interface VeneerInfo {
	readonly path: string;
	readonly declaration: Declaration;
	readonly sheets: readonly {
		readonly part: Part;
		readonly covers: Part;
		readonly face: "outside" | "inside";
		/** Net size of the face, along the veneer's grain and across. */
		readonly faceLength: Size;
		readonly faceWidth: Size;
		/** Cut over on each edge (before, after along the grain; before, after across). */
		readonly overhang: {
			readonly edge: string;
			readonly size: Size;
			readonly registered: boolean;
		}[];
	}[];
	readonly over: readonly string[];
	readonly order: readonly string[];
	readonly ground: FinishCoat[];
	readonly overhangSpan: Span | undefined;
	/** The panels of its `order` line. */
	readonly orderSpan: Span | undefined;
	/** The word of its `faces` line. */
	readonly facesSpan: Span | undefined;
	/** The material of its `of` line. */
	readonly materialSpan: Span | undefined;
	/** Where another line of its `ground` block can be written. */
	readonly groundSpan: Span | undefined;
	/** Its `on` line names faces, not panels: the `faces` line does not matter for them. */
	readonly namesFaces: boolean;
	readonly origin: Origin;
}

export interface MountInfo {
	readonly path: string;
	readonly declaration: Declaration;
	readonly origin: Origin;
	readonly kind: "cleat" | "rail" | "brackets";
	readonly on: Part;
	/** Brackets are bought and have none: there it is the part that they are fixed to. */
	readonly strip: Part;
	readonly wallStrip: Part | undefined;
	readonly bevel: number;
	readonly height: Size;
	readonly thick: Size;
	/** Room behind the back that the strip stands in. */
	readonly gap: Size;
	/** How far it must be lifted to come off: the hook's depth. */
	readonly lift: Size;
	/** Free height above the strip on the piece, within the space behind the back. */
	readonly above: Size;
	/** Free height below the wall strip, before something of the piece is in the way of the hook. */
	readonly below: Size;
	readonly play: Size;
	readonly fasteners: readonly FastenerRun[];
	readonly wall:
		| {
				readonly studs: Size | undefined;
				readonly studKind: "wood" | "metal";
				readonly drywall: Size | undefined;
				readonly masonry: boolean;
				readonly plaster: Size | undefined;
				readonly screw: FastenerSize | undefined;
				readonly each: number;
				/** Where the count is written; undefined: it is not. */
				readonly eachSpan?: Span | undefined;
				readonly origin: Origin;
		  }
		| undefined;
	/** Top of the wall strip above the floor at the feet. */
	readonly wallStripTop: Size;
}

export interface FinishCoat {
	readonly coats: number;
	readonly coating: string;
	readonly stock: Stock | undefined;
	readonly origin: Origin;
}

export interface FinishInfo {
	readonly name: string;
	readonly declaration: Declaration;
	readonly faces: "outside" | "inside" | "all";
	/** Paths; empty = the whole piece. */
	readonly on: readonly string[];
	readonly coats: readonly FinishCoat[];
	readonly sanding: readonly { readonly grit: number; readonly when: string }[];
}

export interface LoadInfo {
	readonly origin: Origin;
	/** kg, or kg per m of length. */
	readonly mass: Size;
	readonly perLength: boolean;
	/** Path of the part or face. */
	readonly where: string;
	readonly part: Part | undefined;
}

/** A setting of the shop: how true it cuts. mm, half range. */
export interface Shop {
	readonly kerf: Size;
	/** The narrowest strip that is sawn off; undefined = any. */
	readonly leastStrip: Size | undefined;
	/** The longest first cut through a whole sheet; undefined = any. */
	readonly firstCut: Size | undefined;
	/** Stages of cuts at the most; undefined = any. */
	readonly stages: number | undefined;
	readonly crosscut: number;
	readonly rip: number;
	readonly router: number;
	readonly mark: number;
	readonly drill: number;
	/** °C and share (0 to 1) of the air when things are made; undefined = not said. */
	readonly temperature: number | undefined;
	readonly humidity: number | undefined;
	readonly origin: Origin | undefined;
}

export interface Room {
	readonly humidity: readonly [number, number] | undefined;
	readonly temperature: number | undefined;
	readonly origin: Origin | undefined;
}

/** A reading from the shop. */
export interface MeasuredInfo {
	readonly what: string;
	readonly reading: Size;
	/** What the design says without it, if it names a size of the design. */
	readonly derived: Size | undefined;
	/** Half range, mm, that the reading could differ by without wonder. */
	readonly expected: number | undefined;
	readonly origin: Origin;
	readonly readingSpan: Span;
}

/** A part that exists. */
export interface CutInfo {
	readonly part: Part;
	readonly length: Size;
	readonly width: Size;
	readonly stage: StageName;
	readonly origin: Origin;
}

export interface StepInfo {
	readonly name: string;
	readonly declaration: Declaration;
	readonly what: string;
	readonly with: readonly string[];
	readonly after: readonly string[];
	readonly before: readonly string[];
	readonly waitMinutes: number;
}

export interface AidInfo {
	readonly name: string;
	readonly declaration: Declaration;
	readonly kind: string;
	readonly length: Size;
	readonly width: Size;
	readonly thick: Size | undefined;
	readonly stock: Stock | undefined;
	readonly serves: readonly string[];
}

/** Parts whose grain runs on from one into the next. */
export interface MatchInfo {
	/** Of one material, in the order in which they are sawn. */
	readonly parts: readonly Part[];
	/** Along the grain, one behind the other; or side by side across it. */
	readonly way: "along" | "across";
	readonly origin: Origin;
}

/** A written or derived size somewhere in the text, for hovers on expressions. */
export interface SizeAt {
	readonly origin: Origin;
	readonly size: Size;
}

export interface Display {
	readonly unit: "in" | "mm";
	/** In that unit. */
	readonly precision: Rational;
}

export interface Piece {
	readonly name: string;
	readonly kind: "piece" | "component";
	readonly declaration: Declaration;
	readonly display: Display;
	readonly editions: readonly {
		readonly number: number;
		readonly note: string;
		readonly origin: Origin;
	}[];
	readonly givens: readonly Given[];
	/** In the order of the text; parts of components stand where they are made. */
	readonly parts: readonly Part[];
	readonly partByPath: ReadonlyMap<string, Part>;
	readonly joints: readonly Joint[];
	readonly boxes: readonly BoxInfo[];
	readonly legs: readonly LegInfo[];
	readonly trims: readonly TrimInfo[];
	readonly veneers: readonly VeneerInfo[];
	readonly mounts: readonly MountInfo[];
	readonly finishes: readonly FinishInfo[];
	readonly loads: readonly LoadInfo[];
	readonly matches: readonly MatchInfo[];
	/** Share that is bought on top of the fasteners, glue and coatings that are counted: 0.1. */
	readonly spare: number;
	readonly room: Room;
	readonly shop: Shop;
	readonly measured: readonly MeasuredInfo[];
	readonly cuts: readonly CutInfo[];
	readonly steps: readonly StepInfo[];
	readonly aids: readonly AidInfo[];
	/** Over the case (boxes and lone parts, no trim), and over everything: [x, y, z] sizes, mm. */
	readonly overCase: readonly [Size, Size, Size] | undefined;
	readonly overAll: readonly [Size, Size, Size] | undefined;
	/** Sizes of the things by their path (`case.left.length`), in the order of the text, for explain and the build. */
	readonly sizes: ReadonlyMap<string, Size>;
}

/** One file with all that it uses, evaluated. */
export interface Design {
	readonly uri: string;
	readonly pieces: readonly Piece[];
	/** The materials that the file declares or uses, by id. */
	readonly stocks: ReadonlyMap<string, Stock>;
	readonly declarations: readonly Declaration[];
	readonly references: readonly Reference[];
	readonly sizesAt: readonly SizeAt[];
	/** From the syntax and the evaluation; checks add theirs. */
	readonly findings: readonly Finding[];
	/** Every file that was read for it, the file itself first. */
	readonly files: readonly string[];
}
