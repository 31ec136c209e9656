// What holds for the checks of each design: the settings of the editor over those of the nearest settings file.

import {
	type CheckOptions,
	mergeOptions,
	type ReadSettings,
	readSettings,
	readSettingsText,
	settingsFileName,
} from "../../shared/checks/index.ts";
import {
	type HintChoice,
	readHintChoice,
	usualHints,
} from "../../shared/features/support/hints/hint.ts";
import type { Host } from "./host.ts";

interface FileSettings {
	readonly text: string;
	readonly read: ReadSettings;
	/** With those of the editor. */
	readonly options: CheckOptions;
}

const nothing: ReadSettings = { options: {}, faults: [] };

export class Settings {
	/** Which hints are shown in the text. */
	hints: HintChoice = usualHints;
	private readonly host: Host;
	private readonly read: (uri: string) => string | undefined;
	private editor: ReadSettings = nothing;
	/** The settings file of a design, by its uri. */
	private readonly places = new Map<string, string | undefined>();
	private readonly files = new Map<string, FileSettings>();
	/** The folder that is open in the editor: designs that are in no file yet belong to it. */
	private readonly folder: () => string | undefined;

	constructor(
		host: Host,
		read: (uri: string) => string | undefined,
		folder: () => string | undefined,
	) {
		this.host = host;
		this.read = read;
		this.folder = folder;
	}

	/** `{ severity, figures }` as the editor has them; anything is taken, what makes no sense is a fault. */
	setEditor(value: unknown): void {
		this.editor = readSettings(value);
		this.files.clear();
	}

	/** `{ sizes, thickness … }` as the editor has them under `storyrod.hints`. */
	setHints(value: unknown): void {
		this.hints = readHintChoice(value);
	}

	/** Files came or went: where the settings of a design are is looked up anew. */
	forgetPlaces(): void {
		this.places.clear();
	}

	/** Of a design; the same object as long as nothing changed. */
	optionsFor(uri: string): CheckOptions {
		return this.fileFor(uri)?.options ?? this.editor.options;
	}

	/** The file that holds for a design. */
	placeOf(uri: string): string | undefined {
		if (!this.places.has(uri)) {
			const folder = this.folder();
			const from = uri.startsWith("file:")
				? uri
				: folder && `${folder}untitled.rod`;
			const place = from && this.host.settingsFile(from);
			this.places.set(uri, place && this.host.canonical(place));
		}
		return this.places.get(uri);
	}

	/** What could not be read, of the editor and of the files of these designs. */
	faultsOf(uris: readonly string[]): string[] {
		const faults = this.editor.faults.map(
			(fault) => `Settings \`storyrod.checks\`: ${fault}`,
		);
		for (const place of new Set(uris.map((uri) => this.placeOf(uri)))) {
			const file = place === undefined ? undefined : this.fileAt(place);
			for (const fault of file?.read.faults ?? [])
				faults.push(`\`${settingsFileName}\`: ${fault}`);
		}
		return faults;
	}

	private fileFor(uri: string): FileSettings | undefined {
		const place = this.placeOf(uri);
		return place === undefined ? undefined : this.fileAt(place);
	}

	private fileAt(place: string): FileSettings | undefined {
		const text = this.read(place);
		if (text === undefined) return undefined;
		const known = this.files.get(place);
		if (known?.text === text) return known;
		const read = readSettingsText(text);
		const made = {
			text,
			read,
			options: mergeOptions(read.options, this.editor.options),
		};
		this.files.set(place, made);
		return made;
	}
}
