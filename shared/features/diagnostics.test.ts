// What is found is marked in the text itself.

import { expect, test } from "vitest";
import { expectMarked } from "../../tests/harness/marked.ts";
import { snap } from "../../tests/harness/snapshot.ts";
import { indexLines } from "../text/line-index.ts";
import { diagnose, isAboutUnused } from "./diagnostics.ts";

function check(source: string): void {
	const { fixture, snapshot } = snap(source);
	expectMarked(
		fixture.main,
		diagnose(snapshot.design, () => indexLines(snapshot.text)),
	);
}

const stock = `
//- stock.rod
sheet ply {
  species "birch plywood"
  size 96 x 48
  variant half { sold-as 1/2; thick 15/32 }
}
`;

test("a sound design has none", () => {
	check(`//- main.rod
use ply from "./stock.rod"
piece a {
  part b { of ply.half; size 30 x 12 }
}
${stock}`);
});

test("of the syntax, the evaluation and the checks, each at its place", () => {
	check(`//- main.rod
use ply from "./stock.rod"
piece a {
  part b { of ply.haf; size 30 x 12 }
//                ^^^ error unknown-name: did you mean \`half\`?
  box c {
    outside 30 x 20 x 12
    panels top, bottom, left, right of ply.half
    caps left,
//           ^ error missing-after-comma: another name
    join top, bottom to left, right { dado 1/4 wide 1/2; glue }
//                                                  ^^^ error fit-gap: 0.031 in of air
//                                                  ^^^ warning fit-nominal
  }
}
${stock}`);
});

test("a line that cannot be read yet is told once, a missing name where it is first used", () => {
	check(`//- main.rod
use ply from "./stock.rod"
piece a {
  part b { of ply.half; size 30 x ; lies nowhere }
//                              ^ error missing-operand: a size is missing
  part c { of ply.half; size wide x 12 }
//                           ^^^^ error unknown-name: Nothing here is called \`wide\`
  part d { of ply.half; size wide x wide }
}
${stock}`);
	const { snapshot } = snap(
		"piece a {\n  given b = wide\n  given c = wide + wide\n}\n",
	);
	const [first, ...others] = diagnose(snapshot.design, () =>
		indexLines(snapshot.text),
	).filter(({ id }) => id === "unknown-name");
	expect(others).toEqual([]);
	expect(first?.related.map(({ message }) => message)).toEqual([
		"And here",
		"And here",
	]);
});

test("the order of the text, whoever found it", () => {
	const { snapshot } = snap(
		"piece a {\n  box b { }\n  part c,\n  part d { }\n}\n",
	);
	const starts = diagnose(snapshot.design, () => indexLines(snapshot.text)).map(
		({ origin }) => origin.span.start,
	);
	expect(starts.length).toBeGreaterThan(2);
	expect(starts).toEqual(starts.toSorted((a, b) => a - b));
});

test("unused text is told apart by the id", () => {
	const { snapshot } = snap("piece a { box b { } }");
	const [finding] = diagnose(snapshot.design, () => indexLines(snapshot.text));
	if (!finding) throw new Error("No finding");
	expect(isAboutUnused(finding)).toBe(false);
	expect(isAboutUnused({ ...finding, id: "unused-name" })).toBe(true);
});
