import { defineConfig } from "vitest/config";

export default defineConfig({
	test: {
		include: [
			"{grammar,shared,server}/**/*.test.ts",
			"tests/{harness,outside,property,lsp,tidy,generate,cli}/**/*.test.ts",
		],
		testTimeout: 60_000,
	},
});
