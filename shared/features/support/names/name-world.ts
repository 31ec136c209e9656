// Finds what a name means, over files: the names of a text, those that it takes from others, and what a dot leads to.

import {
	type FileNode,
	type NameNode,
	type Node,
	nodeAt,
	reservedNames,
	type Statement,
} from "../../../../grammar/index.ts";
import type { Mention, MentionedAt, Named, Target, Use } from "./named.ts";
import {
	baseOf,
	boxSides,
	namesIn,
	type StatementNames,
} from "./read-names.ts";

/** Texts with their trees by uri, as they stand at one moment. */
export interface Trees {
	/** Undefined if there is no such file. */
	tree(uri: string): FileNode | undefined;
	/** The text of the tree. */
	text(uri: string): string | undefined;
	/** The uri that a `use … from "path"` in the file `from` means; undefined where it is not followed. */
	resolve(from: string, path: string): string | undefined;
}

/** The names of one file. */
export interface FileNames {
	readonly uri: string;
	readonly tree: FileNode;
	readonly statements: readonly StatementNames[];
	/** What its lines may name: materials, components, and what it takes from other files. */
	readonly scope: ReadonlyMap<string, Named | Taken>;
	/** All that it declares at its top, pieces too. */
	readonly top: readonly Named[];
	readonly uses: readonly Use[];
}

/** A name that a file takes from another. */
export interface Taken {
	readonly kind: "taken";
	readonly node: NameNode;
	readonly use: Use;
}

const kept = new WeakMap<FileNode, FileNames>();

/** The world of names at one moment: of no use any more once a text has changed. */
export class NameWorld {
	private readonly trees: Trees;
	private readonly files = new Map<string, FileNames | undefined>();
	private readonly paths = new Map<string, string | undefined>();

	constructor(trees: Trees) {
		this.trees = trees;
	}

	resolve(from: string, path: string): string | undefined {
		const key = `${from}\n${path}`;
		if (!this.paths.has(key))
			this.paths.set(key, this.trees.resolve(from, path));
		return this.paths.get(key);
	}

	text(uri: string): string {
		return this.trees.text(uri) ?? "";
	}

	/** Undefined if there is no such file. */
	file(uri: string): FileNames | undefined {
		if (!this.files.has(uri)) {
			const tree = this.trees.tree(uri);
			this.files.set(uri, tree && fileNames(uri, tree));
		}
		return this.files.get(uri);
	}

	/** What a name at the top of a file means there: also one that the file takes from others. */
	topName(
		uri: string,
		name: string,
		seen = new Set<string>(),
	): Named | undefined {
		if (seen.has(uri)) return undefined;
		seen.add(uri);
		const found = this.file(uri)?.scope.get(name);
		if (found?.kind !== "taken") return found;
		const other = this.resolve(uri, found.use.path.value);
		return other === undefined ? undefined : this.topName(other, name, seen);
	}

	/** What the first names of a mention mean, up to and with the one at `index`. */
	target({ mention, index }: MentionedAt): Target | undefined {
		const { segments, uri, scope, role, component } = mention;
		const first = segments[0];
		if (!first) return undefined;
		if (role === "use") return asNamed(this.topName(uri, first.text));
		if (role === "set") {
			const made = component && this.whole(component);
			const given =
				made?.kind === "named" && made.named.kind === "component"
					? made.named.inner?.names.get(first.text)
					: undefined;
			return given?.construct.head === "given" ? asNamed(given) : undefined;
		}
		let target = this.first(mention, first.text, segments.length === 1);
		const mirrored = isMirrored(scope);
		for (let at = 1; target && at <= index; at++)
			target = this.member(target, segments[at]?.text ?? "", mirrored);
		return target;
	}

	/** What a mention means, with all of its names. */
	whole(mention: Mention): Target | undefined {
		return this.target({ mention, index: mention.segments.length - 1 });
	}

	/** The name at an offset, as the text has it. */
	at(
		uri: string,
		offset: number,
	): { readonly node: NameNode; readonly is: Named | MentionedAt } | undefined {
		const file = this.file(uri);
		if (!file) return undefined;
		for (const at of [offset, offset - 1]) {
			const nodes = nodeAt(file.tree, at);
			const node = nodes.findLast(
				(one): one is NameNode => one.kind === "name",
			);
			const is = node && topNames(file, nodes)?.at(node);
			if (node && is && node.span.start <= offset && offset <= node.span.end)
				return { node, is };
		}
		return undefined;
	}

	private first(
		mention: Mention,
		name: string,
		alone: boolean,
	): Target | undefined {
		if (name === "floor" && alone)
			return { kind: "fixed", of: undefined, words: [name] };
		for (let scope = mention.scope; scope; scope = scope.outer) {
			if (scope.behindDot) continue;
			if (scope.fixed.has(name))
				return { kind: "fixed", of: scope.holder, words: [name] };
			const found = scope.names.get(name);
			if (found) return asNamed(found);
		}
		const top = this.topName(mention.uri, name);
		if (top) return asNamed(top);
		return mention.role === "order" && alone && mention.holder
			? this.made(mention.holder, name)
			: undefined;
	}

	/** What a name behind a dot means. */
	private member(
		target: Target,
		name: string,
		mirrored: boolean,
	): Target | undefined {
		if (target.kind === "fixed")
			return faceWords.has(name)
				? { ...target, words: [...target.words, name] }
				: undefined;
		const { named } = target;
		const fixed = (has: boolean): Target | undefined =>
			has ? { kind: "fixed", of: named, words: [name] } : undefined;
		const own = named.inner?.names.get(name);
		switch (named.kind) {
			case "material":
				return named.construct.head === "coating"
					? fixed(stockWords.has(name))
					: asNamed(own);
			case "variant":
				return fixed(stockWords.has(name));
			case "box":
				return fixed(boxSides.has(name) || boxWords.has(name)) ?? asNamed(own);
			case "leg":
				return asNamed(own) ?? fixed(thingWords.has(name));
			case "group": {
				const made = named.from && this.whole(named.from);
				const part =
					made?.kind === "named" && made.named.kind === "component"
						? made.named.inner
						: undefined;
				const one = part?.names.get(name);
				const turns =
					mirrored &&
					(name === "left" || name === "right") &&
					(part?.names.has("left") || part?.names.has("right")) === true;
				if (one) return asNamed(one, "", turns);
				return fixed(thingWords.has(name));
			}
			case "trim":
			case "veneer":
				return (
					(namesByPart(named, name) ? this.made(named, name) : undefined) ??
					fixed(true)
				);
			case "mount":
				return fixed(true);
			case "part":
			case "layer":
				return fixed(faceWords.has(name));
			default:
				return undefined;
		}
	}

	/** A sheet or strip by the name of the part that it lies on: `skin.seat`, `skin.seat-inside`. */
	private made(covering: Named, name: string): Target | undefined {
		const under = covering.on ?? [];
		const wanted = baseOf(name);
		for (const mention of under) {
			for (let index = mention.segments.length - 1; index >= 0; index--) {
				const target = this.target({ mention, index });
				if (target?.kind !== "named") continue;
				const plain = this.partIn(target.named, name, 8);
				if (plain) return asNamed(plain);
				const based = wanted && this.partIn(target.named, wanted.base, 8);
				if (based) return asNamed(based, wanted.suffix);
				break;
			}
		}
		return undefined;
	}

	/** The part of a thing, or of what it is made of, that has a name. */
	private partIn(named: Named, name: string, deep: number): Named | undefined {
		if (named.kind === "part" || named.kind === "layer")
			return named.name === name ? named : undefined;
		if (deep === 0) return undefined;
		const made = named.from && this.whole(named.from);
		const inner = made?.kind === "named" ? made.named.inner : named.inner;
		for (const one of inner?.all ?? []) {
			const found = this.partIn(one, name, deep - 1);
			if (found) return found;
		}
		return undefined;
	}
}

function asNamed(
	named: Named | undefined,
	suffix = "",
	mirrored = false,
): Target | undefined {
	return named && { kind: "named", named, suffix, mirrored };
}

/** Strips of several edges are called by the sides that these look to, whatever the part is called. */
function namesByPart({ kind, on }: Named, name: string): boolean {
	const [first, ...others] = on ?? [];
	return (
		kind === "veneer" ||
		!boxSides.has(name) ||
		(others.length === 0 && first?.segments.at(-1)?.text !== "edges")
	);
}

function isMirrored(scope: Mention["scope"]): boolean {
	for (let at = scope; at; at = at.outer) if (at.mirrored) return true;
	return false;
}

const stockWords: ReadonlySet<string> = new Set(["thick", "sold-as"]);
const boxWords: ReadonlySet<string> = new Set([
	"width",
	"height",
	"depth",
	"inside",
	"rear",
]);
const thingWords: ReadonlySet<string> = new Set([
	...boxSides,
	"width",
	"height",
	"depth",
]);
/** Behind a part, a panel or a face. */
const faceWords: ReadonlySet<string> = new Set([
	...thingWords,
	"length",
	"thick",
	"edges",
	"inside",
	"outside",
]);

/** The names of a file by its tree. */
export function fileNames(uri: string, tree: FileNode): FileNames {
	const known = kept.get(tree);
	if (known?.uri === uri) return known;
	const statements = tree.statements.map((one) => namesIn(uri, one));
	const scope = new Map<string, Named | Taken>();
	const add = (name: string, one: Named | Taken): void => {
		if (!scope.has(name) && !reservedNames.has(name)) scope.set(name, one);
	};
	for (const { top, use } of statements) {
		for (const one of top) if (one.kind !== "piece") add(one.name, one);
		for (const node of use?.names ?? [])
			add(node.text, { kind: "taken", node, use: use as Use });
	}
	const made: FileNames = {
		uri,
		tree,
		statements,
		scope,
		top: statements.flatMap(({ top }) => top),
		uses: statements.flatMap(({ use }) => use ?? []),
	};
	kept.set(tree, made);
	return made;
}

/** The names of the statement at the top that some nodes lie in. */
function topNames(
	{ uri }: FileNames,
	nodes: readonly Node[],
): StatementNames | undefined {
	const top = nodes.find((one): one is Statement => one.kind === "statement");
	return top && namesIn(uri, top);
}
