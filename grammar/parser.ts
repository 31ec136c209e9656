// The grammar of statements and blocks. It is total: whatever tokens the layout emits, in whatever order, are read, so
// nothing is ever skipped. What stands inside a statement stays flat here; ranks of operators are the climber's business.

import { EmbeddedActionsParser, type IToken } from "chevrotain";
import { piece, tokenNames, tokens } from "./tokens.ts";

export interface RawBlock {
	readonly open: IToken;
	readonly close: IToken;
	readonly statements: RawStatement[];
}

/** The tokens of one statement, and the block that ends it, if any. At least one of the two is there. */
export interface RawStatement {
	readonly pieces: IToken[];
	readonly block: RawBlock | undefined;
	/** A separator, a brace or the beginning of the text stands before it. */
	readonly apart: boolean;
}

class StatementParser extends EmbeddedActionsParser {
	constructor() {
		super([...tokenNames.map((name) => tokens[name]), piece], {
			recoveryEnabled: true,
			maxLookahead: 1,
			skipValidations: true,
		});
		this.performSelfAnalysis();
	}

	file = this.RULE("file", (): RawStatement[] => this.SUBRULE(this.body));

	body = this.RULE("body", (): RawStatement[] => {
		const statements: RawStatement[] = [];
		let apart = true;
		this.MANY(() => {
			this.OR([
				{
					ALT: () => {
						this.CONSUME(tokens.Separator);
						apart = true;
					},
				},
				{
					ALT: () => {
						statements.push(this.SUBRULE(this.statement, { ARGS: [apart] }));
						apart = false;
					},
				},
			]);
		});
		return statements;
	});

	statement = this.RULE("statement", (apart: boolean): RawStatement => {
		const pieces: IToken[] = [];
		let block: RawBlock | undefined;
		this.OR([
			{
				ALT: () => {
					this.AT_LEAST_ONE(() => {
						pieces.push(this.CONSUME(piece));
					});
					this.OPTION(() => {
						block = this.SUBRULE(this.block);
					});
				},
			},
			{
				ALT: () => {
					block = this.SUBRULE2(this.block);
				},
			},
		]);
		return { pieces, block, apart };
	});

	block = this.RULE("block", (): RawBlock => {
		const open = this.CONSUME(tokens.LeftBrace);
		const statements = this.SUBRULE(this.body);
		const close = this.CONSUME(tokens.RightBrace);
		return { open, close, statements };
	});
}

const parser = new StatementParser();

/** Statements of a whole text, and the tokens that the grammar refused, which after the layout should be none. */
export function parseStatements(all: IToken[]): {
	readonly statements: RawStatement[];
	readonly refused: readonly IToken[];
} {
	parser.input = all;
	const statements = parser.file() ?? [];
	const refused = parser.errors.map((error) => error.token);
	parser.input = [];
	return { statements, refused };
}
