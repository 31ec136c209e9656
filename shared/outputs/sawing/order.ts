// In which order the cuts are made: what is large first, then so that the fence moves seldom. No cut before its blank is there.

import type { Blank } from "./blanks.ts";

/** A cut that may be made once its blank lies there. */
export interface Task {
	readonly blank: Blank;
	/** Index into the pieces of the blank: what comes off. */
	readonly piece: number;
	/** What must be set before it: cuts with the same words need nothing moved between them. */
	readonly setting: string;
	/** Kept for a saw that comes to the sheet. */
	readonly large: boolean;
}

/**
 * The tasks of a blank, in the order of its pieces, and all others' after those of the blank that they are cut from. Large ones come
 * first among those of a blank, and no large one's blank comes from a small cut.
 */
export type TaskTree = ReadonlyMap<Blank, readonly Task[]>;

/** Blank by blank, sheet by sheet. */
export function treeOrder(tree: TaskTree): readonly Task[] {
	return [...tree.values()].flat();
}

/** How often something is set: fence, stop, rule, or the track on its marks. */
export function settingsIn(tasks: readonly Task[]): number {
	return tasks.filter(
		({ setting }, index) => tasks[index - 1]?.setting !== setting,
	).length;
}

/**
 * Large cuts sheet by sheet, as a large sheet is not lifted twice; then those for which all sheets lie beside the saw. Never more
 * settings than in the order of the tree.
 */
export function fewSettings(tree: TaskTree): readonly Task[] {
	const inTree = treeOrder(tree);
	const large: Task[] = [];
	const sheets = new Set([...tree.keys()].map(({ sheet }) => sheet));
	for (const sheet of sheets) {
		const of = inTree.filter(
			(task) => task.large && task.blank.sheet === sheet,
		);
		large.push(...best(of, tree, new Set(large)));
	}
	const small = inTree.filter((task) => !task.large);
	return [...large, ...best(small, tree, new Set(large))];
}

/** The order with the fewest settings among those that are tried; that of the tree is one of them. */
function best(
	tasks: readonly Task[],
	tree: TaskTree,
	done: ReadonlySet<Task>,
): readonly Task[] {
	let found = tasks;
	let least = settingsIn(tasks);
	for (const prefer of [deepest, most]) {
		const order = new Merge(tasks, tree, done).run(prefer);
		const count = settingsIn(order);
		if (count < least) [found, least] = [order, count];
	}
	return found;
}

interface Choice {
	readonly setting: string;
	/** Tasks that can be done with it one after the other. */
	readonly doable: number;
	/** Tasks with it that must wait for another setting. */
	readonly waiting: number;
	/** Settings that follow one from another beneath what can be done. */
	readonly depth: number;
}

type Prefer = (one: Choice, other: Choice) => number;

const deepest: Prefer = (one, other) =>
	other.depth - one.depth || other.doable - one.doable;
const most: Prefer = (one, other) =>
	other.doable - one.doable || other.depth - one.depth;

/**
 * A common order of many trees of settings, short by a greedy choice (the shortest is NP-hard to find: a shortest common
 * supersequence). A setting with which everything that will ever need it can be done now costs nothing to choose.
 */
class Merge {
	/** By blank: its tasks that are still to be done. */
	private readonly open = new Map<Blank, Task[]>();
	private readonly left = new Map<string, number>();
	private readonly depths = new Map<Blank, number>();
	private readonly ready = new Set<Blank>();
	/** Blanks by the blank that they are cut from, in the order of the tree. */
	private readonly beneath = new Map<Blank, Blank[]>();

	constructor(tasks: readonly Task[], tree: TaskTree, done: ReadonlySet<Task>) {
		for (const task of tasks) {
			const known = this.open.get(task.blank);
			if (known) known.push(task);
			else this.open.set(task.blank, [task]);
			this.left.set(task.setting, (this.left.get(task.setting) ?? 0) + 1);
		}
		for (const blank of tree.keys()) {
			if (!blank.from) continue;
			const known = this.beneath.get(blank.from);
			if (known) known.push(blank);
			else this.beneath.set(blank.from, [blank]);
		}
		for (const blank of this.open.keys())
			if (isThere(blank, tree, done)) this.ready.add(blank);
		// Those beneath stand behind in the tree.
		for (const blank of [...tree.keys()].reverse()) this.measure(blank);
	}

	run(prefer: Prefer): readonly Task[] {
		const order: Task[] = [];
		while (this.ready.size > 0) {
			const setting = this.choose(prefer);
			for (const blank of inSheetOrder(this.ready))
				this.cut(blank, setting, order);
		}
		return order;
	}

	private choose(prefer: Prefer): string {
		let found: Choice | undefined;
		for (const choice of this.choices()) {
			if (choice.waiting === 0) return choice.setting;
			if (!found || prefer(choice, found) < 0) found = choice;
		}
		if (!found) throw new Error("Nothing lies ready, but blanks do");
		return found.setting;
	}

	/** In the order in which they first occur. */
	private choices(): readonly Choice[] {
		const choices = new Map<string, { doable: number; depth: number }>();
		for (const blank of this.ready) {
			const settings = new Set(this.next(blank).map((task) => task.setting));
			for (const setting of settings) {
				const sum = choices.get(setting) ?? { doable: 0, depth: 0 };
				this.reach(blank, setting, sum);
				choices.set(setting, sum);
			}
		}
		return [...choices].map(([setting, { doable, depth }]) => ({
			setting,
			doable,
			depth,
			waiting: (this.left.get(setting) ?? 0) - doable,
		}));
	}

	/** Counts what can be done on a blank, and on what comes of it, without another setting. */
	private reach(
		blank: Blank,
		setting: string,
		sum: { doable: number; depth: number },
	): void {
		const open = this.open.get(blank) ?? [];
		const can = this.doable(blank, setting);
		if (can.length === 0) return;
		sum.doable += can.length;
		sum.depth = Math.max(sum.depth, this.depths.get(blank) ?? 0);
		for (const below of this.beneath.get(blank) ?? []) {
			if (this.open.has(below) && comesWith(below, can, open.length))
				this.reach(below, setting, sum);
		}
	}

	private cut(blank: Blank, setting: string, order: Task[]): void {
		const open = this.open.get(blank) ?? [];
		const can = this.doable(blank, setting);
		if (can.length === 0) return;
		order.push(...can);
		this.left.set(setting, (this.left.get(setting) ?? 0) - can.length);
		const rest = open.filter((task) => !can.includes(task));
		if (rest.length > 0) this.open.set(blank, rest);
		else {
			this.open.delete(blank);
			this.ready.delete(blank);
		}
		for (const below of this.beneath.get(blank) ?? []) {
			if (!this.open.has(below) || !comesWith(below, can, open.length))
				continue;
			this.ready.add(below);
			this.cut(below, setting, order);
		}
	}

	/** What of a blank may be cut next. */
	private next(blank: Blank): readonly Task[] {
		const open = this.open.get(blank) ?? [];
		return blank.ordered ? open.slice(0, 1) : open;
	}

	private doable(blank: Blank, setting: string): readonly Task[] {
		const open = this.open.get(blank) ?? [];
		if (!blank.ordered) return open.filter((task) => task.setting === setting);
		const other = open.findIndex((task) => task.setting !== setting);
		return other < 0 ? open : open.slice(0, other);
	}

	/** The longest chain of different settings from here down. */
	private measure(blank: Blank): void {
		const own = new Set((this.open.get(blank) ?? []).map((t) => t.setting));
		let below = 0;
		for (const one of this.beneath.get(blank) ?? [])
			below = Math.max(below, this.depths.get(one) ?? 0);
		this.depths.set(blank, own.size + below);
	}
}

/** Whether a blank comes off by these cuts of the one above, or is left when they are its last ones. */
function comesWith(
	blank: Blank,
	cuts: readonly Task[],
	openBefore: number,
): boolean {
	return (
		cuts.some(
			({ blank: above, piece }) => above.pieces[piece]?.blank === blank,
		) ||
		(cuts.length === openBefore && isLeft(blank))
	);
}

/** It is what the last cut of the blank above leaves. */
function isLeft(blank: Blank): boolean {
	const { from } = blank;
	return from?.leavesPiece === true && from.pieces.at(-1)?.blank === blank;
}

/** Whether a blank lies there once these cuts are made. */
function isThere(
	blank: Blank,
	tree: TaskTree,
	done: ReadonlySet<Task>,
): boolean {
	const { from } = blank;
	if (!from) return true;
	const cuts = tree.get(from) ?? [];
	return isLeft(blank)
		? cuts.every((cut) => done.has(cut))
		: cuts.some(
				(cut) => done.has(cut) && from.pieces[cut.piece]?.blank === blank,
			);
}

function inSheetOrder(blanks: Iterable<Blank>): readonly Blank[] {
	return [...blanks].sort((a, b) => a.sheet - b.sheet);
}
