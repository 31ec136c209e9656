// Coloured words as the protocol sends them: five numbers a token, each place counted from the token before.

import type {
	SemanticTokensEdit,
	SemanticTokensLegend,
} from "vscode-languageserver";
import {
	numbersPerToken,
	type TokenGroup,
} from "../../shared/features/semantic-tokens.ts";
import {
	tokenModifiers,
	tokenTypes,
} from "../../shared/features/support/tokens/legend.ts";
import type { SourceText } from "../core/source-text.ts";

export const semanticTokensLegend: SemanticTokensLegend = {
	tokenTypes: tokenTypes.map(({ name }) => name),
	tokenModifiers: tokenModifiers.map(({ name }) => name),
};

/** What a group is on the wire, counted from its start. */
interface Encoded {
	/** Line and character of the first and the last token; on the group's first line characters count from its start. */
	readonly first: Place;
	readonly last: Place;
	readonly data: Uint32Array;
}

interface Place {
	readonly line: number;
	readonly character: number;
}

/** Encodes groups for one connection, each once as long as it stays the same. */
export class TokenEncoder {
	private readonly kept = new WeakMap<readonly number[], Encoded>();

	encode(source: SourceText, groups: readonly TokenGroup[]): Uint32Array {
		const all = groups
			.filter(({ tokens }) => tokens.length > 0)
			.map(({ start, tokens }) => ({
				start,
				encoded: this.encoded(source, start, tokens),
			}));
		const data = new Uint32Array(
			all.reduce((sum, { encoded }) => sum + encoded.data.length, 0),
		);
		let at = 0;
		let before: Place = { line: 0, character: 0 };
		for (const { start, encoded } of all) {
			const origin = source.lines.positionAt(start);
			const first = placed(origin, encoded.first);
			data.set(encoded.data, at);
			data[at] = first.line - before.line;
			data[at + 1] =
				first.line === before.line
					? first.character - before.character
					: first.character;
			at += encoded.data.length;
			before = placed(origin, encoded.last);
		}
		return data;
	}

	private encoded(
		source: SourceText,
		start: number,
		tokens: readonly number[],
	): Encoded {
		let known = this.kept.get(tokens);
		if (!known) {
			known = encodeGroup(source, start, tokens);
			this.kept.set(tokens, known);
		}
		return known;
	}
}

function placed(origin: Place, { line, character }: Place): Place {
	return {
		line: origin.line + line,
		character: line === 0 ? origin.character + character : character,
	};
}

function encodeGroup(
	{ lines }: SourceText,
	start: number,
	tokens: readonly number[],
): Encoded {
	const origin = lines.positionAt(start);
	const data: number[] = [];
	let first: Place | undefined;
	let last: Place = { line: 0, character: 0 };
	for (let at = 0; at < tokens.length; at += numbersPerToken) {
		const [offset, length, type, modifiers] = tokens.slice(
			at,
			at + numbersPerToken,
		) as [number, number, number, number];
		const from = lines.positionAt(start + offset);
		const to = lines.positionAt(start + offset + length);
		const here: Place = {
			line: from.line - origin.line,
			character:
				from.line === origin.line
					? from.character - origin.character
					: from.character,
		};
		data.push(
			here.line - last.line,
			here.line === last.line
				? here.character - last.character
				: here.character,
			to.character - from.character,
			type,
			modifiers,
		);
		first ??= here;
		last = here;
	}
	return { first: first ?? last, last, data: Uint32Array.from(data) };
}

/** What must be replaced to come from one list of numbers to another: one stretch, or none. */
export function tokenEdits(
	before: Uint32Array,
	after: Uint32Array,
): SemanticTokensEdit[] {
	const most = Math.min(before.length, after.length);
	let head = 0;
	while (head < most && before[head] === after[head]) head++;
	if (head === before.length && head === after.length) return [];
	let tail = 0;
	while (
		tail < most - head &&
		before[before.length - 1 - tail] === after[after.length - 1 - tail]
	) {
		tail++;
	}
	return [
		{
			start: head,
			deleteCount: before.length - head - tail,
			data: [...after.subarray(head, after.length - tail)],
		},
	];
}
