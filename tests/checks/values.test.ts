/** An old notebook typed in: the tool asks, it does not guess. */
import { describe, expect, it } from 'vitest';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

const RECIPE = 'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }\n';

function recipe(line: string): string {
  return `model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn {\n  ${line}\n}`;
}

describe('numbers without a unit', () => {
  it('are plausible only one way: 0.110 is inches, and its fix says what that comes to', () => {
    const checked = check(recipe('top.thickness: .110'));
    const { message, fixes } = finding(checked, 'missing-unit');
    expect(message).toContain('0.110 in = 2.79 mm');
    expect(fixes.map(({ title }) => title)).toEqual(['Write 0.110 in = 2.79 mm']);
    expect(fixed(checked, 'missing-unit', 'Write 0.110 in')).toBe(recipe('top.thickness: 0.110 in'));
  });

  it.each([
    ['top.thickness: 110', '110 thou'],
    ['body.top-radius: 28', '28 ft'],
    ['top.thickness: 2.8', '2.8 mm'],
  ])('%s can only be %s', (line, meant) => {
    const { fixes } = finding(check(recipe(line)), 'missing-unit');
    expect(fixes.map(({ title }) => title.replace(/ = .*/, ''))).toContain(`Write ${meant}`);
    expect(fixes.some(({ preferred }) => preferred)).toBe(false);
  });

  it('leave what needs them unknown, never zero', () => {
    const { workshop } = check(recipe('top { wood: sitka-spruce  thickness: 2.8 }'));
    expect(workshop.evaluation('tarn-1')!.derived('top.stiffness.along')!.known).toBe(false);
  });

  it('as fractions are asked about as 64ths', () => {
    const { message } = finding(check(recipe('setup.action.bass: 6/4')), 'fraction-needs-unit');
    expect(message).toContain('6/64 in = 2.38 mm');
    expect(codesOf(recipe('setup.action.bass: 6/4'))).not.toContain('missing-unit');
  });

  it('are fine where a pure number is asked', () => {
    expect(codesOf(`${RECIPE}build no-1 of tarn-1 { heard.response: 9/10 }`)).not.toContain('fraction-needs-unit');
  });
});

describe('units of the wrong kind', () => {
  it('are told apart in words on both sides, with units that fit', () => {
    expectMarked(`
model tarn {
  top.thickness: 2.8 g
  //             ^^^^^ wrong-dimension: A mass (g) where a length is needed. Use mm or in.
  bridge.mass: 1.1 in
  //           ^^^^^^ wrong-dimension: A length (in) where a mass is needed.
}
`);
  });

  it('are found in expectations too', () => {
    expect(codesOf(recipe('expect top.mass: below 190 mm'))).toContain('wrong-dimension');
  });

  it('may be per cent in a step', () => {
    const text = `${RECIPE.replace('{ }', '{ top.thickness: 2.85 mm }')}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: by -5 % }`;
    expect(codesOf(text)).not.toContain('wrong-dimension');
  });
});

describe('implausible values', () => {
  it('are asked about with the usual range, its source, and the unit that would fit', () => {
    const checked = check(recipe('top.thickness: 0.110 mm'));
    expect(finding(checked, 'implausible').message).toBe(
      '0.110 mm is below the usual for top.thickness: 1.8 to 3.6 mm (makers’ published figures). Did you mean 0.110 in = 2.79 mm?',
    );
    expect(fixed(checked, 'implausible', 'Write 0.110 in')).toBe(recipe('top.thickness: 0.110 in'));
  });

  it('are judged by the wood they are made of', () => {
    const cedar = recipe('form: om\n  top { wood: western-redcedar  thickness: 3.5 mm }');
    expect(codesOf(cedar)).not.toContain('implausible');
    expect(codesOf(cedar.replace('western-redcedar', 'sitka-spruce'))).toContain('implausible');
  });

  it('may be accepted with a reason, and not without', () => {
    const line = 'top.thickness: 4.4 mm';
    expect(codesOf(recipe(line))).toContain('implausible');
    expect(codesOf(recipe(`${line}\n  accept implausible because "Laminated."`))).not.toContain('implausible');
    expect(codesOf(recipe(`${line}\n  accept implausible`))).toEqual(
      expect.arrayContaining(['implausible', 'acceptance-without-reason']),
    );
  });

  it('do not include a film of 5 mil, which is 0.127 mm', () => {
    const checked = check('model tarn { finish.film: 5 mil }');
    expect(checked.findings.map(({ code }) => code)).not.toContain('implausible');
    expect(finding(checked, 'mil-is-not-mm').message).toContain('0.127 mm');
  });
});

describe('values of the wrong sort', () => {
  it('are named for what is needed', () => {
    expectMarked(`
model tarn {
  top.thickness: "2.8 mm"
  //             ^^^^^^^^ wrong-kind-of-value: top.thickness needs a number with its unit.
  top.wood: 2.8 mm
  //        ^^^^^^ wrong-kind-of-value: top.wood needs the name of a wood.
  bracing.x-bass.profile: parabola
  //                      ^^^^^^^^ unknown-choice: Did you mean parabolic?
}
`);
  });

  it('lose their quotes where only those are wrong', () => {
    expect(fixed(check('model tarn { top.wood: "sitka-spruce" }'), 'wrong-kind-of-value', 'Write sitka-spruce')).toBe(
      'model tarn { top.wood: sitka-spruce }',
    );
  });

  it('such as notes are offered as frequencies', () => {
    const text = `${RECIPE}build no-9 of tarn-1 { resonance.top: "F#" }`;
    const { fixes } = finding(check(text), 'pitch-as-frequency');
    expect(fixes.map(({ title }) => title)).toEqual(
      expect.arrayContaining(['Write 92.5 Hz (F#2)', 'Write 185.0 Hz (F#3)']),
    );
    expect(fixed(check(text), 'pitch-as-frequency', 'Write 185.0 Hz')).toContain('resonance.top: 185.0 Hz');
  });

  it('such as 3/4/19 are asked about as dates', () => {
    const { fixes } = finding(check(`${RECIPE}build no-9 of tarn-1 { finished: "3/4/19" }`), 'ambiguous-date');
    expect(fixes.map(({ title }) => title)).toEqual(['Write 2019-04-03', 'Write 2019-03-04']);
  });

  it('do not include `unknown`, which a maker may write anywhere', () => {
    expect(
      check('model tarn { top { wood: unknown  thickness: unknown }  body.top-radius: unknown }').findings,
    ).toEqual([]);
  });
});

describe('readings that belong together', () => {
  it('of air and wood agree, or one of them is asked about', () => {
    const at = (moisture: string) =>
      `shop marram { climate { humidity: 45 %RH  temperature: 21 °C  moisture: ${moisture} } }`;
    expect(codesOf(at('8.5 %MC'))).toEqual([]);
    expect(finding(check(at('6 %MC')), 'humidity-and-moisture').message).toContain('45 %RH at 21 °C goes with 8.5 %MC');
  });

  it('of a hygrometer that may be twelve points off carry that doubt', () => {
    const shop = 'shop marram { climate { humidity: 45 %RH ± 12 %RH  temperature: 21 °C  moisture: 6 %MC } }';
    expect(codesOf(shop)).not.toContain('humidity-and-moisture');
  });

  it('of a board give no wood there is', () => {
    const board = (mass: string) =>
      `wood spruce-12 is sitka-spruce { use: top  blank: 560 mm x 212 mm x 4.4 mm  mass: ${mass} }`;
    expect(codesOf(board('220 g'))).not.toContain('impossible-wood');
    expect(finding(check(board('5 oz')), 'impossible-wood').message).toContain('271 kg/m³');
  });

  it('of a deflection name their rig, which is offered', () => {
    const text =
      'rig bench { span: 500 mm  load: 2.268 kg }\nwood spruce-12 is sitka-spruce {\n  deflection.along: 7.2 mm\n}';
    expect(fixed(check(text), 'deflection-without-rig', 'Add')).toContain(
      '{\n  deflection.rig: bench\n  deflection.along: 7.2 mm\n}',
    );
  });
});
