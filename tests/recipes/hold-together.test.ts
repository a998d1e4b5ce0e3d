/** `hold q by a, b`: sizes that go together, alike where they are alike, otherwise in proportion. */
import { describe, expect, it } from 'vitest';
import { check } from '../checks/marked-text.js';

const model = (
  treble: number,
): string => `wood s-1 is sitka-spruce { density: 420 kg/m³  modulus { along: 11 GPa  across: 0.8 GPa  twist: 0.7 GPa } }
model tarn {
  top { wood: s-1  thickness: 2.8 mm }
  body { length: 495 mm  lower-bout { width: 390 mm  station: 112 mm }  waist { width: 243 mm  station: 292 mm }  upper-bout { width: 286 mm  station: 422 mm } }
  soundhole { diameter: 100 mm  station: 335 mm }
  bracing {
    wood: s-1
    x-bass   { from: (69 mm, -150 mm)  to: (389 mm, 100 mm)   width: 8 mm  height: 16 mm  profile: rectangular }
    x-treble { from: (69 mm, 150 mm)   to: (389 mm, -100 mm)  width: 8 mm  height: ${treble} mm  profile: rectangular }
  }
}
recipe tarn-1 for tarn { because "The first." }
`;

const HOLD = 'hold top.braced-mass by bracing.x-bass.height, bracing.x-treble.height';

function solved(treble: number, ...lines: readonly string[]) {
  const text = `${model(treble)}recipe tarn-2 from tarn-1 {\n  because "Lighter top, taller X."\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  const { workshop, findings } = check(text);
  const evaluation = workshop.evaluation('tarn-2')!;
  const mm = (path: string) => 1000 * evaluation.number(path)!;
  const [before, after] = [workshop.evaluation('tarn-1')!, evaluation].map((one) => {
    const mass = one.derived('top.braced-mass');
    return mass?.known ? 1000 * mass.si : Number.NaN;
  });
  return {
    workshop,
    findings,
    before,
    after,
    bass: mm('bracing.x-bass.height'),
    treble: mm('bracing.x-treble.height'),
  };
}

describe('a hold by several sizes', () => {
  it('keeps two that are alike alike, and the quantity as the parent has it', () => {
    const { before, after, bass, treble } = solved(16, 'change top.thickness: 2.8 mm -> 2.75 mm', HOLD);
    expect(after).toBeCloseTo(before!, 5);
    expect(bass).toBeGreaterThan(16);
    expect(treble).toBeCloseTo(bass, 9);
  });

  it('moves half as much wood on each as one alone would', () => {
    // Rectangular bars of one length: what has to be added is shared between the two.
    const both = solved(16, 'change top.thickness: 2.8 mm -> 2.75 mm', HOLD);
    const alone = solved(16, 'change top.thickness: 2.8 mm -> 2.75 mm', HOLD.replace(/,.*/, ''));
    expect((both.bass - 16) / (alone.bass - 16)).toBeCloseTo(0.5, 1);
  });

  it('keeps the proportion of two that differ', () => {
    const { bass, treble } = solved(12, 'change top.thickness: 2.8 mm -> 2.75 mm', HOLD);
    expect(treble / bass).toBeCloseTo(12 / 16, 9);
  });

  it('counts neither of them', () => {
    const { workshop } = solved(16, 'change top.thickness: 2.8 mm -> 2.75 mm', HOLD);
    const { variables } = workshop.count('tarn-2');
    expect(variables.map(({ variable, verdict }) => `${variable.label}: ${verdict}`)).toEqual([
      expect.stringMatching(/^top\.thickness: /),
    ]);
  });

  it('that names one without a number says which', () => {
    const { findings } = solved(16, HOLD.replace('x-treble.height', 'x-treble.end-height'));
    expect(findings.map(({ message }) => message).join()).toContain(
      'This recipe has no bracing.x-treble.end-height to start from.',
    );
  });

  it('reads the same after a line end behind the comma, and is told where the second name is nothing', () => {
    expect(solved(16, HOLD.replace(', ', ',\n    ')).findings.filter(({ severity }) => severity === 'error')).toEqual(
      [],
    );
    const { findings } = solved(16, HOLD.replace('x-treble.height', 'x-treble.heigth'));
    expect(findings.map(({ code }) => code)).toContain('unknown-path');
  });
});
