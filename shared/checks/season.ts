// The moisture that a piece's wood goes through in a year, from the air of its room and of the shop.

import { equilibriumMoisture } from "../mechanics/moisture.ts";
import type { Piece } from "../model/types.ts";

/** Moisture of the wood, % of its dry weight. */
export interface Season {
	/** In the driest and in the dampest time of the year. */
	readonly dry: number;
	readonly wet: number;
	/** When it is put together. */
	readonly made: number;
}

/** Where no temperature is given, °C: it hardly matters indoors, 10 °C more are 0.3 % of moisture less. */
const usualTemperature = 20;

/**
 * What furniture goes through in a heated house: about 5 % of moisture between winter and summer (common practice, no
 * source; Wood Handbook FPL-GTR-190, chapter 13, has 8 % as the mean for most of the US, from memory).
 */
export const usualSeason: Season = { dry: 5.5, wet: 10.5, made: 8 };

/** The year of a piece whose room says how damp it gets; made in the shop's air, or half-way where the shop does not say. */
export function seasonOf({ room, shop }: Piece): Season | undefined {
	if (!room.humidity) return undefined;
	const celsius = room.temperature ?? usualTemperature;
	const [low, high] = room.humidity;
	const dry = equilibriumMoisture(celsius, low);
	const wet = equilibriumMoisture(celsius, high);
	return {
		dry,
		wet,
		made:
			shop.humidity === undefined
				? (dry + wet) / 2
				: equilibriumMoisture(shop.temperature ?? celsius, shop.humidity),
	};
}

/** `6.2 to 10.8 % moisture` */
export function moistureRange(from: number, to: number): string {
	return `${from.toFixed(1)} to ${to.toFixed(1)} % moisture`;
}

/** What to write where a piece does not say how damp its room gets. */
export const roomLine =
	"`room { humidity 30 % to 60 %; temperature 20 C }`, as it is there";
