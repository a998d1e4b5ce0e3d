/** The part of Langium that is used: a lexer and a parser made from the grammar, and nothing besides. */
import {
  DefaultLexer,
  DefaultLexerErrorMessageProvider,
  LangiumParserErrorMessageProvider,
  createLangiumParser,
} from 'langium';
import type { LangiumCoreServices, Lexer, LexerResult, ParseResult } from 'langium';
import { BookmatchAstReflection, type Definition } from './generated/ast.js';
import { BookmatchGrammar } from './generated/grammar.js';
import { BookmatchLanguageMetaData } from './generated/module.js';
import type { Token, TokenTypes } from './token.js';
import { BookmatchTokenBuilder } from './tokens.js';

export interface ParserServices {
  readonly types: TokenTypes;
  tokenize(text: string): { tokens: Token[]; comments: Token[] };
  /** Parses tokens already prepared. Stops at the first error; the tree is then what was read so far. */
  parse(
    text: string,
    tokens: readonly Token[],
    rule: 'Definition' | 'Body',
  ): { ast: Definition; errors: ParseResult['parserErrors'] };
}

export function createParserServices(selfCheck: boolean): ParserServices {
  const services = {
    Grammar: BookmatchGrammar(),
    LanguageMetaData: { ...BookmatchLanguageMetaData, mode: selfCheck ? 'development' : 'production' },
    parser: {
      TokenBuilder: new BookmatchTokenBuilder(),
      LexerErrorMessageProvider: new DefaultLexerErrorMessageProvider(),
      ParserErrorMessageProvider: new LangiumParserErrorMessageProvider(),
      // Unreadable words are replaced before parsing (see repair.ts); guessing at missing ones would get in the way.
      ParserConfig: { recoveryEnabled: false },
      ValueConverter: { convert: (written: string) => written },
    },
    references: {},
    shared: { AstReflection: new BookmatchAstReflection(), profilers: {} },
  };
  // Langium asks for all its services in the type and uses only these for parsing.
  const asked = (lexer?: Lexer): LangiumCoreServices =>
    ({ ...services, parser: { ...services.parser, Lexer: lexer } }) as unknown as LangiumCoreServices;
  const lexer = new DefaultLexer(asked());
  const prepared = new PreparedTokens(lexer);
  const parser = createLangiumParser(asked(prepared));
  return {
    types: lexer.definition,
    tokenize(text) {
      const { tokens, hidden } = lexer.tokenize(text);
      return { tokens, comments: hidden };
    },
    parse(text, tokens, rule) {
      prepared.tokens = tokens;
      const { value, parserErrors } = parser.parse<Definition>(text, { rule });
      return { ast: value, errors: parserErrors };
    },
  };
}

/** Hands the parser tokens that were cut and mended beforehand. */
class PreparedTokens implements Lexer {
  tokens: readonly Token[] = [];

  constructor(private readonly lexer: Lexer) {}

  get definition(): Lexer['definition'] {
    return this.lexer.definition;
  }

  tokenize(): LexerResult {
    return { tokens: [...this.tokens], hidden: [], errors: [] };
  }
}
