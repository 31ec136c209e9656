// The search for few parts: sheets are taken apart in places and filled again until all parts lie on the sheets of the goal.
import type { Axis } from "./cell.ts";
import type { Chance } from "./chance.ts";
import type { Pattern } from "./patterns.ts";
import type { Kind } from "./problem.ts";
import { Slicing } from "./slicing.ts";

/** A sheet that a goal allows: its size, grown, and the axis along which alone it may be cut first, if there is one. */
export interface Place {
	readonly x: number;
	readonly y: number;
	readonly first?: Axis | undefined;
}

/**
 * One goal: these sheets, these parts. After S. Gardeyn, T. Wauters, A goal-driven ruin and recreate heuristic for the 2D
 * variable-sized bin packing problem with guillotine constraints, EJOR 301 (2022), with late acceptance (E. Burke, Y. Bykov,
 * The late acceptance hill-climbing heuristic, EJOR 258, 2017); both from memory.
 */
export class Refill {
	readonly sheets: Slicing[] = [];
	/** By kind: parts that lie on no sheet. */
	readonly loose: Int32Array;
	looseArea = 0;
	visits = 0;
	readonly kinds: readonly Kind[];
	readonly chance: Chance;
	readonly #shadows: Slicing[] = [];
	readonly #changed: number[] = [];
	readonly #isChanged: boolean[] = [];
	readonly #savedLoose: Int32Array;
	/** By sheet and kind: at which version of the sheet the kind was found not to fit on it. */
	readonly #unfit: Int32Array;
	readonly #order: number[] = [];
	readonly #keys: Float64Array;
	readonly #history: Float64Array;
	#turn = 0;
	#cost = 0;

	constructor(
		kinds: readonly Kind[],
		places: readonly Place[],
		wanted: ArrayLike<number>,
		chance: Chance,
	) {
		this.kinds = kinds;
		this.chance = chance;
		this.loose = Int32Array.from(wanted);
		this.#savedLoose = Int32Array.from(wanted);
		this.#unfit = new Int32Array(places.length * kinds.length).fill(-1);
		this.#keys = new Float64Array(kinds.length);
		this.#history = new Float64Array(historyLength);
		for (const { x, y, first } of places) {
			this.sheets.push(new Slicing(x, y, kinds, chance, first));
			this.#shadows.push(new Slicing(x, y, kinds, chance, first));
			this.#isChanged.push(false);
		}
		kinds.forEach(({ area }, kind) => {
			this.looseArea += area * (this.loose[kind] ?? 0);
		});
	}

	/** Lays a pattern on a sheet, as far as there are loose parts for it. */
	load(index: number, pattern: Pattern): void {
		this.sheets[index]?.load(pattern, (kind) => {
			if (this.loose[kind] === 0) return false;
			this.loose[kind] = (this.loose[kind] as number) - 1;
			this.looseArea -= (this.kinds[kind] as Kind).area;
			return true;
		});
	}

	readonly #loosen = (kind: number): void => {
		this.loose[kind] = (this.loose[kind] as number) + 1;
		this.looseArea += (this.kinds[kind] as Kind).area;
	};

	/** Fills in what is loose, and makes this the state from which the search goes on. */
	begin(): void {
		this.#recreate();
		for (const index of this.#changed) this.#isChanged[index] = false;
		this.#changed.length = 0;
		this.#savedLoose.set(this.loose);
		this.#cost = this.looseArea;
		this.#history.fill(this.#cost);
		this.#turn = 0;
	}

	/** One ruin, one filling; kept or undone. */
	step(): void {
		const before = this.looseArea;
		this.#ruin();
		this.#recreate();
		const cost = this.looseArea;
		const slot = this.#turn++ % historyLength;
		if (cost <= this.#cost || cost <= (this.#history[slot] as number)) {
			this.#cost = cost;
			this.#savedLoose.set(this.loose);
			for (const index of this.#changed) this.#isChanged[index] = false;
		} else {
			for (const index of this.#changed) {
				(this.sheets[index] as Slicing).copyFrom(
					this.#shadows[index] as Slicing,
				);
				this.#isChanged[index] = false;
			}
			this.loose.set(this.#savedLoose);
			this.looseArea = before;
		}
		this.#changed.length = 0;
		this.#history[slot] = this.#cost;
	}

	#touch(index: number): void {
		if (this.#isChanged[index]) return;
		this.#isChanged[index] = true;
		this.#changed.push(index);
		(this.#shadows[index] as Slicing).copyFrom(this.sheets[index] as Slicing);
	}

	#ruin(): void {
		const { chance, sheets } = this;
		const count = Math.min(sheets.length, 1 + chance.below(3));
		for (let i = 0; i < count; i++) {
			const index = chance.below(sheets.length);
			const sheet = sheets[index] as Slicing;
			if (sheet.root === -1) continue;
			this.#touch(index);
			if (chance.next() < 0.3) {
				sheet.takeOff(sheet.root, this.#loosen);
				continue;
			}
			let some = 1 + chance.below(Math.min(8, sheet.parts));
			while (some > 0 && sheet.root !== -1) {
				const parts = sheet.parts;
				sheet.takeOff(sheet.someNode(0.8), this.#loosen);
				some -= parts - sheet.parts;
			}
		}
	}

	#recreate(): void {
		const { kinds, loose, sheets } = this;
		const order = this.#order;
		order.length = 0;
		for (let kind = 0; kind < kinds.length; kind++)
			if ((loose[kind] as number) > 0) order.push(kind);
		this.#sort(order);
		for (const kind of order) {
			const shape = kinds[kind] as Kind;
			while ((loose[kind] as number) > 0) {
				let best = -1;
				let least = Number.POSITIVE_INFINITY;
				for (let index = 0; index < sheets.length; index++) {
					const sheet = sheets[index] as Slicing;
					if (sheet.free < shape.area) continue;
					const slot = index * kinds.length + kind;
					if (this.#unfit[slot] === sheet.version) continue;
					const visits = sheet.visits;
					sheet.bestLoss = least;
					let found = sheet.probe(shape.x, shape.y, false);
					let fits = sheet.fits;
					if (shape.turns) {
						if (sheet.probe(shape.y, shape.x, true)) found = true;
						fits ||= sheet.fits;
					}
					this.visits += 2 + sheet.visits - visits;
					if (!fits) this.#unfit[slot] = sheet.version;
					if (!found) continue;
					best = index;
					least = sheet.bestLoss;
				}
				if (best === -1) break;
				this.#touch(best);
				const sheet = sheets[best] as Slicing;
				const x = sheet.bestTurned ? shape.y : shape.x;
				const y = sheet.bestTurned ? shape.x : shape.y;
				sheet.put(sheet.bestNode, sheet.bestAlongX, kind, x, y);
				loose[kind] = (loose[kind] as number) - 1;
				this.looseArea -= shape.area;
			}
		}
	}

	#sort(order: number[]): void {
		const { kinds, chance } = this;
		const keys = this.#keys;
		const by = chance.below(5);
		const noise = chance.next() < 0.5 ? 0.1 : 0.5;
		for (const kind of order) {
			const { x, y, area } = kinds[kind] as Kind;
			const key =
				by === 0
					? area
					: by === 1
						? Math.max(x, y)
						: by === 2
							? x
							: by === 3
								? y
								: Math.min(x, y);
			keys[kind] = key * (1 - noise * chance.next());
		}
		order.sort((a, b) => (keys[b] as number) - (keys[a] as number));
	}
}

const historyLength = 10;
