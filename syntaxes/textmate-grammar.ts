import { WORDS } from './words.js';

interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Rule[];
  readonly include?: string;
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly Rule[];
  readonly repository: Readonly<Record<string, Rule>>;
}

/** Colours for the first paint, before the server has answered. Scopes are the usual ones, so every theme knows them. */
export function textMateGrammar(): TextMateGrammar {
  return {
    name: 'Bookmatch',
    scopeName: 'source.bookmatch',
    fileTypes: ['bookmatch'],
    patterns: ['comment', 'text', 'head', 'statement', 'property', 'part', 'value'].map((name) => include(name)),
    repository: {
      comment: {
        patterns: [
          { name: 'comment.line.double-slash.bookmatch', match: '//.*$' },
          { name: 'comment.block.bookmatch', begin: '/\\*', end: '\\*/' },
        ],
      },
      text: {
        patterns: [
          // A text ends with its line: half typed, it must not swallow the rest of the file.
          {
            name: 'string.quoted.double.bookmatch',
            begin: '(?<![\\d\\u00BC-\\u00BE\\u2153-\\u215E])"',
            end: '"|$',
            patterns: [{ name: 'constant.character.escape.bookmatch', match: '\\\\["\\\\]' }],
          },
          { name: 'string.quoted.double.bookmatch', match: '\\u201C[^\\u201D]*(?:\\u201D|$)' },
        ],
      },
      head: {
        match: `^\\s*(${anyOf(WORDS.definitions)})\\s+(${NAME})(?:\\s+(${anyOf(WORDS.relations)})\\s+(${NAME}))?(?=\\s*(?:\\{|//|$))`,
        captures: captures('storage.type', 'entity.name.type', 'keyword.operator.word', 'entity.other.inherited-class'),
      },
      statement: {
        match: `(?<=^|[\\s{}])(${anyOf(WORDS.statements)})(?=\\s+[^:\\s{])(?!\\s*:)`,
        captures: captures('keyword.control'),
      },
      property: {
        match: `(${PATH})\\s*(:)`,
        captures: captures('variable.other.property', 'punctuation.separator.key-value'),
      },
      part: { match: `(${PATH})(?=\\s*\\{)`, captures: captures('entity.name.tag') },
      value: {
        patterns: [
          { name: 'constant.numeric.date.bookmatch', match: `\\d{4}-\\d{1,2}-\\d{1,2}(?![\\w-])` },
          { match: QUANTITY, captures: captures('constant.numeric', 'keyword.other.unit') },
          { name: 'keyword.operator.arrow.bookmatch', match: '->|\\u2192' },
          { name: 'keyword.operator.bookmatch', match: '\\u00B1|\\+/-|\\+-|\\.\\.\\.?|\\u2026' },
          { name: 'keyword.operator.times.bookmatch', match: `(?<=[\\s\\d])[x\\u00D7](?=[\\s\\d])` },
          { name: 'keyword.operator.word.bookmatch', match: word([...WORDS.joining, ...WORDS.limits]) },
          { name: 'constant.language.bookmatch', match: word(WORDS.constants) },
          { name: 'variable.other.constant.bookmatch', match: PATH },
        ],
      },
    },
  };
}

const LETTER = 'A-Za-z_\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1FFF';
const NAME = `(?:[${LETTER}]|\\d+-(?=[${LETTER}]))[${LETTER}0-9#]*(?:-[${LETTER}0-9#]+)*`;
const PATH = `${NAME}(?:\\.(?:${NAME}|\\d+))*`;
const NUMBER =
  '[+\\-\\u2212]?(?:\\d+[ -]\\d+/\\d+|\\d+/\\d+|\\d*[ ]?[\\u00BC-\\u00BE\\u2153-\\u215E]|\\d*\\.?\\d+(?:[eE][+-]?\\d+)?)';
/** Words that follow a number and are not its unit. */
const NOT_UNITS = [...WORDS.joining, ...WORDS.limits, ...WORDS.statements, 'x'];
/** A number, and the word or sign straight after it on the same line: `2.85 mm`, `390 kg/m³`, `28'`, `7/64"`. */
const QUANTITY =
  `(?<![${LETTER}0-9#]|[${LETTER}0-9#][-.])(${NUMBER})` +
  `(?:[ \\t]*((?!(?:${anyOf(NOT_UNITS)})(?![${LETTER}0-9-])|[${LETTER}0-9.-]+\\s*:)` +
  `(?:["'\\u2032\\u2033\\u00B0]+[CF]?|%?[A-Za-z\\u00B5\\u03BC\\u03A9%][A-Za-z0-9/\\u00B7\\u00B2\\u00B3\\u2074*^\\u00B5\\u03BC]*|%)))?`;

function include(name: string): Rule {
  return { include: `#${name}` };
}

function anyOf(words: readonly string[]): string {
  return [...new Set(words)].join('|');
}

function word(words: readonly string[]): string {
  return `(?<![${LETTER}0-9.-])(?:${anyOf(words)})(?![${LETTER}0-9.-])`;
}

function captures(...scopes: readonly string[]): Rule['captures'] {
  return Object.fromEntries(scopes.map((scope, index) => [index + 1, { name: `${scope}.bookmatch` }]));
}
