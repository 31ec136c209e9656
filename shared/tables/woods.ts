// Woods by their common name: density at 12 % moisture content.

/** One wood. */
export interface Wood {
	readonly name: string;
	readonly botanical: string;
	/** Specific gravity: oven-dry weight, volume at 12 % moisture content. */
	readonly gravity: number;
	/** kg/m3 at 12 % moisture content: gravity x 1000 x 1.12. */
	readonly density: number;
	readonly source: string;
}

const handbook =
	"USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190 and -282), Table 5-3b";

/** Gravity: Wood Handbook Tables 5-3b and 5-5b, some rows from memory; density follows at 12 % moisture (x 1.12, Handbook chapter 4). */
export const woods: readonly Wood[] = [
	{
		name: "black walnut",
		botanical: "Juglans nigra",
		gravity: 0.55,
		density: 616,
		source: handbook,
	},
	{
		name: "white oak",
		botanical: "Quercus alba",
		gravity: 0.68,
		density: 762,
		source: handbook,
	},
	{
		name: "northern red oak",
		botanical: "Quercus rubra",
		gravity: 0.63,
		density: 706,
		source: handbook,
	},
	{
		name: "sugar maple",
		botanical: "Acer saccharum",
		gravity: 0.63,
		density: 706,
		source: handbook,
	},
	{
		name: "black cherry",
		botanical: "Prunus serotina",
		gravity: 0.5,
		density: 560,
		source: handbook,
	},
	{
		name: "white ash",
		botanical: "Fraxinus americana",
		gravity: 0.6,
		density: 672,
		source: handbook,
	},
	{
		name: "yellow birch",
		botanical: "Betula alleghaniensis",
		gravity: 0.62,
		density: 694,
		source: handbook,
	},
	{
		name: "American beech",
		botanical: "Fagus grandifolia",
		gravity: 0.64,
		density: 717,
		source: handbook,
	},
	{
		name: "yellow-poplar",
		botanical: "Liriodendron tulipifera",
		gravity: 0.42,
		density: 470,
		source: handbook,
	},
	{
		name: "red maple",
		botanical: "Acer rubrum",
		gravity: 0.54,
		density: 605,
		source: handbook,
	},
	{
		name: "American basswood",
		botanical: "Tilia americana",
		gravity: 0.37,
		density: 414,
		source: handbook,
	},
	{
		name: "quaking aspen",
		botanical: "Populus tremuloides",
		gravity: 0.38,
		density: 426,
		source: handbook,
	},
	{
		name: "Honduran mahogany",
		botanical: "Swietenia macrophylla",
		gravity: 0.5,
		density: 560,
		source:
			"common practice, no source: the Handbook prints no value at 12 % for this wood",
	},
	{
		name: "teak",
		botanical: "Tectona grandis",
		gravity: 0.6,
		density: 672,
		source:
			"common practice, no source: the Handbook prints no value at 12 % for this wood",
	},
	{
		name: "eastern white pine",
		botanical: "Pinus strobus",
		gravity: 0.35,
		density: 392,
		source: handbook,
	},
	{
		name: "Douglas-fir, coast",
		botanical: "Pseudotsuga menziesii",
		gravity: 0.48,
		density: 538,
		source: handbook,
	},
	{
		name: "longleaf pine",
		botanical: "Pinus palustris",
		gravity: 0.59,
		density: 661,
		source: handbook,
	},
	{
		name: "ponderosa pine",
		botanical: "Pinus ponderosa",
		gravity: 0.4,
		density: 448,
		source: handbook,
	},
	{
		name: "western redcedar",
		botanical: "Thuja plicata",
		gravity: 0.32,
		density: 358,
		source: handbook,
	},
];

const byName = new Map(woods.map((wood) => [wood.name.toLowerCase(), wood]));

/** A wood by its common name; `oak`, `maple` alone are not enough to know which. */
export function woodNamed(name: string): Wood | undefined {
	return byName.get(name.trim().toLowerCase());
}
