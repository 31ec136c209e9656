import { spawn } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { brokenDesign, folderWith, smallDesign } from "../harness/cli.ts";

const main = fileURLToPath(
	new URL("../../server/cli/main.ts", import.meta.url),
);

async function finished(cwd: string, args: readonly string[]) {
	const child = spawn(process.execPath, [main, ...args], { cwd });
	let out = "";
	let err = "";
	child.stdout.setEncoding("utf8").on("data", (chunk: string) => {
		out += chunk;
	});
	child.stderr.setEncoding("utf8").on("data", (chunk: string) => {
		err += chunk;
	});
	const [code] = (await once(child, "close")) as [number];
	return { code, out, err };
}

test("the exit codes of the process", async () => {
	const { path } = folderWith({ "a.rod": smallDesign, "b.rod": brokenDesign });
	expect((await finished(path, ["check", "a.rod"])).code).toBe(0);
	expect((await finished(path, ["check", "b.rod"])).code).toBe(1);
	expect((await finished(path, ["check", "gone.rod"])).code).toBe(2);
});

test("a reader that goes away is no fault", async () => {
	const pieces = Array.from(
		{ length: 3_000 },
		(_, i) =>
			`piece p${i} { part a { of ply.half; size ${10 + (i % 80)} x 4 } }
`,
	);
	const text = smallDesign + pieces.join("");
	const { path } = folderWith({ "many.rod": text });
	const child = spawn(
		process.execPath,
		[main, "cutlist", "--format", "json", "many.rod"],
		{ cwd: path },
	);
	let err = "";
	child.stderr.setEncoding("utf8").on("data", (chunk: string) => {
		err += chunk;
	});
	child.stdout.once("data", () => child.stdout.destroy());
	const [code] = (await once(child, "close")) as [number];
	expect(err).toBe("");
	expect(code).toBe(0);
});

test("the language server answers and ends over the standard input and output", async () => {
	const { path } = folderWith({});
	const child = spawn(process.execPath, [main, "lsp", "--stdio"], {
		cwd: path,
	});
	let out = "";
	child.stdout.setEncoding("utf8").on("data", (chunk: string) => {
		out += chunk;
	});
	const send = (message: object): void => {
		const body = JSON.stringify({ jsonrpc: "2.0", ...message });
		child.stdin.write(
			`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
		);
	};
	send({
		id: 1,
		method: "initialize",
		params: { processId: null, rootUri: null, capabilities: {} },
	});
	while (!out.includes('"capabilities"')) await once(child.stdout, "data");
	send({ method: "initialized", params: {} });
	send({ id: 2, method: "shutdown" });
	while (!out.includes('"id":2')) await once(child.stdout, "data");
	send({ method: "exit" });
	const [code] = (await once(child, "close")) as [number];
	expect(code).toBe(0);
});
