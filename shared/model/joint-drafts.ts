// Joints while a piece is made: one for each pair of parts, however many lines speak of it.

import type { Vec3 } from "../geometry/solid.ts";
import type { PartDraft } from "./part-builder.ts";
import type { FastenerRun, Fit, JointKind, Origin, Way } from "./types.ts";

/** Where two parts meet: a rectangle square to an axis, world, mm. */
export interface Contact {
	readonly axis: Way;
	/** From the host to the member along the axis. */
	readonly toMember: 1 | -1;
	readonly min: Vec3;
	readonly max: Vec3;
}

export interface JointDraft {
	kind: JointKind;
	readonly host: PartDraft;
	readonly member: PartDraft;
	origin: Origin;
	named: boolean;
	glue: boolean;
	glueName: string | undefined;
	readonly fasteners: FastenerRun[];
	readonly fits: Fit[];
	apart: number;
	/** Set by whoever knows it better than the boxes of the two parts do. */
	contact: Contact | undefined;
	/** The parts of a box, leg … by its path: tells inside from outside. */
	readonly siblings: (owner: string) => readonly PartDraft[];
}

export class JointDrafts {
	private readonly byPair = new Map<string, JointDraft>();
	private readonly parts: readonly PartDraft[];

	constructor(parts: readonly PartDraft[]) {
		this.parts = parts;
	}

	find(a: PartDraft, b: PartDraft): JointDraft | undefined {
		return this.byPair.get(pairKey(a, b));
	}

	/** The joint of a host and a member; made if there is none yet. */
	of(
		kind: JointKind,
		host: PartDraft,
		member: PartDraft,
		origin: Origin,
		contact?: Contact,
	): JointDraft {
		const known = this.find(host, member);
		if (known) return known;
		const draft: JointDraft = {
			kind,
			host,
			member,
			origin,
			named: false,
			glue: false,
			glueName: undefined,
			fasteners: [],
			fits: [],
			apart: 0,
			contact,
			siblings: (owner) => this.parts.filter((part) => part.owner === owner),
		};
		this.byPair.set(pairKey(host, member), draft);
		return draft;
	}

	all(): IterableIterator<JointDraft> {
		return this.byPair.values();
	}
}

function pairKey(a: PartDraft, b: PartDraft): string {
	return a.path < b.path ? `${a.path}~${b.path}` : `${b.path}~${a.path}`;
}
