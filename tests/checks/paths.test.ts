import { describe, expect, it } from 'vitest';
import { check, codesOf, expectMarked, fixed } from './marked-text.js';

describe('paths', () => {
  it('are looked for where they stand, then elsewhere', () => {
    expectMarked(`
model tarn {
  top { thicknes: 2.8 mm }
  //    ^^^^^^^^ unknown-path: There is no property top.thicknes. Did you mean top.thickness?
    tpo.thickness: 2.8 mm
  //^^^^^^^^^^^^^ unknown-path: Did you mean top.thickness?
}
`);
  });

  it('are mended in place, inside their block', () => {
    const text = 'model tarn { top { thicknes: 2.8 mm } }';
    expect(fixed(check(text), 'unknown-path', 'Write thickness')).toBe('model tarn { top { thickness: 2.8 mm } }');
  });

  it('of braces of any name are known', () => {
    expect(codesOf('model tarn { bracing { my-own-strut { height: 7 mm } } }')).not.toContain('unknown-path');
  });

  it('in other words are understood and the catalogue’s word is offered', () => {
    const text = 'model tarn {\n  soundboard { thickness: 2.8 mm }\n}';
    const checked = check(text);
    expect(checked.workshop.model('tarn')!.values.has('top.thickness')).toBe(true);
    expect(fixed(checked, 'synonym', 'Write top')).toBe('model tarn {\n  top { thickness: 2.8 mm }\n}');
    // Once, at the block; not again at every property inside it.
    expect(checked.findings.filter(({ code }) => code === 'synonym')).toHaveLength(1);
  });

  it('that are computed are expected instead', () => {
    const text = 'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn {\n  top.mass: 160 g\n}';
    expect(fixed(check(text), 'derived-set', 'Expect')).toBe(text.replace('top.mass:', 'expect top.mass:'));
  });

  it('that are computed may be read on a build', () => {
    const text = 'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }\nbuild no-1 of tarn-1 { top.mass: 160 g }';
    expect(codesOf(text)).not.toContain('derived-set');
  });

  it('given twice name the first, and readings of different days do not collide', () => {
    expectMarked(`
model tarn { scale: 645 mm }
recipe tarn-1 for tarn {
  top.thickness: 2.8 mm
  top { thickness: 2.7 mm }
  //    ^^^^^^^^^ set-twice: This one counts, not 2.8 mm.
}
build no-1 of tarn-1 {
  reading day-1 { resonance.top: 183 Hz }
  reading day-30 { resonance.top: 178 Hz }
}
`);
  });

  it('of a tap tone do not belong in a recipe', () => {
    expect(codesOf('model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { tap.along: 69 Hz }')).toContain('misplaced');
  });
});
