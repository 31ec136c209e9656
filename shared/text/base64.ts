// Base64 of a text in UTF-8, for pictures that travel inside Markdown; the core has no platform to ask for it.

const letters =
	"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** RFC 4648, with padding. Half of a surrogate pair is written as U+FFFD. */
export function base64(text: string): string {
	const bytes = utf8(text);
	let result = "";
	for (let i = 0; i < bytes.length; i += 3) {
		const [a = 0, b, c] = [bytes[i], bytes[i + 1], bytes[i + 2]];
		const bits = (a << 16) | ((b ?? 0) << 8) | (c ?? 0);
		result += letter(bits >> 18) + letter(bits >> 12);
		result += b === undefined ? "=" : letter(bits >> 6);
		result += c === undefined ? "=" : letter(bits);
	}
	return result;
}

function letter(bits: number): string {
	return letters.charAt(bits & 63);
}

function utf8(text: string): readonly number[] {
	const bytes: number[] = [];
	for (const character of text.toWellFormed()) {
		const code = character.codePointAt(0) as number;
		if (code < 0x80) bytes.push(code);
		else if (code < 0x800) bytes.push(0xc0 | (code >> 6), tail(code));
		else if (code < 0x10000)
			bytes.push(0xe0 | (code >> 12), tail(code >> 6), tail(code));
		else
			bytes.push(
				0xf0 | (code >> 18),
				tail(code >> 12),
				tail(code >> 6),
				tail(code),
			);
	}
	return bytes;
}

function tail(code: number): number {
	return 0x80 | (code & 63);
}
