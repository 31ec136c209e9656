// What every handler is given.

import type { ClientFeatures } from "./capabilities.ts";
import type { Host } from "./host.ts";
import type { Session } from "./session.ts";

export interface Context {
	readonly host: Host;
	readonly session: Session;
	/** What the client can do; known after `initialize`. */
	client: ClientFeatures;
	/** Runs our own code for a request: a fault in it is logged, and answered with the fallback. */
	readonly guard: <T>(what: string, fallback: T, work: () => T) => T;
}
