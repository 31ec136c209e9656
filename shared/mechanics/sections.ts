// Cross-sections of beams: a rectangle, and several glued to each other of woods that differ in stiffness.

/** One rectangle of a section that bends in the upright plane. */
export interface SectionLayer {
	/** Modulus of elasticity, MPa. */
	readonly elasticity: number;
	/** Level, mm. */
	readonly width: number;
	/** Upright, mm. */
	readonly height: number;
	/** Of its underside above any level that all layers share, mm. */
	readonly bottom: number;
}

export interface CompositeSection {
	/** E I, N mm2. */
	readonly stiffness: number;
	/** Of the neutral axis above the shared level, mm. */
	readonly neutral: number;
}

/** Second moment of area of a rectangle about its own middle, mm4: b h^3 / 12. */
export function secondMoment(width: number, height: number): number {
	return (width * height ** 3) / 12;
}

/**
 * The transformed section, layers taken as rigidly glued to each other: neutral axis at sum(E A y) / sum(E A), stiffness
 * sum E (I + A (y_i - y)^2). Any text on strength of materials.
 */
export function composite(layers: readonly SectionLayer[]): CompositeSection {
	let axial = 0;
	let first = 0;
	for (const { elasticity, width, height, bottom } of layers) {
		const share = elasticity * width * height;
		axial += share;
		first += share * (bottom + height / 2);
	}
	const neutral = axial > 0 ? first / axial : 0;
	let stiffness = 0;
	for (const { elasticity, width, height, bottom } of layers) {
		const off = bottom + height / 2 - neutral;
		stiffness +=
			elasticity * (secondMoment(width, height) + width * height * off * off);
	}
	return { stiffness, neutral };
}
