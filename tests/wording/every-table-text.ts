/** The sentences that stand in tables: of the catalogue, the rules, what is computed, the units, the keywords. */
import { catalogue } from '../../language/catalogue/catalogue.js';
import { CAUTIONS } from '../../language/catalogue/cautions.js';
import species from '../../language/catalogue/species.bookmatch?raw';
import { rulePages } from '../../language/checks/manual.js';
import { KEYWORDS } from '../../language/editing/keywords.js';
import { UNITS } from '../../language/quantities/units.js';
import { INSTRUMENT_QUANTITIES } from '../../language/recipes/derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from '../../language/recipes/derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from '../../language/recipes/derived/wood-quantities.js';
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
  return found;
}
