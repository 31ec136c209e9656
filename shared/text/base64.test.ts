// Base64 against the test vectors of the standard, and against what Node writes.

import { Buffer } from "node:buffer";
import { describe, expect, it } from "vitest";
import { base64 } from "./base64.ts";

describe("base64", () => {
	// RFC 4648, section 10.
	it.each([
		["", ""],
		["f", "Zg=="],
		["fo", "Zm8="],
		["foo", "Zm9v"],
		["foob", "Zm9vYg=="],
		["fooba", "Zm9vYmE="],
		["foobar", "Zm9vYmFy"],
	])("%j is %j", (text, expected) => {
		expect(base64(text)).toBe(expected);
	});

	it.each([
		"3/4″ × 5°",
		"Küche – ½",
		"🪚 saw",
		"\u{d800}x",
		"\u0000\u07ff\uffff",
	])("%j as Node has it", (text) => {
		expect(base64(text)).toBe(Buffer.from(text, "utf8").toString("base64"));
	});
});
