// Looks whether the parameters of a request are what the handlers rely on: a client may send anything.

/** Requests about a place in a document. */
const withPosition: ReadonlySet<string> = new Set(
	[
		"hover",
		"completion",
		"definition",
		"declaration",
		"references",
		"documentHighlight",
		"signatureHelp",
		"rename",
		"prepareRename",
		"linkedEditingRange",
		"onTypeFormatting",
		"prepareCallHierarchy",
		"prepareTypeHierarchy",
	].map((name) => `textDocument/${name}`),
);

/** Requests about a range of a document. */
const withRange: ReadonlySet<string> = new Set(
	["codeAction", "inlayHint", "rangeFormatting", "semanticTokens/range"].map(
		(name) => `textDocument/${name}`,
	),
);

/** What is wrong with them; undefined if the handlers can rely on them. */
export function faultInParams(
	method: string,
	params: unknown,
): string | undefined {
	if (!isRecord(params)) return "The parameters are no object";
	if (method.startsWith("textDocument/")) {
		const { textDocument } = params;
		if (!isRecord(textDocument) || typeof textDocument.uri !== "string")
			return "`textDocument.uri` is no text";
	}
	if (withPosition.has(method) && !isPosition(params.position))
		return "`position` is no place";
	if (withRange.has(method) && !isRange(params.range))
		return "`range` is no range";
	if (
		method === "textDocument/selectionRange" &&
		!(Array.isArray(params.positions) && params.positions.every(isPosition))
	)
		return "`positions` are no places";
	if (method === "textDocument/rename" && typeof params.newName !== "string")
		return "`newName` is no text";
	if (method === "workspace/symbol" && typeof params.query !== "string")
		return "`query` is no text";
	if (
		method === "workspace/diagnostic" &&
		!(
			Array.isArray(params.previousResultIds) &&
			params.previousResultIds.every(
				(one: unknown) =>
					isRecord(one) &&
					typeof one.uri === "string" &&
					typeof one.value === "string",
			)
		)
	)
		return "`previousResultIds` is no list of them";
	return undefined;
}

/** Whether changes of a document can be applied. */
export function areChanges(changes: unknown): boolean {
	return (
		Array.isArray(changes) &&
		changes.every(
			(one: unknown) =>
				isRecord(one) &&
				typeof one.text === "string" &&
				(!("range" in one) || isRange(one.range)),
		)
	);
}

function isRange(value: unknown): boolean {
	return isRecord(value) && isPosition(value.start) && isPosition(value.end);
}

function isPosition(value: unknown): boolean {
	return (
		isRecord(value) &&
		typeof value.line === "number" &&
		typeof value.character === "number"
	);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
	return typeof value === "object" && value !== null && !Array.isArray(value);
}
