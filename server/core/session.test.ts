// What is worked out for which question, counted: a request waits for the phase that it needs, and for no other.

import { afterEach, expect, test, vi } from "vitest";
import type { Host } from "./host.ts";

const counts = { read: 0, evaluated: 0, checked: 0 };

vi.mock("../../grammar/index.ts", async (original) => {
	const real = await original<typeof import("../../grammar/index.ts")>();
	return {
		...real,
		parse: (...args: Parameters<typeof real.parse>) => {
			// Help reads its own small examples.
			if (args[0].startsWith("piece a")) counts.read++;
			return real.parse(...args);
		},
		reparse: (...args: Parameters<typeof real.reparse>) => {
			counts.read++;
			return real.reparse(...args);
		},
	};
});
vi.mock("../../shared/model/compile.ts", async (original) => {
	const real = await original<typeof import("../../shared/model/compile.ts")>();
	return {
		...real,
		compile: (...args: Parameters<typeof real.compile>) => {
			counts.evaluated++;
			return real.compile(...args);
		},
	};
});
vi.mock("../../shared/features/diagnostics.ts", async (original) => {
	const real =
		await original<typeof import("../../shared/features/diagnostics.ts")>();
	return {
		...real,
		diagnose: (...args: Parameters<typeof real.diagnose>) => {
			counts.checked++;
			return real.diagnose(...args);
		},
	};
});
const { Session } = await import("./session.ts");
const { outline } = await import("../../shared/features/outline.ts");
const { folding } = await import("../../shared/features/folding.ts");
const { hover } = await import("../../shared/features/hover.ts");
const { completion } = await import("../../shared/features/completion.ts");

afterEach(() => {
	for (const name of ["read", "evaluated", "checked"] as const)
		counts[name] = 0;
});

const uri = "file:///a.rod";
const text = "piece a {\n  given width = 3\n  must width > 2\n}\n";
const host: Host = {
	read: () => undefined,
	stamp: () => undefined,
	resolve: () => undefined,
	settingsFile: () => undefined,
	canonical: (one) => one,
	later: (task) => void setImmediate(task),
	checkPage: (anchor) => anchor,
};

function opened() {
	const session = new Session(host, () => {});
	session.didOpen(uri, 1, text);
	const source = () => {
		const found = session.document(uri);
		if (!found) throw new Error("Not open");
		return found;
	};
	return { session, source };
}

test("an edit alone works nothing out", () => {
	const { session } = opened();
	session.didChange(uri, [{ text: `${text}\n` }], 2);
	expect(counts).toEqual({ read: 0, evaluated: 0, checked: 0 });
});

test("outline and folding wait for the tree only", () => {
	const { session, source } = opened();
	const snapshot = session.snapshot(source());
	outline(snapshot.text, snapshot.result.tree);
	folding(snapshot.text, snapshot.result.tree);
	expect(counts).toEqual({ read: 1, evaluated: 0, checked: 0 });
});

test("hover and completion wait for names and sizes, not for checks", () => {
	const { session, source } = opened();
	const at = text.indexOf("width > 2");
	const snapshot = session.snapshot(source());
	expect(hover(snapshot, at)).toBeDefined();
	expect(
		completion(snapshot, at, {
			afterBlank: false,
			onlyPaths: false,
			beside: session.beside(source()),
		}).length,
	).toBeGreaterThan(0);
	expect(counts).toEqual({ read: 1, evaluated: 1, checked: 0 });
});

test("each phase runs once for a text, whoever asks first", () => {
	const { session, source } = opened();
	session.analysis(uri);
	session.analysis(uri);
	session.design(uri);
	void source().result;
	expect(counts).toEqual({ read: 1, evaluated: 1, checked: 1 });
	session.didChange(uri, [{ text: `${text}// more\n` }], 2);
	void source().result;
	session.analysis(uri);
	expect(counts).toEqual({ read: 2, evaluated: 2, checked: 2 });
});

test("a change of what is set checks again, and does nothing else", () => {
	const { session } = opened();
	session.analysis(uri);
	session.settings.setEditor({ severity: { "fit-gap": "off" } });
	session.analysis(uri);
	expect(counts).toEqual({ read: 1, evaluated: 1, checked: 2 });
});
