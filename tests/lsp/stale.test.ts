// What goes stale elsewhere: after each event, what a maker sees is what a fresh look at the texts tells, for an editor that
// is sent diagnostics and for one that asks for them. Files are named below `file:///shop/`.

import { afterEach, describe, expect, test } from "vitest";
import {
	type ClientKind,
	type ClientOptions,
	DiagnosticClient,
} from "../harness/diagnostic-client.ts";

const shop = "file:///shop";
const at = (name: string): string =>
	name.includes(":") ? name : `${shop}/${name}`;

/** A stock file that offers one variant. */
const stock = (variant: string): string => `sheet ply {
  species "birch plywood"
  size 96 x 48
  variant ${variant} { sold-as 1/2; thick 15/32 }
}
`;
/** A design that needs `ply.half` from a path. */
const shelf = (path = "./stock.rod"): string => `use ply from "${path}"
piece shelf {
  part board { of ply.half; size 12 x 6 }
}
`;
/** Nothing is wrong in its text, but the name is not there. */
const missing = ["unknown-name"];
/** A stock file that offers what is asked for, with a fault of its own. */
const faulty = stock("half").replace("15/32", "15/32; thick 1/2");
const twice = ["said-twice"];
/** The gap in a joint that a check warns of: 3/4 wide for a sheet that measures 45/64. */
const checked = `sheet ply { species "birch plywood"; size 96 x 48; variant a { sold-as 3/4; thick 45/64 } }
piece bench {
  box case {
    outside 54 x 14 5/8 x 15 3/4
    panels top, bottom, left, right of ply.a
    join top, bottom to left, right { dado 1/4 wide 3/4; glue }
  }
}
`;
const settingsFile = at(".storyrod.json");

interface Row {
	readonly event: string;
	readonly files: Readonly<Record<string, string>>;
	/** Opened in this order, with what is on disk unless a text is given. */
	readonly open: readonly (string | readonly [name: string, text: string])[];
	readonly before: Readonly<Record<string, readonly string[]>>;
	readonly act: (client: DiagnosticClient) => Promise<void>;
	readonly after: Readonly<Record<string, readonly string[]>>;
	/** Where the two see different things: an editor that asks also sees designs that nobody has open. */
	readonly pull?: {
		readonly before?: Row["before"];
		readonly after?: Row["after"];
	};
	readonly options?: Partial<ClientOptions>;
}

const rows: readonly Row[] = [
	{
		event: "a used file is deleted",
		files: { "stock.rod": stock("half"), "a.rod": shelf() },
		open: ["a.rod"],
		before: {},
		act: (client) => client.disk({ [at("stock.rod")]: null }),
		after: { "a.rod": ["no-file"] },
	},
	{
		event: "a used file is renamed, and the path follows",
		files: { "stock.rod": stock("half"), "a.rod": shelf() },
		open: ["a.rod"],
		before: {},
		act: async (client) => {
			await client.disk({
				[at("stock.rod")]: null,
				[at("sheets.rod")]: stock("half"),
			});
			expect(await client.shown()).toEqual({ "a.rod": ["no-file"] });
			await client.edit(at("a.rod"), "./stock.rod", "./sheets.rod");
		},
		after: {},
	},
	{
		event: "an open design is renamed",
		files: { "stock.rod": stock("whole"), "a.rod": shelf() },
		open: ["a.rod"],
		before: { "a.rod": missing },
		act: async (client) => {
			await client.disk({ [at("a.rod")]: null, [at("b.rod")]: shelf() });
			await client.close(at("a.rod"));
			await client.open(at("b.rod"), shelf());
		},
		after: { "b.rod": missing },
	},
	{
		event: "an open design is moved to where its stock is another",
		files: {
			"stock.rod": stock("whole"),
			"far/stock.rod": stock("half"),
			"a.rod": shelf(),
		},
		open: ["a.rod"],
		before: { "a.rod": missing },
		act: async (client) => {
			await client.close(at("a.rod"));
			await client.disk({ [at("a.rod")]: null, [at("far/a.rod")]: shelf() });
			await client.open(at("far/a.rod"), shelf());
		},
		after: {},
	},
	{
		event: "an open design is deleted and its tab closed",
		files: { "stock.rod": stock("whole"), "a.rod": shelf() },
		open: ["a.rod"],
		before: { "a.rod": missing },
		act: async (client) => {
			await client.disk({ [at("a.rod")]: null });
			await client.close(at("a.rod"));
		},
		after: {},
	},
	{
		event: "a used file changes outside the editor, and again",
		files: { "stock.rod": stock("half"), "a.rod": shelf() },
		open: ["a.rod"],
		before: {},
		act: async (client) => {
			await client.disk({ [at("stock.rod")]: faulty });
			expect(await client.shown()).toEqual({ "stock.rod": twice });
			await client.disk({ [at("stock.rod")]: stock("whole") });
		},
		after: { "a.rod": missing },
	},
	{
		event: "a used file changes where nobody watches: seen with the next key",
		files: { "stock.rod": stock("half"), "a.rod": shelf() },
		open: ["a.rod"],
		options: { watches: false },
		before: {},
		act: async (client) => {
			await client.disk({ [at("stock.rod")]: stock("whole") });
			await client.edit(at("a.rod"), "12 x 6", "12 x 7");
		},
		after: { "a.rod": missing },
	},
	{
		event: "a used file outside the open folder changes",
		files: {
			"file:///woods/stock.rod": faulty,
			"a.rod": shelf("../woods/stock.rod"),
		},
		open: ["a.rod"],
		before: { "woods/stock.rod": twice },
		act: (client) => client.disk({ "file:///woods/stock.rod": stock("whole") }),
		after: { "a.rod": missing },
	},
	{
		event: "a used file that is open and changed is closed without saving",
		files: { "stock.rod": stock("half"), "a.rod": shelf() },
		open: ["a.rod", ["stock.rod", stock("whole")]],
		before: { "a.rod": missing },
		act: (client) => client.close(at("stock.rod")),
		after: {},
	},
	{
		event: "a used file is edited in another tab",
		files: { "stock.rod": stock("half"), "a.rod": shelf(), "b.rod": shelf() },
		open: ["a.rod", "b.rod", "stock.rod"],
		before: {},
		act: (client) =>
			client.edit(at("stock.rod"), "variant half", "variant whole"),
		after: { "a.rod": missing, "b.rod": missing },
	},
	{
		event: "the tab of the only design that uses a faulty file is closed",
		files: {
			"file:///woods/stock.rod": faulty,
			"a.rod": shelf("../woods/stock.rod"),
		},
		open: ["a.rod"],
		before: { "woods/stock.rod": twice },
		act: (client) => client.close(at("a.rod")),
		after: {},
		// It is still a design of the workspace.
		pull: { after: { "woods/stock.rod": twice } },
	},
	{
		event: "one of two tabs with the same faulty file is closed",
		files: { "stock.rod": faulty, "a.rod": shelf(), "b.rod": shelf() },
		open: ["a.rod", "b.rod"],
		before: { "stock.rod": twice },
		act: (client) => client.close(at("a.rod")),
		after: { "stock.rod": twice },
	},
	{
		event: "looking for references opens files and closes them untouched",
		files: {
			"stock.rod": faulty,
			"a.rod": shelf(),
			"b.rod": shelf("./none.rod"),
		},
		open: ["a.rod"],
		before: { "stock.rod": twice },
		pull: {
			before: { "b.rod": ["no-file"], "stock.rod": twice },
			after: { "b.rod": ["no-file"], "stock.rod": twice },
		},
		act: async (client) => {
			await client.open(at("b.rod"), shelf("./none.rod"));
			await client.open(at("stock.rod"), faulty);
			expect(await client.shown()).toEqual({
				"b.rod": ["no-file"],
				"stock.rod": twice,
			});
			await client.close(at("stock.rod"));
			await client.close(at("b.rod"));
		},
		after: { "stock.rod": twice },
	},
	{
		event: "what is set in the editor changes",
		files: { "a.rod": checked },
		open: ["a.rod"],
		before: { "a.rod": ["fit-gap", "fit-nominal"] },
		act: (client) => client.editor.set({ severity: { "fit-nominal": "off" } }),
		after: { "a.rod": ["fit-gap"] },
	},
	{
		event:
			"a settings file comes, and changes what holds for designs that nobody has open, too",
		files: { "a.rod": checked, "b.rod": checked },
		open: ["a.rod"],
		before: { "a.rod": ["fit-gap", "fit-nominal"] },
		pull: {
			before: {
				"a.rod": ["fit-gap", "fit-nominal"],
				"b.rod": ["fit-gap", "fit-nominal"],
			},
			after: { "a.rod": ["fit-gap"], "b.rod": ["fit-gap"] },
		},
		act: (client) =>
			client.disk({
				[settingsFile]: '{ "severity": { "fit-nominal": "off" } }',
			}),
		after: { "a.rod": ["fit-gap"] },
	},
	{
		event: "a settings file goes",
		files: {
			".storyrod.json": '{ "severity": { "fit-nominal": "off" } }',
			"a.rod": checked,
		},
		open: ["a.rod"],
		before: { "a.rod": ["fit-gap"] },
		act: (client) => client.disk({ [settingsFile]: null }),
		after: { "a.rod": ["fit-gap", "fit-nominal"] },
	},
	{
		event: "a package is installed, and then upgraded",
		files: { "a.rod": shelf("woods/oak.rod") },
		open: ["a.rod"],
		before: { "a.rod": ["no-file"] },
		act: async (client) => {
			await client.disk({ [at("node_modules/woods/oak.rod")]: stock("half") });
			// No editor watches for what is not there: it is looked for with the next key.
			await client.edit(at("a.rod"), "12 x 6", "12 x 7");
			expect(await client.shown()).toEqual({});
			await client.disk({ [at("node_modules/woods/oak.rod")]: stock("whole") });
		},
		after: { "a.rod": missing },
	},
	{
		event: "a design that is in no file yet, and is closed",
		files: {},
		open: [["untitled:Untitled-1", shelf()]],
		before: { "untitled:Untitled-1": ["no-file"] },
		act: async (client) => {
			await client.edit(
				"untitled:Untitled-1",
				'use ply from "./stock.rod"\n',
				stock("half"),
			);
			expect(await client.shown()).toEqual({});
			await client.edit("untitled:Untitled-1", "variant half", "variant whole");
			expect(await client.shown()).toEqual({ "untitled:Untitled-1": missing });
			await client.close("untitled:Untitled-1");
		},
		after: {},
	},
	{
		event: "virtual files that use each other",
		files: {},
		open: [
			["memfs:/a.rod", shelf()],
			["memfs:/stock.rod", stock("half")],
		],
		before: {},
		act: async (client) => {
			await client.edit("memfs:/stock.rod", "variant half", "variant whole");
			expect(await client.shown()).toEqual({ "memfs:/a.rod": missing });
			await client.close("memfs:/stock.rod");
		},
		after: { "memfs:/a.rod": ["no-file"] },
	},
	{
		event: "a folder is added to the workspace and taken away",
		files: {
			"file:///other/b.rod": shelf("./none.rod"),
			"stock.rod": stock("half"),
			"a.rod": shelf(),
		},
		open: ["a.rod"],
		before: {},
		act: async (client) => {
			await client.editor.changeFolders(["file:///other"], []);
			expect(await client.shown()).toEqual(
				client.kind === "pull" ? { "other/b.rod": ["no-file"] } : {},
			);
			await client.editor.changeFolders([], ["file:///other"]);
		},
		after: {},
	},
];

let client: DiagnosticClient;

afterEach(() => client.editor.stop());

async function started(
	kind: ClientKind,
	row: Pick<Row, "files" | "open" | "options">,
	options: Partial<ClientOptions> = {},
): Promise<void> {
	const disk = new Map(
		Object.entries(row.files).map(([name, text]) => [at(name), text]),
	);
	client = await DiagnosticClient.start(kind, {
		disk,
		folders: [shop],
		...row.options,
		...options,
	});
	for (const one of row.open) {
		const [name, text] =
			typeof one === "string" ? [one, row.files[one] as string] : one;
		await client.open(at(name), text);
	}
}

describe.each<ClientKind>(["push", "pull"])(
	"an editor of the kind %s",
	(kind) => {
		test("the server is started anew while files change", async () => {
			const files = { "stock.rod": faulty, "a.rod": shelf(), "b.rod": checked };
			const row = { files, open: ["a.rod", "b.rod"] };
			await started(kind, row);
			const before = {
				"b.rod": ["fit-gap", "fit-nominal"],
				"stock.rod": twice,
			};
			expect(await client.shown()).toEqual(before);
			const kept = client.kept();
			await client.editor.stop();
			// What was told is kept where it still holds, and only there.
			await started(kind, row, { kept });
			expect(await client.shown()).toEqual(before);
			await client.editor.stop();
			await started(
				kind,
				{ ...row, files: { ...files, "stock.rod": stock("whole") } },
				{ kept },
			);
			expect(await client.shown()).toEqual({
				"a.rod": missing,
				"b.rod": before["b.rod"],
			});
		});

		test.each(rows)("$event", async (row) => {
			await started(kind, row);
			const own = kind === "pull" ? row.pull : undefined;
			expect(await client.shown()).toEqual(own?.before ?? row.before);
			await row.act(client);
			expect(await client.shown()).toEqual(own?.after ?? row.after);
		});
	},
);
