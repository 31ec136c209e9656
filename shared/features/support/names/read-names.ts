// Reads the names of one statement at the top of a file. What was read is kept as long as the statement is the same object:
// after a keystroke only the piece that was touched is read again.

import {
	type Construct,
	type ContextId,
	constructAt,
	type Expression,
	expressionsOf,
	type Filled,
	fill,
	type Item,
	type NameNode,
	type PathNode,
	phraseWords,
	reservedNames,
	type SlotValue,
	type Statement,
} from "../../../../grammar/index.ts";
import type {
	Mention,
	MentionedAt,
	MentionRole,
	Named,
	NameScope,
	Use,
} from "./named.ts";

export interface StatementNames {
	/** The names that it declares in its file. */
	readonly top: readonly Named[];
	/** All names that it declares, in order of place. */
	readonly all: readonly Named[];
	/** In order of place. */
	readonly mentions: readonly Mention[];
	/** Of a `use` line. */
	readonly use: Use | undefined;
	/** Mentions in which a name occurs, also as the beginning of a name made from it. */
	mentioning(name: string): readonly MentionedAt[];
	/** The declaration or the mention that a name in the text is. */
	at(node: NameNode): Named | MentionedAt | undefined;
}

const kept = new WeakMap<Statement, StatementNames>();

/** The names of a statement at the top of the file `uri`. */
export function namesIn(uri: string, statement: Statement): StatementNames {
	let names = kept.get(statement);
	if (!names) {
		names = new Reader(uri).read(statement);
		kept.set(statement, names);
	}
	return names;
}

/** Panels and faces of a box, in force inside of it. */
export const boxSides: ReadonlySet<string> = new Set([
	"top",
	"bottom",
	"left",
	"right",
	"back",
	"front",
]);

const noNames: ReadonlySet<string> = new Set();

/** Lines of a block that are read by the names around it, not by its own. */
export const readAround: Readonly<
	Partial<Record<ContextId, (head: string) => boolean>>
> = {
	box: (head) => !["divider", "shelf", "grain", "join", "fit"].includes(head),
	leg: (head) => ["against", "set-back", "set-in"].includes(head),
};

/** A name made from the name of a part: `seat-inside`, `seat-2`. */
export function baseOf(
	text: string,
): { readonly base: string; readonly suffix: string } | undefined {
	const match = /^(.+?)((?:-inside)?(?:-\d+)?)$/.exec(text);
	const [, base, suffix] = match ?? [];
	return base && suffix ? { base, suffix } : undefined;
}

/** What holds in a block. */
interface Inside {
	/** Where its lines look names up; undefined: in the file. */
	readonly lexical: NameScope | undefined;
	/** Where a few of its lines do: those that are read by the names around the block. */
	readonly around: NameScope | undefined;
	/** Where its lines declare names; undefined: in the file. */
	readonly declares: NameScope | undefined;
	readonly holder: Named | undefined;
	/** Of the block of a `make` line. */
	readonly component: Mention | undefined;
}

class Reader {
	private readonly uri: string;
	private readonly named: Named[] = [];
	private readonly mentions: Mention[] = [];
	private use: Use | undefined;

	constructor(uri: string) {
		this.uri = uri;
	}

	read(statement: Statement): StatementNames {
		this.line(statement, "file", {
			lexical: undefined,
			around: undefined,
			declares: undefined,
			holder: undefined,
			component: undefined,
		});
		return new Names(this.named, this.mentions, this.use);
	}

	private line(
		statement: Statement,
		context: ContextId | undefined,
		inside: Inside,
	): void {
		const construct = context && constructAt(context, statement.head);
		const result = construct && fill(statement, construct);
		const filled = result?.ok ? result.filled : undefined;
		const isAround =
			context !== undefined && readAround[context]?.(statement.head) === true;
		const scope = isAround ? inside.around : inside.lexical;
		const fresh = construct ? newNames(statement, construct, filled) : [];
		const named = this.named.length;
		const made =
			construct?.declares && construct.declares !== "import"
				? this.declared(statement, construct, fresh, inside)
				: { ...inside, around: scope, lexical: scope };
		// What the line of a thing says is said of that thing.
		const of = { ...inside, holder: made.holder };
		const first = this.mentions.length;
		if (construct?.declares === "import")
			this.useLine(statement, filled, fresh, inside);
		else {
			if (construct?.head === "set")
				for (const name of fresh)
					this.mention("set", name, [name], statement, scope, filled, of);
			const role =
				construct?.head === "measured" || construct?.head === "order"
					? construct.head
					: "read";
			for (const path of pathsOf(statement, filled, fresh))
				this.mention(role, path, path.segments, statement, scope, filled, of);
		}
		if (context === "box") this.panels(statement, filled, inside);
		const from =
			construct?.declares === "group" ? this.mentions[first] : undefined;
		for (const one of this.named.slice(named)) one.from = from;
		if (!statement.block) return;
		const before = this.mentions.length;
		for (const line of statement.block.statements)
			this.line(
				line,
				construct?.block,
				from ? { ...made, component: from } : made,
			);
		const on = made.holder?.statement === statement && made.holder.on;
		if (on)
			for (const mention of this.mentions.slice(before))
				if (mention.statement.head === "on") on.push(mention);
	}

	/** Declares the names of a line; answers with what holds in the block behind it. */
	private declared(
		statement: Statement,
		construct: Construct,
		fresh: readonly NameNode[],
		inside: Inside,
	): Inside {
		const own = ownScope(statement, construct, inside);
		const on: Mention[] | undefined =
			construct.declares === "trim" || construct.declares === "veneer"
				? []
				: undefined;
		const made = fresh.map(
			(node): Named => ({
				kind: construct.declares as Named["kind"],
				name: node.text,
				uri: this.uri,
				node,
				statement,
				construct,
				holder: inside.holder,
				scope: inside.declares,
				inner: own,
				from: undefined,
				on,
			}),
		);
		for (const one of made) {
			this.named.push(one);
			inside.declares?.all.push(one);
			if (inside.declares && !inside.declares.names.has(one.name))
				inside.declares.names.set(one.name, one);
		}
		const holder = made[0] ?? inside.holder;
		if (own) own.holder = made[0];
		const isLexical = own !== undefined && !own.behindDot;
		return {
			lexical: isLexical ? own : inside.lexical,
			around: inside.lexical,
			declares: own ?? inside.declares,
			holder,
			component: undefined,
		};
	}

	private useLine(
		statement: Statement,
		filled: Filled | undefined,
		fresh: readonly NameNode[],
		inside: Inside,
	): void {
		const value = filled?.slots.get("path");
		if (value?.kind !== "expression" || value.expression.kind !== "text")
			return;
		this.use = { statement, path: value.expression, names: fresh };
		for (const name of fresh)
			this.mention("use", name, [name], statement, undefined, filled, inside);
	}

	/** Panels are named by words of the language, but they are things. */
	private panels(
		statement: Statement,
		filled: Filled | undefined,
		inside: Inside,
	): void {
		const value = filled?.slots.get("panels");
		for (const name of value?.kind === "names" ? value.names : [])
			this.mention(
				"read",
				name,
				[name],
				statement,
				inside.declares,
				filled,
				inside,
			);
	}

	private mention(
		role: MentionRole,
		path: PathNode | NameNode,
		segments: readonly NameNode[],
		statement: Statement,
		scope: NameScope | undefined,
		filled: Filled | undefined,
		{ holder, component }: Inside,
	): void {
		this.mentions.push({
			role,
			uri: this.uri,
			segments,
			path,
			scope,
			holder,
			statement,
			loose: !filled,
			component,
		});
	}
}

/** The scope that a declaring line opens: the inside of a piece, a box, a leg, or what stands behind a material's dot. */
function ownScope(
	statement: Statement,
	construct: Construct,
	inside: Inside,
): NameScope | undefined {
	const kind = construct.declares;
	const isMaterial = kind === "material" && construct.head !== "coating";
	if (
		!isMaterial &&
		kind !== "piece" &&
		kind !== "component" &&
		kind !== "box" &&
		kind !== "leg"
	)
		return undefined;
	return {
		outer: inside.lexical,
		names: new Map(),
		all: [],
		fixed: kind === "box" ? boxSides : noNames,
		behindDot: isMaterial,
		mirrored: kind === "leg" && statement.items.some(isHanded),
		holder: undefined,
	};
}

function isHanded(item: Item): boolean {
	return (
		item.kind === "path" &&
		item.segments.length === 1 &&
		item.segments[0]?.text === "handed"
	);
}

/** The names that a line brings into being; of one that cannot be read what stands in their place. */
function newNames(
	statement: Statement,
	construct: Construct,
	filled: Filled | undefined,
): readonly NameNode[] {
	if (!construct.declares && construct.head !== "set") return [];
	const value = filled?.slots.get("names") ?? filled?.slots.get("name");
	if (value) return value.kind === "names" ? value.names : [];
	if (filled) return [];
	const second = statement.items[1];
	const elements = second?.kind === "list" ? second.elements : [second];
	return elements.flatMap((one) =>
		one?.kind === "path" &&
		one.segments.length === 1 &&
		!reservedNames.has(one.segments[0]?.text ?? "")
			? one.segments
			: [],
	);
}

/** The paths of a line that may mean something. Without its row, words of the language are left out. */
function pathsOf(
	statement: Statement,
	filled: Filled | undefined,
	fresh: readonly NameNode[],
): readonly PathNode[] {
	if (filled) return [...filled.slots.values()].flatMap(pathsIn);
	return statement.items
		.slice(statement.head === "" ? 0 : 1)
		.flatMap((item) => [...expressionsOf(item)])
		.filter(
			(node): node is PathNode =>
				node.kind === "path" &&
				!node.segments.some((one) => fresh.includes(one)) &&
				!(node.segments.length === 1 && isPhraseWord(node)),
		);
}

function pathsIn(value: SlotValue): readonly PathNode[] {
	switch (value.kind) {
		case "refs":
			return value.refs;
		case "expression":
			return pathsBelow(value.expression);
		case "position":
			return [
				...value.position.offsets.flatMap(pathsBelow),
				...(value.position.datum ? [value.position.datum] : []),
			];
		default:
			return [];
	}
}

function pathsBelow(expression: Expression): readonly PathNode[] {
	return [...expressionsOf(expression)].filter((node) => node.kind === "path");
}

let words: ReadonlySet<string> | undefined;

function isPhraseWord({ segments }: PathNode): boolean {
	words ??= new Set(phraseWords());
	return words.has(segments[0]?.text ?? "");
}

class Names implements StatementNames {
	readonly all: readonly Named[];
	readonly top: readonly Named[];
	readonly mentions: readonly Mention[];
	readonly use: Use | undefined;
	private byName: Map<string, MentionedAt[]> | undefined;
	private byNode: Map<NameNode, Named | MentionedAt> | undefined;

	constructor(
		all: readonly Named[],
		mentions: readonly Mention[],
		use: Use | undefined,
	) {
		this.all = all;
		this.top = all.filter(({ holder }) => holder === undefined);
		this.mentions = mentions;
		this.use = use;
	}

	mentioning(name: string): readonly MentionedAt[] {
		if (!this.byName) {
			this.byName = new Map();
			for (const mention of this.mentions)
				mention.segments.forEach(({ text }, index) => {
					this.index(text, { mention, index });
					const made = index > 0 || mention.role === "order";
					const base = made ? baseOf(text)?.base : undefined;
					if (base !== undefined) this.index(base, { mention, index });
				});
		}
		return this.byName.get(name) ?? [];
	}

	at(node: NameNode): Named | MentionedAt | undefined {
		if (!this.byNode) {
			this.byNode = new Map();
			for (const mention of this.mentions)
				mention.segments.forEach((segment, index) => {
					this.byNode?.set(segment, { mention, index });
				});
			for (const one of this.all) this.byNode.set(one.node, one);
		}
		return this.byNode.get(node);
	}

	private index(name: string, at: MentionedAt): void {
		const known = this.byName?.get(name);
		if (known) known.push(at);
		else this.byName?.set(name, [at]);
	}
}
