// Chance that is the same everywhere: for searches that must look elsewhere each time, and give the same plan again.

/**
 * Numbers from 0 to below 1 (Park and Miller, "Random number generators: good ones are hard to find", Communications of the
 * ACM 31, 1988, with the multiplier of 1993).
 */
export function randomFrom(seed: number): () => number {
	let state = (Math.abs(Math.trunc(seed)) % 2147483646) + 1;
	return () => {
		state = (state * 48271) % 2147483647;
		return (state - 1) / 2147483646;
	};
}
