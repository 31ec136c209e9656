// Which files and folders the client tells about before and after they get another name or place.

import type { ServerCapabilities } from "vscode-languageserver";

/** Any folder may hold designs. */
const moved = {
	filters: [
		{ pattern: { glob: "**/*.rod", matches: "file" as const } },
		{ pattern: { glob: "**", matches: "folder" as const } },
	],
};

export const fileOperations: NonNullable<
	NonNullable<ServerCapabilities["workspace"]>["fileOperations"]
> = { willRename: moved, didRename: moved };
