/** The door of the room: plans for lengths from lengths. */
export { layOutBoards, searchBoards } from "./search.ts";
