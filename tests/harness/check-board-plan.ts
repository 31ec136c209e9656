// Checks a plan of boards from its lengths alone, sharing no code with the optimisers: what a second person with a tape would do.

import type { BoardJob, BoardPlan } from "../../shared/cutting/index.ts";

/** All that is wrong with a plan, in words; empty for a right one. The job's numbers must be sound. */
export function faultsOfBoardPlan(job: BoardJob, plan: BoardPlan): string[] {
	return [
		...plan.boards.flatMap((board, index) =>
			faultsOfBoard(job, board).map((fault) => `board ${index}: ${fault}`),
		),
		...faultsOfCounts(job, plan),
		...faultsOfMissing(job, plan),
		...faultsOfPrice(job, plan),
	];
}

type Board = BoardPlan["boards"][number];

/** Walks along the board with the saw: trim, part, blade, part, blade … */
function faultsOfBoard(job: BoardJob, board: Board): string[] {
	const stock = job.stocks[board.stock];
	if (!stock) return [`no such stock ${board.stock}`];
	if (board.parts.length === 0) return ["nothing is cut from it"];
	const trim = stock.trim ?? 0;
	const end = stock.length - trim;
	let at = trim;
	const faults: string[] = [];
	board.parts.forEach((index, place) => {
		const part = job.parts[index];
		if (!part) {
			faults.push(`no such part ${index}`);
			return;
		}
		if (place > 0) at += job.kerf;
		at += part.length;
	});
	if (at > end) faults.push(`its parts reach ${at - end} too far`);
	// The cut behind the last part may run off the end.
	const left = Math.max(0, end - at - job.kerf);
	if (board.left !== left) faults.push(`${board.left} left, not ${left}`);
	return faults;
}

/** Each part as often as it is asked for, on boards or missing; no stock more often than it is to be had. */
function faultsOfCounts(job: BoardJob, plan: BoardPlan): string[] {
	const faults: string[] = [];
	const had = job.parts.map(() => 0);
	const used = job.stocks.map(() => 0);
	for (const { stock, parts } of plan.boards) {
		used[stock] = (used[stock] ?? 0) + 1;
		for (const part of parts) had[part] = (had[part] ?? 0) + 1;
	}
	for (const { part, count } of plan.missing) {
		if (count <= 0) faults.push(`part ${part} is missing ${count} times`);
		had[part] = (had[part] ?? 0) + count;
	}
	job.parts.forEach((part, index) => {
		if (had[index] !== part.count)
			faults.push(`part ${index}: ${had[index]} of ${part.count}`);
	});
	job.stocks.forEach((stock, index) => {
		if ((used[index] as number) > stock.count)
			faults.push(
				`stock ${index} is used ${used[index]} times of ${stock.count}`,
			);
	});
	return faults;
}

/** Too large: no stock takes it, however many there are. No stock left: nothing that is left takes it, whole or in part. */
function faultsOfMissing(job: BoardJob, plan: BoardPlan): string[] {
	const room = (stock: BoardJob["stocks"][number]) =>
		stock.length - 2 * (stock.trim ?? 0);
	return plan.missing.flatMap(({ part, why }) => {
		const { length } = job.parts[part] as BoardJob["parts"][number];
		const takers = [...job.stocks.keys()].filter(
			(index) =>
				room(job.stocks[index] as BoardJob["stocks"][number]) >= length,
		);
		if (why === "too-large")
			return takers.length > 0
				? [`part ${part} is called too large, but goes into ${takers[0]}`]
				: [];
		if (takers.length === 0)
			return [`part ${part} is too large, but that is not said`];
		const spare = takers.find(
			(index) =>
				plan.boards.filter(({ stock }) => stock === index).length <
				(job.stocks[index] as BoardJob["stocks"][number]).count,
		);
		const gap = plan.boards.findIndex(({ left }) => left >= length);
		return [
			...(spare === undefined
				? []
				: [`part ${part} is missing, but stock ${spare} is left`]),
			...(gap < 0
				? []
				: [`part ${part} is missing, but there is room on board ${gap}`]),
		];
	});
}

function faultsOfPrice(job: BoardJob, plan: BoardPlan): string[] {
	const faults: string[] = [];
	const price = plan.boards.reduce(
		(sum, { stock }) => sum + (job.stocks[stock]?.price ?? Number.NaN),
		0,
	);
	if (!(Math.abs(price - plan.price) <= 1e-9 * Math.max(1, price)))
		faults.push(`a price of ${plan.price}, not ${price}`);
	if (!(plan.leastPrice <= plan.price))
		faults.push(
			`no plan below ${plan.leastPrice}, and yet one for ${plan.price}`,
		);
	if (!(plan.leastBoards <= plan.boards.length))
		faults.push(
			`no plan below ${plan.leastBoards} boards, and yet one with ${plan.boards.length}`,
		);
	return faults;
}
