// How much more wood sags under a load that stays: sag over the years = factor x sag at first.

export type CreepSort = "solid" | "plywood" | "board";

export interface CreepFactor {
	readonly factor: number;
	readonly source: string;
}

/** Dry, indoors. Contested: for furniture 1.5 (solid) to 2 (plywood) to 2.5 and 3.25 (board) are in use. */
export const creepFactors: Readonly<Record<CreepSort, CreepFactor>> = {
	solid: {
		factor: 1.5,
		source: "NDS 3.5.2, seasoned lumber under long-term load, from memory",
	},
	plywood: {
		factor: 1.8,
		source:
			"1 + k_def, Eurocode 5 Table 3.2, plywood, service class 1, from memory",
	},
	board: {
		factor: 3.25,
		source:
			"1 + k_def, Eurocode 5 Table 3.2, MDF and particleboard, service class 1, from memory",
	},
};
