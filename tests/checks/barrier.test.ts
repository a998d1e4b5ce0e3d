/**
 * A fault of our own, on purpose, in every question, rule and formula there is: each costs one finding where it was met, is
 * logged, and everything else stays as it was. What there is is taken from the tables, so that what is new is tried too.
 */
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Finding } from '../../language/checks/finding.js';
import { RULES } from '../../language/checks/rules.js';
import { openWorkshop, type OpenWorkshop } from '../../language/shop.js';
import { createParser } from '../../language/grammar/parse.js';
import { FITTED_WOOD_QUANTITIES } from '../../language/recipes/derived/fitted-wood-quantities.js';
import { INSTRUMENT_QUANTITIES } from '../../language/recipes/derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from '../../language/recipes/derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from '../../language/recipes/derived/wood-quantities.js';
import { Barrier } from '../../language/recipes/shelf/barrier.js';
import { Memo } from '../../language/recipes/shelf/memo.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { VENNICK } from '../editing/desk-of.js';

const parser = createParser();
const SHOP = `${VENNICK}
recipe v-32 from v-31 {
  because "A lighter top."
  change top.wood: sitka-31 -> sitka-32
  hold top.stiffness.along by top.thickness
  expect top.mass: below 180 g
}
build no-31 of v-31 { top.thickness: 2.81 mm  reading final { top.mass: 182 g } }
build no-32 of v-32 { reading final { top.mass: 178 g } }
order miller of v-32 { for: "A. Miller" }
appointments plain { rosette.style: "plain" }
`;
const OTHER = `
wood cedar-9 is western-redcedar { use: top  density: 350 kg/m³  modulus { along: 8.1 GPa  across: 0.6 GPa } }
model tarn { scale: 6450 mm }
recipe tarn-1 for tarn { top { wood: cedar-9  thickness: 3 mm } }
recipe tarn-2 from tarn-1 { change top.thickness: 3.1 mm -> 2.9 mm }
`;
const [HERE, THERE] = ['file:///here.bookmatch', 'file:///there.bookmatch'];

function opened(): OpenWorkshop & { readonly log: readonly string[] } {
  const log: string[] = [];
  const open = openWorkshop({ parser, log: (words) => log.push(words) });
  open.shelf.put(readFile(HERE, SHOP, parser), readFile(THERE, OTHER, parser));
  return { ...open, log };
}

/** By definition, what is found. */
function toldOf({ checks, shelf }: OpenWorkshop): ReadonlyMap<string, readonly string[]> {
  const of = new Map<string, string[]>();
  for (const uri of [HERE, THERE]) {
    for (const { definition } of shelf.file(uri)!.definitions) {
      of.set(`${definition.kind} ${definition.name.text}`, checks.definition(definition).map(inWords));
    }
    expect(checks.file(uri)).toBeDefined();
  }
  return of;
}

function inWords({ code, message }: Finding): string {
  return `${code}: ${message}`;
}

/**
 * One finding of the fault at most for each definition, and beside it nothing a definition would not have without the fault,
 * though perhaps in other words: what was known may now be missing.
 */
function expectOthersAsEver(found: ReadonlyMap<string, readonly string[]>, ...mayBeNew: readonly string[]) {
  for (const [name, told] of found) {
    const codes = told.map((words) => words.slice(0, words.indexOf(':')));
    expect(codes.filter((code) => code === 'own-fault').length, told.join('\n')).toBeLessThan(2);
    const known = usual.get(name)!.map((words) => words.slice(0, words.indexOf(':')));
    const fresh = codes.filter((code) => code !== 'own-fault' && !known.includes(code) && !mayBeNew.includes(code));
    expect(fresh, told.join('\n')).toEqual([]);
  }
}

const usual = toldOf(opened());
afterEach(() => void vi.restoreAllMocks());

it('there is something to lose', () => {
  expect([...usual.values()].flat().length).toBeGreaterThan(10);
  expect([...usual.values()].flat().filter((words) => words.startsWith('own-fault'))).toEqual([]);
});

describe.each(RULES)('in the rule $code', (rule) => {
  it('costs that rule and one finding, nothing else', () => {
    vi.spyOn(rule, 'check').mockImplementation(() => {
      throw new TypeError('thrown on purpose');
    });
    const open = opened();
    const found = toldOf(open);
    for (const [name, told] of found) {
      const isMeant = rule.of.some((kind) => name.startsWith(`${kind} `));
      const kept = usual.get(name)!.filter((words) => !words.startsWith(`${rule.code}:`));
      expect(
        told.filter((words) => !words.startsWith('own-fault')),
        name,
      ).toEqual(kept);
      expect(told.filter((words) => words.startsWith('own-fault')).length, name).toBe(isMeant ? 1 : 0);
    }
    expect(open.log.join('\n')).toContain(`rule ${rule.code}: TypeError: thrown on purpose`);
  });
});

/** The questions a workshop is made of; each is thrown in, in turn. */
function questionsAsked(): readonly string[] {
  const [guarded, all] = [vi.spyOn(Barrier.prototype, 'query'), vi.spyOn(Memo.prototype, 'query')];
  opened();
  const names = guarded.mock.calls.map(([name]) => name);
  // Beside them, only the findings and the faults told in them, which are guarded in their own way.
  const others = all.mock.calls.map(([name]) => name).filter((name) => !names.includes(name));
  expect(others).toEqual(['faults', 'findings']);
  vi.restoreAllMocks();
  return names;
}

/** A workshop one of whose questions throws whenever it is asked about what `isMeant` says. */
function openedWithFault(question: string, isMeant: (key: unknown) => boolean) {
  const query = Object.getOwnPropertyDescriptor(Barrier.prototype, 'query')!.value as Barrier['query'];
  let thrown = 0;
  const spy = vi.spyOn(Barrier.prototype, 'query').mockImplementation(function (this: Barrier, name, compute, options) {
    if (name !== question) return query.call(this, name, compute, options);
    const faulty = (key: unknown) => {
      if (!isMeant(key)) return compute(key);
      thrown++;
      throw new RangeError('thrown on purpose');
    };
    return query.call(this, name, faulty, options as never);
  });
  const open = opened();
  spy.mockRestore();
  return { open, thrown: () => thrown };
}

describe('in a question', () => {
  const questions = questionsAsked();

  it('there are many, each with a name of its own', () => {
    expect(questions.length).toBeGreaterThan(15);
    expect(new Set(questions).size).toBe(questions.length);
  });

  it.each(questions)('%s about everything: nothing is thrown, nothing false is told', (question) => {
    const { open, thrown } = openedWithFault(question, () => true);
    const found = toldOf(open);
    expectOthersAsEver(found);
    expect(thrown()).toBeGreaterThan(0);
    expect([...found.values()].flat().join()).toContain(`question ${question}: RangeError: thrown on purpose`);
    expect(open.log.join()).toContain(`question ${question}: RangeError: thrown on purpose`);
  });

  it.each(questions)('%s about one recipe: the other file is told as ever', (question) => {
    const { open } = openedWithFault(question, (key) => nameIn(key) === 'v-32');
    const found = toldOf(open);
    for (const [name, told] of found) if (/ (tarn|cedar)/.test(name)) expect(told, name).toEqual(usual.get(name));
    expectOthersAsEver(found);
  });
});

function nameIn(key: unknown): unknown {
  return typeof key === 'object' && key !== null && 'name' in key ? (key.name as { text: string }).text : key;
}

const QUANTITIES = [...INSTRUMENT_QUANTITIES, ...WOOD_QUANTITIES, ...FITTED_WOOD_QUANTITIES, ...STRING_SET_QUANTITIES];

describe.each(QUANTITIES)('in the formula of $path', (quantity) => {
  it('costs what is computed from it', () => {
    vi.spyOn(quantity, 'compute').mockImplementation(() => {
      throw new TypeError('thrown on purpose');
    });
    // Who needs it says that it is not there, or why.
    expectOthersAsEver(toldOf(opened()), 'missing-input', 'hold-unknown', 'expectation-unknown');
  });
});
