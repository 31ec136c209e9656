/** The door of the room: jobs for the saw, plans to cut by. */
export { layOutBoards, searchBoards } from "./boards/index.ts";
export type {
	BoardJob,
	BoardPart,
	BoardPlan,
	BoardStock,
	CutSheet,
	Effort,
	Progress,
	Rectangle,
	Region,
	SheetJob,
	SheetPart,
	SheetPlan,
	SheetStock,
} from "./job.ts";
export { layOutSheets, searchSheets } from "./sheets/search.ts";
