// Names that another file declares, and the line that takes them.

import { describe, expect, test } from "vitest";
import { shopFiles, tried } from "../../../tests/harness/refactoring.ts";

function main(text: string): string {
	return `//- main.rod\n${text}${shopFiles}`;
}

describe("an unknown name that another file declares", () => {
	test("joins the line that takes from that file already", () => {
		const { titles, text } = tried(
			main(`use oak from "./stock.rod"

piece a {
  part b { of pl<|>y.quarter; size 3 x 4 }
}
`),
		);
		expect(titles).toEqual(['Take `ply` from "./stock.rod"']);
		expect(text("add-import")).toBe(`use oak, ply from "./stock.rod"

piece a {
  part b { of ply.quarter; size 3 x 4 }
}
`);
	});

	test("brings a line of its own, behind the others and their comments", () => {
		const { text } = tried(
			main(`use ply from "./stock.rod"  // by the inch

piece a {
  make foot from bas<|>e { }
}
`),
		);
		expect(text("add-import")).toBe(`use ply from "./stock.rod"  // by the inch
use base from "./components.rod"

piece a {
  make foot from base { }
}
`);
	});

	test("in a file without such lines comes before the first statement and what describes it", () => {
		const { text } = tried(
			main(`// Made for the hall.

/// A plinth.
piece a {
  make foot from bas<|>e { }
}
`),
		);
		expect(text("add-import")).toBe(`// Made for the hall.

use base from "./components.rod"

/// A plinth.
piece a {
  make foot from base { }
}
`);
	});
});

test("every file that has the name is offered, none preferred", () => {
	const { offers, titles } = tried(
		`${main("piece a {\n  part b { of pl<|>y.quarter; size 3 x 4 }\n}\n")}//- other.rod
sheet ply { variant quarter { thick 1/4 } }
`,
	);
	expect(titles).toEqual([
		'Take `ply` from "./stock.rod"',
		'Take `ply` from "./other.rod"',
	]);
	expect(offers.map(({ preferred }) => preferred)).toEqual([false, false]);
});

test("nothing for what stands behind a dot, nor for what no file has", () => {
	expect(
		tried(
			main(
				'use ply from "./stock.rod"\npiece a {\n  part b { of ply.ha<|>lf; size 3 x 4 }\n}\n',
			),
		).titles,
	).toEqual([]);
	expect(
		tried(main("piece a {\n  part b { of te<|>ak; size 3 x 4 }\n}\n")).titles,
	).toEqual([]);
});
