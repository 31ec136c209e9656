// `box`: a case of four panels, a back, dividers and shelves, from an outside or inside size.

import {
	axisIndex,
	type Binding,
	type Bounds,
	faceOf,
	type Meaning,
	type PanelEdge,
	type Reach,
	reachOfBody,
	Scope,
	sides,
	type Thing,
} from "../meaning.ts";
import type { PartDraft } from "../part-builder.ts";
import {
	declareName,
	type PieceContext,
	pathIn,
	sizeAsRead,
	within,
} from "../piece-context.ts";
import { heldReach, readPlacing } from "../placing.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { minus, plus, type Size } from "../size.ts";
import type { Declaration, Way } from "../types.ts";
import { buildBack } from "./box-back.ts";
import {
	type Bay,
	baysBetween,
	buildDividers,
	buildShelves,
} from "./box-bays.ts";
import { buildPanels, type PanelName, panelNames } from "./box-panels.ts";
import { type BoxPlan, planBox } from "./box-plan.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { settleFit } from "./fit.ts";
import { settleJoin } from "./join.ts";
import { bind } from "./sizes.ts";

/** The size of a box along each axis. */
const extentNames = { x: "width", y: "height", z: "depth" } as const;

/** What the modules of a box share. */
export interface BoxWork {
	/** Its own names come first. */
	readonly context: PieceContext;
	readonly name: string;
	readonly declaration: Declaration;
	readonly rows: Rows;
	readonly plan: BoxPlan;
	/** Left, bottom and rear corner, world. */
	readonly at: readonly [Size, Size, Size];
}

export const box: ConstructMeaning = {
	declare: (context, row) => {
		const name = row.name("name");
		if (!name) return;
		const path = pathIn(context, name.text);
		const declaration = declareName(context, "box", name, row, path);
		const { thing, along } = makeBox(context, row, name.text, declaration);
		bind(context, row, {
			declaration,
			along,
			meaning: () => ({ kind: "thing", thing }),
		});
	},
	// Joins and fits in the box are settled with those of the piece: after all parts stand.
	phase: 0,
	settle: (_context, row) => {
		const inner = inners.get(row);
		if (!inner) return;
		for (const join of inner.rows.every("join"))
			settleJoin(inner.context, join);
		for (const fit of inner.rows.every("fit")) settleFit(inner.context, fit);
	},
};

/** The inside of a box by its row, from declare to settle of one run. */
const inners = new WeakMap<Row, { context: PieceContext; rows: Rows }>();

function makeBox(
	outer: PieceContext,
	row: Row,
	name: string,
	declaration: Declaration,
): { readonly thing: Thing } & Required<Pick<Binding, "along">> {
	const { evaluation } = outer;
	const scope = new Scope(outer.frame.scope);
	const context = within(outer, scope);
	const rows = readRows(evaluation, context.frame.uri, row.block, "box", {
		label: `\`${name}\``,
		origin: row.headline,
	});
	inners.set(row, { context, rows });
	const lazy = <T>(what: string, work: () => T): (() => T | undefined) =>
		evaluation.lazy(what, row.headline, work);

	const plan = lazy(`${name}'s sizes`, () => planBox(outer, rows, name, row));
	const extent = (axis: Way): Size | undefined =>
		plan()?.outside[extentNames[axis]];
	const placing = readPlacing(outer, { name, row, rows }, extent);
	/** The lower corner on one axis, which may be known where the others are not. */
	const placeOn = (axis: Way): Size | undefined => {
		const own = extent(axis);
		if (!own) return undefined;
		const held = placing[axis]();
		return held ? heldReach(held, own).low : outer.origin[axisIndex[axis]];
	};
	const place = (): readonly [Size, Size, Size] | undefined => {
		const [x, y, z] = [placeOn("x"), placeOn("y"), placeOn("z")];
		return x && y && z && [x, y, z];
	};
	const reach = (axis: Way): Reach | undefined => {
		const at = placeOn(axis);
		const own = extent(axis);
		return at && own && { low: at, high: plus(at, own) };
	};
	const panelReach = (side: PanelName): Reach | undefined => {
		const made = plan();
		const { axis, outward } = sides[side];
		const box = reach(axis);
		if (!made || !box) return undefined;
		const thick = sizeAsRead(
			outer,
			pathIn(outer, `${name}.${side}.thick`),
			made.thick[side],
		);
		return outward === -1
			? { low: box.low, high: plus(box.low, thick), panelSide: side }
			: { low: minus(box.high, thick), high: box.high, panelSide: side };
	};
	const insideReach = (axis: Way): Reach | undefined => {
		const made = plan();
		const at = placeOn(axis);
		if (!made || !at) return undefined;
		const start = {
			x: made.thick.left,
			y: made.thick.bottom,
			z: made.backFront,
		}[axis];
		const bottom = plus(at, start);
		return { low: bottom, high: plus(bottom, made.inside[extentNames[axis]]) };
	};
	const along = (
		axis: Way,
		[first, ...behind]: readonly string[],
	): (() => Reach | undefined) | undefined => {
		if (first === "inside")
			return reachOfBody(axis, behind, () => insideReach(axis));
		const panel = panelNames.find((one) => one === first);
		if (panel && plan()?.stock[panel]) {
			if (sides[panel].axis !== axis) return undefined;
			const [face, ...more] = behind;
			if (face !== "inside" && face !== "outside")
				return reachOfBody(axis, behind, () => panelReach(panel));
			if (more.length > 0) return undefined;
			const { outward } = sides[panel];
			return () => {
				const own = panelReach(panel);
				return (
					own && {
						...own,
						face: face === "outside" ? outward : (-outward as 1 | -1),
					}
				);
			};
		}
		if (first === "back" && plan()?.back) return undefined;
		return reachOfBody(
			axis,
			first === undefined ? [] : [first, ...behind],
			() => reach(axis),
		);
	};
	const work = lazy(`the inside of ${name}`, (): BoxWork | undefined => {
		const made = plan();
		const at = place();
		return made && at
			? { context, name, declaration, rows, plan: made, at }
			: undefined;
	});
	const panels = lazy(`the panels of ${name}`, () => {
		const made = work();
		return made && buildPanels(made);
	});
	const back = lazy(`the back of ${name}`, () => {
		const made = work();
		const four = panels();
		return made && four && buildBack(made, four);
	});
	/** Each line by itself, so that one shelf can be told from another. */
	const lines = (
		head: "divider" | "shelf",
		build: (row: Row) => readonly PartDraft[],
	): ReadonlyMap<Row, () => readonly PartDraft[] | undefined> =>
		new Map(
			rows.every(head).map((line) => {
				const names = line.names("names").map(({ text }) => text);
				return [
					line,
					evaluation.lazy(
						`${name}.${names.join(", ")}`,
						line.headline,
						(): readonly PartDraft[] => build(line),
					),
				];
			}),
		);
	const dividerLines = lines("divider", (line) => {
		const made = work();
		const four = panels();
		back();
		return made && four ? buildDividers(made, four, line) : [];
	});
	const dividers = lazy(`the dividers of ${name}`, () => {
		const made = work();
		const four = panels();
		const parts = [...dividerLines.values()].flatMap((line) => line() ?? []);
		return made && four ? baysBetween(made, four, parts) : undefined;
	});
	const shelfLines = lines("shelf", (line) => {
		const made = work();
		const four = panels();
		const bays = dividers();
		return made && four && bays
			? buildShelves(made, four, bays.bays, line)
			: [];
	});
	const shelves = (): readonly PartDraft[] =>
		[...shelfLines.values()].flatMap((line) => line() ?? []);
	const bounds = (): Bounds | undefined => {
		const made = plan();
		const at = place();
		if (!made || !at) return undefined;
		return {
			min: at,
			max: [
				plus(at[0], made.outside.width),
				plus(at[1], made.outside.height),
				plus(at[2], made.outside.depth),
			],
		};
	};
	const parts = lazy(`the parts of ${name}`, (): readonly PartDraft[] => {
		const made = work();
		const four = panels();
		const bays = dividers();
		const held = shelves();
		const behind = back();
		const box = bounds();
		if (!made || !four || !box) return [];
		outer.collected.boxes.push({
			path: pathIn(outer, name),
			declaration,
			outside: made.plan.outside,
			inside: made.plan.inside,
			min: box.min,
			max: box.max,
			panels: { ...four, ...(behind?.part ? { back: behind.part } : {}) },
			dividers: bays?.parts ?? [],
			shelves: held,
			backing: made.plan.back?.backing ?? "none",
			behind: made.plan.behind,
			bays: (bays?.bays ?? []).map((bay: Bay) => ({
				left: bay.left,
				right: bay.right,
				width: minus(bay.max, bay.min),
			})),
		});
		return [
			...panelNames.flatMap((one) => four[one] ?? []),
			...(behind?.part ? [behind.part] : []),
			...(bays?.parts ?? []),
			...held,
		];
	});

	declareMembers();

	function declareMembers(): void {
		const own = (text: string, meaning: () => Meaning | undefined): void => {
			scope.declare(text, { declaration, meaning });
		};
		for (const side of panelNames)
			own(side, () => {
				const part = panels()?.[side];
				return part
					? { kind: "part", part, panelSide: side }
					: faceMeaning(side);
			});
		own("back", () => {
			const part = back()?.part;
			return part
				? { kind: "part", part, panelSide: "back" }
				: faceMeaning("back");
		});
		own("front", () => faceMeaning("front"));
		for (const head of ["divider", "shelf"] as const)
			for (const line of rows.every(head))
				for (const text of line.names("names")) {
					const made: Declaration = {
						kind: "part",
						name: text.text,
						path: `${declaration.path}.${text.text}`,
						origin: line.origin,
						nameSpan: text.span,
						doc: line.statement.doc,
					};
					evaluation.declare(made);
					const list = (head === "divider" ? dividerLines : shelfLines).get(
						line,
					);
					bind(context, line, {
						declaration: made,
						meaning: () => {
							const part = list?.()?.find(
								(one) => one.declaration.nameSpan === text.span,
							);
							return part && { kind: "part", part };
						},
					});
				}
	}

	function faceMeaning(
		side: PanelName | "front" | "back",
	): Meaning | undefined {
		const box = bounds();
		if (!box) return undefined;
		return {
			kind: "face",
			face: {
				...faceOf(box, side, `${name}.${side}`),
				edges: () => frameEdges(panels() ?? {}, side),
			},
		};
	}

	const sizeMember = (size: Size | undefined): Meaning | undefined =>
		size && { kind: "size", size };

	const thing: Thing = {
		path: pathIn(outer, name),
		declaration,
		parts: () => parts() ?? [],
		bounds,
		member: (member) => {
			switch (member) {
				case "width":
				case "height":
				case "depth":
					return sizeMember(plan()?.outside[member]);
				case "inside":
					return insideThing(
						() => plan(),
						() => place(),
						`${name}.inside`,
						declaration,
					);
				case "rear": {
					const box = bounds();
					return (
						box && {
							kind: "face",
							face: faceOf(box, "back", `${name}.rear`),
						}
					);
				}
				default:
					return scope.own(member)?.meaning();
			}
		},
		memberNames: () => [
			...[...scope.all()].filter(([key]) => scope.own(key)).map(([key]) => key),
			"width",
			"height",
			"depth",
			"inside",
			"rear",
		],
	};
	return { thing, along };
}

/** `case.inside`: the clear room within, with sizes and faces. */
function insideThing(
	plan: () => BoxPlan | undefined,
	place: () => readonly [Size, Size, Size] | undefined,
	path: string,
	declaration: Declaration,
): Meaning {
	return {
		kind: "thing",
		thing: {
			path,
			declaration,
			parts: () => [],
			bounds: () => {
				const made = plan();
				const at = place();
				if (!made || !at) return undefined;
				const min = [
					plus(at[0], made.thick.left),
					plus(at[1], made.thick.bottom),
					plus(at[2], made.backFront),
				] as const;
				return {
					min,
					max: [
						plus(min[0], made.inside.width),
						plus(min[1], made.inside.height),
						plus(min[2], made.inside.depth),
					],
				};
			},
			member: (member) => {
				const size =
					member === "width" || member === "height" || member === "depth"
						? plan()?.inside[member]
						: undefined;
				return size && { kind: "size", size };
			},
			memberNames: () => [],
		},
	};
}

/** The edges of the panels that make up one side of the box: the frame that trim covers. */
function frameEdges(
	panels: Readonly<Partial<Record<PanelName, PartDraft>>>,
	side: PanelName | "front" | "back",
): PanelEdge[] {
	if (side !== "front" && side !== "back") return [];
	return panelNames.flatMap((name) => {
		const part = panels[name];
		return part
			? [
					{
						part,
						axis: "z" as const,
						outward: (side === "front" ? 1 : -1) as 1 | -1,
						side: name,
					},
				]
			: [];
	});
}
