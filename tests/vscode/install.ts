/**
 * Brings the editors that the tests need, once: they are large, so the main install leaves them out.
 * Imports nothing but Node's own, as it runs before anything is installed.
 */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { codeServer, findChromium, here } from "./paths.ts";

/** Quick when everything is there. Throws with what to do by hand where it cannot help itself. */
export function installEditors(): void {
	installPackages();
	if (!findChromium()) installChromium();
}

function installPackages(): void {
	const stamp = join(here, "node_modules/.complete");
	const wanted = createHash("sha256")
		.update(readFileSync(join(here, "package-lock.json")))
		.digest("hex");
	if (existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) return;
	console.log("Installing the editors for the tests, once ...");
	npm(["ci"], here);
	// The editor's own install script would compile native modules, for which it wants Kerberos headers and npm itself
	// on node 24. The tests need none of those modules: its dependencies alone do. (`npm ci` is no choice: its lock is
	// out of step with its manifest.)
	const editor = join(codeServer, "lib/vscode");
	for (const folder of [editor, join(editor, "extensions")])
		npm(["install", "--omit=dev", "--ignore-scripts"], folder);
	writeFileSync(stamp, wanted);
}

function npm(args: readonly string[], cwd: string): void {
	execFileSync("npm", [...args, "--no-audit", "--no-fund"], {
		cwd,
		stdio: ["ignore", "inherit", "inherit"],
		shell: process.platform === "win32", // npm is a .cmd there
	});
}

function installChromium(): void {
	const isDebian = existsSync("/etc/debian_version");
	if (!isDebian || process.getuid?.() !== 0) {
		throw new Error(
			`The editor tests need Chromium: install it${isDebian ? " (`sudo apt-get install chromium`)" : ""}, or name one in STORYROD_CHROMIUM`,
		);
	}
	console.log("Installing Chromium for the tests, once ...");
	const apt = (...args: string[]): void => {
		execFileSync("apt-get", ["-qq", ...args], {
			env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
			stdio: ["ignore", "ignore", "inherit"],
		});
	};
	apt("update");
	// Without a font the editor shows boxes for letters.
	apt(
		"install",
		"-y",
		"--no-install-recommends",
		"chromium",
		"fonts-liberation",
	);
	if (!findChromium())
		throw new Error("Chromium was installed but is not found on the PATH");
}

if (import.meta.main) installEditors();
