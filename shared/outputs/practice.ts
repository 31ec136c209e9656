// Figures of the trade that the buying list counts with, each with its source.

/** Share of solid wood that is lost to knots, sapwood, ends and jointing, on top of the rough sizes. Hardwood 0.2 to 0.4: common practice, no source. */
export const boardWaste = 0.3;

/** Rough stock is that much thicker than what it is planed to, mm (1/4 in), where the stock file does not say. Common practice, no source. */
export const roughThicker = 6.35;

/** m2 that a litre of white or yellow glue covers, spread on one side: 250 ft2 to the gallon, as data sheets have it (from memory; a wet film of 0.15 mm gives 6.5). */
export const glueCovers = 6.1;
