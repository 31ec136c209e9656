// Checks a plan of sheets from its rectangles alone, sharing no code with the optimisers: what a second person with a tape would do.

import type {
	Rectangle,
	Region,
	SheetJob,
	SheetPart,
	SheetPlan,
	SheetStock,
} from "../../shared/cutting/index.ts";

interface Placed extends Rectangle {
	readonly part: number;
	readonly turned: boolean;
}

/** All that is wrong with a plan, in words; empty for a right one. */
export function faultsOfSheetPlan(job: SheetJob, plan: SheetPlan): string[] {
	const sound = job.parts.map(isSound);
	return [
		...plan.sheets.flatMap((sheet, index) => {
			const stock = job.stocks[sheet.stock];
			if (!stock) return [`sheet ${index}: no such stock ${sheet.stock}`];
			return [
				...faultsOfTree(job, sheet.root),
				...faultsOfUsable(stock, sheet.root),
				...faultsOfParts(job, stock, partsOf(sheet.root)),
				...faultsOfShop(job, sheet.root),
			].map((fault) => `sheet ${index}: ${fault}`);
		}),
		...faultsOfCounts(job, plan, sound),
		...faultsOfPrice(job, plan),
	];
}

export function partsOf(region: Region): Placed[] {
	if (region.kind === "part") return [region];
	return region.kind === "cut" ? region.pieces.flatMap(partsOf) : [];
}

function isSound({ length, width, count }: SheetPart): boolean {
	return (
		length > 0 && width > 0 && count > 0 && Number.isFinite(length + width)
	);
}

/** Every region is cut up without rest: pieces and blades make up its size, or the last blade runs off its edge. */
function faultsOfTree(job: SheetJob, region: Region): string[] {
	if (region.kind !== "cut") return [];
	const faults: string[] = [];
	const x = region.along === "x";
	const size = x ? region.length : region.width;
	let at = x ? region.x : region.y;
	const end = at + size;
	if (region.pieces.length === 0) faults.push("a cut region without pieces");
	for (const piece of region.pieces) {
		if ((x ? piece.x : piece.y) !== at) {
			faults.push(
				`a piece at ${x ? piece.x : piece.y} that should be at ${at}`,
			);
		}
		if ((x ? piece.y : piece.x) !== (x ? region.y : region.x)) {
			faults.push("a piece that is offset across its cut");
		}
		if (
			(x ? piece.width : piece.length) !== (x ? region.width : region.length)
		) {
			faults.push(
				"a piece that is not as wide as the region that it is cut from",
			);
		}
		at += (x ? piece.length : piece.width) + job.kerf;
		faults.push(...faultsOfTree(job, piece));
	}
	const left = end - (at - job.kerf);
	if (left < 0) faults.push(`pieces that reach ${-left} beyond their region`);
	if (left > job.kerf)
		faults.push(`a rest of ${left} that belongs to no piece`);
	return faults;
}

function faultsOfUsable(stock: SheetStock, root: Region): string[] {
	const trim = stock.trim ?? 0;
	return root.x === trim &&
		root.y === trim &&
		root.length === stock.length - 2 * trim &&
		root.width === stock.width - 2 * trim
		? []
		: ["the root is not the sheet less its trimmed edges"];
}

function faultsOfParts(
	job: SheetJob,
	stock: SheetStock,
	placed: readonly Placed[],
): string[] {
	const faults: string[] = [];
	const trim = stock.trim ?? 0;
	for (const one of placed) {
		const part = job.parts[one.part];
		if (!part) {
			faults.push(`no such part ${one.part}`);
			continue;
		}
		const [length, width] = one.turned
			? [part.width, part.length]
			: [part.length, part.width];
		if (one.length !== length || one.width !== width) {
			faults.push(`part ${one.part} in a wrong size`);
		}
		if (one.turned && !part.turns) {
			faults.push(`part ${one.part} lies across its grain`);
		}
		if (
			one.x < trim ||
			one.y < trim ||
			one.x + one.length > stock.length - trim ||
			one.y + one.width > stock.width - trim
		) {
			faults.push(`part ${one.part} is outside the sheet`);
		}
		for (const defect of stock.defects ?? []) {
			if (meets(one, defect, 0)) faults.push(`part ${one.part} has a defect`);
		}
	}
	const inOrder = [...placed].sort((a, b) => a.x - b.x);
	for (const [index, one] of inOrder.entries()) {
		for (let next = index + 1; next < inOrder.length; next += 1) {
			const other = inOrder[next] as Placed;
			if (other.x >= one.x + one.length + job.kerf) break;
			if (meets(one, other, job.kerf)) {
				faults.push(
					`parts ${one.part} and ${other.part} are less than a kerf apart`,
				);
			}
		}
	}
	if (!comesApart(placed, job.kerf)) {
		faults.push("no edge-to-edge cuts take its parts apart");
	}
	return faults;
}

function meets(one: Rectangle, other: Rectangle, kerf: number): boolean {
	return (
		one.x < other.x + other.length + kerf &&
		other.x < one.x + one.length + kerf &&
		one.y < other.y + other.width + kerf &&
		other.y < one.y + one.width + kerf
	);
}

/**
 * Whether straight cuts from edge to edge part them all, found from the rectangles alone. Any cut that meets none is
 * good: what can be cut apart can be cut apart with some of it gone.
 */
function comesApart(placed: readonly Rectangle[], kerf: number): boolean {
	if (placed.length < 2) return true;
	for (const way of ["x", "y"] as const) {
		const size = way === "x" ? "length" : "width";
		const inOrder = [...placed].sort((a, b) => a[way] - b[way]);
		const groups: Rectangle[][] = [];
		let end = Number.NEGATIVE_INFINITY;
		for (const one of inOrder) {
			if (one[way] >= end + kerf) groups.push([]);
			(groups.at(-1) as Rectangle[]).push(one);
			end = Math.max(end, one[way] + one[size]);
		}
		if (groups.length > 1)
			return groups.every((some) => comesApart(some, kerf));
	}
	return false;
}

/** What the shop cannot do: too long a first cut, too narrow a strip, too many stages. */
function faultsOfShop(job: SheetJob, root: Region): string[] {
	const faults: string[] = [];
	if (root.kind === "cut" && job.longestFirstCut !== undefined) {
		const cut = root.along === "x" ? root.width : root.length;
		if (root.pieces.length > 0 && cut > job.longestFirstCut) {
			faults.push(`a first cut of ${cut}`);
		}
	}
	const stages = stagesOf(root);
	if (job.stages !== undefined && stages > job.stages) {
		faults.push(`${stages} stages of cuts`);
	}
	const least = job.leastStrip ?? 0;
	const narrow = (region: Region): boolean =>
		region.kind === "cut" &&
		region.pieces.some(
			(piece) =>
				(piece.kind === "remnant" &&
					(region.along === "x" ? piece.length : piece.width) < least) ||
				narrow(piece),
		);
	if (least > 0 && narrow(root)) {
		faults.push("a strip of waste that cannot be held");
	}
	return faults;
}

function stagesOf(region: Region): number {
	if (region.kind !== "cut") return 0;
	return Math.max(
		...region.pieces.map((piece) =>
			piece.kind === "cut" && piece.along === region.along
				? stagesOf(piece)
				: 1 + stagesOf(piece),
		),
	);
}

/** Each part as often as it is asked for, or missing for a reason; no stock more often than it is to be had. */
function faultsOfCounts(
	job: SheetJob,
	plan: SheetPlan,
	sound: readonly boolean[],
): string[] {
	const faults: string[] = [];
	const had = job.parts.map(() => 0);
	for (const sheet of plan.sheets) {
		for (const { part } of partsOf(sheet.root))
			had[part] = (had[part] ?? 0) + 1;
	}
	const used = job.stocks.map(
		(_, index) => plan.sheets.filter(({ stock }) => stock === index).length,
	);
	for (const [index, count] of used.entries()) {
		if (count > (job.stocks[index] as SheetStock).count) {
			faults.push(`stock ${index} is used ${count} times`);
		}
	}
	for (const { part, count, why } of plan.missing) {
		had[part] = (had[part] ?? 0) + count;
		if (count <= 0) faults.push(`part ${part} is missing ${count} times`);
		if (!sound[part]) continue;
		const takers = job.stocks.flatMap((stock, index) =>
			goesIn(job.parts[part] as SheetPart, stock) ? [index] : [],
		);
		if (why === "too-large" && takers.length > 0 && isPlain(job)) {
			faults.push(
				`part ${part} is called too large, but stock ${takers[0]} takes it`,
			);
		}
		if (why === "no-stock-left") {
			const left = takers.filter(
				(index) =>
					(used[index] as number) < (job.stocks[index] as SheetStock).count,
			);
			if (isPlain(job) && left.length > 0) {
				faults.push(`part ${part} is missing, but stock ${left[0]} is left`);
			}
		}
	}
	for (const [index, part] of job.parts.entries()) {
		if (sound[index] && had[index] !== part.count) {
			faults.push(`part ${index}: ${had[index]} of ${part.count}`);
		}
	}
	return faults;
}

/** Nothing but size decides whether a part goes in. */
function isPlain(job: SheetJob): boolean {
	return (
		!job.leastStrip &&
		job.longestFirstCut === undefined &&
		job.stages === undefined &&
		job.stocks.every(({ defects }) => !defects?.length)
	);
}

function goesIn(part: SheetPart, stock: SheetStock): boolean {
	const trim = 2 * (stock.trim ?? 0);
	const fits = (length: number, width: number): boolean =>
		length <= stock.length - trim && width <= stock.width - trim;
	return (
		stock.count >= 1 &&
		(fits(part.length, part.width) ||
			(part.turns && fits(part.width, part.length)))
	);
}

function faultsOfPrice(job: SheetJob, plan: SheetPlan): string[] {
	const faults: string[] = [];
	const price = plan.sheets.reduce(
		(sum, { stock }) => sum + (job.stocks[stock]?.price ?? 0),
		0,
	);
	const hair = 1e-6 * Math.max(1, Math.abs(price));
	if (Math.abs(plan.price - price) > hair) {
		faults.push(`the price is ${price}, not ${plan.price}`);
	}
	if (plan.leastPrice > price + hair) {
		faults.push(
			`cheaper (${price}) than what is called the least (${plan.leastPrice})`,
		);
	}
	if (plan.leastSheets > plan.sheets.length) {
		faults.push(
			`fewer sheets (${plan.sheets.length}) than what is called the least (${plan.leastSheets})`,
		);
	}
	return faults;
}
