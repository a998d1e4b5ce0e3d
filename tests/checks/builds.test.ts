/** Twelve instruments, one change each: what may be said of them, and what may not. */
import { describe, expect, it } from 'vitest';
import { pooledScatter } from '../../language/recipes/builds/evidence.js';
import { studentT } from '../../language/recipes/builds/statistics/student-t.js';
import { TOPS, VENNICK } from '../recipes/shop-of.js';
import { check, codesOf, finding } from './marked-text.js';

const BASE = `${TOPS}${VENNICK}recipe v-1 for vennick { top { wood: sitka-31  thickness: 2.8 mm } }
recipe v-34 from v-1 { because "Thinner."  change top.thickness: 2.8 mm -> 2.61 mm }
recipe v-36 from v-1 { because "Lighter bridge."  change bridge.mass: 27 g -> 22 g }
`;
/** Main air, top and back on day 1 (invented figures). */
const day1 = (name: string, recipe: string, air: number, top: number, back: number, more = '') =>
  `build ${name} of ${recipe} {\n  ${more}\n  reading day-1 { resonance { air: ${air} Hz  top: ${top} Hz  back: ${back} Hz } }\n}\n`;
const REPLICATES =
  day1('no-31', 'v-1', 97, 183, 212) + day1('no-32', 'v-1', 97, 181, 214) + day1('no-33', 'v-1', 95, 181, 208);

describe('a difference in main top', () => {
  it('inside the scatter of replicates is not distinguishable, and the scatter is stated', () => {
    const checked = check(BASE + REPLICATES + day1('no-34', 'v-34', 95, 181, 207));
    expect(finding(checked, 'not-distinguishable').message).toBe(
      'Not distinguishable from the mean of no-31, no-32 and no-33: resonance.air −1.3 Hz (±5.9 Hz, from a scatter of 1.2 %), ' +
        'resonance.top −0.66 Hz (±5.8 Hz, from a scatter of 0.63 %) and resonance.back −4.3 Hz (±15.8 Hz, from a scatter of 1.4 %). ' +
        'Builds alike differ as much.',
    );
  });

  it('beyond it is not called indistinguishable', () => {
    const { message } = finding(check(BASE + REPLICATES + day1('no-34', 'v-34', 95, 165, 207)), 'not-distinguishable');
    expect(message).toContain('resonance.air');
    expect(message).not.toContain('resonance.top');
  });

  it('with no replicates yet is held against a stated 2 %, which is named', () => {
    const { message } = finding(
      check(BASE + day1('no-31', 'v-1', 97, 183, 212) + day1('no-34', 'v-34', 95, 181, 207)),
      'not-distinguishable',
    );
    expect(message).toContain('no replicates yet, so 2 % from common practice is taken');
    // ± 1.96 · 2 % · √2 of 183 Hz, on the scale of the logarithm.
    expect(message).toContain('resonance.top −2 Hz (±10.4 Hz, from a scatter of 2.0 %)');
  });

  it('is taken from the last occasion that can be compared', () => {
    const later = (build: string, top: number) =>
      build.replace(/\n}\n$/, `\n  reading day-30 { resonance.top: ${top} Hz }\n}\n`);
    const text =
      BASE + later(day1('no-31', 'v-1', 97, 183, 212), 178) + later(day1('no-34', 'v-34', 95, 181, 207), 178);
    expect(finding(check(text), 'not-distinguishable').message).toContain('resonance.top 0 Hz');
  });

  it('of a twin shows no effect, since nothing was changed', () => {
    expect(codesOf(BASE + REPLICATES)).not.toContain('not-distinguishable');
  });
});

describe('scatter', () => {
  it('is pooled as the standard deviation of the logarithm', () => {
    const { workshop } = check(BASE + REPLICATES);
    const builds = workshop.replicates('v-1');
    expect(builds.map(({ definition }) => definition.name.text)).toEqual(['no-31', 'no-32', 'no-33']);
    const scatter = pooledScatter('resonance.top', builds[0]!.readings[0]!, [builds])!;
    const logs = [183, 181, 181].map(Math.log);
    const mean = (logs[0]! + logs[1]! + logs[2]!) / 3;
    const expected = Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / 2);
    expect(scatter).toMatchObject({ freedom: 2, basis: 'replicates' });
    expect(scatter.share).toBeCloseTo(expected, 12);
  });

  it('takes a recipe with only another rosette for a replicate', () => {
    const text = `${BASE}recipe v-35 from v-1 { because "A red ring."  rosette: "red stone" }\n${REPLICATES}${day1('no-35', 'v-35', 96, 182, 211)}`;
    expect(check(text).workshop.replicates('v-1')).toHaveLength(4);
    expect(check(text).workshop.replicates('v-35')).toHaveLength(4);
  });
});

describe('Student’s t', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, table of critical values of Student's t, 0.975 (from memory).
  it.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [5, 2.571],
    [10, 2.228],
    [30, 2.042],
    [Number.POSITIVE_INFINITY, 1.96],
  ])('for %s degrees of freedom is %s', (freedom, t) => {
    expect(studentT(0.95, freedom)).toBeCloseTo(t, 3);
  });
});

describe('readings under different conditions', () => {
  const other = (conditions: string) => `build no-34 of v-34 { reading late { ${conditions}  resonance.top: 178 Hz } }`;

  it('of day 30 are not compared with those of day 1', () => {
    const { message } = finding(check(BASE + REPLICATES + other('days-strung: 30 days')), 'readings-not-comparable');
    expect(message).toContain('it was read on day 30 after stringing here and on day 1 after stringing there');
  });

  it('are compared once there is one of the same day', () => {
    const both =
      'build no-34 of v-34 { reading day-1 { resonance.top: 181 Hz }  reading day-30 { resonance.top: 178 Hz } }';
    expect(codesOf(BASE + REPLICATES + both)).not.toContain('readings-not-comparable');
  });

  it('in air far apart name both', () => {
    const wet = 'build no-34 of v-34 { reading day-1 { humidity: 60 %RH  resonance.top: 181 Hz } }';
    const dry = day1('no-31', 'v-1', 97, 183, 212).replace('day-1 {', 'day-1 { humidity: 44 %RH ');
    expect(finding(check(BASE + dry + wet), 'readings-not-comparable').message).toContain(
      'the humidity is 60 %RH here and 44 %RH there',
    );
  });
});

describe('a change nobody declared', () => {
  it('such as a new billet is listed where it came in', () => {
    const text =
      BASE +
      day1('no-31', 'v-1', 97, 183, 212, 'billet.braces: "B-4"') +
      day1('no-32', 'v-1', 97, 181, 214, 'billet.braces: "B-4"') +
      day1('no-36', 'v-36', 98, 186, 211, 'billet.braces: "B-5"');
    expect(finding(check(text), 'undeclared-change').message).toBe(
      'billet.braces is "B-5" here and "B-4" in no-32: a change nobody declared.',
    );
  });
});

describe('what was built', () => {
  const built = (line: string) => `${BASE}build no-31 of v-1 { ${line} }`;

  it('within the shop’s tolerance is as meant', () => {
    expect(codesOf(built('top.thickness: 2.84 mm'))).not.toContain('as-built-differs');
  });

  it('too thick says what that does and what would bring it back', () => {
    const { message } = finding(check(built('top.thickness: 2.95 mm')), 'as-built-differs');
    expect(message).toMatch(/^0\.15 mm more than v-1 says \(2\.8 mm\)\. That makes top\.stiffness/);
    expect(message).toContain('(+17 %)');
    expect(message).toContain('Taking it down to 2.8 mm would bring it back.');
  });

  it('too thin cannot be put back', () => {
    expect(finding(check(built('top.thickness: 2.65 mm')), 'as-built-differs').message).toContain(
      'wood only comes off',
    );
  });

  it('of another set names both', () => {
    expect(finding(check(built('top.wood: sitka-32')), 'as-built-differs').message).toContain(
      'v-1 says sitka-31 here; this was built with sitka-32.',
    );
  });

  it('and weighed is held against what it computes to as built, not as meant', () => {
    const mass = check(BASE).workshop.evaluation('v-1')!.number('top.mass')!;
    const thinner = Math.round(mass * 1000 * (2.61 / 2.8));
    expect(codesOf(built(`top { thickness: 2.61 mm  mass: ${thinner} g }`))).not.toContain(
      'measured-differs-from-computed',
    );
    expect(codesOf(built(`top { thickness: 2.8 mm  mass: ${thinner} g }`))).toContain('measured-differs-from-computed');
  });
});
