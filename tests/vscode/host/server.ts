/** Starts a real VS Code without a desktop: the same workbench and a Node extension host, served to a browser. */
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { codeServer } from "../paths.ts";

/** Quiet pictures: nothing that moves, asks or takes room beside the design. */
export const quietSettings = {
	"chat.disableAIFeatures": true,
	"editor.minimap.enabled": false,
	"editor.cursorBlinking": "solid",
	"extensions.autoCheckUpdates": false,
	"extensions.autoUpdate": false,
	"extensions.ignoreRecommendations": true,
	"git.enabled": false,
	"telemetry.telemetryLevel": "off",
	"workbench.enableExperiments": false,
	"workbench.reduceMotion": "on",
	"workbench.secondarySideBar.defaultVisibility": "hidden",
	"workbench.startupEditor": "none",
};

export interface EditorServer {
	readonly port: number;
	/** Ends the server and all its children, and removes its data. */
	stop(): void;
}

export const serverMain = join(codeServer, "lib/vscode/out/server-main.js");

/** The options that keep everything the editor writes under one folder. */
export function dataOptions(dataFolder: string): string[] {
	return [
		"--user-data-dir",
		join(dataFolder, "user"),
		"--server-data-dir",
		join(dataFolder, "server"),
		"--extensions-dir",
		join(dataFolder, "extensions"),
	];
}

export function makeDataFolder(): string {
	return mkdtempSync(join(tmpdir(), "storyrod-editor-"));
}

/** dataFolder: profile, settings and installed extensions; removed at the end. Rejects if the server does not come up. */
export async function startServer(
	dataFolder = makeDataFolder(),
): Promise<EditorServer> {
	const port = await freePort();
	mkdirSync(join(dataFolder, "user/User"), { recursive: true });
	writeFileSync(
		join(dataFolder, "user/User/settings.json"),
		JSON.stringify(quietSettings),
	);
	const child = spawn(
		process.execPath,
		[
			serverMain,
			...["--host", "127.0.0.1", "--port", String(port)],
			"--without-connection-token",
			"--accept-server-license-terms",
			"--enable-smoke-test-driver", // else the address's payload (extension, tests) is ignored
			"--disable-telemetry",
			"--disable-workspace-trust",
			...dataOptions(dataFolder),
		],
		{ stdio: ["ignore", "pipe", "pipe"], detached: true },
	);
	const stop = (): void => {
		process.off("exit", stop);
		try {
			// A group of its own: the children outlive the server by seconds else.
			if (child.pid) process.kill(-child.pid, "SIGKILL");
		} catch {
			// the group has ended by itself
		}
		rmSync(dataFolder, { recursive: true, force: true, maxRetries: 5 });
	};
	process.on("exit", stop);
	const { promise: listening, resolve, reject } = Promise.withResolvers<void>();
	let said = "";
	for (const stream of [child.stdout, child.stderr]) {
		stream.on("data", (data: Buffer) => {
			if (said.length < 10_000) said += data;
			if (said.includes("Extension host agent listening")) resolve();
		});
	}
	child.once("error", reject);
	child.once("exit", (code) =>
		reject(new Error(`The editor's server ended with ${code}:\n${said}`)),
	);
	const limit = setTimeout(
		() => reject(new Error(`The editor's server does not listen:\n${said}`)),
		60_000,
	);
	try {
		await listening;
	} catch (error) {
		stop();
		throw error;
	} finally {
		clearTimeout(limit);
	}
	return { port, stop };
}

export function freePort(): Promise<number> {
	const { promise, resolve, reject } = Promise.withResolvers<number>();
	const server = createServer().once("error", reject);
	server.listen(0, "127.0.0.1", () => {
		const address = server.address();
		server.close(() => {
			if (address && typeof address === "object") resolve(address.port);
			else reject(new Error("No free port"));
		});
	});
	return promise;
}
