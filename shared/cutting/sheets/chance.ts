// Numbers that look like chance and are the same everywhere: the search's own generator.

/** Xorshift with 32 bits, shifts 13, 17, 5 (G. Marsaglia, Xorshift RNGs, Journal of Statistical Software 8, 2003; from memory). */
export class Chance {
	#state: number;

	constructor(start: number) {
		this.#state = (start | 0) === 0 ? 1 : start | 0;
	}

	/** A whole number from 0 up to, but not including, `end`. */
	below(end: number): number {
		return Math.floor(this.next() * end);
	}

	/** From 0 up to, but not including, 1. */
	next(): number {
		let state = this.#state;
		state ^= state << 13;
		state ^= state >>> 17;
		state ^= state << 5;
		this.#state = state;
		return (state >>> 0) / 4_294_967_296;
	}
}
