// Times a piece of work until the figures are worth printing.

/** Milliseconds: the first run, before anything is warm, and the median of those that follow. */
export interface Timed {
	readonly first: number;
	readonly median: number;
}

/** Runs `work` once cold, then until `budget` milliseconds or `most` runs are spent, at least three times. */
export function timed(work: () => void, budget = 1500, most = 60): Timed {
	const first = once(work);
	const runs: number[] = [];
	const end = performance.now() + budget;
	while (runs.length < 3 || (performance.now() < end && runs.length < most)) {
		runs.push(once(work));
	}
	runs.sort((a, b) => a - b);
	return { first, median: runs[runs.length >> 1] as number };
}

function once(work: () => void): number {
	const start = performance.now();
	work();
	return performance.now() - start;
}
