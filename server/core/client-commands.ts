// What a client of ours can do when a line over a piece is chosen. Others show the line only.

/** A client names those that it has as `experimental.commands` of its capabilities. */
export const clientCommands = {
	/** Of the file, the name of the piece. */
	showCutList: "storyrod.showCutList",
	showBuyingList: "storyrod.showBuyingList",
	/** Of the file, the place of a name in it. */
	showUses: "storyrod.showUses",
} as const;

/** Those that a client says it has. */
export function commandsIn(experimental: unknown): readonly string[] {
	const named =
		typeof experimental === "object" && experimental !== null
			? (experimental as { readonly commands?: unknown }).commands
			: undefined;
	return Array.isArray(named)
		? named.filter((one) => typeof one === "string")
		: [];
}
