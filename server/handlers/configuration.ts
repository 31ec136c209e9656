// Takes in what the editor has set, at the start and at each change: the checks run again at once, nothing is restarted.

import {
	type Connection,
	DidChangeConfigurationNotification,
} from "vscode-languageserver";
import type { Context } from "../core/context.ts";

const sections = ["storyrod.checks", "storyrod.hints"];

/** `onSet` is called each time that the settings are known anew, and once at the start. What is returned asks for the first time. */
export function takeConfiguration(
	connection: Connection,
	context: Context,
	onSet: () => void,
): () => Promise<void> {
	const { session, guard } = context;
	let asked = 0;
	const set = (checks: unknown, hints: unknown): void =>
		guard("configuration", undefined, () => {
			session.settings.setEditor(checks);
			session.settings.setHints(hints);
			onSet();
		});
	const ask = async (): Promise<void> => {
		asked += 1;
		const mine = asked;
		let values: readonly unknown[] = [];
		try {
			values = await connection.workspace.getConfiguration(
				sections.map((section) => ({ section })),
			);
		} catch {
			// A client that cannot tell has nothing set.
		}
		// An answer to a later question may have come first.
		if (mine === asked) set(values[0], values[1]);
	};
	connection.onDidChangeConfiguration(async ({ settings }) => {
		if (context.client.configuration) await ask();
		else {
			const own = memberOf(settings, "storyrod");
			set(memberOf(own, "checks"), memberOf(own, "hints"));
		}
	});
	return async () => {
		const { configuration, configurationChanges } = context.client;
		if (configurationChanges) {
			connection.client
				.register(DidChangeConfigurationNotification.type, {
					section: sections,
				})
				.catch(() => {
					// Changes are then seen at the next start.
				});
		}
		if (configuration) await ask();
	};
}

function memberOf(value: unknown, name: string): unknown {
	return typeof value === "object" &&
		value !== null &&
		Object.hasOwn(value, name)
		? (value as Record<string, unknown>)[name]
		: undefined;
}
