// What a hover on a cleat tells: forces with a sketch, and no figure for a wall that is not known.

import { describe, expect, it } from "vitest";
import { snap } from "../../../tests/harness/snapshot.ts";
import { hover } from "../hover.ts";

function told(wall: string, more = "", mark = "mount ho<|>ok"): string {
	const { snapshot, offset } = snap(`//- main.rod
sheet ply { species "birch plywood"; size 96 x 48; variant half { thick 1/2 } ; variant three { thick 3/4 } }
board oak { species "white oak"; variant eight-quarter { rough 2; planed 1 3/4; widths 4 to 8; lengths 72 to 108 } }
piece cabinet {
  box case {
    outside 36 x 16 x 10
    top at 40 from floor
    panels top, bottom, left, right of ply.three
    back of ply.half inset 3/4
  }
  ${mark} {
    on case.back
    of ply.three
    height 3
    down 1 from case.top
    ${wall}
  }
  ${more}
  load 40 lb on case.bottom
}`);
	return hover(snapshot, offset)?.markdown ?? "nothing";
}

const studs = "wall { studs every 16; drywall 1/2; screw #10 x 3 each 2 }";

describe("a cleat", () => {
	it("tells its forces, what the wall holds, and what was taken", () => {
		const text = told(studs);
		expect(text).toContain("mount `hook`");
		expect(text).toMatch(/`hook` carries \d\d lb, [\d /]+ in off the wall/);
		expect(text).toContain("on the wall screws together");
		expect(text).toContain("4 are sure of a stud");
		expect(text).toMatch(
			/!\[The forces on hook, seen from the side\]\(data:image\/svg\+xml;base64,[A-Za-z0-9+/=]+\)/,
		);
		expect(text).toContain("it does not say that anything is safe");
	});

	it("tells the same at the word `mount`, with the help of the line", () => {
		const text = told(studs, "", "mou<|>nt hook");
		expect(text).toContain("on the wall screws together");
		expect(text).toContain("What hangs the piece on a wall");
	});

	it.each([
		["", "The wall is not given\\: there is no figure for what it carries"],
		["wall { masonry; screw #10 x 3 }", "there is no figure here"],
		["wall { drywall 1/2; screw #10 x 3 }", "there is no figure for what"],
	])("gives no figure for %s", (wall, words) => {
		const text = told(wall);
		expect(text).toContain(words);
		expect(text).not.toContain("of that is asked");
	});

	it("shares with front legs, and tells where the wall strip must be for it to stand level", () => {
		const text = told(
			studs,
			"leg l, r handed { against outside case.left; set-back 1 from case.front; layer only of oak.eight-quarter 2 wide from floor up to 6 above case.bottom }",
		);
		expect(text).toContain("on the legs");
		expect(text).toContain("the legs clear of the floor");
		expect(text).toMatch(/Level where the top of the wall strip is/);
	});
});
