/** The places in the shipped record bench that the tests point at: when the design changes, they follow here. */

export const file = "record-bench.rod";
export const pieceLine = "piece record-bench";
export const pieceName = "record-bench";

/** The end of the divider's line: its dadoes, with no width written, follow the divider's thickness. */
export const dadoLine = "centred dado 3/16";
export const dadoDepth = "3/16";

/** A width by the sold-as thickness: 3/4 - 45/64 = 3/64 in = 1.19 mm of air, where a glued dado bears 0.25 mm. */
export const tooWide = " wide 3/4";

/** The line that makes the bottom, which carries the records. */
export const panelsLine = "panels top, bottom";
