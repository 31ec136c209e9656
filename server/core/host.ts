// What the language server needs from the machine it runs on. The core itself touches no file and no timer.

export interface Host {
	/** The text of a file that is not open in the editor; undefined if there is none or it must not be read. */
	read(uri: string): string | undefined;
	/** Changes when the file does, and is quicker to have than its text; undefined if there is none. */
	stamp(uri: string): string | undefined;
	/** The uri that a path behind `use … from` in the file `from` means; undefined where it is not followed. */
	resolve(from: string, path: string): string | undefined;
	/** The designs and folders in a folder, by its uri with a slash at the end, in order; undefined if it cannot be read. */
	list?(folder: string):
		| readonly {
				/** As it is called, not escaped. */
				readonly name: string;
				readonly isFolder: boolean;
		  }[]
		| undefined;
	/** The uri of the settings file that holds for a design; undefined if there is none. */
	settingsFile(uri: string): string | undefined;
	/** The one spelling of a uri: clients and resolved paths may escape different characters. */
	canonical(uri: string): string;
	/** A file changed, came or went: what was read of it is old. */
	forget?(uri: string): void;
	/** Called once: a host that has texts later than they are read tells which have come. */
	onArrived?(arrived: (uris: readonly string[]) => void): void;
	/** Texts are on their way, and what was worked out may be wrong in a moment; undefined if none are. Never rejects. */
	whenArrived?(): Promise<void> | undefined;
	/** Runs a task in a later turn of the event loop, after messages that lie ready. */
	later(task: () => void): void;
	/** Takes in what the client tells at the start beyond the protocol (`initializationOptions`). */
	begin?(told: unknown): void;
	/** Where the page of a check can be opened. */
	checkPage(anchor: string): string;
}
