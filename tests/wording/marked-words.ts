/**
 * A language in which every translated letter is marked, so that what was said past the wording stands out: a table with
 * the same sentences as a real one, in which `a` is written `ａ`. What then still stands there in plain letters is
 * either written by a maker or a word of the language itself, or it is English that no translation can reach.
 */
import { readFileSync } from 'node:fs';
import { BRACE_ROLES } from '../../language/catalogue/brace-roles.js';
import { catalogue } from '../../language/catalogue/catalogue.js';
import species from '../../language/catalogue/species.bookmatch?raw';
import { CODES } from '../../language/checks/rules.js';
import { KEYWORDS } from '../../language/editing/keywords.js';
import { UNITS } from '../../language/quantities/units.js';
import { INSTRUMENT_QUANTITIES } from '../../language/recipes/derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from '../../language/recipes/derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from '../../language/recipes/derived/wood-quantities.js';
import { SHEET_KINDS } from '../../language/sheets/sheet.js';
import { PLAN_FORMATS } from '../../language/cli/plan-command.js';
import { PAPERS } from '../../language/reports/plan/write/tiles.js';
import { ANY_TITLE, SITE } from './titles.js';
import type { Translations } from '../../language/wording/wording.js';

/** The table; code and the parts in a sentence stay as they are, since they must. */
export function marked(table: Translations): Translations {
  return Object.fromEntries(Object.keys(table).map((english) => [english, english.replace(TO_MARK, mark)]));
}

const TO_MARK = /`[^`]*`|\$\{[^}]*\}|\{\d+\}|\[[^\]]*\]\([^)]*\)|[A-Za-z]/g;

function mark(part: string): string {
  return part.length > 1 ? part : String.fromCharCode(part.charCodeAt(0) + 0xfee0);
}

/** Runs of plain words that neither the texts nor the language itself account for. */
export class Unmarked {
  private readonly words: ReadonlySet<string>;
  private readonly names: ReadonlySet<string>;
  private readonly texts: string;

  /** `forClients`: who have never seen the language, so that a word of it is no word to them. */
  constructor(texts: readonly string[], { forClients = false } = {}) {
    // A client reads only what a maker wrote out in words.
    const own = forClients ? texts.flatMap((text) => text.match(/"[^"]*"/g) ?? []) : texts;
    this.texts = [...own, species].join('\n').replace(/\s+/g, ' ');
    this.names = new Set(
      (forClients ? defined(texts) : names(texts)).flatMap((name) => [name, name.replace(/-\d+$/, '')]),
    );
    this.words = new Set([...(forClients ? unitWords() : vocabulary()), ...this.names]);
  }

  in(said: string): readonly string[] {
    const runs = said.replace(PASSED_OVER, ' · ').match(/[A-Za-z][\w'’-]*(?:,? [A-Za-z][\w'’-]*)*/g) ?? [];
    return runs.filter((run) => !this.isAccountedFor(run));
  }

  private isAccountedFor(run: string): boolean {
    const words = run.split(/,? /);
    // On a sheet a name begins with a capital, and has no hyphens.
    if (this.names.has(run.toLowerCase().replaceAll(' ', '-'))) return true;
    return (
      words.every((word) => this.words.has(word) || this.words.has(word.replace(/-\d+$/, '')) || word.length < 3) ||
      this.texts.includes(run)
    );
  }
}

/** Code, addresses, files, options of a command, snippets’ places, sites and titles. */
const PASSED_OVER = new RegExp(
  [
    /```[^]*?```|`[^`]*`|\$\{?\d\}?|<\/?[a-z][^>]*>/,
    /(?:https?|command|file|bookmatch-library):[^\s)"<]*/,
    /[\w*-]+(?:\.[\w*-]+)+/,
    /(?<![\w.])--?[a-z-]+(?: <[a-z]+>)?|\[[a-z.]+\]/,
    SITE,
    ANY_TITLE,
  ]
    .map(({ source }) => source)
    .join('|'),
  'g',
);

/** Words of the language, which are the same in every tongue. */
function vocabulary(): readonly string[] {
  const quantities = [...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...STRING_SET_QUANTITIES];
  const paths = [...catalogue.all, ...catalogue.parts, ...quantities].map(({ path }) => path);
  const choices = catalogue.all.flatMap((property) => property.choices ?? []);
  const roles = [...BRACE_ROLES].flatMap(({ tag, names }) => [tag, ...names]);
  const woods = [...species.matchAll(/^species (\S+)/gm)].map(([, name]) => name!);
  return [...woods, ...paths.flatMap((path) => path.split('.')), ...choices, ...roles, ...unitWords(), ...CODES].concat(
    [...KEYWORDS.map(({ word }) => word), ...PROGRAM],
  );
}

function unitWords(): readonly string[] {
  return UNITS.flatMap((unit) => Object.values(unit).filter((value) => typeof value === 'string'));
}

/** As the program itself declares them. */
export const COMMANDS: readonly string[] = [
  ...readFileSync('language/cli/run.ts', 'utf8').matchAll(/\.command\('(\w+)'\)/g),
].map(([, name]) => name!);

/** Commands and options of the program, and what only programs read. */
const PROGRAM =
  'bookmatch help paths wish word code level quiet usual everything off text markdown json csv sarif github html orders error warning information hint'
    .split(' ')
    .concat(SHEET_KINDS, COMMANDS, PLAN_FORMATS, Object.keys(PAPERS));

/** Names that a maker gave: of definitions, and others that are numbered as those are. */
function defined(texts: readonly string[]): readonly string[] {
  return texts.flatMap((text) => [
    ...[...text.matchAll(/^\w+ ([a-z][\w-]*)[^:\n]*\{/gim)].map(([, name]) => name!),
    ...(text.match(/[a-z][\w-]*-\d+/gi) ?? []),
  ]);
}

/** What is named in the texts. */
function names(texts: readonly string[]): readonly string[] {
  return texts.flatMap(
    (text) =>
      text.match(/[a-z][\w-]*(?= (?:for|from|of|is)\b)|(?<=(?:for|from|of) )[a-z][\w-]*|[a-z]\w*-[\w-]*/gi) ?? [],
  );
}
