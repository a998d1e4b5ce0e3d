/** The list of words: that nothing is left out of it, that makers' own words lead to it, and that the page of it is up to date. */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../language/catalogue/catalogue.js';
import { STAGES } from '../../../language/catalogue/property.js';
import { CODES } from '../../../language/checks/rules.js';
import { KEYWORDS } from '../../../language/editing/keywords.js';
import { findWords } from '../../../language/editing/reference/find-words.js';
import { referencePage } from '../../../language/editing/reference/reference-page.js';
import { wordEntries } from '../../../language/editing/reference/words.js';
import { DEFINITION_KINDS } from '../../../language/facts/facts.js';
import { UNITS } from '../../../language/quantities/units.js';
import { INSTRUMENT_QUANTITIES } from '../../../language/recipes/derived/instrument-quantities.js';
import { openWorkshop } from '../../../language/shop.js';
import { Wording } from '../../../language/wording/wording.js';
import { translationsOf } from '../../wording/translations.js';

const { workshop } = openWorkshop();
const all = wordEntries(workshop);
const meant = (asked: string) => findWords(asked, all).entries.map(({ section, word }) => `${section} ${word}`);

describe('the words', () => {
  it('are those of every table', () => {
    const known = new Set(all.map(({ word }) => word));
    const wanted = [
      ...DEFINITION_KINDS,
      ...KEYWORDS.map(({ word }) => word),
      ...catalogue.parts.map(({ path }) => path),
      ...catalogue.all.flatMap(({ path, choices = [] }) => [path, ...choices]),
      ...INSTRUMENT_QUANTITIES.map(({ path }) => path),
      ...UNITS.map(({ symbol }) => symbol),
      ...STAGES,
      ...CODES,
      ...workshop.shelf.names('species'),
    ];
    expect(wanted.filter((word) => !known.has(word))).toEqual([]);
  });

  it('are found by what makers call them, in English and German (common practice)', () => {
    expect(meant('dome')[0]).toBe('property body.top-radius');
    expect(meant('soundboard')).toContain('part top');
    expect(meant('Decke')).toContain('part top');
    expect(meant('Mensur')).toContain('property scale');
    expect(meant('Sattel')).toContain('part nut');
    expect(meant('kerfing')).toContain('part lining');
    expect(meant('adirondack')).toContain('species red-spruce');
    expect(meant('Fichte')).toContain('species norway-spruce');
    expect(meant('nitro')).toContain('choice nitrocellulose');
    expect(meant('Rezept')).toContain('definition recipe');
    expect(meant('thickness')).toContain('property top.thickness');
    expect(meant('bracing.x-bass.height')).toEqual(['property bracing.*.height']);
  });

  it('of a part come with everything in it', () => {
    const { inside } = findWords('neck', all);
    const properties = catalogue.all.filter(({ path }) => path.startsWith('neck.')).map(({ path }) => path);
    expect(inside.map(({ word }) => word)).toEqual(expect.arrayContaining(properties));
  });

  it('are looked for in what is said where nothing is called so, and else by what is near', () => {
    expect(findWords('monopole', all).entries.length + findWords('monopole', all).mentioned.length).toBeGreaterThan(0);
    expect(findWords('thikness', all).near).toContain('thickness');
    expect(findWords('qqqqqqqq', all)).toEqual({ entries: [], inside: [], mentioned: [], near: [] });
  });
});

describe('the reference', () => {
  it.each([
    ['en', 'reference.md'],
    ['de', 'reference.de.md'],
  ])('in %s is up to date', (language, file) => {
    const wording = new Wording(translationsOf(language), language);
    const page = referencePage(openWorkshop({ wording }).workshop);
    const place = new URL(`../../../language/docs/${file}`, import.meta.url);
    if (process.env['BOOKMATCH_WRITE'] === '1') writeFileSync(place, page);
    expect(readFileSync(place, 'utf8') === page, 'npm run generate:reference writes it anew').toBe(true);
    for (const { path } of [...catalogue.parts, ...catalogue.all]) expect(page).toContain(`\`${path}\``);
  });
});
