import { describe, expect, it } from 'vitest';
import { TOPS, VENNICK } from '../recipes/shop-of.js';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

const BASE = `${TOPS}${VENNICK}recipe v-1 for vennick { top { wood: sitka-31  thickness: 2.8 mm } }
`;

function child(...lines: readonly string[]): string {
  return `${BASE}recipe v-2 from v-1 {\n  because "To see."\n${lines.map((line) => `  ${line}\n`).join('')}}`;
}

const TWO = child('change top.thickness: 2.8 mm -> 2.55 mm', 'change soundhole.diameter: 101 mm -> 95 mm');

describe('two changes', () => {
  it('are reported at the head, each with what it does in shop units', () => {
    const { message, related } = finding(check(TWO), 'too-many-changes');
    expect(message).toMatch(/^2 changes, and the shop allows 1: top\.thickness \(top\.mass −\d+(\.\d)? g \(−\d/);
    expect(message).toMatch(/soundhole\.diameter \(resonance\.rigid-air −\d+(\.\d)? Hz/);
    expect(message).toContain('A difference in the result could come from either.');
    expect(related.map((one) => one.message)).toEqual(['changes top.thickness', 'changes soundhole.diameter']);
  });

  it('of three say that nothing can be attributed', () => {
    const three = child(
      'change top.thickness: 2.8 mm -> 2.55 mm',
      'change soundhole.diameter: 101 mm -> 95 mm',
      'change bridge.mass: 27 g -> 22 g',
    );
    expect(finding(check(three), 'too-many-changes').message).toContain(
      'no difference in the result can be attributed',
    );
  });

  it('split into a chain, the largest effect first, each of which is one change', () => {
    const text = fixed(check(TWO), 'too-many-changes', 'Split');
    expect(text).toContain('recipe v-2-a from v-1 {');
    expect(text).toContain('recipe v-2 from v-2-a {');
    const again = check(text);
    expect(again.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(again.findings.map(({ code }) => code)).not.toContain('too-many-changes');
    for (const name of ['v-2-a', 'v-2']) expect(again.workshop.count(name).total).toBe(1);
    // The instrument at the end of the chain is the one that was written.
    for (const path of ['top.mass', 'resonance.rigid-air']) {
      expect(again.workshop.evaluation('v-2')!.number(path)).toBeCloseTo(
        check(TWO).workshop.evaluation('v-2')!.number(path)!,
        12,
      );
    }
  });

  it('split with their holds, so that every step is compensated', () => {
    const text = child(
      'change top.wood: sitka-31 -> engelmann-37',
      'change soundhole.diameter: 101 mm -> 95 mm',
      'hold top.stiffness.along by top.thickness',
    );
    const split = fixed(check(text), 'too-many-changes', 'Split');
    expect(split.match(/hold top\.stiffness\.along by top\.thickness/g)).toHaveLength(2);
    const of = (one: string) => check(one).workshop.evaluation('v-2')!.number('top.stiffness.along')!;
    expect(of(split)).toBeCloseTo(of(text), 6);
  });

  it('are grouped as one tweak, their blocks spelled out', () => {
    const text = child('top { change thickness: 2.8 mm -> 2.55 mm }', 'change soundhole.diameter: 101 mm -> 95 mm');
    const grouped = fixed(check(text), 'too-many-changes', 'Group');
    expect(grouped).toContain(`  because "To see."
  together "" {
    change top.thickness: 2.8 mm -> 2.55 mm
    change soundhole.diameter: 101 mm -> 95 mm
  }
}`);
    expect(check(grouped).workshop.count('v-2').total).toBe(1);
    expect(codesOf(grouped)).not.toContain('too-many-changes');
  });

  it('are allowed with a reason, which is asked for', () => {
    const allowed = fixed(check(TWO), 'too-many-changes', 'Allow 2');
    expect(allowed).toContain('{\n  allow 2 because ""\n  because "To see."');
    expect(codesOf(allowed)).toContain('allowance-without-reason');
    expect(codesOf(allowed.replace('""', '"A client’s guitar."'))).not.toContain('too-many-changes');
  });

  it('are none when one of them is solved by a hold', () => {
    const text = child('change top.wood: sitka-31 -> sitka-32', 'hold top.stiffness.along by top.thickness');
    expect(codesOf(text)).not.toContain('too-many-changes');
  });
});

describe('wood', () => {
  it('of the same species, held to the same stiffness, is a substitution; another species counts', () => {
    const other = (wood: string) =>
      child(`change top.wood: sitka-31 -> ${wood}`, 'hold top.stiffness.along by top.thickness');
    expect(finding(check(other('engelmann-37')), 'other-wood').message).toContain('top.mass −');
    expect(codesOf(other('engelmann-37'))).not.toContain('substitution');
    const alike = other('sitka-33').replace(
      'model vennick',
      'wood sitka-33 is sitka-spruce { density: 421.5 kg/m³  modulus { along: 10.85 GPa  across: 0.82 GPa } }\nmodel vennick',
    );
    expect(finding(check(alike), 'substitution').message).toContain('A substitution, not counted');
  });

  it('that is not held may be, by a fix', () => {
    const text = child('change top.wood: sitka-31 -> engelmann-37');
    const held = fixed(check(text), 'other-wood', 'Hold');
    expect(held).toContain('hold top.stiffness.along by top.thickness');
    expect(check(held).workshop.instrument('v-2')!.solvedHolds[0]!.outcome.kind).toBe('solved');
  });
});

describe('setup and appointments', () => {
  it('count when they weigh enough to matter, and say how much', () => {
    const heavy = `appointments loaded { electronics.pickup { mass: 12 g  on: bridge-plate } }\n${child('with loaded')}`;
    expect(finding(check(heavy), 'counted-after-all').message).toContain('bridge.moving-mass +12 g');
    const light = heavy.replace('12 g', '0.5 g');
    expect(codesOf(light)).not.toContain('counted-after-all');
  });
});

describe('a change too small to tell', () => {
  it('comes with the smallest step that would show, and that step does show', () => {
    const { message } = finding(check(child('change top.thickness: 2.8 mm -> 2.79 mm')), 'too-small-to-tell');
    const step = Number(/about ([\d.]+) mm/.exec(message)![1]);
    expect(step).toBeGreaterThan(0.01);
    const to = (by: number) => child(`change top.thickness: 2.8 mm -> ${(2.8 - by).toFixed(4)} mm`);
    expect(codesOf(to(step * 0.8))).toContain('too-small-to-tell');
    expect(codesOf(to(step * 1.2))).not.toContain('too-small-to-tell');
  });
});

describe('an unbuilt parent', () => {
  const line = `${BASE}recipe v-2 from v-1 { because "Lighter."  change top.thickness: 2.8 mm -> 2.55 mm }
recipe v-3 from v-2 {
//              ^^^ unbuilt-parent: v-2 has not been built. Against v-1, the last one that was, this is 2 changes: soundhole.diameter and top.thickness.
  because "Lower air."
  change soundhole.diameter: 101 mm -> 95 mm
}
`;

  it('is counted through to the last one that was built', () => {
    expect(finding(expectMarked(`${line}build no-1 of v-1 { }`), 'unbuilt-parent').severity).toBe('warning');
  });

  it('is nothing to mention once it is built, or while nothing is', () => {
    expect(codesOf(`${line}build no-1 of v-1 { }\nbuild no-2 of v-2 { }`)).not.toContain('unbuilt-parent');
    expect(codesOf(line)).not.toContain('unbuilt-parent');
  });
});
