// Figures of the trade that the buying list counts with, each with its source.

/** m2 that a litre of white or yellow glue covers, spread on one side: 250 ft2 to the gallon, as data sheets have it (from memory; a wet film of 0.15 mm gives 6.5). */
export const glueCovers = 6.1;
