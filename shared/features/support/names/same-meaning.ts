// Whether every name still means the same after an edit that only changed names: what a rename must not break.

import type { NameNode } from "../../../../grammar/index.ts";
import type { NameWorld } from "./name-world.ts";
import type { Mention, Named, Target } from "./named.ts";

/** A name whose meaning an edit would change. */
export interface Changed {
	readonly uri: string;
	/** As it stands before the edit. */
	readonly node: NameNode;
	readonly before: Target | undefined;
	/** As it would be; what is declared is told as it stands before the edit. Undefined: nothing. */
	readonly after: Target | undefined;
}

/** The lines of a file would be read in another way. */
export interface ReadAnew {
	readonly uri: string;
	readonly node: NameNode | undefined;
}

/**
 * The first name in the files that means something else in the world after the edit, or the first file whose lines are
 * read in another way. Only mentions that hold one of `names` before or after can have changed, so only they are compared.
 * Yields between files.
 */
export function* firstChange(
	before: NameWorld,
	after: NameWorld,
	uris: Iterable<string>,
	names: ReadonlySet<string>,
): Generator<void, Changed | ReadAnew | undefined> {
	const now = new Places(after);
	const was = new Places(before);
	for (const uri of uris) {
		const old = before.file(uri);
		const made = after.file(uri);
		if (!old || !made) continue;
		const mentions = old.statements.flatMap((one) => one.mentions);
		const others = made.statements.flatMap((one) => one.mentions);
		for (const [at, mention] of mentions.entries()) {
			const other = others[at];
			if (!other || !isAlike(mention, other))
				return { uri, node: mention.segments[0] };
			if (![...mention.segments, ...other.segments].some(isConcerned(names)))
				continue;
			for (const [index, node] of mention.segments.entries()) {
				const a = before.target({ mention, index });
				const b = after.target({ mention: other, index });
				const told = now.asIn(was, b);
				if (was.key(a) !== now.key(b))
					return { uri, node, before: a, after: told };
			}
		}
		if (others.length !== mentions.length || was.count(uri) !== now.count(uri))
			return { uri, node: undefined };
		yield;
	}
	return undefined;
}

function isAlike(a: Mention, b: Mention): boolean {
	return (
		a.role === b.role &&
		a.loose === b.loose &&
		a.segments.length === b.segments.length
	);
}

function isConcerned(names: ReadonlySet<string>) {
	return ({ text }: NameNode): boolean =>
		names.has(text) ||
		(text.includes("-") &&
			[...names].some((name) => text.startsWith(`${name}-`)));
}

/** What is declared in a world, each by its number in its file: an edit of names leaves the numbers as they are. */
class Places {
	private readonly world: NameWorld;
	private readonly files = new Map<
		string,
		{ readonly all: readonly Named[]; readonly numbers: Map<Named, number> }
	>();

	constructor(world: NameWorld) {
		this.world = world;
	}

	count(uri: string): number {
		return this.file(uri).all.length;
	}

	key(target: Target | undefined): string {
		if (!target) return "";
		if (target.kind === "named")
			return `${this.numbered(target.named)} ${target.suffix} ${target.mirrored}`;
		return `${target.of ? this.numbered(target.of) : ""}.${target.words.join(".")}`;
	}

	/** What another world declares at the same place. */
	asIn(other: Places, target: Target | undefined): Target | undefined {
		const named = target?.kind === "named" ? target.named : target?.of;
		if (!target || !named) return target;
		const number = this.file(named.uri).numbers.get(named) ?? -1;
		const there = other.file(named.uri).all[number] ?? named;
		return target.kind === "named"
			? { ...target, named: there }
			: { ...target, of: there };
	}

	private numbered(named: Named): string {
		return `${named.uri}#${this.file(named.uri).numbers.get(named)}`;
	}

	private file(uri: string) {
		let file = this.files.get(uri);
		if (!file) {
			const all =
				this.world.file(uri)?.statements.flatMap((one) => one.all) ?? [];
			file = { all, numbers: new Map(all.map((one, at) => [one, at])) };
			this.files.set(uri, file);
		}
		return file;
	}
}
