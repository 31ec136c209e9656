/** The door of the room: linear programs that grow by columns. */
export { LinearProgram, type Outcome } from "./program.ts";
