// The terminal that a command talks to, so that tests can stand in for it.

export interface Output {
	write(text: string): void;
	readonly isTerminal: boolean;
	/** Undefined where nobody knows. */
	readonly columns: number | undefined;
}

export interface Terminal {
	readonly cwd: string;
	readonly env: Readonly<Record<string, string | undefined>>;
	readonly out: Output;
	readonly err: Output;
	readStdin(): Promise<Uint8Array>;
}

/** Whether colours are wanted on an output: only on a terminal, and not where NO_COLOR is set to anything (no-color.org). */
export function wantsColour(terminal: Terminal, output: Output): boolean {
	const { NO_COLOR: no, TERM: kind } = terminal.env;
	return output.isTerminal && (no ?? "") === "" && kind !== "dumb";
}

/** The terminal of this process. */
export function processTerminal(): Terminal {
	return {
		cwd: process.cwd(),
		env: process.env,
		out: outputOf(process.stdout),
		err: outputOf(process.stderr),
		async readStdin() {
			const chunks: Uint8Array[] = [];
			for await (const chunk of process.stdin) chunks.push(chunk as Uint8Array);
			return Buffer.concat(chunks);
		},
	};
}

function outputOf(stream: NodeJS.WriteStream): Output {
	let closed = false;
	// The reader may have gone (`| head`): that is no fault of ours, and nothing more is to be said.
	stream.on("error", (error: NodeJS.ErrnoException) => {
		if (error.code !== "EPIPE") throw error;
		closed = true;
	});
	return {
		write(text) {
			if (!closed && text !== "") stream.write(text);
		},
		isTerminal: stream.isTTY === true,
		columns: stream.isTTY ? stream.columns : undefined,
	};
}
