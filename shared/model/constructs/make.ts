// `make`: a thing made from a component, with givens of its own, in its place.

import { Evaluation } from "../evaluation.ts";
import { evaluate } from "../expressions.ts";
import type { Frame } from "../frame.ts";
import {
	axisIndex,
	type Bounds,
	type ComponentMeaning,
	nearest,
	pathText,
	reachOfBody,
	Scope,
	type Thing,
} from "../meaning.ts";
import { resolve } from "../names.ts";
import { boundsAround } from "../owners.ts";
import type { Held } from "../part-builder.ts";
import {
	type Collected,
	declareName,
	emptyCollected,
	type Made,
	type PieceContext,
	pathIn,
} from "../piece-context.ts";
import { readPlacing } from "../placing.ts";
import { shadowReadings } from "../readings.ts";
import { type Row, type Rows, readRows } from "../rows.ts";
import { minus, plus, type Size, zero } from "../size.ts";
import type { Declaration, Part, Way } from "../types.ts";
import type { ConstructMeaning } from "./construct-meaning.ts";
import { bind, type SetValue } from "./sizes.ts";

/** Works out all lines of a component in a context; `piece.ts` hands it in. */
export type Populate = (
	context: PieceContext,
	rows: Rows,
	sets: ReadonlyMap<string, SetValue>,
) => void;

/** Components in one another, beyond which a design is refused. */
const deepest = 20;

/** Components that one `make` line can bring, with all that they make in turn. */
const most = 500;

interface Instance {
	readonly scope: Scope;
	readonly parts: readonly Part[];
}

export function make(populate: Populate): ConstructMeaning {
	return {
		declare: (context, row) => {
			const name = row.name("name");
			if (!name) return;
			const path = pathIn(context, name.text);
			const declaration = declareName(context, "group", name, row, path);
			const plan = context.evaluation.lazy(
				`${name.text}'s sizes`,
				row.headline,
				() => planMake(populate, context, row, name.text),
			);
			const placing = readPlacing(
				context,
				{
					name: name.text,
					row,
					rows: readRows(
						context.evaluation,
						context.frame.uri,
						row.block,
						"make",
					),
				},
				(axis) => {
					const bounds = plan()?.bounds;
					const index = axisIndex[axis];
					return bounds && minus(bounds.max[index], bounds.min[index]);
				},
			);
			const origin = (axis: Way): Size =>
				originOn(context, axis, placing[axis](), plan()?.bounds);
			const work = context.evaluation.lazy(name.text, row.headline, () =>
				plan()?.run([origin("x"), origin("y"), origin("z")]),
			);
			bind(context, row, {
				declaration,
				along: (axis, behind) =>
					behind.some((one) => plan()?.names.has(one))
						? undefined
						: reachOfBody(axis, behind, () => {
								const bounds = plan()?.bounds;
								const index = axisIndex[axis];
								return (
									bounds && {
										low: moved(bounds.min[index], origin(axis)),
										high: moved(bounds.max[index], origin(axis)),
									}
								);
							}),
				meaning: () => ({
					kind: "thing",
					thing: thingOf(path, declaration, work),
				}),
			});
		},
	};
}

function thingOf(
	path: string,
	declaration: Declaration,
	work: () => Instance | undefined,
): Thing {
	const own = (): string[] => {
		const scope = work()?.scope;
		return [...(scope?.all() ?? [])]
			.map(([name]) => name)
			.filter((name) => scope?.own(name));
	};
	return {
		path,
		declaration,
		parts: () => work()?.parts ?? [],
		bounds: () => boundsAround(work()?.parts ?? []),
		member: (member) => work()?.scope.own(member)?.meaning(),
		memberNames: own,
	};
}

/** A component with its givens set, before it has a place. */
interface Plan {
	/** What it measures, made at the origin. */
	readonly bounds: Bounds | undefined;
	/** What its own lines name: a part called `top` is not its upper face. */
	readonly names: ReadonlySet<string>;
	readonly run: (origin: PieceContext["origin"]) => Instance;
}

function planMake(
	populate: Populate,
	context: PieceContext,
	row: Row,
	name: string,
): Plan | undefined {
	const component = componentOf(context, row);
	if (!component) return undefined;
	const made = madeIn(context, row, component);
	if (!made) return undefined;
	const rows = readRows(
		context.evaluation,
		context.frame.uri,
		row.block,
		"make",
	);
	const sets = readSets(context, component, rows);
	const prefix = pathIn(context, name);
	const run = (
		evaluation: Evaluation,
		collected: Collected,
		origin: PieceContext["origin"],
	): Instance =>
		populated(populate, component, sets, {
			...context,
			evaluation,
			collected,
			origin,
			prefix,
			made,
		});
	const key = `${prefix} ${[...sets].map(([given, { size }]) => `${given}=${size.dimension} ${size.bare ?? ""} ${size.value.toString()}`).join(" ")}`;
	if (!made.bounds.has(key)) {
		// Once at the origin and for nobody to see: what it measures must be known before it can be placed.
		const aside = { ...emptyCollected(), readings: context.collected.readings };
		const trial = run(new Evaluation(), aside, [zero, zero, zero]);
		made.bounds.set(key, boundsAround(trial.parts));
	}
	return {
		bounds: made.bounds.get(key),
		names: new Set(
			componentRows(context.evaluation, component).all.flatMap((line) =>
				[...line.names("name"), ...line.names("names")].map(({ text }) => text),
			),
		),
		run: (origin) =>
			run(
				context.evaluation,
				// Its givens are set here: they are none of the piece's.
				{ ...context.collected, givens: [] },
				origin,
			),
	};
}

function componentOf(
	context: PieceContext,
	row: Row,
): ComponentMeaning | undefined {
	const ref = row.ref("component");
	const meaning = ref && resolve(context.frame, ref);
	if (!ref || !meaning) return undefined;
	if (meaning.kind === "component") return meaning.component;
	context.evaluation.report(
		"not-a-component",
		row.at(ref.span),
		`\`${pathText(ref.segments)}\` is no component: declare it with \`component ${pathText(ref.segments)} { … }\`, or take one with \`use\``,
	);
	return undefined;
}

/** What is made in what; a component in itself, or too many in one another, are told. */
function madeIn(
	context: PieceContext,
	row: Row,
	component: ComponentMeaning,
): Made | undefined {
	const { statement } = component.row;
	const name = component.row.name("name")?.text ?? "";
	const chain = context.made?.chain ?? [];
	const budget = context.made?.budget ?? { left: most };
	if (chain.includes(statement)) {
		context.evaluation.report(
			"circle",
			row.headline,
			`\`${name}\` is made from itself${chain.at(-1) === statement ? "" : ", by way of others"}: take this line out, or make it from another component`,
		);
		return undefined;
	}
	if (chain.length >= deepest || budget.left <= 0) {
		context.evaluation.report(
			"too-deep",
			row.headline,
			chain.length >= deepest
				? `More than ${deepest} components are made in one another: make some of them beside each other`
				: `More than ${most} components are made in one another by one line: make fewer`,
		);
		return undefined;
	}
	budget.left--;
	return {
		component: name,
		chain: [...chain, statement],
		bounds: context.made?.bounds ?? new Map(),
		budget,
	};
}

function populated(
	populate: Populate,
	component: ComponentMeaning,
	sets: ReadonlyMap<string, SetValue>,
	outer: PieceContext,
): Instance {
	const { evaluation, collected } = outer;
	const scope = new Scope(component.frame.scope);
	const rows = componentRows(evaluation, component);
	const unit = rows.first("unit")?.word("unit");
	const frame: Frame = {
		...component.frame,
		evaluation,
		unit: unit === "in" || unit === "mm" ? unit : component.frame.unit,
		scope,
		floor: outer.origin[1],
	};
	const context: PieceContext = { ...outer, frame };
	shadowReadings(context);
	const before = collected.parts.length;
	populate(context, rows, sets);
	return { scope, parts: collected.parts.slice(before) };
}

function componentRows(
	evaluation: Evaluation,
	component: ComponentMeaning,
): Rows {
	return readRows(
		evaluation,
		component.frame.uri,
		component.row.block,
		"component",
	);
}

/** The values of `set` lines; a name that is no given of the component is told. */
function readSets(
	context: PieceContext,
	component: ComponentMeaning,
	rows: Rows,
): Map<string, SetValue> {
	const sets = new Map<string, SetValue>();
	const givens = componentRows(context.evaluation, component)
		.every("given")
		.flatMap((given) => given.name("name")?.text ?? []);
	const label = component.row.name("name")?.text ?? "component";
	for (const row of rows.every("set")) {
		const name = row.name("name");
		const value = row.expression("value");
		if (!name || !value) continue;
		if (!givens.includes(name.text)) {
			const near = nearest(name.text, givens);
			context.evaluation.report(
				"unknown-name",
				row.at(name.span),
				`\`${label}\` has no given \`${name.text}\`${
					near
						? `: did you mean \`${near}\`?`
						: givens.length > 0
							? `: it has ${givens.map((given) => `\`${given}\``).join(", ")}`
							: ": nothing of it can be set"
				}`,
				near
					? {
							fix: {
								title: `Change to \`${near}\``,
								edits: [{ span: name.span, text: near }],
							},
						}
					: {},
			);
			continue;
		}
		if (sets.has(name.text)) {
			context.evaluation.report(
				"said-twice",
				row.headline,
				`\`${name.text}\` is set twice: take one of the two lines away`,
			);
			continue;
		}
		const size = evaluate(context.frame, value);
		if (size) sets.set(name.text, { size, origin: row.at(value.span) });
	}
	return sets;
}

/** Where its own x = 0, floor or z = 0 comes to stand, so that its face is where the line holds it. */
function originOn(
	context: PieceContext,
	axis: Way,
	held: Held | undefined,
	bounds: Bounds | undefined,
): Size {
	const index = axisIndex[axis];
	if (!held || !bounds) return context.origin[index];
	const face = (held.side === -1 ? bounds.min : bounds.max)[index];
	return face.value.isZero() ? held.at : minus(held.at, face);
}

/** Where a place in the component comes to stand. */
function moved(place: Size, origin: Size): Size {
	return place.value.isZero() ? origin : plus(origin, place);
}
