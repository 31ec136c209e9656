/** The door of the grammar: what the rooms above may use of it. */
export { faultSeverities } from "./errors.ts";
export { type ParseResult, parse } from "./parse.ts";
export { type ReadText, reparse } from "./reparse.ts";
export * from "./table/fill.ts";
export * from "./table/index.ts";
export type * from "./tree/nodes.ts";
export * from "./tree/spans.ts";
export * from "./tree/walk.ts";
