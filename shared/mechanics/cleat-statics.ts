// Forces of a piece on a bevelled cleat: on the hook, at the lower bearing line, at its front legs, on the screws in the wall.

/** A force straight down, N, and how far from the wall's face it acts, mm. */
export interface Weight {
	readonly force: number;
	readonly fromWall: number;
}

export interface CleatCase {
	readonly weights: readonly Weight[];
	/** The middle of the bevel's contact from the wall, mm. */
	readonly contact: number;
	/** The middle of the contact above the line at which the piece leans on the wall, mm. */
	readonly rise: number;
	/** tan of the bevel's angle from horizontal. */
	readonly slope: number;
	/** The middle of the contact, and the line of screws, above the wall strip's lower edge, mm. */
	readonly contactUp: number;
	readonly screwsUp: number;
}

export interface CleatForces {
	/** N, down. */
	readonly weight: number;
	/** mm from the wall at which all of it acts. */
	readonly fromWall: number;
	/** On the hook, down, N. */
	readonly down: number;
	/** At the lower bearing line, against the wall, N; 0 where legs carry the front. */
	readonly lean: number;
	/** The legs together, up, N. */
	readonly legs: number;
	/** Thrust of the bevel off the wall, N: what balance asks for, and the most that a wedge without friction gives. */
	readonly thrust: readonly [number, number];
	/** Pull on all wall screws, N, for the two thrusts. */
	readonly pull: readonly [number, number];
	/** The piece climbs out of a hook without friction: it turns forward off the cleat. */
	readonly climbs: boolean;
	/** The legs stand behind the weight: it lifts off the cleat. */
	readonly lifts: boolean;
}

/**
 * No legs. Moments about the contact: lean x rise = sum force x (fromWall - contact); the hook takes all weight. The bevel
 * thrusts between what balance asks for and weight x slope. Moments about the wall strip's lower edge:
 * pull = (thrust x contactUp + down x contact) / screwsUp.
 */
export function hungForces(given: CleatCase): CleatForces {
	const { weight, moment, fromWall } = sums(given);
	const lean = given.rise > 0 ? Math.max(0, moment / given.rise) : Infinity;
	const wedge = weight * given.slope;
	return {
		weight,
		fromWall,
		down: weight,
		lean: moment > 0 ? lean : 0,
		legs: 0,
		...onWall(given, weight, moment > 0 ? lean : 0, wedge),
		climbs: moment > 0 && lean > wedge,
		lifts: false,
	};
}

/** Legs `at` mm from the wall stand on a firm floor: lever about the contact; the hook takes the rest, and no line below is needed. */
export function legForces(given: CleatCase, at: number): CleatForces {
	const { weight, moment, fromWall } = sums(given);
	const legs = Math.max(0, moment / (at - given.contact));
	const down = weight - legs;
	const held = Math.max(0, down);
	return {
		weight,
		fromWall,
		down,
		lean: 0,
		legs,
		...onWall(given, held, 0, held * given.slope),
		climbs: false,
		lifts: down < 0,
	};
}

function sums({ weights, contact }: CleatCase): {
	readonly weight: number;
	readonly moment: number;
	readonly fromWall: number;
} {
	let weight = 0;
	let about = 0;
	for (const { force, fromWall } of weights) {
		weight += force;
		about += force * fromWall;
	}
	return {
		weight,
		moment: about - weight * contact,
		fromWall: weight > 0 ? about / weight : 0,
	};
}

function onWall(
	given: CleatCase,
	down: number,
	least: number,
	wedge: number,
): Pick<CleatForces, "thrust" | "pull"> {
	const pull = (thrust: number): number =>
		(thrust * given.contactUp + down * given.contact) / given.screwsUp;
	const most = Math.max(least, wedge);
	return { thrust: [least, most], pull: [pull(least), pull(most)] };
}

/** A plain rail screwed through to the wall: the pull is the lean, on the line of the screws. */
export function railForces(
	weights: readonly Weight[],
	rise: number,
): { readonly weight: number; readonly pull: number } {
	let weight = 0;
	let moment = 0;
	for (const { force, fromWall } of weights) {
		weight += force;
		moment += force * fromWall;
	}
	return { weight, pull: rise > 0 ? moment / rise : Infinity };
}
