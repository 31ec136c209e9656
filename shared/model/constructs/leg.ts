// `leg`: one board or a glue-up of layers beside a box, under it or under a part; `handed` makes a left and a right.

import { contactOf } from "../contact.ts";
import { type Reach, reachOfBody, Scope, type Thing } from "../meaning.ts";
import { MirroredScope } from "../mirrored-scope.ts";
import { boundsAround } from "../owners.ts";
import type { PartDraft } from "../part-builder.ts";
import {
	declareName,
	type PieceContext,
	pathIn,
	sizeAsRead,
	within,
} from "../piece-context.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { minus, numberOf, plus } from "../size.ts";
import type { Declaration } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { settleJoin } from "./join.ts";
import {
	buildLayers,
	type Layer,
	type LegSpec,
	readLayer,
} from "./leg-layers.ts";
import { type LegPlace, mirroredPlace, placeOfLeg } from "./leg-place.ts";
import { bind } from "./sizes.ts";

interface Standing {
	readonly context: PieceContext;
	readonly name: string;
	readonly place: LegPlace | undefined;
	readonly layers: readonly PartDraft[];
}

/** The legs of a line, from declare to settle of one run. */
const inners = new WeakMap<
	Row,
	{ rows: Rows; legs: readonly (() => Standing | undefined)[] }
>();

export const leg: ConstructMeaning = {
	declare: (context, row) => {
		const names = row.names("names");
		const handed = row.has("handed");
		tellHandedness(context, row, names.length, handed);
		const rows = readRows(
			context.evaluation,
			context.frame.uri,
			row.block,
			"leg",
			{ label: `\`${names[0]?.text ?? "leg"}\``, origin: row.headline },
		);
		const first = names[0]?.text ?? "";
		const layers = layerDeclarations(context, rows, first);
		const place = context.evaluation.lazy(
			`the place of ${first}`,
			row.headline,
			() => placeOfLeg(context, rows, first, row),
		);
		const legs: (() => Standing | undefined)[] = [];
		names.slice(0, handed ? 2 : 1).forEach((name, index) => {
			const mirrored = index === 1;
			const path = pathIn(context, name.text);
			const declaration = declareName(context, "leg", name, row, path);
			const scope = mirrored
				? new MirroredScope(context.frame.scope)
				: new Scope(context.frame.scope);
			const inner = within(context, scope);
			const made = new Map<Declaration, PartDraft>();
			const read = new Map(
				[...layers].map(([line, layer]) => [
					line,
					context.evaluation.lazy(
						`${name.text}.${layer.name}`,
						line.headline,
						() => readLayer(inner, name.text, line, layer),
					),
				]),
			);
			const heightOf = (layer: Layer): Reach => ({
				low: layer.bottom,
				high: plus(
					layer.bottom,
					sizeAsRead(
						context,
						`${path}.${layer.name}.length`,
						minus(layer.top, layer.bottom),
					),
				),
			});
			const work = context.evaluation.lazy(name.text, row.headline, () => {
				const at = place();
				const there = at && mirrored ? mirroredPlace(at) : at;
				const spec: LegSpec = {
					name: name.text,
					declaration,
					rows,
					layers: read,
					handed,
					made,
				};
				return {
					context: inner,
					name: name.text,
					place: there,
					layers: there ? buildLayers(inner, spec, there) : [],
				};
			});
			legs.push(work);
			const layerNames = [...layers.values()];
			for (const [line, layer] of layers)
				scope.declare(layer.name, {
					declaration: layer,
					along: (axis, behind) =>
						axis === "y"
							? reachOfBody(axis, behind, () => {
									const one = read.get(line)?.();
									return one && heightOf(one);
								})
							: undefined,
					meaning: () => {
						// Shapes are read when the layers stand: they may be told from one.
						const part =
							made.get(layer) ??
							work()?.layers.find((one) => one.declaration === layer);
						return part && { kind: "part", part };
					},
				});
			const thing: Thing = {
				path,
				declaration,
				parts: () => work()?.layers ?? [],
				bounds: () => boundsAround(work()?.layers ?? []),
				member: (member) => {
					const part = work()?.layers.find((one) => one.name === member);
					return part && { kind: "part", part };
				},
				memberNames: () => layerNames.map((layer) => layer.name),
			};
			bind(context, row, {
				declaration,
				along: (axis, behind) =>
					axis === "y" && !layerNames.some(({ name }) => name === behind[0])
						? reachOfBody(axis, behind, () =>
								around(
									[...read.values()].flatMap((layer) => {
										const one = layer();
										return one ? [heightOf(one)] : [];
									}),
								),
							)
						: undefined,
				meaning: () => ({ kind: "thing", thing }),
			});
		});
		inners.set(row, { rows, legs });
	},
	phase: 1,
	settle: (_context, row) => {
		const inner = inners.get(row);
		for (const work of inner?.legs ?? []) {
			const standing = work();
			if (!standing) continue;
			joinToPanels(standing);
			for (const join of inner?.rows.every("join") ?? [])
				settleJoin(standing.context, join);
		}
	},
};

function around(reaches: readonly Reach[]): Reach | undefined {
	const [first, ...rest] = reaches;
	if (!first) return undefined;
	return rest.reduce(
		(all, one) => ({
			low: numberOf(one.low) < numberOf(all.low) ? one.low : all.low,
			high: numberOf(one.high) > numberOf(all.high) ? one.high : all.high,
		}),
		first,
	);
}

function tellHandedness(
	context: PieceContext,
	row: Row,
	count: number,
	handed: boolean,
): void {
	if (handed ? count === 2 : count === 1) return;
	context.evaluation.report(
		"handed-pair",
		row.headline,
		handed
			? "`handed` makes a left and a right: give it two names, as in `leg front-left, front-right handed`"
			: "Several legs in one line would stand in the same place: write `handed` for a left and a right, or give each a line",
	);
}

/** Each layer is one name in the text, also where a line makes two legs. */
function layerDeclarations(
	context: PieceContext,
	rows: Rows,
	leg: string,
): Map<Row, Declaration> {
	const layers = new Map<Row, Declaration>();
	const names = new Set<string>();
	for (const row of rows.every("layer")) {
		const name = row.name("name");
		if (!name) continue;
		if (names.has(name.text)) {
			context.evaluation.report(
				"named-twice",
				row.at(name.span),
				`\`${name.text}\` is named twice here: give this layer another name`,
			);
			continue;
		}
		names.add(name.text);
		const path = pathIn(context, `${leg}.${name.text}`);
		layers.set(row, declareName(context, "layer", name, row, path));
	}
	return layers;
}

/** A layer that stands under a panel meets it, whether or not a line says what holds it there. */
function joinToPanels({ context, place, layers }: Standing): void {
	if (!place) return;
	for (const layer of layers) {
		const top = layer.max[1];
		for (const part of place.family()) {
			if (numberOf(part.min[1]) !== numberOf(top)) continue;
			if (contactOf(part, layer)?.axis !== "y") continue;
			context.collected.joints.of(
				"butt",
				part as PartDraft,
				layer,
				layer.declaration.origin,
			);
		}
	}
}
