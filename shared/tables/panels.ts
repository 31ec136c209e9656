// Sheet goods by sort: density, stiffness, and how far the thickness may be off.

/** Modulus of elasticity in bending, mean, MPa. */
export interface PanelStiffness {
	/** Along the face grain. */
	readonly along: number;
	/** Across the face grain; undefined: no figure in print for this sort. */
	readonly across: number | undefined;
}

export interface PanelSort {
	readonly name: string;
	/** kg/m3, the middle of the printed range. */
	readonly density: number;
	/** kg/m3, lightest and heaviest in print. */
	readonly densities: readonly [number, number];
	/** Half range of the thickness in mm for a thickness in mm. */
	readonly tolerance: (thick: number) => number;
	readonly source: string;
	/** MPa for a thickness in mm: a mean where one is printed, else the low end of the printed range. */
	readonly stiffness: (thick: number) => PanelStiffness;
	readonly stiffnessSource: string;
	/** How far it grows in its plane, as a share, per 1 % of moisture content. */
	readonly change: number;
	readonly changeSource: string;
}

/** Mean bending stiffness of all-birch plywood by nominal thickness: mm, MPa along, MPa across. */
const birchStiffness: readonly (readonly [number, number, number])[] = [
	[6.5, 12737, 4763],
	[9, 11395, 6105],
	[12, 10719, 6781],
	[15, 10316, 7184],
	[18, 10048, 7452],
	[21, 9858, 7642],
	[24, 9717, 7783],
];

/** The nearest row; the sum of both ways is 17 500 in every one. */
function birch(thick: number): PanelStiffness {
	let nearest = birchStiffness[0] as readonly [number, number, number];
	for (const row of birchStiffness) {
		if (Math.abs(row[0] - thick) < Math.abs(nearest[0] - thick)) nearest = row;
	}
	return { along: nearest[1], across: nearest[2] };
}

/** The same both ways. */
function even(elasticity: number): PanelStiffness {
	return { along: elasticity, across: elasticity };
}

/** Minimum of the mean by thickness. */
function mdf(thick: number): PanelStiffness {
	if (thick <= 9) return even(2700);
	if (thick <= 12) return even(2500);
	return even(thick <= 19 ? 2200 : 2150);
}

function particleboard(thick: number): PanelStiffness {
	if (thick <= 13) return even(1800);
	return even(thick <= 20 ? 1600 : 1500);
}

const plywoodInPlane =
	"about 0.015 % per 1 % moisture: Handbook of Finnish Plywood, from memory";
const boardInPlane =
	"common practice, no source: 0.33 % at most from 50 to 80 % humidity (ANSI A208.2), about 6 % of moisture";

/** The sorts that `species` may name for a sheet. */
export const panelSorts: readonly PanelSort[] = [
	{
		name: "birch plywood",
		density: 685,
		densities: [660, 710],
		// +(0.2 + 0.03 t) / -(0.4 + 0.03 t) is the limit on delivery; about what a sheet measures, half of the maker's range.
		tolerance: (thick) => (thick < 8 ? 0.4 : 0.5),
		source:
			"density and limits of 18 mm: data sheet of an all-birch plywood to EN 315; spread within one sheet: common practice, no source",
		stiffness: birch,
		stiffnessSource:
			"mean bending stiffness by thickness: Handbook of Finnish Plywood, from memory",
		change: 0.00015,
		changeSource: plywoodInPlane,
	},
	{
		name: "softwood plywood",
		density: 500,
		densities: [400, 600],
		tolerance: (thick) => (thick <= 19.05 ? 0.4 : thick * 0.03),
		source:
			"US PS 1-19, sanded: ±1/64 in to 3/4 in, ±3 % above; density: Wood Handbook Table 12-1, middle of 400 to 600",
		stiffness: () => ({ along: 6960, across: undefined }),
		stiffnessSource:
			"Wood Handbook Table 12-1, low end of 6960 to 8550 MPa; none in print across",
		change: 0.00015,
		changeSource: plywoodInPlane,
	},
	{
		name: "hardwood plywood",
		density: 600,
		densities: [500, 700],
		tolerance: () => 0.4,
		source:
			"ANSI/HPVA HP-1 from memory (range contested); what one bundle measures: common practice, no source",
		stiffness: () => ({ along: 6500, across: undefined }),
		stiffnessSource:
			"from memory, low end of 6500 to 10500 MPa, contested; none in print across",
		change: 0.00015,
		changeSource: plywoodInPlane,
	},
	{
		name: "mdf",
		density: 800,
		densities: [700, 900],
		tolerance: (thick) => (thick < 20 ? 0.2 : 0.3),
		source:
			"EN 622-1: ±0.2 mm to 19 mm, ±0.3 above, from memory; density: Wood Handbook Table 12-1, middle of 700 to 900",
		stiffness: mdf,
		stiffnessSource:
			"EN 622-5, least mean by thickness, from memory; the Wood Handbook Table 12-1 has 3590 MPa",
		change: 0.00055,
		changeSource: boardInPlane,
	},
	{
		name: "particleboard",
		density: 700,
		densities: [600, 800],
		tolerance: () => 0.3,
		source:
			"EN 312: ±0.3 mm sanded, from memory; density: Wood Handbook Table 12-1, middle of 600 to 800",
		stiffness: particleboard,
		stiffnessSource:
			"EN 312 type P2, least mean by thickness, from memory; the Wood Handbook Table 12-1 has 2760 to 4140 MPa",
		change: 0.00055,
		changeSource: boardInPlane,
	},
];

const byName = new Map(panelSorts.map((sort) => [sort.name, sort]));

export function panelNamed(name: string): PanelSort | undefined {
	return byName.get(name.trim().toLowerCase());
}
