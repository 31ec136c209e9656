// What names there are in a text: who declares them, where they are in force, and where they are mentioned.
//
// Read from the tree and the table alone, so that it is there for every text, however broken, and costs no evaluation.

import type {
	Construct,
	Declares,
	NameNode,
	PathNode,
	Statement,
	TextNode,
} from "../../../../grammar/index.ts";

/** A name that a line brings into being. The same object as long as its top statement does not change. */
export interface Named {
	readonly kind: Declares;
	readonly name: string;
	readonly uri: string;
	/** The name in the text. */
	readonly node: NameNode;
	/** The line that declares it. */
	readonly statement: Statement;
	readonly construct: Construct;
	/** In whose block it stands; undefined at the top of a file. */
	readonly holder: Named | undefined;
	/** Where it is in force; undefined at the top of a file. */
	readonly scope: NameScope | undefined;
	/** What its block declares and a dot leads to. */
	readonly inner: NameScope | undefined;
	/** Of a `make` line: the component that it is made from. */
	from: Mention | undefined;
	/** Of trim and veneer: what it lies on. Its parts are named after that. */
	readonly on: Mention[] | undefined;
}

/** The names of one block. Of two with the same name the first is in force. */
export interface NameScope {
	/** Names that are looked up here come next from there; undefined: from the file. */
	readonly outer: NameScope | undefined;
	readonly names: Map<string, Named>;
	readonly all: Named[];
	/** Names that stand for panels and faces of the box that this is the inside of. */
	readonly fixed: ReadonlySet<string>;
	/** Names that are only reached by a dot: variants. */
	readonly behindDot: boolean;
	/** The inside of a handed pair: its right one reads left for right. */
	readonly mirrored: boolean;
	/** Whose inside it is: both of a pair of legs. */
	holder: Named | undefined;
}

export type MentionRole =
	/** Its value, its place, its parts are used. */
	| "read"
	/** `set NAME = …`: a given of the component. */
	| "set"
	/** `measured PATH …`: another value takes the place of its own. */
	| "measured"
	/** In a `use` line. */
	| "use"
	/** In the order of a veneer: also by the last name of a panel that it lies on. */
	| "order";

/** A name, or names with dots, that means something declared elsewhere. */
export interface Mention {
	readonly role: MentionRole;
	readonly uri: string;
	readonly segments: readonly NameNode[];
	readonly path: PathNode | NameNode;
	/** Where its first name is looked up; undefined: in the file. */
	readonly scope: NameScope | undefined;
	/** The innermost declared thing in whose text it stands. */
	readonly holder: Named | undefined;
	readonly statement: Statement;
	/** Its line does not fit the table: it may be no name at all. */
	readonly loose: boolean;
	/** Of `set`: the component whose given it is. */
	readonly component?: Mention | undefined;
}

/** A `use` line with a path that can be read. */
export interface Use {
	readonly statement: Statement;
	readonly path: TextNode;
	readonly names: readonly NameNode[];
}

export interface MentionedAt {
	readonly mention: Mention;
	/** Which of its names. */
	readonly index: number;
}

/** What a name in the text means. */
export type Target =
	| {
			readonly kind: "named";
			readonly named: Named;
			/** What stands behind the name in a name made from it: `-inside` in `skin.seat-inside`. */
			readonly suffix: string;
			/** In a handed pair: its right one reads another name here. */
			readonly mirrored: boolean;
	  }
	| {
			/** A name that nobody wrote down: a panel, a face, a size of a thing. */
			readonly kind: "fixed";
			/** The thing that has it; undefined for the floor. */
			readonly of: Named | undefined;
			/** Behind that thing: `["left", "inside"]`. */
			readonly words: readonly string[];
	  };
