/** The sentences that stand in tables: of the catalogue, the rules, what is computed, the units, the keywords. */
import { catalogue } from '../../language/catalogue/catalogue.js';
import { STAGES } from '../../language/catalogue/property.js';
import { CAUTIONS, DEFERRAL } from '../../language/catalogue/cautions.js';
import species from '../../language/catalogue/species.bookmatch?raw';
import { rulePages } from '../../language/checks/manual.js';
import { isForClient } from '../../language/sheets/client.js';
import { asTitle, inWords } from '../../language/sheets/sheet-words.js';
import { wordsFor } from '../../language/reports/in-short.js';
import { KEYWORDS } from '../../language/editing/keywords.js';
import { partTitle, withinPart } from '../../language/reports/part-of.js';
import { DIMENSION, withArticle } from '../../language/quantities/dimension.js';
import { UNITS } from '../../language/quantities/units.js';
import { INSTRUMENT_QUANTITIES } from '../../language/recipes/derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from '../../language/recipes/derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from '../../language/recipes/derived/wood-quantities.js';
import { fragmentsOf } from '../../language/wording/cited.js';
import { ENGLISH } from '../../language/wording/wording.js';
import { partWords } from './every-part-word.js';
import { translationsOf } from './translations.js';
import { ANY_TITLE, SITE } from './titles.js';
import type { Sentences } from './every-sentence.js';

export function sentencesInTables(): Sentences {
  const found = new Map<string, string>();
  const add = (table: string, ...texts: readonly (string | undefined)[]) => {
    for (const text of texts) if (text !== undefined && text !== '' && !found.has(text)) found.set(text, table);
  };
  for (const part of catalogue.parts) add('catalogue', part.sentence);
  for (const { sentence } of catalogue.all) add('catalogue', sentence);
  for (const quantity of [...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...STRING_SET_QUANTITIES]) {
    add('computed', quantity.sentence);
  }
  for (const { text } of CAUTIONS) add('cautions', text);
  for (const [, text] of species.matchAll(/^ {2}(?:dust|trade): "([^"]*)"/gm)) add('species', text);
  for (const { title, reason } of rulePages()) add('rules', title, reason);
  for (const { sentence } of KEYWORDS) add('keywords', sentence);
  for (const { sentence } of UNITS) add('units', sentence);
  for (const dimension of Object.values(DIMENSION)) add('dimensions', withArticle(dimension));
  for (const { path } of [...catalogue.parts, ...catalogue.all]) {
    if (path.includes('.') || catalogue.part(path)) add('part titles', partTitle(path.split('.')[0]!, ENGLISH));
  }
  for (const { path } of INSTRUMENT_QUANTITIES) {
    if (path.includes('.')) add('part titles', partTitle(path.split('.')[0]!, ENGLISH));
  }
  for (const word of catalogue.property('stage', 'build')?.choices ?? []) add('stages', word.replaceAll('-', ' '));
  for (const stage of STAGES) add('stages of work', stage.replaceAll('-', ' '));
  const voiced = INSTRUMENT_QUANTITIES.filter(({ voicing }) => voicing).map(({ path }) => path.replaceAll('*', 'x'));
  for (const path of voiced) add('words for effects', ...wordsFor(path));
  add(
    'held',
    'sag',
    'top sag',
    'back sag',
    'stiffness',
    'back stiffness',
    'top stiffness',
    'mass',
    'top mass',
    'back mass',
  );
  for (const { source } of [...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...STRING_SET_QUANTITIES]) {
    if (isProse(source)) add('sources', source);
  }
  for (const { formula } of [...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...STRING_SET_QUANTITIES]) {
    if (/[a-z]{3}/.test(formula.replace(/atan|det/g, ''))) add('formulas', formula);
  }
  const ranges = catalogue.all.flatMap((property) => property.ranges);
  for (const { note } of ranges) add('notes on ranges', note);
  for (const source of ranges.flatMap((range) => range.source.split('; '))) if (isProse(source)) add('sources', source);
  add('notes on ranges', 'over every kind of instrument listed');
  add('sources', ...UNITS.map(({ source }) => source).filter((source) => /^(Common|Computed|Definition)/.test(source)));
  add('sources', ...fragmentsSaid(found));
  add('cautions', DEFERRAL);
  for (const path of ['kind', 'material']) {
    for (const word of catalogue.property(path, 'strings')?.choices ?? []) add('care card', inWords(word));
  }
  for (const { path } of catalogue.all) {
    if (/^setup\.[^*]+$/.test(path)) add('care card', inWords(path.replace('setup.', '')));
  }
  add('care card', 'scale', 'nut width');
  add('species', ...[...species.matchAll(/^species (\S+)/gm)].map(([, name]) => asTitle(name!, ENGLISH)));
  for (const property of catalogue.all) {
    if (property.kind === 'wood' && property.where.includes('recipe') && !property.path.includes('*')) {
      add('parts of wood', asTitle(property.path.replace(/\.wood$/, ''), ENGLISH));
    }
    if (!property.where.includes('recipe') || property.path.includes('*') || !isForClient(property)) continue;
    add('client sheet', inWords(withinPart(property.path)));
    for (const word of [...(property.choices ?? []), ...(property.words ?? [])]) add('client sheet', inWords(word));
  }
  // A number or a letter is the same in every language.
  add('parts and values on paper', ...partWords(translationsOf('de')).filter((word) => /[a-z]{2}/i.test(word)));
  return found;
}

/** What is said beside the titles in sources that have no translation as a whole. */
function fragmentsSaid(known: Sentences): readonly string[] {
  const sources = [
    ...[...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...STRING_SET_QUANTITIES, ...UNITS, ...CAUTIONS].map(
      ({ source }) => source,
    ),
    ...catalogue.all.flatMap(({ ranges }) => ranges.map(({ source }) => source)),
    ...[...species.matchAll(/per "([^"]*)"/g)].map(([, source]) => source!),
  ].filter((source) => !known.has(source));
  const fragments = sources
    .flatMap((source) => source.split('; '))
    .flatMap((piece) => (known.has(piece) ? [] : fragmentsOf(piece)));
  return fragments.filter((fragment) =>
    /[a-z]{3}/.test(
      fragment
        .replace(ANY_TITLE, '')
        .replace(SITE, '')
        .replace(/^((Tables?|Eqs?\.|Appendix|scatter) \S+(?: %)?|\S+ on green volume|brought to 12 %MC .*)$/, ''),
    ),
  );
}

/** Said in words; a citation or an address is left as it is. */
function isProse(source: string): boolean {
  return /^[a-z]/.test(source) && !/^[\w.-]+\.[a-z]{2,4}\b/.test(source);
}
