/** The words by which a place is told, and which of them are reserved: they join things, so they can be no names. */

/** Seen from the front: x to the right, y up, z toward the viewer. */
export const directionWords = {
	up: { axis: "y", sign: 1 },
	down: { axis: "y", sign: -1 },
	right: { axis: "x", sign: 1 },
	left: { axis: "x", sign: -1 },
	forward: { axis: "z", sign: 1 },
	back: { axis: "z", sign: -1 },
} as const;

export type DirectionWord = keyof typeof directionWords;

/** Words that join; they may not be declared as names and never stand for a thing. `x` separates sizes. */
export const joiningWords: readonly string[] = [
	"of",
	"at",
	"to",
	"from",
	"on",
	"up",
	"down",
	"every",
	"after",
	"before",
	"above",
	"below",
	"per",
	"over",
	"between",
	"x",
];
