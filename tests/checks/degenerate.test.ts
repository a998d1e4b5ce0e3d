/** Input from which no plate can be made: a finding at its line, for a recipe that wants a resonance; never NaN, never a hang. */
import { describe, expect, it } from 'vitest';
import { bracedShop, OWN } from '../recipes/braced-shop.js';

const FINGER = 'width: 6 mm  height: 8 mm  profile: parabolic }';

describe('a recipe that expects a resonance, with', () => {
  it.each([
    ['a thickness of nothing', 'change top.thickness: 2.80 mm -> 0 mm', 'thickness'],
    ['a thickness below nothing', 'change top.thickness: 2.80 mm -> -1 mm', 'thickness'],
    ['a top as thick as the body is long', 'change top.thickness: 2.80 mm -> 900 mm', 'too thick'],
    ['the soundhole off the top', 'change soundhole.station: 335 mm -> 700 mm', 'outside the outline'],
    ['the soundhole over the rim', 'change soundhole.station: 335 mm -> 480 mm', 'cuts the outline'],
    ['a brace off the top', `add bracing.finger { from: (600 mm, 300 mm)  to: (700 mm, 350 mm)  ${FINGER}`, 'finger'],
    [
      'a brace of no length',
      `add bracing.finger { from: (200 mm, 50 mm)  to: (200 mm, 50 mm)  ${FINGER}`,
      'finger|length',
    ],
    ['a brace of no height', 'change bracing.x-bass.height: 15.9 mm -> 0 mm', 'height'],
    ['the bridge off the top', 'bridge.station: 900 mm', 'bridge lies off'],
    ['wood as soft as nothing is', 'change top.wood: sitka-31 -> foam', 'along the grain'],
    ['wood as stiff as nothing is', 'change top.wood: sitka-31 -> diamond', 'along the grain'],
  ])('%s', (_what, line, says) => {
    const start = performance.now();
    const { workshop, checks } = bracedShop(`recipe v-2 from v-1 {
  because "To see what happens."
  ${line}
  expect resonance.top: above 10 Hz
}
wood foam is sitka-spruce { density: 420 kg/m³  modulus { along: 1e-9 GPa  across: 0.8 GPa } }
wood diamond is sitka-spruce { density: 420 kg/m³  modulus { along: 1e9 GPa  across: 0.8 GPa } }`);
    const findings = checks.file(OWN);
    const here = findings.filter(
      ({ place }) => 'definition' in place && place.definition.name.text === 'v-2' && place.span.start.line === 2,
    );
    expect(here.map(({ message }) => message).join('\n')).toMatch(new RegExp(says));
    expect(here.map(({ severity }) => severity)).toContain('error');
    expect(findings.map(({ message }) => message).join('\n')).not.toMatch(/NaN|Infinity|undefined/);
    // What cannot be tested says why, and does not ask for what nobody can give.
    const expectation = findings.find(({ code }) => code === 'expectation-unknown');
    expect(expectation?.message).not.toContain('missing');
    const evaluation = workshop.inFull('v-2')!;
    for (const path of ['resonance.top', 'top.main-resonance', 'bridge.rotation']) {
      expect(evaluation.derived(path)).toMatchObject({ known: false, trouble: expect.any(String) as string });
    }
    expect(performance.now() - start).toBeLessThan(20_000);
  });
});
