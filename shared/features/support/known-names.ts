// The names that may be written at a place, and what may stand behind their dots: for completion.
//
// What this text declares is read from its tree, so that it is there while a statement is half typed; what other files
// bring (materials, groups from components) is read from the design.

import {
	type Block,
	type ContextId,
	type Declares,
	type FileNode,
	fill,
	type Statement,
} from "../../../grammar/index.ts";
import type { Stock } from "../../model/types.ts";
import { type Place, placedIn } from "./place.ts";
import { pieceAt, type Snapshot } from "./snapshot.ts";

export type KnownKind =
	| Declares
	| "stock"
	| "face"
	| "edges"
	| "inside"
	| "floor";

export interface KnownName {
	readonly name: string;
	readonly kind: KnownKind;
	/** The `///` text of its declaration. */
	readonly doc: string;
	/** Of a stock. */
	readonly stock?: Stock;
}

const sides = ["top", "bottom", "left", "right", "front", "back"] as const;
const panels = ["top", "bottom", "left", "right", "back"] as const;

export class KnownNames {
	/** By path: in the file `ply.three-quarter`, in the piece at hand `case.middle`. */
	private readonly paths = new Map<string, KnownName>();
	/** Paths of the things in whose blocks the place is: they do not refer to themselves. */
	private readonly holders: Set<string>;
	/** Paths whose members are in force, innermost first; the last is the empty path. */
	private readonly prefixes: readonly string[];

	constructor(snapshot: Snapshot, place: Place, offset: number) {
		const { design, result } = snapshot;
		for (const stock of design.stocks.values()) this.addStock(stock);
		for (const { kind, path, doc } of design.declarations) {
			if (kind === "component") this.add(path, kind, doc);
		}
		this.addBody(result.tree, "file", "");
		const [outermost, ...inner] = place.around;
		const holder = outermost?.statement;
		if (holder?.block) {
			this.addBody(holder.block, outermost?.construct?.block, "");
		}
		for (const part of pieceAt(snapshot, offset)?.parts ?? []) {
			this.addGroups(part.path);
			this.add(part.path, "part", part.declaration.doc);
		}
		this.holders = new Set();
		const prefixes = [""];
		let path = "";
		for (const { statement, construct, context } of inner) {
			const name = construct?.declares && namesOf(statement, context)[0];
			if (!name) break;
			for (const one of namesOf(statement, context)) {
				this.holders.add(join(path, one));
			}
			path = join(path, name);
			prefixes.unshift(path);
		}
		this.prefixes = prefixes;
	}

	/** Names that may stand alone, inner ones first; the things around the place are left out. */
	inForce(): KnownName[] {
		const seen = new Map<string, KnownName>();
		for (const prefix of this.prefixes) {
			for (const [name, known] of this.childrenOf(prefix)) {
				if (this.holders.has(join(prefix, name))) continue;
				if (!seen.has(name)) seen.set(name, known);
			}
		}
		return [...seen.values()];
	}

	/** What may stand behind `base.`. */
	membersOf(base: readonly string[]): KnownName[] {
		const found = new Map<string, KnownName>();
		for (const prefix of this.prefixes) {
			const path = join(prefix, base.join("."));
			const known = this.paths.get(path) ?? this.implied(prefix, base);
			if (!known) continue;
			for (const [name, child] of this.childrenOf(path)) found.set(name, child);
			for (const member of impliedMembers(known)) {
				if (!found.has(member.name)) found.set(member.name, member);
			}
			break;
		}
		return [...found.values()];
	}

	/** What a path means by its last names, where nothing declares it: `case.front`, `case.inside`. */
	private implied(
		prefix: string,
		base: readonly string[],
	): KnownName | undefined {
		const last = base.at(-1);
		if (base.length < 2 || last === undefined) return undefined;
		const outer = base.slice(0, -1);
		const holder =
			this.paths.get(join(prefix, outer.join("."))) ??
			this.implied(prefix, outer);
		return holder && impliedMembers(holder).find((one) => one.name === last);
	}

	private childrenOf(path: string): Map<string, KnownName> {
		const children = new Map<string, KnownName>();
		const start = path === "" ? "" : `${path}.`;
		for (const [other, known] of this.paths) {
			if (!other.startsWith(start)) continue;
			const rest = other.slice(start.length);
			if (rest !== "" && !rest.includes(".")) children.set(rest, known);
		}
		return children;
	}

	private add(path: string, kind: KnownKind, doc: string, stock?: Stock): void {
		if (this.paths.has(path)) return;
		const name = path.slice(path.lastIndexOf(".") + 1);
		this.paths.set(
			path,
			stock ? { name, kind, doc, stock } : { name, kind, doc },
		);
	}

	private addStock(stock: Stock): void {
		const dot = stock.id.indexOf(".");
		if (dot >= 0) this.add(stock.id.slice(0, dot), "material", "");
		this.add(stock.id, "stock", stock.declaration.doc, stock);
	}

	/** The things that a part belongs to, where no line of this text makes them. */
	private addGroups(path: string): void {
		for (
			let dot = path.indexOf(".");
			dot >= 0;
			dot = path.indexOf(".", dot + 1)
		) {
			this.add(path.slice(0, dot), "group", "");
		}
	}

	private addBody(
		body: FileNode | Block,
		context: ContextId | undefined,
		prefix: string,
	): void {
		for (const statement of body.statements) {
			const { construct } = placedIn(context, statement);
			if (!construct?.declares) continue;
			for (const name of namesOf(statement, context)) {
				const path = join(prefix, name);
				this.add(path, construct.declares, statement.doc);
				if (construct.declares === "box") {
					for (const panel of panels) this.add(join(path, panel), "part", "");
				}
				if (statement.block && hasMembers.has(construct.declares)) {
					this.addBody(statement.block, construct.block, path);
				}
			}
		}
	}
}

/** Declared names behind which a dot leads to what their block declares. */
const hasMembers: ReadonlySet<Declares> = new Set([
	"material",
	"box",
	"leg",
	"group",
]);

/** The names that a statement brings into being. */
export function namesOf(
	statement: Statement,
	context: ContextId | undefined,
): string[] {
	const { construct } = placedIn(context, statement);
	const result = construct && fill(statement, construct);
	if (result?.ok) {
		const slot =
			result.filled.slots.get("names") ?? result.filled.slots.get("name");
		return slot?.kind === "names" ? slot.names.map((name) => name.text) : [];
	}
	const second = statement.items[1];
	const elements = second?.kind === "list" ? second.elements : [second];
	return elements.flatMap((element) =>
		element?.kind === "path" && element.segments.length === 1
			? element.segments.map((segment) => segment.text)
			: [],
	);
}

function impliedMembers({ kind, name }: KnownName): KnownName[] {
	const sizes = (...names: string[]): KnownName[] =>
		names.map((one) => ({ name: one, kind: "size", doc: "" }));
	const faces = (): KnownName[] =>
		sides.map((side) => ({ name: side, kind: "face", doc: "" }));
	const edges: KnownName = { name: "edges", kind: "edges", doc: "" };
	switch (kind) {
		case "stock":
			return sizes("thick", "sold-as");
		case "part":
		case "layer":
			return [
				...sizes("length", "width", "thick", "height", "depth"),
				...faces(),
				edges,
				...(sides.some((side) => side === name)
					? (["inside", "outside"] as const).map(
							(one): KnownName => ({ name: one, kind: "face", doc: "" }),
						)
					: []),
			];
		case "box":
			return [
				...faces(),
				...sizes("width", "height", "depth"),
				{ name: "inside", kind: "inside", doc: "" },
			];
		case "inside":
			return [...sizes("width", "height", "depth"), ...faces()];
		case "leg":
		case "trim":
		case "veneer":
		case "mount":
		case "group":
			return [
				...faces(),
				...sizes("width", "height", "depth"),
				...(kind === "trim" ? sizes("thick") : []),
			];
		case "face":
			return [edges];
		default:
			return [];
	}
}

function join(prefix: string, name: string): string {
	return prefix === "" ? name : name === "" ? prefix : `${prefix}.${name}`;
}
