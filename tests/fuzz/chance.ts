// A small generator of numbers that look random, the same for the same seed on every machine.

export class Chance {
	private state: number;

	constructor(seed: number) {
		this.state = seed >>> 0;
	}

	/** In [0, 1). Mulberry32. */
	next(): number {
		this.state = (this.state + 0x6d2b79f5) >>> 0;
		let mixed = this.state;
		mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
		mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
	}

	/** A whole number from 0 up to, but not including, `end`. */
	below(end: number): number {
		return Math.floor(this.next() * end);
	}

	/** One of a list that is not empty. */
	of<T>(list: readonly T[]): T {
		return list[this.below(list.length)] as T;
	}

	is(share: number): boolean {
		return this.next() < share;
	}
}
