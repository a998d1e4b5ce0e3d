/** Cautions: complete, once each, due where they matter, and deferring to those who know. */
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import {
  CAUTIONS,
  cautionOnSpecies,
  cautionsOnQuantity,
  cautionsOnSheet,
  cautionsOnValue,
  DEFERRAL,
} from '../../language/catalogue/cautions.js';
import { FINISH_SYSTEMS } from '../../language/catalogue/finish-entries.js';

const keysOf = (cautions: readonly { readonly key: string }[]) => cautions.map((caution) => caution.key);

describe('every caution', () => {
  it('has a key of its own, a text, a source and something that makes it due', () => {
    expect(new Set(keysOf(CAUTIONS)).size).toBe(CAUTIONS.length);
    for (const { key, text, source, triggers } of CAUTIONS) {
      expect(text, key).toMatch(/^[A-Z].{30,420}\.$/);
      expect(source.length, key).toBeGreaterThan(8);
      expect(triggers.length, key).toBeGreaterThan(0);
    }
  });

  it('hangs on paths the catalogue knows, and on choices that exist', () => {
    for (const { key, triggers } of CAUTIONS) {
      for (const trigger of triggers) {
        if (trigger.kind !== 'value') continue;
        const property = catalogue.property(trigger.path);
        expect(property, `${key}: ${trigger.path}`).toBeDefined();
        if (!property?.choices) continue;
        for (const word of trigger.values ?? []) expect(property.choices, `${key}: ${trigger.path}`).toContain(word);
      }
    }
  });

  it('never says that anyone complies or is safe', () => {
    for (const { text } of CAUTIONS) expect(text).not.toMatch(/compli|is safe|are safe|no risk|harmless/i);
    expect(DEFERRAL).toMatch(/not legal, medical or engineering advice/);
    expect(DEFERRAL).toMatch(/licensed professional/);
    expect(DEFERRAL).toMatch(/Looked up \d{4}-\d{2}/);
  });
});

describe('cautions fall due', () => {
  it('on the finish that calls for them, and on every finish but wax, water and none', () => {
    expect(keysOf(cautionsOnValue('finish.system', 'polyurethane-two-pack'))).toEqual(['isocyanate']);
    expect(keysOf(cautionsOnValue('finish.system', 'nitrocellulose'))).toEqual(['nitrocellulose']);
    expect(keysOf(cautionsOnValue('finish.system', 'french-polish'))).toEqual(['spirit']);
    const quiet = FINISH_SYSTEMS.filter((system) => cautionsOnValue('finish.system', system).length === 0);
    expect(quiet).toEqual(['waterborne', 'wax', 'none']);
  });

  it('on words inside free text, whole words only', () => {
    expect(keysOf(cautionsOnValue('saddle.material', 'bleached bone'))).toEqual(['bone-and-shell']);
    expect(keysOf(cautionsOnValue('fingerboard.inlay', 'Abalone dots'))).toEqual(['bone-and-shell']);
    expect(cautionsOnValue('saddle.material', 'micarta')).toEqual([]);
    expect(cautionsOnValue('fingerboard.inlay', 'shellac lines')).toEqual([]);
  });

  it('on a brace cap of carbon, whatever the brace is called', () => {
    expect(keysOf(cautionsOnValue('bracing.x-bass.cap.material', 'carbon'))).toEqual(['bone-and-shell']);
    expect(cautionsOnValue('bracing.x-bass.cap.material', 'wood')).toEqual([]);
  });

  it('on computed loads and rotations, as design aids', () => {
    expect(keysOf(cautionsOnQuantity('bridge.rotation'))).toEqual(['design-aid']);
    expect(keysOf(cautionsOnQuantity('strings.total-tension'))).toEqual(['string-tension']);
    expect(cautionsOnQuantity('top.mass')).toEqual([]);
  });

  it('on sheets and on species', () => {
    expect(keysOf(cautionsOnSheet('bench'))).toEqual(['wood-dust', 'machines']);
    expect(keysOf(cautionsOnSheet('species'))).toEqual(['plant-declaration']);
    expect(keysOf(cautionsOnSheet('care'))).toEqual(['string-tension', 'care-humidity']);
    expect(cautionOnSpecies('dust')?.key).toBe('sensitiser');
    expect(cautionOnSpecies('trade')?.key).toBe('protected-species');
  });
});
