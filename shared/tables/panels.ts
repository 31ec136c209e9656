// Sheet goods by sort: density and how far the thickness may be off.

export interface PanelSort {
	readonly name: string;
	/** kg/m3, the middle of the printed range. */
	readonly density: number;
	/** Half range of the thickness in mm for a thickness in mm. */
	readonly tolerance: (thick: number) => number;
	readonly source: string;
}

/** The sorts that `species` may name for a sheet. */
export const panelSorts: readonly PanelSort[] = [
	{
		name: "birch plywood",
		density: 685,
		// +(0.2 + 0.03 t) / -(0.4 + 0.03 t) is the limit on delivery; about what a sheet measures, half of the maker's range.
		tolerance: (thick) => (thick < 8 ? 0.4 : 0.5),
		source:
			"density and limits of 18 mm: data sheet of an all-birch plywood to EN 315; spread within one sheet: common practice, no source",
	},
	{
		name: "softwood plywood",
		density: 500,
		tolerance: (thick) => (thick <= 19.05 ? 0.4 : thick * 0.03),
		source:
			"US PS 1-19, sanded: ±1/64 in to 3/4 in, ±3 % above; density: Wood Handbook Table 12-1, middle of 400 to 600",
	},
	{
		name: "hardwood plywood",
		density: 600,
		tolerance: () => 0.4,
		source:
			"ANSI/HPVA HP-1 from memory (range contested); what one bundle measures: common practice, no source",
	},
	{
		name: "mdf",
		density: 800,
		tolerance: (thick) => (thick < 20 ? 0.2 : 0.3),
		source:
			"EN 622-1: ±0.2 mm to 19 mm, ±0.3 above, from memory; density: Wood Handbook Table 12-1, middle of 700 to 900",
	},
	{
		name: "particleboard",
		density: 700,
		tolerance: () => 0.3,
		source:
			"EN 312: ±0.3 mm sanded, from memory; density: Wood Handbook Table 12-1, middle of 600 to 800",
	},
];

const byName = new Map(panelSorts.map((sort) => [sort.name, sort]));

export function panelNamed(name: string): PanelSort | undefined {
	return byName.get(name.trim().toLowerCase());
}
