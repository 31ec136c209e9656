// A fixture evaluated, as features look at it.

import { parse } from "../../grammar/index.ts";
import type { Snapshot } from "../../shared/features/support/snapshot.ts";
import { compile } from "../../shared/model/compile.ts";
import { sourcesOf } from "../../shared/sources/sources.ts";
import { type Fixture, type FixtureFile, readFixture } from "./fixture.ts";

export interface Snapped {
	readonly fixture: Fixture;
	readonly snapshot: Snapshot;
	/** The first cursor; the end of the text if there is none. */
	readonly offset: number;
}

/** Snapshots the file with the cursor, or the first one. */
export function snap(source: string): Snapped {
	const fixture = readFixture(source);
	const file =
		fixture.files.find((one) => one.cursors.length > 0) ?? fixture.main;
	return {
		fixture,
		snapshot: snapshotOf(fixture, file),
		offset: file.cursors[0] ?? file.text.length,
	};
}

export function snapshotOf(fixture: Fixture, file: FixtureFile): Snapshot {
	return {
		uri: file.uri,
		text: file.text,
		result: parse(file.text),
		design: compile(sourcesOf(fixture.texts), file.uri),
	};
}
