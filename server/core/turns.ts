// Waits until the messages that lie ready are taken in: each arrives and is handled in turns of the event loop of its own.

/** Turns without a change after which the messages that lay ready are taken to be in. */
const quietTurns = 3;
/** Turns after which a refresh runs even if changes keep coming. */
const mostTurns = 500;

export class Turns {
	private readonly later: (task: () => void) => void;
	private readonly onSettled: () => void;
	/** Counts changes, so that a wait can see whether more have come. */
	private changes = 0;
	private waiting: Promise<void> | undefined;

	/** `onSettled` is called once after each group of changes. */
	constructor(later: (task: () => void) => void, onSettled: () => void) {
		this.later = later;
		this.onSettled = onSettled;
	}

	/** Something changed. */
	changed(): void {
		this.changes++;
		this.waiting ??= this.quiet().then(() => {
			this.waiting = undefined;
			this.onSettled();
		});
	}

	/** Resolves when everything that has been sent so far is in, and told. */
	async settled(): Promise<void> {
		await this.quiet();
		await this.waiting;
	}

	/** One turn, in which other messages come through. */
	pause(): Promise<void> {
		return new Promise((resolve) => this.later(resolve));
	}

	private async quiet(): Promise<void> {
		let seen = this.changes;
		let left = quietTurns;
		for (let turn = 0; turn < mostTurns && left > 0; turn++) {
			await this.pause();
			if (this.changes === seen) left--;
			else {
				seen = this.changes;
				left = quietTurns;
			}
		}
	}
}
