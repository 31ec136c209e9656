/** Lines printed before and after the tests in the extension host: around them the window logs things of its own. */
export const startMark = "##tests";
export const endMark = "##end";
