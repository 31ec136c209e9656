// How a server without a disk asks the editor for files: it runs in a worker, and the workspace may lie on another machine.

/** The `initializationOptions` of a client that is asked for files. */
export interface ToldAtStart {
	/** Where the page of the checks can be opened. */
	readonly checksPage: string;
}

/** The text of each file, `null` for one that is not there or is too large for a design. In the order of `uris`. */
export const readEditorFiles = "storyrod/readFiles";

export interface ReadEditorFiles {
	readonly uris: readonly string[];
}

export interface EditorFileTexts {
	readonly texts: readonly (string | null)[];
}

/** The designs and settings files in all folders of the workspace. */
export const listEditorFiles = "storyrod/listFiles";

export interface EditorFileNames {
	readonly uris: readonly string[];
}
