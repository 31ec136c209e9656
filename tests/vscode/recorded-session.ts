/** An evening at the keyboard as it was typed: what each step adds or takes away, in the order of the keys. */

export type Step =
	/** Written behind the place that `after` ends, key by key. */
	| { readonly type: string; readonly after: string }
	/** A slip that is taken back, key by key. */
	| { readonly slip: string; readonly after: string }
	| { readonly replace: string; readonly by: string };

/** The file that the session begins with. */
export const begun = 'use birch, fixings, yellow-glue from "./stock.rod"\n';

export const steps: readonly Step[] = [
	{
		type: "\n/// A rack for the evening.\npiece rack {\n  unit mm\n",
		after: '"./stock.rod"\n',
	},
	{ type: "  given width = 600 from 300 to 900\n", after: "unit mm\n" },
	{ type: "  box case {\n", after: "to 900\n" },
	{ slip: "    outsied", after: "box case {\n" },
	{
		type: "    outside width x 400 x 250\n    panels top, bottom, left, right of birch.eighteen\n",
		after: "box case {\n",
	},
	{ type: "    back of birch.six rabbet 9\n", after: "birch.eighteen\n" },
	{
		type: "    shelf one of birch.eighteen 180 above bottom dado 6\n",
		after: "rabbet 9\n",
	},
	{
		type: "    join top, bottom to left, right { glue with yellow-glue; screw #8 x 45 mm every 100 { pilot 3 } }\n",
		after: "dado 6\n",
	},
	{ type: "  }\n", after: "{ pilot 3 } }\n" },
	{ type: "  load 8 kg on case.one\n}\n", after: "  }\n" },
	{ replace: "width = 600", by: "width = 640" },
	{ slip: " wide 25", after: "dado 6" },
];

/** What stands there in the end. */
export const ended = `use birch, fixings, yellow-glue from "./stock.rod"

/// A rack for the evening.
piece rack {
  unit mm
  given width = 640 from 300 to 900
  box case {
    outside width x 400 x 250
    panels top, bottom, left, right of birch.eighteen
    back of birch.six rabbet 9
    shelf one of birch.eighteen 180 above bottom dado 6
    join top, bottom to left, right { glue with yellow-glue; screw #8 x 45 mm every 100 { pilot 3 } }
  }
  load 8 kg on case.one
}
`;
