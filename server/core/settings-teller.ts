// Tells the user what is wrong in the settings: once, not at every keystroke.

import { type Connection, MessageType } from "vscode-languageserver";
import type { Session } from "./session.ts";

export class SettingsTeller {
	private readonly connection: Connection;
	private told = "";

	constructor(connection: Connection) {
		this.connection = connection;
	}

	/** The first fault in a message of its own, all of them in the log. */
	tell(session: Session): void {
		const faults = session.settings.faultsOf(session.openUris());
		const all = faults.join("\n");
		if (all === this.told) return;
		this.told = all;
		const [first] = faults;
		if (first === undefined) return;
		for (const fault of faults) this.connection.console.warn(fault);
		const more = faults.length - 1;
		void this.connection.sendNotification("window/showMessage", {
			type: MessageType.Warning,
			message: more > 0 ? `${first} (${more} more in the output)` : first,
		});
	}
}
