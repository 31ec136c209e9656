// A sheet as a slicing tree that can be taken apart and put together again quickly: sizes follow from the parts, not from cuts.
import type { Axis } from "./cell.ts";
import type { Chance } from "./chance.ts";
import type { Pattern } from "./patterns.ts";
import type { Kind } from "./problem.ts";

/** What a node is, where it is not a part's kind. */
const rowX = -1;
const rowY = -2;
const none = -1;

/**
 * A sheet whose parts hang in a tree of rows along x and rows along y, in turn. A row is as long as its pieces together
 * and as wide as the widest; what the sheet has over is not bound to a place, so a part may go beside any node as long
 * as the tree still fits the sheet. Every guillotine pattern is such a tree, and every such tree one.
 *
 * One array holds the links of all nodes and one their sizes, so that a sheet is copied in no time.
 */
export class Slicing {
	/** Of the sheet, grown. */
	length: number;
	width: number;
	/** Area of the parts on it. */
	area = 0;
	parts = 0;
	root = none;
	/** Nodes looked at so far, by all probes. */
	visits = 0;
	/** Changes with every change of the sheet; a state that comes back has its old version. */
	version = 0;
	#versions = 0;
	/** Whether the last probe found any place, good or not. */
	fits = false;
	/** By node: kind of part or of row; node above; first piece; next piece. */
	#links: Int32Array;
	/** By node: size along x, size along y. */
	#sizes: Float64Array;
	#used = 0;
	#spare = none;

	// The best place that the last probe found.
	bestNode = none;
	bestAlongX = false;
	bestTurned = false;
	bestLoss = Number.POSITIVE_INFINITY;
	#itemX = 0;
	#itemY = 0;
	#turned = false;
	readonly #kinds: readonly Kind[];
	readonly #chance: Chance;
	/** Along which axis alone the whole sheet may be cut. */
	readonly #first: Axis | undefined;

	constructor(
		length: number,
		width: number,
		kinds: readonly Kind[],
		chance: Chance,
		first?: Axis,
	) {
		this.#first = first;
		this.#kinds = kinds;
		this.length = length;
		this.width = width;
		this.#chance = chance;
		this.#links = new Int32Array(4 * 16);
		this.#sizes = new Float64Array(2 * 16);
	}

	get free(): number {
		return this.length * this.width - this.area;
	}

	copyFrom(other: Slicing): void {
		if (this.#links.length < other.#links.length) {
			this.#links = new Int32Array(other.#links.length);
			this.#sizes = new Float64Array(other.#sizes.length);
		}
		if (other.#used <= 24) {
			for (let i = 4 * other.#used - 1; i >= 0; i--)
				this.#links[i] = other.#links[i] as number;
			for (let i = 2 * other.#used - 1; i >= 0; i--)
				this.#sizes[i] = other.#sizes[i] as number;
		} else {
			this.#links.set(other.#links.subarray(0, 4 * other.#used));
			this.#sizes.set(other.#sizes.subarray(0, 2 * other.#used));
		}
		this.length = other.length;
		this.width = other.width;
		this.area = other.area;
		this.parts = other.parts;
		this.version = other.version;
		this.root = other.root;
		this.#used = other.#used;
		this.#spare = other.#spare;
	}

	clear(): void {
		this.root = none;
		this.#used = 0;
		this.#spare = none;
		this.area = 0;
		this.parts = 0;
	}

	/**
	 * Looks for the best place for a part, better than `bestLoss` says; true if there is one. Best is where the squares of
	 * the free rectangles shrink least: few large ones are worth more than many small ones.
	 */
	probe(x: number, y: number, turned: boolean): boolean {
		this.fits = false;
		if (x > this.length || y > this.width) return false;
		this.#itemX = x;
		this.#itemY = y;
		this.#turned = turned;
		const before = this.bestLoss;
		const { root, length, width } = this;
		if (root === none) {
			const over = (length - x) * width;
			const above = x * (width - y);
			const loss =
				length * width * length * width - over * over - above * above;
			this.#offer(root, true, loss);
		} else {
			const w = this.#sizes[2 * root] as number;
			const h = this.#sizes[2 * root + 1] as number;
			const kind = this.#links[4 * root] as number;
			if (w + x <= length && (kind === rowX || this.#first !== "y"))
				this.#offer(root, true, loss(x, y, w, h, length, length, width, width));
			if (h + y <= width && (kind === rowY || this.#first !== "x"))
				this.#offer(
					root,
					false,
					loss(y, x, h, w, width, width, length, length),
				);
			if (kind < 0) this.#visitPieces(root, length, width);
		}
		return this.bestLoss < before;
	}

	#visitPieces(row: number, regionX: number, regionY: number): void {
		const links = this.#links;
		const sizes = this.#sizes;
		const x = this.#itemX;
		const y = this.#itemY;
		const w = sizes[2 * row] as number;
		const h = sizes[2 * row + 1] as number;
		let piece = links[4 * row + 2] as number;
		if (links[4 * row] === rowX) {
			const slack = regionX - w;
			while (piece !== none) {
				this.visits++;
				const pw = sizes[2 * piece] as number;
				const room = pw + slack;
				if (x <= room) {
					const ph = sizes[2 * piece + 1] as number;
					if (ph + y <= regionY)
						this.#offer(
							piece,
							false,
							loss(y, x, ph, pw, regionY, h, room, regionX),
						);
					if ((links[4 * piece] as number) < 0)
						this.#visitPieces(piece, room, regionY);
				}
				piece = links[4 * piece + 3] as number;
			}
		} else {
			const slack = regionY - h;
			while (piece !== none) {
				this.visits++;
				const ph = sizes[2 * piece + 1] as number;
				const room = ph + slack;
				if (y <= room) {
					const pw = sizes[2 * piece] as number;
					if (pw + x <= regionX)
						this.#offer(
							piece,
							true,
							loss(x, y, pw, ph, regionX, w, room, regionY),
						);
					if ((links[4 * piece] as number) < 0)
						this.#visitPieces(piece, regionX, room);
				}
				piece = links[4 * piece + 3] as number;
			}
		}
	}

	#offer(node: number, alongX: boolean, loss: number): void {
		this.fits = true;
		if (loss >= this.bestLoss) return;
		// Now and then a good place is overlooked, so that the search does not always end up in the same corner.
		if (this.#chance.next() < blinks) return;
		this.bestLoss = loss;
		this.bestNode = node;
		this.bestAlongX = alongX;
		this.bestTurned = this.#turned;
	}

	/** Puts a part beside a node; the place must be one that a probe has found on the sheet as it is. */
	put(node: number, alongX: boolean, kind: number, x: number, y: number): void {
		this.version = ++this.#versions;
		const leaf = this.#node(kind, x, y);
		this.area += x * y;
		this.parts++;
		if (node === none) {
			this.root = leaf;
			return;
		}
		const links = this.#links;
		const row = alongX ? rowX : rowY;
		const above = links[4 * node + 1] as number;
		if (links[4 * node] === row) this.#hang(leaf, node);
		else if (above !== none && links[4 * above] === row)
			this.#hang(leaf, above);
		else {
			const joint = this.#node(row, 0, 0);
			this.#replace(node, joint, above);
			this.#hang(node, joint);
			this.#hang(leaf, joint);
		}
		this.#resize(this.#links[4 * leaf + 1] as number);
	}

	/** Lays a pattern on the empty sheet, but for parts that `take` refuses. */
	load(pattern: Pattern, take: (kind: number) => boolean): void {
		this.version = ++this.#versions;
		this.root = this.#load(pattern, take);
	}

	#load(pattern: Pattern, take: (kind: number) => boolean): number {
		if ("kind" in pattern) {
			if (!take(pattern.kind)) return none;
			const { x, y, area } = this.#kinds[pattern.kind] as Kind;
			this.area += area;
			this.parts++;
			return pattern.turned
				? this.#node(pattern.kind, y, x)
				: this.#node(pattern.kind, x, y);
		}
		const type = pattern.alongX ? rowX : rowY;
		const pieces: number[] = [];
		for (const piece of pattern.pieces) {
			const node = this.#load(piece, take);
			if (node === none) continue;
			if (this.#links[4 * node] !== type) {
				pieces.push(node);
				continue;
			}
			pieces.push(...this.#piecesOf(node));
			this.#drop(node);
		}
		if (pieces.length < 2) return pieces[0] ?? none;
		const row = this.#node(type, 0, 0);
		for (const piece of pieces) this.#hang(piece, row);
		this.#resize(row);
		return row;
	}

	/** The pattern that lies on the sheet. */
	toPattern(): Pattern | undefined {
		return this.root === none ? undefined : this.#patternOf(this.root);
	}

	#patternOf(node: number): Pattern {
		const kind = this.#links[4 * node] as number;
		if (kind < 0)
			return {
				alongX: kind === rowX,
				pieces: this.#piecesOf(node).map((piece) => this.#patternOf(piece)),
			};
		return { kind, turned: this.#isTurned(node, kind) };
	}

	/** Takes a node and all below it off the sheet; `taken` gets the kinds of the parts. */
	takeOff(node: number, taken: (kind: number) => void): void {
		this.version = ++this.#versions;
		const above = this.#links[4 * node + 1] as number;
		if (above === none) {
			this.#release(node, taken);
			this.clear();
			return;
		}
		this.#unhang(node, above);
		this.#release(node, taken);
		const links = this.#links;
		const only = links[4 * above + 2] as number;
		if (links[4 * only + 3] !== none) {
			this.#resize(above);
			return;
		}
		// A row with one piece is no row: the piece takes its place, and its pieces join the row above of the same axis.
		const higher = links[4 * above + 1] as number;
		if (higher !== none && links[4 * only] === links[4 * higher]) {
			this.#unhang(above, higher);
			let piece = links[4 * only + 2] as number;
			while (piece !== none) {
				const next = links[4 * piece + 3] as number;
				this.#hang(piece, higher);
				piece = next;
			}
			this.#drop(only);
		} else {
			this.#replace(above, only, higher);
		}
		this.#drop(above);
		if (higher !== none) this.#resize(higher);
	}

	/** A node by chance: a part, or at times the row above it. */
	someNode(deeper: number): number {
		const links = this.#links;
		let node = this.root;
		for (;;) {
			if ((links[4 * node] as number) >= 0) return node;
			let pieces = 0;
			for (
				let piece = links[4 * node + 2] as number;
				piece !== none;
				piece = links[4 * piece + 3] as number
			)
				pieces++;
			let steps = this.#chance.below(pieces);
			node = links[4 * node + 2] as number;
			while (steps-- > 0) node = links[4 * node + 3] as number;
			if (this.#chance.next() >= deeper) return node;
		}
	}

	#isTurned(node: number, kind: number): boolean {
		return this.#sizes[2 * node] !== (this.#kinds[kind] as Kind).x;
	}

	#piecesOf(node: number): number[] {
		const pieces: number[] = [];
		let piece = this.#links[4 * node + 2] as number;
		while (piece !== none) {
			pieces.push(piece);
			piece = this.#links[4 * piece + 3] as number;
		}
		return pieces;
	}

	#node(kind: number, x: number, y: number): number {
		let node = this.#spare;
		if (node !== none) this.#spare = this.#links[4 * node + 3] as number;
		else {
			node = this.#used++;
			if (4 * node >= this.#links.length) {
				const links = new Int32Array(2 * this.#links.length);
				links.set(this.#links);
				this.#links = links;
				const sizes = new Float64Array(2 * this.#sizes.length);
				sizes.set(this.#sizes);
				this.#sizes = sizes;
			}
		}
		this.#links[4 * node] = kind;
		this.#links[4 * node + 1] = none;
		this.#links[4 * node + 2] = none;
		this.#links[4 * node + 3] = none;
		this.#sizes[2 * node] = x;
		this.#sizes[2 * node + 1] = y;
		return node;
	}

	#drop(node: number): void {
		this.#links[4 * node + 3] = this.#spare;
		this.#spare = node;
	}

	#hang(node: number, row: number): void {
		const links = this.#links;
		links[4 * node + 1] = row;
		links[4 * node + 3] = links[4 * row + 2] as number;
		links[4 * row + 2] = node;
	}

	#unhang(node: number, row: number): void {
		const links = this.#links;
		const next = links[4 * node + 3] as number;
		let before = links[4 * row + 2] as number;
		if (before === node) {
			links[4 * row + 2] = next;
			return;
		}
		while (links[4 * before + 3] !== node)
			before = links[4 * before + 3] as number;
		links[4 * before + 3] = next;
	}

	#replace(node: number, other: number, above: number): void {
		const links = this.#links;
		links[4 * other + 1] = above;
		if (above === none) {
			this.root = other;
			links[4 * other + 3] = none;
			return;
		}
		const next = links[4 * node + 3] as number;
		let before = links[4 * above + 2] as number;
		if (before === node) links[4 * above + 2] = other;
		else {
			while (links[4 * before + 3] !== node)
				before = links[4 * before + 3] as number;
			links[4 * before + 3] = other;
		}
		links[4 * other + 3] = next;
	}

	#release(node: number, taken: (kind: number) => void): void {
		const kind = this.#links[4 * node] as number;
		if (kind >= 0) {
			this.area -=
				(this.#sizes[2 * node] as number) *
				(this.#sizes[2 * node + 1] as number);
			this.parts--;
			taken(kind);
		} else {
			let piece = this.#links[4 * node + 2] as number;
			while (piece !== none) {
				const next = this.#links[4 * piece + 3] as number;
				this.#release(piece, taken);
				piece = next;
			}
		}
		this.#drop(node);
	}

	#resize(from: number): void {
		const links = this.#links;
		const sizes = this.#sizes;
		let row = from;
		while (row !== none) {
			let w = 0;
			let h = 0;
			let piece = links[4 * row + 2] as number;
			if (links[4 * row] === rowX)
				while (piece !== none) {
					w += sizes[2 * piece] as number;
					const ph = sizes[2 * piece + 1] as number;
					if (ph > h) h = ph;
					piece = links[4 * piece + 3] as number;
				}
			else
				while (piece !== none) {
					h += sizes[2 * piece + 1] as number;
					const pw = sizes[2 * piece] as number;
					if (pw > w) w = pw;
					piece = links[4 * piece + 3] as number;
				}
			if (sizes[2 * row] === w && sizes[2 * row + 1] === h) return;
			sizes[2 * row] = w;
			sizes[2 * row + 1] = h;
			row = links[4 * row + 1] as number;
		}
	}
}

const blinks = 0.005;

/**
 * By how much the squares of the free rectangles shrink when a part goes beside a node along one axis (a, the other is b).
 *
 * @param partA of the part
 * @param nodeA of the node, so far
 * @param regionA what the node may grow to
 * @param rowA the size across of the row that the node hangs in
 * @param rowB what the row itself may grow to
 */
function loss(
	partA: number,
	partB: number,
	nodeA: number,
	nodeB: number,
	regionA: number,
	rowA: number,
	regionB: number,
	rowB: number,
): number {
	const newA = nodeA + partA;
	const newB = Math.max(nodeB, partB);
	const newRow = Math.max(rowA, newA);
	const end = (rowA - nodeA) * nodeB;
	const side = (regionB - nodeB) * rowA;
	const beyond = (regionA - rowA) * rowB;
	const newEnd = (newRow - newA) * newB;
	const newSide = (regionB - newB) * newRow;
	const newBeyond = (regionA - newRow) * rowB;
	const step =
		partB < nodeB ? (nodeB - partB) * partA : (partB - nodeB) * nodeA;
	return (
		end * end +
		side * side +
		beyond * beyond -
		newEnd * newEnd -
		newSide * newSide -
		newBeyond * newBeyond -
		step * step
	);
}
