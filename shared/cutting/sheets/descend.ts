// The search for jobs with few parts of a kind: goal after goal, each a little better than the best plan so far.
import { type Allowed, Attempt, type Begun } from "./attempt.ts";
import { patternOf } from "./cut-up.ts";
import { type Goal, goalsBelow } from "./goals.ts";
import type { Standing } from "./standing.ts";

/** Steps between two pauses. */
const slice = 8e6;
const mostGoals = 4;

/** Works at better goals until the steps reach `end`, or nothing better exists. Pauses now and then. */
export function* descend(standing: Standing, end: number): Generator<void> {
	const { steps } = standing;
	while (steps.spent < end && !standing.proven) {
		const attempts = goalsOf(standing).map(
			(goal) =>
				new Attempt(
					standing.problem,
					allowedBy(goal),
					standing.wanted,
					begunOf(standing),
					standing.chance,
				),
		);
		if (attempts.length === 0) return;
		let better = false;
		for (let turn = 0; !better && steps.spent < end; turn++) {
			const at = turn % attempts.length;
			const attempt = attempts[at];
			if (attempt === undefined) return;
			const done = attempt.strive(steps, Math.min(end, steps.spent + slice));
			if (done || attempt.looseArea < standing.worth.missing)
				better = offer(standing, attempt);
			// All parts lie on the sheets, but not as they can be cut: there is nothing more to strive for.
			if (done && !better) attempts.splice(at, 1);
			yield;
		}
	}
}

function offer(standing: Standing, attempt: Attempt): boolean {
	const sheets = attempt.sheets();
	if (sheets === undefined) return false;
	return standing.offer({ sheets, remaining: attempt.loose });
}

export function begunOf(standing: Standing): Begun[] {
	return standing.layout.sheets.flatMap(({ blank, root }) => {
		const pattern = patternOf(root);
		return pattern === undefined ? [] : [{ blank, pattern }];
	});
}

export function allowedBy(goal: Goal): Allowed[] {
	return goal.flatMap((count, blank) =>
		Array.from({ length: count }, () => ({ blank })),
	);
}

/** Goals that are better than the best plan; if that has parts missing, all the stock there is. */
function goalsOf(standing: Standing): Goal[] {
	const { problem, worth, area, leastPrice, leastSheets } = standing;
	const used = problem.blanks.map(() => 0);
	for (const { blank } of standing.layout.sheets)
		used[blank] = (used[blank] ?? 0) + 1;
	if (worth.missing > 0)
		return [
			problem.blanks.map(({ count }, blank) =>
				Math.min(count, (used[blank] ?? 0) + mostIdle),
			),
		];
	const goals = goalsBelow(
		problem,
		area,
		worth.price,
		worth.sheets,
		leastPrice,
		mostGoals,
	);
	if (goals.length > 0 || worth.sheets <= leastSheets) return goals;
	// What is there already costs nothing, but a sheet less is less work.
	return used
		.flatMap((count, blank) =>
			count > 0
				? [used.map((one, other) => (other === blank ? one - 1 : one))]
				: [],
		)
		.slice(0, mostGoals);
}

/** Sheets that no part fitted on so far, of each blank, that a goal goes on trying. */
const mostIdle = 4;
