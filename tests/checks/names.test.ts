import { describe, expect, it } from 'vitest';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

describe('names', () => {
  it('are marked at the word that nothing has, with the nearest of the right kind', () => {
    const checked = expectMarked(`
wood spruce-12 is sitka-spuce { use: top }
//                ^^^^^^^^^^^ unknown-name: Did you mean sitka-spruce?
strings light-12 { tuning: E4, B3 }
model tarn {
  strings: ligth-12
  //       ^^^^^^^^ unknown-name: no set of strings called ligth-12. Did you mean light-12?
}
recipe tarn-1 for tarn {
  with ember
  //   ^^^^^ unknown-name: Define it: \`appointments ember { … }\`.
}
`);
    expect(checked.findings.filter(({ code }) => code === 'unknown-name')).toHaveLength(3);
  });

  it('of another kind of thing are told apart from unknown ones', () => {
    expectMarked(
      `
strings light-12 { tuning: E4, B3 }
model tarn {
  top.wood: light-12
  //        ^^^^^^^^ wrong-kind: light-12 is a set of strings; a wood or a species is needed here.
}
`,
      'unknown-name',
    );
  });

  it('may be a bare species where no set was measured', () => {
    expect(codesOf('model tarn { top.wood: sitka-spruce }')).not.toContain('unknown-name');
  });

  it('of one kind are unique, which is told once, where the second stands', () => {
    const checked = expectMarked(`
model tarn { scale: 645 mm }
model tarn { scale: 640 mm }
//    ^^^^ duplicate-name: only the first is read
`);
    for (const one of checked.findings.filter(({ code }) => code === 'duplicate-name'))
      expect(one.related).toHaveLength(1);
  });

  it('may be shared by different kinds', () => {
    expect(codesOf('model tarn { scale: 645 mm }\nrig tarn { span: 500 mm }')).not.toContain('duplicate-name');
  });

  it('of the species library may be taken over by the shop', () => {
    expect(codesOf('species sitka-spruce { kind: softwood }')).not.toContain('duplicate-name');
  });
});

describe('parents', () => {
  it('that are models are joined with `for`, parents with `from`', () => {
    const from = check('model tarn { scale: 645 mm }\nrecipe tarn-1 from tarn { }');
    expect(fixed(from, 'wrong-kind', 'Write `for')).toBe('model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }');
    const of = check('model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }\nrecipe tarn-2 for tarn-1 { }');
    expect(fixed(of, 'wrong-kind', 'Write `from')).toContain('recipe tarn-2 from tarn-1 { }');
  });

  it('in a ring are named once round, from where one stands', () => {
    const checked = expectMarked(`
recipe a-1 from a-3 { }
//              ^^^ parent-ring: a-1 from a-3 from a-2 from a-1
recipe a-2 from a-1 { }
//              ^^^ parent-ring: a-2 from a-1 from a-3 from a-2
recipe a-3 from a-2 { }
//              ^^^ parent-ring: a-3 from a-2 from a-1 from a-3
recipe a-4 from a-3 { }
`);
    expect(checked.findings.find(({ code }) => code === 'parent-ring')!.related).toHaveLength(2);
  });

  it('cannot be the recipe itself', () => {
    expect(finding(check('recipe a-1 from a-1 { }'), 'parent-ring').message).toBe('a-1 cannot be its own parent.');
  });

  it('that are missing are looked for among recipes', () => {
    const text = 'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }\nrecipe tarn-2 from tarn-11 { }';
    expect(fixed(check(text), 'missing-parent', 'Write tarn-1')).toBe(text.replace('tarn-11', 'tarn-1'));
  });

  it('of a recipe without any are offered from its name', () => {
    const text = 'model tarn { scale: 645 mm }\nrecipe tarn-1 { }';
    expect(fixed(check(text), 'no-parent', 'Write `for tarn`')).toBe(
      'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }',
    );
  });

  it('of a build are recipes', () => {
    expectMarked(
      `
model tarn { scale: 645 mm }
build no-1 of tarn { }
//            ^^^^ wrong-kind: tarn is a model; a recipe is needed here.
build no-2 of tern { }
//            ^^^^ build-of-unknown: There is no recipe called tern.
`,
      'unknown-name',
    );
  });
});
