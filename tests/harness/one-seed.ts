// Property tests try the same examples in every run, so that a red run is about the change at hand. With STORYROD_SEED=N
// they try others: `STORYROD_SEED=random npx vitest run tests/property` hunts for what nobody has met yet.

import fc from "fast-check";

const wanted = process.env.STORYROD_SEED;

if (wanted !== "random")
	fc.configureGlobal({
		...fc.readConfigureGlobal(),
		seed: wanted === undefined ? 1 : Number(wanted),
	});
