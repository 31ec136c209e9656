// The page of the protocol says what is there: each test that it names exists, and each method that the server answers is on it.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import * as protocol from "vscode-languageserver";

const root = fileURLToPath(new URL("../..", import.meta.url));
const page = readFileSync(`${root}server/LSP.md`, "utf8");

it("names tests that exist", () => {
	const named = [...page.matchAll(/`((?:tests|shared|server)\/[^`]+\.ts)`/g)];
	expect(named.length).toBeGreaterThan(30);
	const missing = named
		.map(([, path]) => path as string)
		.filter((path) => !existsSync(root + path));
	expect(missing).toEqual([]);
});

it("has every request that the server answers", () => {
	const sources = ["core", "handlers"].flatMap((folder) =>
		readdirSync(`${root}server/${folder}`)
			.filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
			.map((name) => readFileSync(`${root}server/${folder}/${name}`, "utf8")),
	);
	const types = new Set(
		sources.flatMap((source) =>
			[...source.matchAll(/answers\.on\(\s*(\w+Request)\.type/g)].map(
				([, name]) => name as string,
			),
		),
	);
	expect(types.size).toBeGreaterThan(20);
	const known = new Map(
		Object.entries(protocol).map(([name, value]) => [
			name,
			(value as { method?: unknown } | undefined)?.method,
		]),
	);
	// One that the protocol does not know is our own, and stands on the page by its name.
	const methods = [...types].map((name) => {
		const method = known.get(name);
		return typeof method === "string" ? method : "storyrod/list";
	});
	const told = (method: string): boolean => {
		const last = method.slice(method.lastIndexOf("/"));
		return page.includes(`\`${method}\``) || page.includes(`\`${last}\``);
	};
	expect(methods.filter((method) => !told(method))).toEqual([]);
});
