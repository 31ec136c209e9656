// Moisture of wood in given air against the printed table: USDA Wood Handbook FPL-GTR-190 (2010), Table 4-2.

import { describe, expect, it, test } from "vitest";
import {
	equilibriumMoisture,
	equilibriumMoistureFahrenheit,
} from "../../shared/mechanics/moisture.ts";

/** Wood Handbook FPL-GTR-190, Table 4-2: by °F, the moisture in % at 5, 10 … 95 % relative humidity. */
const table: readonly (readonly [number, readonly number[]])[] = [
	[
		30,
		[
			1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5,
			14.9, 16.5, 18.5, 21, 24.3,
		],
	],
	[
		40,
		[
			1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5,
			14.9, 16.5, 18.5, 21, 24.3,
		],
	],
	[
		50,
		[
			1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4,
			14.8, 16.4, 18.4, 20.9, 24.3,
		],
	],
	[
		60,
		[
			1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3,
			14.6, 16.2, 18.2, 20.7, 24.1,
		],
	],
	[
		70,
		[
			1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11, 12, 13.1,
			14.4, 16, 17.9, 20.5, 23.9,
		],
	],
	[
		80,
		[
			1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9,
			14.2, 15.7, 17.7, 20.2, 23.6,
		],
	],
	[
		90,
		[
			1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6,
			13.9, 15.4, 17.3, 19.8, 23.3,
		],
	],
	[
		100,
		[
			1.2, 2.3, 3.3, 4.2, 5, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3,
			13.6, 15.1, 17, 19.5, 22.9,
		],
	],
	[
		110,
		[
			1.1, 2.2, 3.2, 4, 4.9, 5.6, 6.3, 7, 7.7, 8.4, 9.2, 10, 11, 12, 13.2, 14.7,
			16.6, 19.1, 22.4,
		],
	],
	[
		120,
		[
			1.1, 2.1, 3, 3.9, 4.7, 5.4, 6.1, 6.8, 7.5, 8.2, 8.9, 9.7, 10.6, 11.7,
			12.9, 14.4, 16.2, 18.6, 22,
		],
	],
];

const points = table.flatMap(([fahrenheit, row]) =>
	row.map((printed, index) => ({
		fahrenheit,
		humidity: (index + 1) * 5,
		printed,
	})),
);

/** The printed figures are rounded to 0.1: the equation may be off by that rounding and a little more. */
const within = 0.07;

describe("moisture of wood in air", () => {
	test.each(points)(
		"$fahrenheit °F, $humidity %: $printed %",
		({ fahrenheit, humidity, printed }) => {
			const inFahrenheit = equilibriumMoistureFahrenheit(
				fahrenheit,
				humidity / 100,
			);
			const inCelsius = equilibriumMoisture(
				(fahrenheit - 32) / 1.8,
				humidity / 100,
			);
			expect(Math.abs(inFahrenheit - printed)).toBeLessThan(within);
			expect(Math.abs(inCelsius - printed)).toBeLessThan(within);
			// The two sets of constants are fitted to one table.
			expect(Math.abs(inCelsius - inFahrenheit)).toBeLessThan(0.02);
		},
	);

	it("is 12.0 % at 20 °C and 65 %, the standard climate for testing wood (ISO 554, from memory)", () => {
		expect(equilibriumMoisture(20, 0.65)).toBeCloseTo(12, 1);
	});

	it("grows with humidity and falls with warmth", () => {
		for (let celsius = -20; celsius <= 60; celsius += 5)
			for (let humidity = 0.05; humidity < 1; humidity += 0.05) {
				const here = equilibriumMoisture(celsius, humidity);
				expect(equilibriumMoisture(celsius, humidity + 0.01)).toBeGreaterThan(
					here,
				);
			}
		// Table 4-2, 50 %: 9.5 at 30 °F down to 8.2 at 120 °F.
		expect(equilibriumMoisture(50, 0.5)).toBeLessThan(
			equilibriumMoisture(0, 0.5),
		);
	});

	it("stays a figure whatever the air", () => {
		for (const celsius of [-1e9, -273, 0, 100, 1e9])
			for (const humidity of [-1, 0, 0.5, 1, 40]) {
				const moisture = equilibriumMoisture(celsius, humidity);
				expect(moisture).toBeGreaterThanOrEqual(0);
				expect(moisture).toBeLessThan(60);
			}
	});
});
