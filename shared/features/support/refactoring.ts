// What a refactoring is asked, and what it answers: offers that are cheap to list, and a change that is worked out when one
// of them is chosen.

import type { Edit, FileNode, Span } from "../../../grammar/index.ts";
import type { Design, Finding } from "../../model/types.ts";
import type { Snapshot } from "./snapshot.ts";

/** A design that can be named from the one that is looked at. */
export interface NearbyFile {
	readonly uri: string;
	/** As a `use` line writes it: `./stock.rod`. */
	readonly path: string;
	/** Quick to ask: whether a word stands anywhere in its text. */
	readonly mentions: (word: string) => boolean;
	/** Read when it is first asked for. */
	readonly tree: FileNode;
}

/** What lies around the text. */
export interface Surroundings {
	/** The other designs that are known, the shortest path first. */
	readonly files: () => readonly NearbyFile[];
	/** The uri that a path of a `use` line means, in this file or in another. */
	readonly resolve: (path: string, from?: string) => string | undefined;
	/** The design that the file would be with another text and perhaps a new file beside it, all else as it is. */
	readonly evaluate: (text: string, newFile?: NewFile) => Design;
	/** Whether the editor can make a file. */
	readonly canCreate: boolean;
	/** Whether the editor lists what concerns the whole file, or what is under the cursor. */
	readonly wholeFile: boolean;
}

export interface Asked {
	readonly snapshot: Snapshot;
	/** The cursor or the selection. */
	readonly span: Span;
	/** Of the file, as the editor shows them. */
	readonly findings: readonly Finding[];
	readonly around: Surroundings;
}

export type RefactoringKind =
	| "quickfix"
	| "refactor.extract"
	| "refactor.inline"
	| "refactor.rewrite"
	| "source.fixAll.storyrod"
	| "source.convertUnit.storyrod";

/** A change to the text, with what a maker should know before it is made. */
export interface Change {
	/** In the text that was asked about, its layout aside: `finished` sees to that. */
	readonly edits: readonly Edit[];
	readonly newFile?: NewFile;
	/** What the change brings beside what its title says: to be confirmed where the editor can ask. */
	readonly caution?: string;
	readonly keeps?: Keeps;
	/** What the checks find in it that they did not before is told with the change; else it is not made. */
	readonly mayBringFindings?: boolean;
	/** Comments that say the same of two things may become one. */
	readonly mergesComments?: boolean;
}

/**
 * What must be the same before and after, as the design is evaluated; `all` unless said otherwise. `sizes`: parts may be called
 * otherwise. `exact`: what is shown, and what a rough board is larger by, may be in another unit.
 */
export type Keeps = "all" | "sizes" | "exact" | "nothing";

/** A file beside the one that is looked at. */
export interface NewFile {
	readonly path: string;
	readonly uri: string;
	readonly text: string;
}

export interface Offer {
	/** The same in every run for the same choice: an editor asks again by it. */
	readonly id: string;
	readonly kind: RefactoringKind;
	readonly title: string;
	readonly preferred?: boolean;
	/** The finding that it mends. */
	readonly finding?: Finding;
	/** Why it cannot be done here; the change is not asked for then. */
	readonly disabled?: string;
	/** The change, or in words why there is none. */
	readonly change: () => Change | string;
}

export type Refactoring = (asked: Asked) => readonly Offer[];

/** An offer that only tells why it cannot be made. */
export function refusal(
	id: string,
	kind: RefactoringKind,
	title: string,
	reason: string,
): Offer {
	return { id, kind, title, disabled: reason, change: () => reason };
}
