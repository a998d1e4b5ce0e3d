import { describe, expect, it } from 'vitest';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

const BASE = `model tarn { bracing { finger-1 { height: 7 mm }  finger-2 { height: 6 mm } } }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
`;

function child(...lines: readonly string[]): string {
  return `${BASE}recipe tarn-2 from tarn-1 {\n  because "To see."\n${lines.map((line) => `  ${line}\n`).join('')}}`;
}

describe('a stale change', () => {
  const text = child('change top.thickness: 2.95 mm -> 2.7 mm');

  it('gives both numbers at the old one, and points at the parent’s line', () => {
    const { related } = finding(
      expectMarked(`${BASE}recipe tarn-2 from tarn-1 {
  because "To see."
  change top.thickness: 2.95 mm -> 2.7 mm
  //                    ^^^^^^^ stale-change: tarn-1 has 2.85 mm for top.thickness, not 2.95 mm.
}`),
      'stale-change',
    );
    expect(related.map(({ message }) => message)).toEqual(['top.thickness is 2.85 mm here']);
  });

  it('is mended by taking the parent’s value, or by putting the parent back', () => {
    expect(fixed(check(text), 'stale-change', 'Start from')).toBe(text.replace('2.95 mm ->', '2.85 mm ->'));
    expect(fixed(check(text), 'stale-change', 'Put 2.95 mm back')).toBe(
      text.replace('top.thickness: 2.85 mm }', 'top.thickness: 2.95 mm }'),
    );
  });

  it('is not one that says the same in another unit, to its last digit', () => {
    expect(codesOf(child('change top.thickness: .112 in -> 2.7 mm'))).not.toContain('stale-change');
    expect(codesOf(child('change top.thickness: .113 in -> 2.7 mm'))).toContain('stale-change');
  });
});

describe('a plain value that overrides', () => {
  it('is rewritten as a change, in its block too', () => {
    const text = child('top { thickness: 2.7 mm }');
    expect(fixed(check(text), 'silent-override', 'Write `change')).toBe(
      child('top { change thickness: 2.85 mm -> 2.7 mm }'),
    );
    expect(codesOf(child('top { change thickness: 2.85 mm -> 2.7 mm }'))).not.toContain('silent-override');
  });

  it('of the model in its first recipe is only mentioned', () => {
    const text = 'model tarn { top.thickness: 2.85 mm }\nrecipe tarn-1 for tarn { top.thickness: 2.7 mm }';
    expect(finding(check(text), 'silent-override').severity).toBe('information');
  });

  it('with the same value changes nothing and can go', () => {
    const text = child('top.thickness: 2.85 mm', 'top.edge-thickness: 2.5 mm');
    expect(fixed(check(text), 'no-change', 'Take')).toBe(child('top.edge-thickness: 2.5 mm'));
    expect(codesOf(text)).not.toContain('silent-override');
  });
});

describe('changes of what is not there', () => {
  it('become plain values', () => {
    const text = child('change top.edge-thickness: 2.5 mm -> 2.3 mm');
    expect(fixed(check(text), 'change-of-nothing', 'Write')).toBe(child('top.edge-thickness: 2.3 mm'));
  });

  it('by a step have no value at all', () => {
    expectMarked(`${BASE}recipe tarn-2 from tarn-1 {
  because "To see."
  change top.edge-thickness: by -0.2 mm
  //                            ^^^^^^^ step-without-base: tarn-1 has no top.edge-thickness to step from.
  change top.thickness: by -3 g
  //                       ^^^^ step-without-base: 2.85 mm cannot be moved by -3 g.
}`);
  });

  it('are additions and drops the wrong way round', () => {
    expectMarked(`${BASE}recipe tarn-2 from tarn-1 {
  because "To see."
  add bracing.finger-1 { height: 8 mm }
  //  ^^^^^^^^^^^^^^^^ add-existing: bracing.finger-1 is already there.
  drop bracing.finger-3
  //   ^^^^^^^^^^^^^^^^ drop-missing: It has finger-1, finger-2.
}`);
  });
});

describe('a change without its old value', () => {
  it('gets it from the parent', () => {
    const text = child('change top.thickness: -> 2.7 mm');
    expect(fixed(check(text), 'change-missing-old', 'Write')).toBe(child('change top.thickness: 2.85 mm -> 2.7 mm'));
  });
});

describe('a group', () => {
  it('of one change is no group', () => {
    const text = child('together "thinner" { change top.thickness: 2.85 mm -> 2.7 mm }');
    expect(fixed(check(text), 'empty-together', 'Take the change out')).toBe(
      child('change top.thickness: 2.85 mm -> 2.7 mm'),
    );
  });
});

describe('a reason', () => {
  it('is asked for once, and put at the top with the right indentation', () => {
    const text = `${BASE}recipe tarn-2 from tarn-1 {\n    change top.thickness: 2.85 mm -> 2.7 mm\n}`;
    expect(fixed(check(text), 'no-reason', 'Add')).toBe(
      `${BASE}recipe tarn-2 from tarn-1 {\n    because ""\n    change top.thickness: 2.85 mm -> 2.7 mm\n}`,
    );
  });

  it('of a group is reason enough', () => {
    const text = `${BASE}recipe tarn-2 from tarn-1 { together "thinner" { change top.thickness: 2.85 mm -> 2.7 mm  top.edge-thickness: 2.4 mm } }`;
    expect(codesOf(text)).not.toContain('no-reason');
  });
});

describe('a change out of place', () => {
  it('in a wood becomes a value', () => {
    const text = 'wood spruce-12 is sitka-spruce { change mass: 214 g -> 220 g }';
    expect(fixed(check(text), 'change-out-of-place', 'Write')).toBe('wood spruce-12 is sitka-spruce { mass: 220 g }');
  });
});
