// The page of a fault that the evaluation itself finds: an offset that could be read two ways.

import { defineCheck } from "../../check.ts";

export const datumUnclear = defineCheck({
	id: "datum-unclear",
	group: "fit",
	severity: "error",
	reportedByEvaluation: true,
	summary: "An offset does not say from what it is measured, or which way",
	explanation: `
Everything is measured from something: \`2 back from lip.front\`, \`down 1 from case.top\`. A bare \`at 2\` could be from either
end, from the outside or the inside; two makers would cut two different parts. The message lists the readings; take the one
that is meant.`,
	source: "common practice, no source: mark every size from one stated edge",
	figures: {},
	fires: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    shelf one of ply.half 6 up
  }
}`,
	silent: `
piece rack {
  box case {
    outside 30 x 20 x 10
    panels top, bottom, left, right of ply.three-quarter
    shelf one of ply.half 6 above bottom
  }
}`,
});
