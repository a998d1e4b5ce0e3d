/** Packages of appointments: what they bring, how it is counted, when a request for one comes too late. */
import { describe, expect, it } from 'vitest';
import { optionMasses } from '../../language/recipes/derived/option-masses.js';
import { PlainAsk } from '../../language/reports/plan/plain-ask.js';
import { shopOf, TOPS, VENNICK } from '../recipes/shop-of.js';
import { check, codesOf } from './marked-text.js';

const BASE = `${TOPS}${VENNICK}recipe v-1 for vennick { title: "Number one"  top { wood: sitka-31  thickness: 2.8 mm } }
`;
const BEVELLED = `appointments bevelled {
  title: "Bevelled and cut"  description: "For those who reach high."
  cutaway { kind: venetian  depth: 60 mm  station: 370 mm }
  arm-bevel { width: 25 mm  depth: 18 mm  mass: 50 g }
  rosette: "red stone band"
}
`;
const TAKEN = `${BASE}${BEVELLED}recipe v-2 from v-1 { because "Asked for."  with bevelled }`;
const labels = (text: string) =>
  shopOf(text)
    .workshop.count('v-2')
    .variables.map(({ variable, verdict }) => `${variable.label}: ${verdict}`);

describe('a package', () => {
  it('keeps its own title and description', () => {
    const { values } = shopOf(TAKEN).workshop.instrument('v-2')!;
    expect(values.get('title')?.value).toMatchObject({ text: 'Number one' });
    expect(values.get('description')).toBeUndefined();
    expect(values.get('cutaway.depth')?.via).toBe('package');
  });

  it('may bring a cutaway and a bevel, which are in the right place there', () => {
    expect(codesOf(TAKEN)).not.toContain('misplaced');
  });

  it('brings nothing that is not read in it: what is called misplaced is not computed either', () => {
    const text = `${BASE}appointments odd { top.thickness: 2 mm }\nrecipe v-2 from v-1 { because "?"  with odd }`;
    expect(codesOf(text)).toContain('misplaced');
    expect(shopOf(text).workshop.evaluation('v-2')!.number('top.thickness')).toBeCloseTo(0.0028, 9);
  });

  it('counts part by part what is of the body, and all that is for the eye as one', () => {
    expect(labels(TAKEN)).toEqual(['cutaway: counted', 'arm-bevel: counted', 'with bevelled: not-counted']);
  });
});

describe('a part', () => {
  const how = {
    'added as one': 'add cutaway { kind: venetian  depth: 60 mm  station: 370 mm }',
    'in a block': 'cutaway { kind: venetian  depth: 60 mm  station: 370 mm }',
    'line by line': 'cutaway.kind: venetian  cutaway.depth: 60 mm  cutaway.station: 370 mm',
  };
  for (const [title, line] of Object.entries(how)) {
    it(`that the parent does not have counts as one, ${title}`, () => {
      expect(labels(`${BASE}recipe v-2 from v-1 { because "High frets."  ${line} }`)).toEqual(['cutaway: counted']);
    });
  }

  it('that is there counts for each thing that changes', () => {
    const text = `${BASE}recipe v-1b from v-1 { add cutaway { kind: venetian  depth: 60 mm } }
recipe v-2 from v-1b { because "?"  change cutaway.depth: 60 mm -> 50 mm  change cutaway.kind: venetian -> florentine }`;
    expect(labels(text)).toEqual(['cutaway.depth: counted', 'cutaway.kind: counted']);
  });

  for (const none of ['none', 'no', 'no-cutaway']) {
    it(`of which it is said that there is ${none} is gone, and its size with it`, () => {
      const text = `${BASE}${BEVELLED}recipe v-1b from v-1 { with bevelled }
recipe v-2 from v-1b { because "Whole."  change cutaway.kind: venetian -> ${none} }`;
      expect(codesOf(text)).not.toContain('unknown-choice');
      const { workshop } = shopOf(text);
      const { values } = workshop.instrument('v-2')!;
      expect([...values.keys()].filter((path) => path.startsWith('cutaway'))).toEqual(['cutaway.kind']);
      const volume = (of: string) => workshop.evaluation(of)!.number('body.volume')!;
      expect(volume('v-2')).toBeCloseTo(volume('v-1'), 12);
      expect(volume('v-1b')).toBeLessThan(volume('v-1'));
      expect(labels(text)).toEqual(['cutaway.kind: counted']);
    });
  }
});

describe('options', () => {
  const WITH = `${BASE}recipe v-2 from v-1 { because "?"  electronics { battery { mass: 45 g  on: neck-block }  pickup { mass: 10 g  on: bridge-plate }  jack: 1/4 in  jack-mass: 30 g }  pickguard { material: "film"  mass: 9 g } }`;

  it('are weighed together, at the bridge or elsewhere', () => {
    const before = shopOf(BASE).workshop.evaluation('v-1')!;
    const after = shopOf(WITH).workshop.evaluation('v-2')!;
    const all = optionMasses(new PlainAsk(after));
    expect(all.map(({ path, on }) => [path, on])).toEqual([
      ['electronics.pickup', 'bridge-plate'],
      ['electronics.battery', 'neck-block'],
      ['electronics.jack', 'tail-block'],
      ['pickguard', 'top'],
    ]);
    expect(all.reduce((sum, { mass }) => sum + mass, 0)).toBeCloseTo(0.045 + 0.01 + 0.03 + 0.009, 12);
    expect(after.number('bridge.moving-mass')! - before.number('bridge.moving-mass')!).toBeCloseTo(0.01, 12);
  });

  it('named but not weighed are unknown, not weightless', () => {
    const text = `${BASE}recipe v-2 from v-1 { because "?"  electronics { preamp: "on the side" } }`;
    expect(() => optionMasses(new PlainAsk(shopOf(text).workshop.evaluation('v-2')!))).toThrow(
      'electronics.preamp.mass',
    );
    const none = `${BASE}recipe v-2 from v-1 { because "?"  electronics { preamp: none } }`;
    expect(optionMasses(new PlainAsk(shopOf(none).workshop.evaluation('v-2')!))).toEqual([]);
  });
});

describe('a request', () => {
  const order = (head: string, ...lines: readonly string[]) =>
    `${BASE}${BEVELLED}recipe v-2 from v-1 { because "Thinner."  change top.thickness: 2.8 mm -> 2.7 mm }
order c-1 of v-2 { ${head} ${lines.join(' ')} }
`;
  const late = (text: string) =>
    check(text)
      .findings.filter(({ code }) => code === 'request-too-late' || code === 'request-costly')
      .map(({ code, message }) => `${code}: ${message.split(/[,:] /).slice(0, 2).join(' ')}`);

  it('for a package whose cutaway can no longer be cut is late, part by part', () => {
    const found = late(order('reached: binding', 'request 2026-06-12 { with bevelled }'));
    expect(found.some((one) => one.startsWith('request-too-late: Too late for cutaway'))).toBe(true);
    expect(found.some((one) => one.startsWith('request-too-late: Too late for arm-bevel'))).toBe(true);
    expect(found.some((one) => one.startsWith('request-too-late: Too late for rosette'))).toBe(true);
    expect(found).toHaveLength(3);
  });

  it('for a package breaks the trial by its cutaway once, not by each line of it', () => {
    const { findings } = check(order('reached: wood', 'request 2026-06-12 { with bevelled }'));
    const [breaks] = findings.filter(({ code }) => code === 'request-breaks-trial');
    expect(breaks?.message).toContain('cutaway and arm-bevel would be heard as well');
  });

  it('to leave a part out is judged like one to change it', () => {
    const cut = BASE.replace('top { wood', 'cutaway { kind: venetian  depth: 60 mm }  top { wood');
    const text = `${cut}order c-1 of v-1 { reached: closing  request 2026-06-12 { drop cutaway } }`;
    expect(late(text)[0]).toMatch(/^request-too-late: Too late for cutaway/);
  });

  it('that was declined or taken back is judged no more', () => {
    for (const answer of ['declined', 'withdrawn']) {
      expect(late(order('reached: binding', `request 2026-06-12 { with bevelled  answer: ${answer} }`))).toEqual([]);
    }
  });

  it('is judged by how far the build is that fills the order', () => {
    const build = 'build no-1 of v-2 { done { rim: 2026-05-01  closing: 2026-05-20 } }';
    const text = `${order('build: no-1', 'request 2026-06-12 { with bevelled }')}${build}`;
    expect(late(text).filter((one) => one.includes('cutaway'))).toHaveLength(1);
  });
});
