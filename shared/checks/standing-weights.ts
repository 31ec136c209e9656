// What weighs where: the wood of a piece and the loads that its design gives, as forces. Worked out once for each piece.

import type { Vec3 } from "../geometry/solid.ts";
import { numberOf } from "../model/size.ts";
import type { LoadInfo, Piece, Stock } from "../model/types.ts";
import { panelGravity } from "../tables/fixings.ts";
import { woodNamed } from "../tables/woods.ts";
import { gravity } from "../units/derived.ts";

const newtonPerKilogram = gravity.toNumber();

/** A force straight down, N, at a point of the world, mm. */
export interface PlacedWeight {
	readonly force: number;
	readonly at: Vec3;
}

export interface PieceWeights {
	/** All wood that does not stay on the wall; undefined where nothing could be weighed. */
	readonly own: PlacedWeight | undefined;
	readonly loads: readonly PlacedWeight[];
	/** A load stands at a front edge: the maker has thought of somebody who leans. */
	readonly loadedInFront: boolean;
}

const known = new WeakMap<Piece, PieceWeights>();

export function weightsOf(piece: Piece): PieceWeights {
	let weights = known.get(piece);
	if (!weights) {
		weights = {
			own: ownWeight(piece),
			loads: piece.loads.map((load) => placed(piece, load)),
			loadedInFront: piece.loads.some(isInFront),
		};
		known.set(piece, weights);
	}
	return weights;
}

function ownWeight(piece: Piece): PlacedWeight | undefined {
	let mass = 0;
	const moment: [number, number, number] = [0, 0, 0];
	for (const part of piece.parts) {
		if (part.role === "aid" || part.role === "wall-strip") continue;
		const kg = (part.volume / 1e9) * (part.stock.density ?? 0);
		mass += kg;
		for (const axis of [0, 1, 2] as const)
			moment[axis] += kg * part.centre[axis];
	}
	if (!(mass > 0)) return undefined;
	return {
		force: mass * newtonPerKilogram,
		at: [moment[0] / mass, moment[1] / mass, moment[2] / mass],
	};
}

function isInFront(load: LoadInfo): boolean {
	return load.where.endsWith(".front");
}

/** In the middle of what it stands on, or at its front edge if the design says so. */
function placed(piece: Piece, load: LoadInfo): PlacedWeight {
	const { part } = load;
	const box = part
		? undefined
		: piece.boxes.find(({ path }) => path === load.where);
	const min = part?.min ?? box?.min;
	const max = part?.max ?? box?.max;
	const middle = (axis: 0 | 1 | 2): number =>
		min && max ? (numberOf(min[axis]) + numberOf(max[axis])) / 2 : 0;
	const wide = min && max ? numberOf(max[0]) - numberOf(min[0]) : 0;
	const along = part ? numberOf(part.length) : wide;
	const mass = numberOf(load.mass) * (load.perLength ? along / 1000 : 1);
	return {
		force: mass * newtonPerKilogram,
		at: [
			middle(0),
			max ? numberOf(max[1]) : 0,
			isInFront(load) && max ? numberOf(max[2]) : middle(2),
		],
	};
}

/** How the model marks a density that was written, not looked up. */
const statedDensity = "as the stock file says";

/** Specific gravity that a material holds fasteners with; undefined where neither its name nor its weight is known. */
export function holdingGravity(stock: Stock): number | undefined {
	const species = stock.species?.trim().toLowerCase();
	// A weight that the stock file states comes before the species' own.
	if (species !== undefined && stock.densitySource !== statedDensity) {
		const listed = Object.hasOwn(panelGravity, species)
			? panelGravity[species]
			: woodNamed(species)?.gravity;
		if (listed !== undefined) return listed;
	}
	// By its weight at 12 % moisture content; glue makes sheets heavier than they hold.
	return stock.density === undefined
		? undefined
		: Math.min(stock.density / 1120, stock.kind === "sheet" ? 0.5 : 1);
}
