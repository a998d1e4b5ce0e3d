/** The table itself: every entry complete, no path said twice, no word with two meanings. */
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { OFFERED_UNITS } from '../../language/catalogue/offered-units.js';
import { STAGES } from '../../language/catalogue/property.js';
import { SHORTCUTS } from '../../language/catalogue/shortcuts.js';
import { isNumber, sameDimension } from '../../language/quantities/dimension.js';
import { unit } from '../../language/quantities/units.js';
import { DEFINITION_KINDS } from '../../language/facts/facts.js';

const WORD = /^(?:[a-z0-9][a-z0-9-]*|[A-Z]{2,3}|\*)$/;

describe('every property', () => {
  it('has a path of plain words', () => {
    const odd = catalogue.all.filter((property) => !property.path.split('.').every((word) => WORD.test(word)));
    expect(odd.map((property) => property.path)).toEqual([]);
  });

  it('has one plain sentence', () => {
    const odd = catalogue.all.filter(
      ({ sentence }) => !/^[A-Z][^]{8,170}[.]$/.test(sentence) || /\. [A-Z]/.test(sentence),
    );
    expect(odd.map((property) => `${property.path}: ${property.sentence}`)).toEqual([]);
  });

  it('offers a unit of its own dimension', () => {
    for (const property of catalogue.all) {
      if (property.unit === undefined) continue;
      const found = unit(property.unit);
      expect(found, `${property.path}: ${property.unit}`).toBeDefined();
      expect(property.dimension, property.path).toBeDefined();
      if (found && property.dimension)
        expect(sameDimension(found.dimension, property.dimension), property.path).toBe(true);
    }
  });

  it('has a unit when it is a quantity, a size or a point, and choices when it is a choice', () => {
    for (const property of catalogue.all) {
      if (['quantity', 'size', 'point'].includes(property.kind)) {
        expect(property.unit, property.path).toBeDefined();
        if (property.dimension) expect(isNumber(property.dimension), property.path).toBe(false);
      }
      if (property.kind === 'ratio' || property.kind === 'count') {
        expect(property.dimension && isNumber(property.dimension), property.path).toBe(true);
      }
      expect(property.choices !== undefined, property.path).toBe(property.kind === 'choice');
      if (property.choices) expect(new Set(property.choices).size, property.path).toBe(property.choices.length);
    }
  });

  it('has ranges in order, with a source', () => {
    for (const property of catalogue.all) {
      for (const range of property.ranges) {
        expect(range.low, property.path).toBeLessThanOrEqual(range.typical);
        expect(range.typical, property.path).toBeLessThanOrEqual(range.high);
        expect(Number.isFinite(range.low) && Number.isFinite(range.high), property.path).toBe(true);
        expect(range.source.length, property.path).toBeGreaterThan(5);
        expect(range.source, property.path).not.toMatch(/https?:|undefined/);
      }
      const tags = property.ranges.map((range) => range.of ?? '');
      expect(new Set(tags).size, `${property.path} has two ranges for the same instruments`).toBe(tags.length);
    }
  });

  it('freezes in the order of the stages', () => {
    const place = (stage: (typeof STAGES)[number] | undefined) =>
      stage === undefined ? STAGES.length : STAGES.indexOf(stage);
    for (const { path, freeze } of catalogue.all) {
      if (!freeze) continue;
      expect(place(freeze.costly), path).toBeLessThanOrEqual(place(freeze.impossible));
      if (!freeze.easier) continue;
      expect(place(freeze.easier.costly), path).toBeGreaterThanOrEqual(place(freeze.costly));
      expect(place(freeze.easier.impossible), path).toBeGreaterThanOrEqual(place(freeze.impossible));
      expect(place(freeze.easier.costly), path).toBeLessThanOrEqual(place(freeze.easier.impossible));
    }
  });
});

describe('the whole', () => {
  it('covers an instrument with at least 220 property patterns', () => {
    const patterns = catalogue.all.filter((property) => property.where.includes('recipe'));
    expect(patterns.length).toBeGreaterThanOrEqual(220);
  });

  it('says no path twice to one kind of definition', () => {
    const seen = new Set<string>();
    const twice: string[] = [];
    for (const property of catalogue.all) {
      for (const kind of property.where) {
        const key = `${kind} ${property.path}`;
        if (seen.has(key)) twice.push(key);
        seen.add(key);
      }
    }
    expect(twice).toEqual([]);
    const parts = catalogue.parts.map((part) => part.path);
    expect(new Set(parts).size).toBe(parts.length);
  });

  it('names every inner word of a path as a part', () => {
    const missing = new Set<string>();
    for (const { path } of catalogue.all) {
      const words = path.split('.');
      for (let length = 1; length < words.length; length++) {
        const inner = words.slice(0, length).join('.');
        if (!catalogue.parts.some((part) => part.path === inner)) missing.add(inner);
      }
    }
    expect([...missing]).toEqual([]);
  });

  it('has no part that nothing fits in', () => {
    const empty = catalogue.parts.filter(
      ({ path }) => !catalogue.all.some((property) => property.path === path || property.path.startsWith(`${path}.`)),
    );
    expect(empty.map((part) => part.path)).toEqual([]);
  });

  it('gives no word two meanings inside a part, and no synonym that is another’s own name', () => {
    const clashes: string[] = [];
    for (const kind of DEFINITION_KINDS) {
      const owners = new Map<string, string>();
      const claim = (within: string, word: string, owner: string) => {
        const key = `${within}/${word}`;
        const other = owners.get(key);
        if (other !== undefined && other !== owner) clashes.push(`${kind}: ${key} means ${other} and ${owner}`);
        owners.set(key, owner);
      };
      const usable = catalogue.all.filter((property) => property.where.includes(kind));
      const entries = [
        ...usable,
        ...catalogue.parts.filter(({ path }) => usable.some((property) => property.path.startsWith(`${path}.`))),
      ];
      for (const { path, synonyms } of entries) {
        const words = path.split('.');
        const own = words.at(-1) ?? '';
        const within = words.slice(0, -1).join('.');
        for (const word of [own, ...synonyms]) {
          expect(word, path).toBe(own === word ? own : word.toLowerCase());
          claim(within, word, path);
        }
      }
    }
    expect([...new Set(clashes)]).toEqual([]);
  });

  it('has shortcuts that lead somewhere and hide nothing', () => {
    for (const [word, path] of SHORTCUTS) {
      const found = catalogue.part(path) ?? catalogue.property(path);
      expect(found, `${word} → ${path}`).toBeDefined();
      expect(catalogue.property(word, 'recipe'), word).toBeUndefined();
      expect(catalogue.canonical(word, 'build'), word).toBe(path);
    }
  });
});

describe('the units the catalogue offers', () => {
  it.each(Object.entries(OFFERED_UNITS))('%s agrees with the unit table', (symbol, row) => {
    const found = unit(symbol);
    expect(found?.symbol).toBe(symbol);
    expect(row.factor).toBe(found?.factor);
    expect('offset' in row ? row.offset : 0).toBe(found?.offset ?? 0);
  });
});
