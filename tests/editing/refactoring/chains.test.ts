/** Refactorings along the line: splitting, taking a parent in, another parent, another line. */
import { describe, expect, it } from 'vitest';
import { possibleParents, rebasedOn } from '../../../language/editing/refactoring/rebase.js';
import { createParser } from '../../../language/grammar/parse.js';
import { deskOf, VENNICK } from '../desk-of.js';
import { after, offersIn } from './marked-desk.js';

const MIDDLE = `recipe v-32 from v-31 {
  because "Thinner."
  change top.thickness: 2.80 mm -> 2.6 mm
  change bridge.mass: 27 g -> 25 g
  rosette: "red"
}
`;
const done = (title: string, marked: string, ...others: readonly string[]) => {
  const texts = after(offersIn(marked, ...others, VENNICK), title);
  return typeof texts === 'string' ? texts : texts.slice(0, -1).join('---\n');
};

describe('split', () => {
  it('gives each change a recipe, the most noticeable first; the last keeps name, reason and the rest', () => {
    expect(done('Split', MIDDLE.replace('v-32', 'v-$032'))).toBe(`recipe v-32-a from v-31 {
  because "top.thickness, by itself."
  change top.thickness: 2.80 mm -> 2.6 mm
}

recipe v-32 from v-32-a {
  because "Thinner."
  change bridge.mass: 27 g -> 25 g
  rosette: "red"
}
`);
  });

  it('says why not', () => {
    expect(done('Split', 'recipe v-32 from v-31 { bridge.mass: $025 g }')).toContain('nothing to split');
    expect(done('Split', 'recipe v-$032 from v-9 { bridge.mass: 25 g  top.thickness: 2.6 mm }')).toContain('not known');
    const entangled =
      'recipe v-$032 from v-31 { drop bracing.x-bass  add bracing.x-bass { height: 12 mm }  bracing.x-bass.width: 7 mm  bridge.mass: 20 g }';
    expect(done('Split', entangled)).toContain('cannot be made one by one');
    const model = 'recipe v-$032 from v-31 { change model: vennick -> other  bridge.mass: 20 g  top.thickness: 2 mm }';
    expect(done('Split', model, 'model other { scale: 630 mm  bridge { mass: 22 g } }')).toContain('change of model');
  });
});

describe('taking a parent in', () => {
  it('its lines come first, a path both change is changed once, and its reason becomes a note', () => {
    const child = `recipe v-33 from v-$032 {
  because "Thinner yet."
  // by ear
  change top.thickness: 2.6 mm -> 2.5 mm
  expect top.mass: below 170 g
}
`;
    expect(done('Take the changes of v-32', child, MIDDLE).split('---\n')[0]).toBe(`recipe v-33 from v-31 {
  because "Thinner yet."
  // by ear
  note "v-32: Thinner."
  change bridge.mass: 27 g -> 25 g
  rosette: "red"
  change top.thickness: 2.80 mm -> 2.5 mm
  expect top.mass: below 170 g
}
`);
  });

  it('a step is written out, and a change that undoes the parent’s goes', () => {
    const child =
      'recipe v-33 from v-$032 {\n  change top.thickness: by -0.05 mm\n  change bridge.mass: 25 g -> 27 g\n}\n';
    expect(done('Take', child, MIDDLE).split('---\n')[0]).toBe(
      'recipe v-33 from v-31 {\n  note "v-32: Thinner."\n  rosette: "red"\n  change top.thickness: 2.80 mm -> 2.55 mm\n}\n',
    );
  });

  it('a hold both have stays one; a value set after a hold starts from before it', () => {
    const held = `recipe v-32 from v-31 {
  change top.wood: sitka-31 -> sitka-32
  hold top.stiffness.along by top.thickness
}
`;
    const same =
      'recipe v-33 from v-$032 {\n  change bridge.mass: 27 g -> 25 g\n  hold top.stiffness.along by top.thickness\n}\n';
    expect(done('Take', same, held).split('---\n')[0]).toBe(
      'recipe v-33 from v-31 {\n  change top.wood: sitka-31 -> sitka-32\n  change bridge.mass: 27 g -> 25 g\n  hold top.stiffness.along by top.thickness\n}\n',
    );
    const set = 'recipe v-33 from v-$032 {\n  change top.thickness: 2.79 mm -> 2.6 mm\n}\n';
    expect(done('Take', set, held).split('---\n')[0]).toBe(
      'recipe v-33 from v-31 {\n  change top.wood: sitka-31 -> sitka-32\n  change top.thickness: 2.80 mm -> 2.6 mm\n}\n',
    );
    const neither = 'recipe v-33 from v-$032 {\n  change bridge.mass: 27 g -> 25 g\n}\n';
    expect(done('Take', neither, held)).toContain('would be solved anew');
  });

  it('says why not', () => {
    expect(done('Take', 'recipe v-32 from v-$031 { bridge.mass: 25 g }')).toContain('first of its line');
    const added = 'recipe v-32 from v-31 { add bracing.finger-1 { height: 6 mm } }';
    expect(done('Take', 'recipe v-33 from v-$032 { change bracing.finger-1.height: 6 mm -> 7 mm }', added)).toContain(
      'by hand',
    );
    const grouped = 'recipe v-32 from v-31 { together "x" { bridge.mass: 25 g  top.thickness: 2.7 mm } }';
    expect(done('Take', 'recipe v-33 from v-$032 { change bridge.mass: 25 g -> 24 g }', grouped)).toContain('by hand');
  });
});

describe('another parent', () => {
  const child = `recipe v-33 from v-$032 {
  because "Thinner yet."
  change top.thickness: 2.6 mm -> 2.5 mm
  change top.wood: sitka-31 -> sitka-32
  change bridge.mass: by -1 g
}
`;

  it('every old value is its own, and every step as large as it was', () => {
    expect(done('Set on v-31', child, MIDDLE).split('---\n')[0]).toBe(`recipe v-33 from v-31 {
  because "Thinner yet."
  change top.thickness: 2.80 mm -> 2.7 mm
  change top.wood: sitka-31 -> sitka-32
  change bridge.mass: by -1 g
}
`);
  });

  it('not on what descends from it, nor on another model’s; and why not, if not', () => {
    const more =
      'recipe v-34 from v-33 { bridge.mass: 20 g }\nmodel other { scale: 630 mm }\nrecipe o-1 for other { bridge.mass: 20 g }';
    const titles = offersIn(child, MIDDLE, more, VENNICK).offers.map(({ title }) => title);
    expect(titles.filter((title) => title.startsWith('Set on'))).toEqual(['Set on v-31, with the same differences']);
    const added = 'recipe v-32 from v-31 { add bracing.finger-1 { height: 6 mm } }';
    const over = 'recipe v-33 from v-$032 { change bracing.finger-1.height: 6 mm -> 7 mm }';
    expect(done('Set on v-31', over, added)).toBe('v-31 has no bracing.finger-1.height to change.');
  });
});

describe('carried over to another line', () => {
  const OTHER = `model dene { scale: 630 mm  bridge { mass: 31 g } }
recipe dene-8 for dene { top { wood: sitka-32  thickness: 3.0 mm } }

wood tail is sitka-spruce { use: top }
`;

  it('a recipe from the last of that line, with its own old values', () => {
    const child = MIDDLE.replace('v-32', 'v-$032').replace('  rosette: "red"\n', '  expect top.mass: below 170 g\n');
    expect(done('Carry over to a recipe from dene-8', child, OTHER).split('---\n')[1])
      .toBe(`model dene { scale: 630 mm  bridge { mass: 31 g } }
recipe dene-8 for dene { top { wood: sitka-32  thickness: 3.0 mm } }

recipe dene-9 from dene-8 {
  because "Thinner."
  change top.thickness: 3.0 mm -> 2.8 mm
  change bridge.mass: 31 g -> 29 g
}

wood tail is sitka-spruce { use: top }
`);
  });

  it('says what that line lacks', () => {
    const child = 'recipe v-32 from v-31 { change $0saddle.protrusion: 3.3 mm -> 3 mm }';
    expect(done('Carry over to a recipe from dene-8', child, OTHER)).toContain('has no saddle.protrusion to change');
  });
});

describe('any other parent', () => {
  const OTHER = `model other { scale: 630 mm }
recipe o-1 for other { bridge.mass: 20 g  top { wood: sitka-31  thickness: 3 mm } }
recipe o-2 for other { bridge.mass: 20 g }
`;
  const child =
    'recipe v-33 from v-32 { change top.thickness: 2.6 mm -> 2.5 mm }\nrecipe v-34 from v-33 { bridge.mass: 20 g }\n';
  const desk = deskOf(child, MIDDLE, VENNICK, OTHER);
  const parser = createParser();
  const definition = desk.shelf.find('recipe', 'v-33')!;
  const marked = { desk, parser, definition, span: definition.head };

  it('of its model first, then those of other models it would fit; none that descends from it', () => {
    expect(possibleParents(desk, 'v-33')).toEqual([
      { name: 'v-31', model: 'vennick', isOfModel: true },
      { name: 'o-1', model: 'other', isOfModel: false },
    ]);
    expect(possibleParents(desk, 'v-31')).toBeUndefined();
    expect(possibleParents(desk, 'nobody')).toBeUndefined();
  });

  it('says why one of its own model will not do', () => {
    const added =
      'recipe v-35 from v-32 { add bracing.finger-1 { height: 6 mm } }\nrecipe v-36 from v-35 { change bracing.finger-1.height: 6 mm -> 7 mm }\n';
    const [first] = possibleParents(deskOf(added, MIDDLE, VENNICK), 'v-36')!;
    expect(first).toMatchObject({ name: 'v-32', reason: 'v-32 has no bracing.finger-1.height to change.' });
  });

  it('is set on what was chosen, whatever its model, and on nothing else', () => {
    expect(rebasedOn(marked, 'o-1')).toMatchObject({ edits: [{ text: 'o-1' }, { text: '3 mm' }, { text: '2.9 mm' }] });
    expect(rebasedOn(marked, 'v-34')).toBeUndefined();
    expect(rebasedOn(marked, 'nobody')).toBeUndefined();
    expect(rebasedOn(marked, 'o-2')).toEqual({ reason: 'o-2 has no top.thickness to change.' });
  });
});
