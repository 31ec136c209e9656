// One run over a design: collects what is found, and works names out when they are first needed.

import type { Edit, Span } from "../../grammar/index.ts";
import type { Size } from "./size.ts";
import type {
	Declaration,
	Finding,
	Origin,
	Reference,
	Severity,
	SizeAt,
} from "./types.ts";

/** Names that are worked out within one another; beyond this the design is refused, not the stack. */
const deepest = 400;

interface Waiting {
	readonly name: string;
	readonly origin: Origin;
}

export class Evaluation {
	readonly findings: Finding[] = [];
	readonly references: Reference[] = [];
	readonly declarations: Declaration[] = [];
	readonly sizesAt: SizeAt[] = [];
	private readonly waiting: Waiting[] = [];
	// A place is the span object of its node: where it lies may change when text before it does.
	private readonly told = new Map<Span, Set<string>>();
	private readonly declared = new Map<Span, Declaration>();
	private readonly referred = new Map<Span, Declaration | Declaration[]>();

	report(
		id: string,
		origin: Origin,
		message: string,
		more: {
			readonly severity?: Severity;
			readonly related?: Finding["related"];
			readonly fix?: {
				readonly title: string;
				readonly edits: readonly Edit[];
			};
			readonly fixes?: Finding["fixes"];
		} = {},
	): void {
		// What is reached on two ways (a component made twice, a name used by two lines) is told once.
		const key = `${id} ${message}`;
		const here = this.told.get(origin.span);
		if (here?.has(key)) return;
		if (here) here.add(key);
		else this.told.set(origin.span, new Set([key]));
		this.findings.push({
			id,
			severity: more.severity ?? "error",
			origin,
			message,
			related: more.related ?? [],
			fixes: more.fixes ?? (more.fix ? [more.fix] : []),
		});
	}

	/** Books a declaration. A line that is evaluated more than once (a component) declares its name once: the first is answered. */
	declare(declaration: Declaration): Declaration {
		const known = this.declared.get(declaration.nameSpan);
		if (known) return known;
		this.declared.set(declaration.nameSpan, declaration);
		this.declarations.push(declaration);
		return declaration;
	}

	/** Books a use of a name; one place that is read twice is one use. */
	refer(uri: string, span: Span, declaration: Declaration): void {
		const known = this.referred.get(span);
		const { nameSpan } = declaration;
		if (!known) this.referred.set(span, declaration);
		else if (!Array.isArray(known)) {
			if (known.nameSpan === nameSpan) return;
			this.referred.set(span, [known, declaration]);
		} else if (known.some((one) => one.nameSpan === nameSpan)) return;
		else known.push(declaration);
		this.references.push({ origin: { uri, span }, declaration });
	}

	note(uri: string, span: Span, size: Size): void {
		this.sizesAt.push({ origin: { uri, span }, size });
	}

	/** A value worked out once, on first need; in a circle it is undefined, and the circle is told. */
	lazy<T>(name: string, origin: Origin, work: () => T): () => T | undefined {
		let state: "new" | "busy" | "done" = "new";
		let value: T | undefined;
		return () => {
			if (state === "done") return value;
			if (state === "busy") {
				this.tellCircle(name, origin);
				return undefined;
			}
			if (this.waiting.length >= deepest) {
				this.report(
					"too-deep",
					origin,
					`\`${name}\` hangs on more than ${deepest} other names one behind the other: write some of them as plain sizes`,
				);
				return undefined;
			}
			state = "busy";
			this.waiting.push({ name, origin });
			try {
				value = work();
			} finally {
				this.waiting.pop();
				state = "done";
			}
			return value;
		};
	}

	private tellCircle(name: string, origin: Origin): void {
		const from = this.waiting.findLastIndex(
			(entry) => entry.name === name && entry.origin === origin,
		);
		const circle = this.waiting.slice(Math.max(0, from));
		// The same circle met from another of its names is the same finding.
		const first = circle.reduce((least, entry) =>
			entry.origin.span.start < least.origin.span.start ? entry : least,
		);
		const start = circle.indexOf(first);
		const turned = [...circle.slice(start), ...circle.slice(0, start)];
		this.report(
			"circle",
			first.origin,
			`These hang on each other in a circle: ${[...turned, first].map((entry) => `\`${entry.name}\``).join(" <- ")}; give one of them a size of its own`,
			{
				related: turned.slice(1).map((entry) => ({
					origin: entry.origin,
					message: `\`${entry.name}\` is in the circle`,
				})),
			},
		);
	}
}
