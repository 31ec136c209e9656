// Research instances as jobs for the saw: reads the files of a folder, whatever they are called.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { BoardJob, SheetJob } from "../../../shared/cutting/index.ts";

/** What is counted: boards, equal sheets, or the cost of sheets of several sizes. */
export type Group = "boards" | "sheets" | "sizes";

export interface Instance {
	readonly id: string;
	readonly family: string;
	readonly group: Group;
	/** `OG`: parts keep their grain; `RG`: they turn; empty for boards. */
	readonly variant: "" | "OG" | "RG";
	readonly job:
		| { readonly kind: "boards"; readonly job: BoardJob }
		| { readonly kind: "sheets"; readonly job: SheetJob };
	/** Best value known, and a bound that no plan is below. */
	readonly best: number;
	readonly least: number;
}

interface Figures {
	readonly lb: number;
	readonly ub: number;
}

interface BoardEntry extends Figures {
	readonly id: string;
	readonly family: string;
	readonly stock: number;
	readonly items: readonly (readonly [number, number])[];
}

interface SheetEntry {
	readonly id: string;
	readonly family: string;
	readonly stock?: readonly [number, number];
	readonly stocks?: readonly (readonly [number, number, number])[];
	readonly items: readonly (readonly [number, number, number])[];
	readonly figures: Readonly<Record<"OG" | "RG", Figures>>;
}

/** All instances of a folder's `*.json`, in order of the files' names; what is not of the format goes to `skip`. */
export function readInstances(
	folder: string,
	kerf: number,
	skip: (file: string, why: string) => void,
): Instance[] {
	return readdirSync(folder)
		.filter((name) => name.endsWith(".json"))
		.sort()
		.flatMap((name) => {
			try {
				return instancesOf(
					JSON.parse(readFileSync(join(folder, name), "utf8")),
					kerf,
				);
			} catch (error) {
				skip(name, error instanceof Error ? error.message : String(error));
				return [];
			}
		});
}

function instancesOf(file: unknown, kerf: number): Instance[] {
	const { kind, format, instances } = file as {
		kind?: unknown;
		format?: unknown;
		instances?: unknown;
	};
	if (format !== 1 || !Array.isArray(instances))
		throw new Error("not a list of instances in format 1");
	if (kind === "boards-1d")
		return instances.map((entry: BoardEntry) => boardsOf(entry, kerf));
	if (kind === "sheets-2d" || kind === "sheets-2d-sizes")
		return instances.flatMap((entry: SheetEntry) =>
			(["OG", "RG"] as const).map((variant) =>
				sheetsOf(
					entry,
					variant,
					kind === "sheets-2d" ? "sheets" : "sizes",
					kerf,
				),
			),
		);
	throw new Error(`unknown kind ${String(kind)}`);
}

/**
 * Parts `w - kerf` on stock `W - kerf` with a blade of `kerf` are the same problem as `w` on `W` without one. All lengths are
 * enlarged first, so that something is left of the shortest.
 */
function lessKerf(
	lengths: readonly number[],
	kerf: number,
): (length: number) => number {
	const scale = Math.floor(kerf / Math.min(...lengths)) + 1;
	return (length) => length * scale - kerf;
}

function boardsOf(
	{ id, family, stock, items, lb, ub }: BoardEntry,
	kerf: number,
): Instance {
	const change = lessKerf(
		items.map(([length]) => length),
		kerf,
	);
	return {
		id,
		family,
		group: "boards",
		variant: "",
		job: {
			kind: "boards",
			job: {
				stocks: [
					{
						id: "board",
						length: change(stock),
						price: 1,
						count: Number.POSITIVE_INFINITY,
					},
				],
				parts: items.map(([length, count], index) => ({
					id: String(index),
					length: change(length),
					count,
				})),
				kerf,
			},
		},
		best: ub,
		least: lb,
	};
}

function sheetsOf(
	{ id, family, stock, stocks, items, figures }: SheetEntry,
	variant: "OG" | "RG",
	group: Group,
	kerf: number,
): Instance {
	const change = lessKerf(
		[...items.map(([length]) => length), ...items.map(([, width]) => width)],
		kerf,
	);
	const { lb, ub } = figures[variant];
	return {
		id,
		family,
		group,
		variant,
		job: {
			kind: "sheets",
			job: {
				stocks: (
					stocks ?? [[...(stock as readonly [number, number]), 1] as const]
				).map(([length, width, price], index) => ({
					id: String(index),
					length: change(length),
					width: change(width),
					price,
					count: Number.POSITIVE_INFINITY,
				})),
				parts: items.map(([length, width, count], index) => ({
					id: String(index),
					length: change(length),
					width: change(width),
					count,
					turns: variant === "RG",
				})),
				kerf,
			},
		},
		best: ub,
		least: lb,
	};
}
