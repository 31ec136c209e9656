// Woods by their common name: weight, strength, and how they move with moisture.

/** Columns of a wood that have a source of their own. */
export type WoodFigure =
	| "gravity"
	| "gravityGreen"
	| "elasticity"
	| "rupture"
	| "crushing"
	| "shear"
	| "shrinkage.radial"
	| "shrinkage.tangential"
	| "change.radial"
	| "change.tangential";

/** Across the grain: along the rays (quarter-sawn width) and along the rings (flat-sawn width). */
export interface RadialTangential {
	readonly radial: number;
	readonly tangential: number;
}

/** One wood; strength is the mean of small clear specimens at 12 % moisture content, no allowable value. */
export interface Wood {
	readonly name: string;
	readonly botanical: string;
	readonly group: "hardwood" | "softwood";
	/** Specific gravity: oven-dry weight, volume at 12 % moisture content. */
	readonly gravity: number;
	/** Specific gravity: oven-dry weight, green volume. */
	readonly gravityGreen: number;
	/** kg/m3 at 12 % moisture content: gravity x 1000 x 1.12. */
	readonly density: number;
	/** Modulus of elasticity in bending along the grain, MPa; from a beam 14 times as long as deep, so its shear is in it. */
	readonly elasticity: number;
	/** Modulus of rupture in bending, MPa. */
	readonly rupture: number;
	/** Compression across the grain at the proportional limit, MPa; undefined: none in print. */
	readonly crushing: number | undefined;
	/** Shear along the grain, MPa. */
	readonly shear: number;
	/** Green to oven-dry, per cent of the green size. */
	readonly shrinkage: RadialTangential;
	/** Moisture content below which it shrinks, %; the footnotes of Table 13-5, from memory. */
	readonly shrinksFrom: number;
	/** Change of size per 1 % of moisture content, as a share of the size; between 6 and 14 % moisture. */
	readonly change: RadialTangential;
	readonly source: string;
	/** The figures that were written from memory of the table; the others were seen in copies of it. */
	readonly fromMemory: readonly WoodFigure[];
	/** What is doubtful about its figures; empty where nothing is. */
	readonly note: string;
}

const handbook =
	"USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190 and -282): strength and gravity Table 5-3b, shrinkage Table 4-3, coefficients of change Table 13-5";
const imported =
	"USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190 and -282): strength Table 5-5b, shrinkage Table 4-4, coefficients of change Table 13-5";

/** Strength is printed in psi and turned into MPa (x 0.006895); density follows from gravity at 12 % moisture (x 1.12, Handbook chapter 4). */
export const woods: readonly Wood[] = [
	{
		name: "black walnut",
		botanical: "Juglans nigra",
		group: "hardwood",
		gravity: 0.55,
		gravityGreen: 0.51,
		density: 616,
		elasticity: 11580,
		rupture: 100.7,
		crushing: 6.96,
		shear: 9.45,
		shrinkage: { radial: 5.5, tangential: 7.8 },
		shrinksFrom: 30,
		change: { radial: 0.0019, tangential: 0.00274 },
		source: handbook,
		fromMemory: ["elasticity", "rupture"],
		note: "",
	},
	{
		name: "white oak",
		botanical: "Quercus alba",
		group: "hardwood",
		gravity: 0.68,
		gravityGreen: 0.6,
		density: 762,
		elasticity: 12270,
		rupture: 104.8,
		crushing: 7.38,
		shear: 13.79,
		shrinkage: { radial: 5.6, tangential: 10.5 },
		shrinksFrom: 30,
		change: { radial: 0.0018, tangential: 0.00365 },
		source: handbook,
		fromMemory: ["gravityGreen", "shear"],
		note: "the coefficients of change are those of the commercial white oaks; the shrinkage of the species alone would give 0.00194 and 0.00376",
	},
	{
		name: "northern red oak",
		botanical: "Quercus rubra",
		group: "hardwood",
		gravity: 0.63,
		gravityGreen: 0.56,
		density: 706,
		elasticity: 12550,
		rupture: 98.6,
		crushing: 6.96,
		shear: 12.27,
		shrinkage: { radial: 4.0, tangential: 8.6 },
		shrinksFrom: 30,
		change: { radial: 0.00158, tangential: 0.00369 },
		source: handbook,
		fromMemory: ["elasticity", "shear"],
		note: "the coefficients of change are those of the commercial red oaks; the shrinkage of the species alone would give 0.00137 and 0.00304",
	},
	{
		name: "sugar maple",
		botanical: "Acer saccharum",
		group: "hardwood",
		gravity: 0.63,
		gravityGreen: 0.56,
		density: 706,
		elasticity: 12620,
		rupture: 108.9,
		crushing: 10.14,
		shear: 16.06,
		shrinkage: { radial: 4.8, tangential: 9.9 },
		shrinksFrom: 30,
		change: { radial: 0.00165, tangential: 0.00353 },
		source: handbook,
		fromMemory: ["elasticity", "crushing"],
		note: "",
	},
	{
		name: "black cherry",
		botanical: "Prunus serotina",
		group: "hardwood",
		gravity: 0.5,
		gravityGreen: 0.47,
		density: 560,
		elasticity: 10270,
		rupture: 84.8,
		crushing: 4.76,
		shear: 11.72,
		shrinkage: { radial: 3.7, tangential: 7.1 },
		shrinksFrom: 30,
		change: { radial: 0.00126, tangential: 0.00248 },
		source: handbook,
		fromMemory: [],
		note: "",
	},
	{
		name: "white ash",
		botanical: "Fraxinus americana",
		group: "hardwood",
		gravity: 0.6,
		gravityGreen: 0.55,
		density: 672,
		elasticity: 12000,
		rupture: 103.4,
		crushing: 8,
		shear: 13.17,
		shrinkage: { radial: 4.9, tangential: 7.8 },
		shrinksFrom: 30,
		change: { radial: 0.00169, tangential: 0.00274 },
		source: handbook,
		fromMemory: ["gravityGreen"],
		note: "",
	},
	{
		name: "yellow birch",
		botanical: "Betula alleghaniensis",
		group: "hardwood",
		gravity: 0.62,
		gravityGreen: 0.55,
		density: 694,
		elasticity: 13860,
		rupture: 114.5,
		crushing: 6.69,
		shear: 12.96,
		shrinkage: { radial: 7.3, tangential: 9.5 },
		shrinksFrom: 30,
		change: { radial: 0.00256, tangential: 0.00338 },
		source: handbook,
		fromMemory: ["gravityGreen"],
		note: "",
	},
	{
		name: "American beech",
		botanical: "Fagus grandifolia",
		group: "hardwood",
		gravity: 0.64,
		gravityGreen: 0.56,
		density: 717,
		elasticity: 11860,
		rupture: 102.7,
		crushing: 6.96,
		shear: 13.86,
		shrinkage: { radial: 5.5, tangential: 11.9 },
		shrinksFrom: 30,
		change: { radial: 0.0019, tangential: 0.00431 },
		source: handbook,
		fromMemory: ["gravityGreen"],
		note: "",
	},
	{
		name: "yellow-poplar",
		botanical: "Liriodendron tulipifera",
		group: "hardwood",
		gravity: 0.42,
		gravityGreen: 0.4,
		density: 470,
		elasticity: 10890,
		rupture: 69.6,
		crushing: 3.45,
		shear: 8.2,
		shrinkage: { radial: 4.6, tangential: 8.2 },
		shrinksFrom: 30,
		change: { radial: 0.00158, tangential: 0.00289 },
		source: handbook,
		fromMemory: ["change.radial", "change.tangential"],
		note: "",
	},
	{
		name: "red maple",
		botanical: "Acer rubrum",
		group: "hardwood",
		gravity: 0.54,
		gravityGreen: 0.49,
		density: 605,
		elasticity: 11310,
		rupture: 92.4,
		crushing: 6.89,
		shear: 12.76,
		shrinkage: { radial: 4.0, tangential: 8.2 },
		shrinksFrom: 30,
		change: { radial: 0.00137, tangential: 0.00289 },
		source: handbook,
		fromMemory: [
			"gravityGreen",
			"crushing",
			"shear",
			"shrinkage.radial",
			"shrinkage.tangential",
		],
		note: "",
	},
	{
		name: "American basswood",
		botanical: "Tilia americana",
		group: "hardwood",
		gravity: 0.37,
		gravityGreen: 0.32,
		density: 414,
		elasticity: 10070,
		rupture: 60,
		crushing: 2.55,
		shear: 6.83,
		shrinkage: { radial: 6.6, tangential: 9.3 },
		shrinksFrom: 30,
		change: { radial: 0.0023, tangential: 0.0033 },
		source: handbook,
		fromMemory: ["gravityGreen", "rupture"],
		note: "",
	},
	{
		name: "quaking aspen",
		botanical: "Populus tremuloides",
		group: "hardwood",
		gravity: 0.38,
		gravityGreen: 0.35,
		density: 426,
		elasticity: 8140,
		rupture: 57.9,
		crushing: 2.55,
		shear: 5.86,
		shrinkage: { radial: 3.5, tangential: 6.7 },
		shrinksFrom: 30,
		change: { radial: 0.00119, tangential: 0.00234 },
		source: handbook,
		fromMemory: ["gravityGreen", "rupture"],
		note: "",
	},
	{
		name: "Honduran mahogany",
		botanical: "Swietenia macrophylla",
		group: "hardwood",
		gravity: 0.5,
		gravityGreen: 0.45,
		density: 560,
		elasticity: 10340,
		rupture: 79.3,
		crushing: undefined,
		shear: 8.48,
		shrinkage: { radial: 3.0, tangential: 4.1 },
		shrinksFrom: 30,
		change: { radial: 0.00172, tangential: 0.00238 },
		source: `${imported}; gravity at 12 %: common practice, no source, the Handbook prints none`,
		fromMemory: ["gravity", "change.radial", "change.tangential"],
		note: "its printed coefficients come from older shrinkage figures; those of today would give 0.00102 and 0.00141; gravity 0.48 to 0.55 in print",
	},
	{
		name: "teak",
		botanical: "Tectona grandis",
		group: "hardwood",
		gravity: 0.6,
		gravityGreen: 0.55,
		density: 672,
		elasticity: 10690,
		rupture: 100.7,
		crushing: undefined,
		shear: 13.03,
		shrinkage: { radial: 2.5, tangential: 5.8 },
		shrinksFrom: 30,
		change: { radial: 0.00101, tangential: 0.00186 },
		source: `${imported}; gravity at 12 %: common practice, no source, the Handbook prints none`,
		fromMemory: [
			"gravity",
			"shrinkage.radial",
			"shrinkage.tangential",
			"change.radial",
		],
		note: "its shrinkage would give 0.00085 and 0.00201; gravity 0.57 to 0.66 in print",
	},
	{
		name: "eastern white pine",
		botanical: "Pinus strobus",
		group: "softwood",
		gravity: 0.35,
		gravityGreen: 0.34,
		density: 392,
		elasticity: 8550,
		rupture: 59.3,
		crushing: 3.03,
		shear: 6.21,
		shrinkage: { radial: 2.1, tangential: 6.1 },
		shrinksFrom: 30,
		change: { radial: 0.00071, tangential: 0.00212 },
		source: handbook,
		fromMemory: ["crushing", "change.radial", "change.tangential"],
		note: "",
	},
	{
		name: "Douglas-fir, coast",
		botanical: "Pseudotsuga menziesii",
		group: "softwood",
		gravity: 0.48,
		gravityGreen: 0.45,
		density: 538,
		elasticity: 13440,
		rupture: 85.5,
		crushing: 5.52,
		shear: 7.79,
		shrinkage: { radial: 4.8, tangential: 7.6 },
		shrinksFrom: 30,
		change: { radial: 0.00165, tangential: 0.00267 },
		source: handbook,
		fromMemory: ["gravityGreen", "crushing", "shear", "change.radial"],
		note: "",
	},
	{
		name: "longleaf pine",
		botanical: "Pinus palustris",
		group: "softwood",
		gravity: 0.59,
		gravityGreen: 0.54,
		density: 661,
		elasticity: 13650,
		rupture: 100,
		crushing: 6.62,
		shear: 10.41,
		shrinkage: { radial: 5.1, tangential: 7.5 },
		shrinksFrom: 30,
		change: { radial: 0.00176, tangential: 0.00263 },
		source: handbook,
		fromMemory: ["crushing", "shear", "change.radial"],
		note: "green gravity 0.54 or 0.55 by edition",
	},
	{
		name: "ponderosa pine",
		botanical: "Pinus ponderosa",
		group: "softwood",
		gravity: 0.4,
		gravityGreen: 0.38,
		density: 448,
		elasticity: 8890,
		rupture: 64.8,
		crushing: 4,
		shear: 7.79,
		shrinkage: { radial: 3.9, tangential: 6.2 },
		shrinksFrom: 30,
		change: { radial: 0.00133, tangential: 0.00216 },
		source: handbook,
		fromMemory: [
			"elasticity",
			"rupture",
			"crushing",
			"shear",
			"shrinkage.radial",
			"shrinkage.tangential",
			"change.radial",
			"change.tangential",
		],
		note: "",
	},
	{
		name: "western redcedar",
		botanical: "Thuja plicata",
		group: "softwood",
		gravity: 0.32,
		gravityGreen: 0.31,
		density: 358,
		elasticity: 7650,
		rupture: 51.7,
		crushing: 3.17,
		shear: 6.83,
		shrinkage: { radial: 2.4, tangential: 5.0 },
		shrinksFrom: 22,
		change: { radial: 0.00111, tangential: 0.00234 },
		source: handbook,
		fromMemory: [
			"gravityGreen",
			"gravity",
			"elasticity",
			"rupture",
			"crushing",
			"shear",
			"change.radial",
			"change.tangential",
		],
		note: "begins to shrink at 22 % moisture, most other woods at 30 %",
	},
];

const byName = new Map(woods.map((wood) => [wood.name.toLowerCase(), wood]));

/** A wood by its common name; `oak`, `maple` alone are not enough to know which. */
export function woodNamed(name: string): Wood | undefined {
	return byName.get(name.trim().toLowerCase());
}
