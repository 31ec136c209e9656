// What the runs come to, family by family and against the targets.

import { textTable } from "../../../shared/text/table.ts";
import type { Group, Instance } from "./instances.ts";
import type { Run } from "./run.ts";

export interface Result {
	readonly instance: Instance;
	readonly run: Run;
}

const heads = [
	"instances",
	"at best known",
	"mean gap",
	"worst gap",
	"bound proven",
	"median s",
	"max s",
];

/** A line for each family and variant. */
export function familyTable(results: readonly Result[]): string {
	const lines = new Map<string, Result[]>();
	for (const result of results) {
		const { family, variant } = result.instance;
		const key = `${variant || "boards"} ${family}`;
		const line = lines.get(key);
		if (line) line.push(result);
		else lines.set(key, [result]);
	}
	return textTable(
		[
			["family", ...heads],
			...[...lines].map(([key, line]) => [key, ...cellsOf(line)]),
		],
		{ align: ["left", ...heads.map(() => "right" as const)], header: true },
	);
}

/** Targets: what the plans should come to, by group. */
const targets: Record<
	Group,
	{ readonly says: string; readonly met: (line: readonly Result[]) => boolean }
> = {
	boards: {
		says: "all at the published optimum",
		met: (line) => line.every(isBest),
	},
	sheets: {
		says: "mean gap at most 0.5 %, 95 % at the best known",
		met: (line) =>
			mean(line.map(gapOf)) <= 0.005 &&
			line.filter(isBest).length >= 0.95 * line.length,
	},
	sizes: {
		says: "each within 1 % of the best known",
		met: (line) => line.every((result) => gapOf(result) <= 0.01),
	},
};

/** A line for each group and variant, with its target; then those that are not at the best known. */
export function totals(results: readonly Result[]): string {
	const lines: string[][] = [];
	for (const group of ["boards", "sheets", "sizes"] as const)
		for (const variant of ["", "OG", "RG"] as const) {
			const line = results.filter(
				({ instance }) =>
					instance.group === group && instance.variant === variant,
			);
			if (line.length === 0) continue;
			const { says, met } = targets[group];
			const late = line.filter(({ run }) => run.seconds > 2).length;
			lines.push([
				`${group} ${variant}`.trim(),
				...cellsOf(line),
				`${met(line) ? "met" : "MISSED"}: ${says}`,
				late === 0 ? "met: 2 s each" : `MISSED by ${late}: 2 s each`,
			]);
		}
	const missed = results.filter((result) => !isBest(result));
	return [
		textTable([["total", ...heads, "plans", "time"], ...lines], {
			align: ["left", ...heads.map(() => "right" as const)],
			header: true,
		}),
		...missed.map(
			({ instance, run }) =>
				`${instance.variant || "boards"} ${instance.id}: ${run.value}, best known ${instance.best}, bound ${run.least}\n`,
		),
	].join("");
}

function cellsOf(line: readonly Result[]): string[] {
	const seconds = line.map(({ run }) => run.seconds).sort((a, b) => a - b);
	const gaps = line.map(gapOf);
	const proven = line.filter(({ run }) => run.value <= run.least + 1e-6);
	return [
		String(line.length),
		String(line.filter(isBest).length),
		percent(mean(gaps)),
		percent(Math.max(...gaps)),
		String(proven.length),
		(seconds[seconds.length >> 1] as number).toFixed(2),
		(seconds.at(-1) as number).toFixed(2),
	];
}

function gapOf({ instance, run }: Result): number {
	return run.value / instance.best - 1;
}

function isBest({ instance, run }: Result): boolean {
	return run.value <= instance.best + 1e-6;
}

function mean(list: readonly number[]): number {
	return list.reduce((sum, one) => sum + one, 0) / list.length;
}

function percent(share: number): string {
	return `${(100 * share).toFixed(2)} %`;
}
