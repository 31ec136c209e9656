import { defineConfig } from "vitest/config";

export default defineConfig({
	test: {
		include: [
			"{grammar,shared,server}/**/*.test.ts",
			"tests/{harness,outside,property,lsp,tidy,generate,cli}/**/*.test.ts",
		],
		setupFiles: ["tests/harness/one-seed.ts"],
		testTimeout: 120_000,
	},
});
