/** The door of the room: what is sawn out of what. */
export type { LayoutOptions } from "./layouts.ts";
export { layoutsOf, searchLayouts } from "./layouts.ts";
export { paidThickness } from "./rough-size.ts";
export { mmOf } from "./steps.ts";
export { boardFeetOf } from "./stock-to-cut.ts";
export type {
	LaidPart,
	LaidRegion,
	LaidSheet,
	LayoutKind,
	LayoutProgress,
	MaterialLayout,
	MissingPart,
	PieceToCut,
	SheetsOfSize,
} from "./types.ts";
export { stepsPerMm } from "./types.ts";
export { areaIn, type PlacedPart, partsIn } from "./walk.ts";
export { leftText, stepsText, stepText } from "./words.ts";
