// The layouts of some pieces for a terminal and for paper: by material what is used, then cut by cut how it is sawn up.

import { textTable } from "../../text/table.ts";
import { mixedText } from "../../units/format.ts";
import { wrap } from "../wrap.ts";
import { firstOfAll } from "./cautions.ts";
import {
	boundText,
	missingLines,
	sheetRows,
	usedText,
} from "./layout-words.ts";
import type { SawingPlan } from "./sawing-plan.ts";
import { sawingText } from "./sawing-text.ts";

/** `columns` of the page: 100 by default, never under 60. */
export function layoutText(
	plans: readonly SawingPlan[],
	options: { readonly columns?: number } = {},
): string {
	const columns = Math.max(60, options.columns ?? 100);
	const lines = (text: string, indent = 0): string =>
		wrap(text, columns - indent - 2)
			.map(
				(line, at) => `${" ".repeat(at === 0 ? indent : indent + 2)}${line}\n`,
			)
			.join("");
	return [
		[lines(heading(plans)), lines(sharedNote(plans))].join(""),
		...(plans.length === 0 ? ["Nothing to lay out.\n"] : []),
		...plans.map((plan) => materialText(plan, plans, columns, lines)),
		...(isSawn(plans) ? [lines(firstOfAll)] : []),
	].join("\n");
}

function materialText(
	plan: SawingPlan,
	plans: readonly SawingPlan[],
	columns: number,
	lines: (text: string, indent?: number) => string,
): string {
	const { layout } = plan;
	const { id } = layout.stock;
	const bound = boundText(layout);
	const cuts = sawingText(plan, { columns });
	return [
		`${id}\n${"-".repeat([...id].length)}\n`,
		...ownNote(plan, plans).map((note) => lines(note)),
		lines(`${usedText(layout)}.`),
		bound === undefined ? "" : lines(`${bound}.`),
		...layout.assumptions.map((one) => lines(`Taken: ${one}.`)),
		...missingLines(layout).map((line) => lines(`Missing: ${line}.`)),
		textTable(sheetRows(plan).map((row) => ["", ...row])),
		cuts === "" ? "" : `\n${cuts}`,
	].join("");
}

/** `Layouts: record-bench, wall-rack`. */
export function heading(plans: readonly SawingPlan[]): string {
	const names = new Set(plans.flatMap(({ layout }) => layout.pieces));
	return names.size === 0 ? "Layouts" : `Layouts: ${[...names].join(", ")}`;
}

/** What the figures are. */
export function sharedNote(plans: readonly SawingPlan[]): string {
	const [first] = plans;
	const measure =
		first && isMeasuredAlike(plans) ? `, ${measureText(first)}` : "";
	return `Parts are width x length, sheets and offcuts length x width${measure}; the grain runs along the length. Letters are those of the cut list.`;
}

/** Where pieces are measured otherwise than others, it is told with each material: empty or one. */
export function ownNote(
	plan: SawingPlan,
	plans: readonly SawingPlan[],
): readonly string[] {
	return isMeasuredAlike(plans) ? [] : [`All sizes ${measureText(plan)}.`];
}

function isMeasuredAlike(plans: readonly SawingPlan[]): boolean {
	return new Set(plans.map(measureText)).size <= 1;
}

function measureText({ layout: { display } }: SawingPlan): string {
	const { unit, precision } = display;
	const name = unit === "in" ? "inches" : "millimetres";
	const step =
		unit === "in" ? mixedText(precision) : String(precision.toNumber());
	return `in ${name} to the nearest ${step}`;
}

/** Whether anything is cut with a blade. */
export function isSawn(plans: readonly SawingPlan[]): boolean {
	return plans.some(
		({ layout, settings }) => layout.kind !== "veneer" && settings.length > 0,
	);
}
