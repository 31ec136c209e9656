// Which bare numbers of a text are lengths and which count: `2 * 1 1/2` is twice a length. A name that stands for a bare
// number is what its uses take it for.

import {
	type Block,
	type ContextId,
	type Expression,
	type FileNode,
	fill,
	type MeasureNode,
	type SlotType,
	type SlotValue,
	type Statement,
} from "../../../grammar/index.ts";
import { units } from "../../units/dimensions.ts";
import { namesOf } from "./known-names.ts";
import { placedIn } from "./place.ts";
import { slotType } from "./uses.ts";

export type Role = "length" | "number";

export interface BareNumbers {
	readonly roles: ReadonlyMap<MeasureNode, Role>;
	/** Names of sizes that are used as a length in one place and as a number in another. */
	readonly torn: readonly string[];
	/** What a given or mark of this body stands for; undefined if its value says itself what it is. */
	readonly roleOf: (name: string) => Role | undefined;
}

/** What a given of a component that a `make` line names stands for. */
export type RoleOfGiven = (component: string, given: string) => Role;

const lengthSlots: ReadonlySet<SlotType> = new Set<SlotType>([
	"length",
	"lengths",
	"sizes2",
	"sizes3",
	"sizes2-3",
	"fastener",
]);

/**
 * Names are settled from round to round, since each can hang on another: first by what is clear, then with the usual reading of
 * what is not, at last what nothing was heard of is a length.
 */
const rounds = [
	"clear",
	"clear",
	"clear",
	"clear",
	"usual",
	"usual",
	"usual",
	"rest",
] as const;

type Round = (typeof rounds)[number];

/** The bare numbers of a piece, a component, or of the lines of a file that belong to no piece. */
export function bareNumbers(
	body: FileNode | Block,
	context: ContextId,
	roleOfGiven: RoleOfGiven = () => "length",
): BareNumbers {
	const reader = new Reader(body, context, roleOfGiven);
	for (const round of rounds) reader.read(round);
	return {
		roles: reader.roles,
		torn: reader.torn,
		roleOf: (name) => reader.roleOf(name),
	};
}

/** `pure` can be no length: what remains where a length is divided by one. */
type Type = "length" | "bare" | "pure" | "other";

class Reader {
	roles = new Map<MeasureNode, Role>();
	private readonly body: FileNode | Block;
	private readonly context: ContextId;
	private readonly roleOfGiven: RoleOfGiven;
	private readonly values = new Map<string, Expression>();
	private readonly types = new Map<string, Type | "busy">();
	private known = new Map<string, ReadonlySet<Role>>();
	private uses = new Map<string, Set<Role>>();
	private round: Round = "clear";

	constructor(
		body: FileNode | Block,
		context: ContextId,
		roleOfGiven: RoleOfGiven,
	) {
		this.body = body;
		this.context = context;
		this.roleOfGiven = roleOfGiven;
		for (const statement of body.statements) {
			const { construct } = placedIn(context, statement);
			const result = construct && fill(statement, construct);
			const value = result?.ok ? result.filled.slots.get("value") : undefined;
			if (construct?.declares !== "size" || value?.kind !== "expression")
				continue;
			for (const name of namesOf(statement, context))
				if (!this.values.has(name)) this.values.set(name, value.expression);
		}
	}

	get torn(): string[] {
		return [...this.known].flatMap(([name, roles]) =>
			roles.size > 1 ? [name] : [],
		);
	}

	roleOf(name: string): Role | undefined {
		const value = this.values.get(name);
		if (!value || this.typeOf(value) !== "bare") return undefined;
		return this.settled(name) ?? "length";
	}

	read(round: Round): void {
		this.round = round;
		this.roles = new Map();
		this.uses = new Map();
		this.block(this.body, this.context, undefined);
		this.known = this.uses;
	}

	private block(
		body: FileNode | Block,
		context: ContextId | undefined,
		component: string | undefined,
	): void {
		for (const statement of body.statements) {
			this.line(statement, context, component);
			const { construct } = placedIn(context, statement);
			// Names mean something else in another piece: it is read for itself.
			const apart =
				construct?.block === "piece" || construct?.block === "component";
			if (statement.block && !apart)
				this.block(
					statement.block,
					construct?.block,
					construct?.head === "make" ? componentOf(statement) : undefined,
				);
		}
	}

	private line(
		statement: Statement,
		context: ContextId | undefined,
		component: string | undefined,
	): void {
		const { construct } = placedIn(context, statement);
		const result = construct && fill(statement, construct);
		if (!construct || !result?.ok) return;
		const name = namesOf(statement, context)[0];
		for (const [slot, value] of result.filled.slots) {
			const type = slotType(construct, slot);
			const want: Role | undefined =
				construct.declares === "size" && name !== undefined
					? this.wanted(name)
					: construct.head === "set" && name !== undefined
						? this.roleOfGiven(component ?? "", name)
						: value.kind === "position" || (type && lengthSlots.has(type))
							? "length"
							: "number";
			this.slot(value, want);
		}
	}

	private slot(value: SlotValue, want: Role | undefined): void {
		if (value.kind === "position")
			for (const one of value.position.offsets) this.assign(one, "length");
		if (value.kind !== "expression") return;
		const { expression } = value;
		if (expression.kind === "cross")
			for (const one of expression.sizes) this.assign(one, want);
		else if (expression.kind === "list")
			for (const one of expression.elements) this.assign(one, want);
		else if (expression.kind === "compare") {
			const { left, right } = expression;
			const role = this.shared(left, right);
			this.assign(left, role);
			this.assign(right, role);
		} else this.assign(expression, want);
	}

	private settled(name: string): Role | undefined {
		const roles = this.known.get(name);
		return roles?.size === 1 ? [...roles][0] : undefined;
	}

	/** What the value of a name must be. */
	private wanted(name: string): Role | undefined {
		const roles = this.known.get(name);
		if (roles && roles.size > 0)
			return roles.has("length") ? "length" : "number";
		return this.round === "rest" ? "length" : undefined;
	}

	/** Of two values that are compared or divided by each other: the same for both. */
	private shared(left: Expression, right: Expression): Role | undefined {
		if (this.typeOf(left) === "length" || this.typeOf(right) === "length")
			return "length";
		return (
			this.leaning(left) ??
			this.leaning(right) ??
			(this.round === "clear" ? undefined : "length")
		);
	}

	private assign(node: Expression, want: Role | undefined): void {
		switch (node.kind) {
			case "measure":
				if (node.unit === "none" && want) this.roles.set(node, want);
				return;
			case "path": {
				const name = node.segments[0]?.text ?? "";
				if (node.segments.length > 1 || !this.values.has(name) || !want) return;
				const uses = this.uses.get(name) ?? new Set();
				uses.add(want);
				this.uses.set(name, uses);
				return;
			}
			case "unary":
				this.assign(node.operand, want);
				return;
			case "group":
				this.assign(node.inner, want);
				return;
			case "call": {
				const lengths = node.args.some((arg) => this.typeOf(arg) === "length");
				for (const arg of node.args)
					this.assign(arg, lengths ? "length" : want);
				return;
			}
			case "binary":
				break;
			default:
				return;
		}
		const { operator, left, right } = node;
		const lengths =
			this.typeOf(left) === "length" || this.typeOf(right) === "length";
		if (operator === "+" || operator === "-") {
			this.assign(left, lengths ? "length" : want);
			this.assign(right, lengths ? "length" : want);
		} else if (operator === "*") {
			const carrier =
				want === "number" && !lengths ? "none" : this.carrier(left, right);
			if (carrier === undefined) return;
			this.assign(left, carrier === "left" ? "length" : "number");
			this.assign(right, carrier === "right" ? "length" : "number");
		} else if (this.typeOf(right) === "length" || want === "number") {
			const both = this.shared(left, right);
			this.assign(left, both);
			this.assign(right, both);
		} else {
			this.assign(left, want);
			this.assign(right, "number");
		}
	}

	/** Which factor of a length is the length: the other one counts. Undefined while that is open. */
	private carrier(
		left: Expression,
		right: Expression,
	): "left" | "right" | undefined {
		const [a, b] = [this.typeOf(left), this.typeOf(right)];
		if (a === "length" || b === "pure") return "left";
		if (b === "length" || a === "pure") return "right";
		const [leansLeft, leansRight] = [this.leaning(left), this.leaning(right)];
		if (leansLeft === "length" || leansRight === "number") return "left";
		if (leansRight === "length" || leansLeft === "number") return "right";
		if (this.round === "clear" && (hasName(left) || hasName(right)))
			return undefined;
		return hasName(left) && !hasName(right) ? "left" : "right";
	}

	/** What the names in an expression are known to be. */
	private leaning(node: Expression): Role | undefined {
		switch (node.kind) {
			case "path":
				return node.segments.length === 1
					? this.settled(node.segments[0]?.text ?? "")
					: undefined;
			case "unary":
				return this.leaning(node.operand);
			case "group":
				return this.leaning(node.inner);
			case "binary": {
				const sides = [this.leaning(node.left), this.leaning(node.right)];
				if (sides.includes("length")) return "length";
				return node.operator === "*" || node.operator === "/"
					? undefined
					: sides.find((one) => one);
			}
			default:
				return undefined;
		}
	}

	private typeOf(node: Expression): Type {
		switch (node.kind) {
			case "measure":
				if (node.unit === "none") return "bare";
				return units[node.unit].dimension === "length" ? "length" : "other";
			case "path":
				return this.typeOfName(node.segments.map(({ text }) => text));
			case "unary":
				return this.typeOf(node.operand);
			case "group":
				return this.typeOf(node.inner);
			case "call": {
				const types = node.args.map((arg) => this.typeOf(arg));
				return types.includes("length") ? "length" : (types[0] ?? "other");
			}
			case "binary": {
				const [a, b] = [this.typeOf(node.left), this.typeOf(node.right)];
				if (node.operator === "/" && b === "length") return "pure";
				if (a === "length" || b === "length") return "length";
				if (a === "other" || b === "other") return "other";
				return a === "pure" && b === "pure" ? "pure" : "bare";
			}
			default:
				return "other";
		}
	}

	/** A size of a thing is a length, whatever it is called. */
	private typeOfName(names: readonly string[]): Type {
		const name = names[0] ?? "";
		const value = this.values.get(name);
		if (names.length > 1 || !value) return "length";
		const known = this.types.get(name);
		if (known) return known === "busy" ? "other" : known;
		this.types.set(name, "busy");
		const type = this.typeOf(value);
		this.types.set(name, type);
		return type;
	}
}

function hasName(node: Expression): boolean {
	switch (node.kind) {
		case "path":
			return true;
		case "unary":
			return hasName(node.operand);
		case "group":
			return hasName(node.inner);
		case "binary":
			return hasName(node.left) || hasName(node.right);
		case "call":
			return node.args.some(hasName);
		default:
			return false;
	}
}

function componentOf(statement: Statement): string | undefined {
	const last = statement.items.at(-1);
	return last?.kind === "path" && last.segments.length === 1
		? last.segments[0]?.text
		: undefined;
}
