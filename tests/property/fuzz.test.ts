// A small part of the random edits; `npm run fuzz` makes as many as one likes.

import { expect, test } from "vitest";
import { fuzz } from "../fuzz/fuzz.ts";
import { TypedCore } from "../fuzz/typed-core.ts";
import { TypedServer } from "../fuzz/typed-server.ts";

test("random edits in the core end as a fresh look does", async () => {
	const { edits } = await fuzz(new TypedCore(), 240, 1);
	expect(edits).toBe(240);
});

test("random edits over the protocol, with every request between them", async () => {
	const { edits } = await fuzz(new TypedServer(), 120, 1);
	expect(edits).toBe(120);
});
