// The one door through which requests are answered: each honours its cancellation, a malformed one is refused, and a fault
// of ours answers with an error instead of ending anything.

import {
	type CancellationToken,
	type Connection,
	ErrorCodes,
	LSPErrorCodes,
	ProgressType,
	type ProtocolRequestType,
	ResponseError,
	type ResultProgressReporter,
	type WorkDoneProgressReporter,
} from "vscode-languageserver";
import type { Context } from "./context.ts";
import { faultInParams } from "./params.ts";

/** As the library's own registrations hand them to a handler. */
export type Answerer<P, R, PR> = (
	params: P,
	token: CancellationToken,
	progress: WorkDoneProgressReporter,
	partial: ResultProgressReporter<PR> | undefined,
) => R | Promise<R>;

export interface AnswerOptions {
	/**
	 * Wait for the messages that lie ready: of requests about a whole document that edits have overtaken, only the newest is
	 * worked out. A request about a place is answered where it stands in the order of messages.
	 */
	readonly whenSettled?: boolean;
}

/** Files that use files that use files: each round brings those that the last one met. */
const mostRounds = 30;

/** Thrown by work that was cancelled on the way. */
export class Cancelled extends ResponseError<void> {
	constructor() {
		super(LSPErrorCodes.RequestCancelled, "The request was cancelled");
	}
}

/** The token alone says what a part belongs to. */
const anyProgress = new ProgressType<unknown>();

export class Answers {
	private readonly connection: Connection;
	private readonly context: Context;

	constructor(connection: Connection, context: Context) {
		this.connection = connection;
		this.context = context;
	}

	on<P, R, PR, E, RO>(
		type: ProtocolRequestType<P, R, PR, E, RO>,
		answer: Answerer<P, R, PR>,
		{ whenSettled = false }: AnswerOptions = {},
	): void {
		const { method } = type;
		this.connection.onRequest<unknown, void>(
			method,
			async (params: unknown, token: CancellationToken): Promise<unknown> => {
				try {
					if (token.isCancellationRequested) throw new Cancelled();
					const fault = faultInParams(method, params);
					if (fault)
						throw new ResponseError(
							ErrorCodes.InvalidParams,
							`\`${method}\`: ${fault}`,
						);
					if (whenSettled) await this.settled(method, params, token);
					const progress = this.connection.window.attachWorkDoneProgress(
						tokenIn(params, "workDoneToken"),
					);
					const partial = this.partialFor<PR>(
						tokenIn(params, "partialResultToken"),
					);
					// What the handlers rely on has been looked at.
					return await this.withFiles(token, async () =>
						answer(params as P, token, progress, partial),
					);
				} catch (error) {
					if (error instanceof ResponseError) return error;
					const told = error instanceof Error ? error.stack : error;
					this.connection.console.error(`Fault in \`${method}\`: ${told}`);
					return new ResponseError(
						ErrorCodes.InternalError,
						`\`${method}\` failed: ${error instanceof Error ? error.message : error}`,
					);
				}
			},
		);
	}

	/**
	 * Works an answer out again until every file that it read has come, and none came while it was worked out. A refusal
	 * counts as an answer: what it misses may be on its way.
	 */
	private async withFiles<R>(
		token: CancellationToken,
		work: () => Promise<R>,
	): Promise<R> {
		const { host, session } = this.context;
		for (let round = 0; ; round++) {
			const before = session.arrivals;
			const [outcome] = await Promise.allSettled([work()]);
			const arrival = host.whenArrived?.();
			if (
				(!arrival && session.arrivals === before) ||
				round === mostRounds ||
				token.isCancellationRequested
			) {
				if (outcome.status === "rejected") throw outcome.reason;
				return outcome.value;
			}
			await arrival;
			if (token.isCancellationRequested) throw new Cancelled();
		}
	}

	/** Throws where the request is no longer wanted, or is about a text that has changed since. */
	private async settled(
		method: string,
		params: unknown,
		token: CancellationToken,
	): Promise<void> {
		const { session } = this.context;
		const uri = uriIn(params);
		const versionOf = (): number | undefined =>
			uri === undefined ? undefined : session.versionOf(session.canonical(uri));
		const asked = versionOf();
		await session.turns.settled();
		if (token.isCancellationRequested) throw new Cancelled();
		if (asked === versionOf()) return;
		// A client shows nothing for a diagnostic request that failed otherwise; this asks it to ask again.
		if (method === "textDocument/diagnostic")
			throw new ResponseError(
				LSPErrorCodes.ServerCancelled,
				"The text has changed since",
				{ retriggerRequest: true },
			);
		throw new ResponseError(
			LSPErrorCodes.ContentModified,
			"The text has changed since",
		);
	}

	private partialFor<PR>(
		token: string | number | undefined,
	): ResultProgressReporter<PR> | undefined {
		if (token === undefined) return undefined;
		return {
			report: (part) =>
				void this.connection.sendProgress(anyProgress, token, part),
		};
	}
}

/** Lets other messages through; throws if the request was cancelled. For long work, between its slices. */
export async function rest(
	{ session }: Context,
	token: CancellationToken,
): Promise<void> {
	await session.turns.pause();
	if (token.isCancellationRequested) throw new Cancelled();
}

function uriIn(params: unknown): string | undefined {
	return (params as { textDocument?: { uri?: string } } | null)?.textDocument
		?.uri;
}

function tokenIn(
	params: unknown,
	name: "workDoneToken" | "partialResultToken",
): string | number | undefined {
	const token = (params as Readonly<Record<string, unknown>> | null)?.[name];
	return typeof token === "string" || typeof token === "number"
		? token
		: undefined;
}
