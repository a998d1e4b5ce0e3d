/** What a maker reads when pointing at a word. The place pointed at is marked by a bar. */
import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { KEYWORDS } from '../../language/editing/keywords.js';
import { deskAt, deskOf, VENNICK } from './desk-of.js';

function hover(marked: string): string {
  const { desk, uri, position } = deskAt(marked, VENNICK);
  return hoverAt(desk, uri, position)?.markdown ?? 'nothing';
}

/** The cells of the row of a table that begins with these words. */
function row(markdown: string, first: string): readonly string[] {
  const line = markdown.split('\n').find((each) => each.startsWith(`| ${first} |`));
  return (line ?? '')
    .split('|')
    .slice(2, -1)
    .map((cell) => cell.trim());
}

describe('a property', () => {
  const thinner = hover('recipe v-32 from v-31 { change top.thick|ness: 2.80 mm -> 2.70 mm }');

  it('shows the value in both systems and what it is', () => {
    expect(thinner).toContain('**top.thickness** = 2.70 mm (0.106 in)');
    expect(thinner).toContain('Finished thickness of the top at its centre.');
  });

  it('says where it comes from along the line', () => {
    expect(thinner).toContain('- Changed here; was 2.80 mm in v-31.');
    const inherited = hover(`
      recipe v-32 from v-31 { change top.thickness: 2.80 mm -> 2.70 mm }
      recipe v-33 from v-32 { change top.thickness: by -0.05 mm }
      recipe v-34 from v-33 { expect top.thick|ness: below 2.7 mm }`);
    expect(inherited).toContain('= 2.65 mm');
    expect(inherited).toContain('- Changed in v-33; was 2.70 mm in v-32, before that 2.80 mm in v-31.');
  });

  it('gives the plausible range for this form and wood, with its source', () => {
    expect(thinner).toMatch(/^Usually, for om, sitka-spruce: 2\.4 mm to 3\.2 mm, typically 2\.8 mm .*\\\[1, 2, 3/m);
    // Sources stand at the foot, one of them a link.
    expect(thinner.split('\n').at(-1)).toMatch(/^\\\[1\\\] \[[\w.]+\]\(https:\/\/[\w.]+\) · \\\[2\\\] /);
    expect(thinner.match(/\]\(/g)).toHaveLength(1);
    // What moving it does comes before where it is from.
    expect(thinner.indexOf('less moves')).toBeLessThan(thinner.indexOf('- Changed here'));
  });

  it('says how a change of it is counted', () => {
    expect(thinner).toContain('- Voicing: a change of it is counted.');
    expect(hover('recipe v-32 from v-31 { ro|sette: "red" }')).toContain('- An appointment: not counted, unless');
  });

  it('says what a tenth less moves, to first order, beside what can be told apart', () => {
    // D ∝ h³ and m ∝ h: −0.1 mm of 2.70 mm is −3·0.1/2.70 = −11.1 % and −0.1/2.70 = −3.7 %.
    expect(row(thinner, '0.1 mm less moves')).toEqual(['by about', 'told apart above']);
    expect(row(thinner, 'top.stiffness.along')[0]).toMatch(/^−1\.99 N·m \(−11 %\)$/);
    expect(row(thinner, 'top.mass')[0]).toMatch(/\(−3\.7 %\)$/);
    // Each plate is planed to ±0.05 mm: u = 0.05/√3 mm, twice over for two plates, times 2: 0.0816 mm, 9.07 % of D.
    expect(row(thinner, 'top.stiffness.along')[1]).toMatch(/^1\.62 N·m$/);
  });

  it('marks what is too small to tell', () => {
    const lighter = hover('recipe v-32 from v-31 { change bridge.ma|ss: 27 g -> 26 g }');
    expect(row(lighter, '1 g less moves')).toHaveLength(2);
    expect(row(lighter, 'bridge.moving-mass')[1]).toMatch(/, too small to tell$/);
  });

  it('takes half a millimetre for a brace', () => {
    const lower = hover('recipe v-32 from v-31 { change bracing.x-bass.hei|ght: 15.9 mm -> 15 mm }');
    expect(lower).toContain('| 0.5 mm less moves |');
    // EI ∝ h³: −3·0.5/15 = −10 %.
    expect(row(lower, 'bracing.x-bass.stiffness')[0]).toMatch(/\(−10 %\)$/);
  });

  it('says what a hold solved it to, and from what', () => {
    const solved = hover(
      'recipe v-37 from v-31 { change top.wood: sitka-31 -> engelmann-37  hold top.stiffness.along by top.thick|ness }',
    );
    expect(solved).toContain('**top.thickness** = 2.96 mm (0.117 in)');
    expect(solved).toContain('- Solved by a hold here; was 2.80 mm in v-31.');
  });

  it('shows the old side of a change beside what the parent really has', () => {
    const stale = hover('recipe v-32 from v-31 { change top.thickness: 2.9|0 mm -> 2.70 mm }');
    expect(stale).toContain('The change starts from **2.90 mm (0.114 in)**; v-31 has 2.80 mm.');
  });

  it('shows a weighed mass beside the computed one', () => {
    const weighed = hover('build no-1 of v-31 { top.ma|ss: 172 g }');
    expect(weighed).toContain('**top.mass** = 172 g (6.07 oz)');
    expect(weighed).toMatch(/- Computed: 15\d\.\d ± \d\.\d g\./);
  });

  it('shows what a client asks for beside what the recipe has', () => {
    const asked = hover('order c-07 of v-31 { request 2026-04-28 { soundhole.dia|meter: 4 in } }');
    expect(asked).toContain('**soundhole.diameter** = 4 in (101.6 mm)');
    expect(asked).toContain('- vennick has 101 mm.');
  });

  it('lists the choices of a choice, and a caution where one is due, once', () => {
    const finish = hover('recipe v-32 from v-31 { finish.system: nitro|cellulose }');
    expect(finish).toContain('`french-polish`');
    expect(finish.match(/\*\*Caution\.\*\*/g)).toHaveLength(1);
  });
});

describe('a computed quantity', () => {
  const torque = hover('recipe v-32 from v-31 { expect bridge.tor|que: below 20 N·m }');

  it('shows value, uncertainty, formula and the numbers put in', () => {
    expect(torque).toMatch(
      /\*\*bridge\.torque\*\* = \d\.\d\d ± \d\.\d\d N·m \(\d+\.\d lbf·in\); ± one standard uncertainty/,
    );
    expect(torque).toContain('`M = ΣT × string height over the top`');
    expect(row(torque, 'bridge.height')).toEqual(['9 mm', 'written down']);
    expect(row(torque, 'strings.total-tension')[1]).toContain('assumed');
  });

  it('says what was assumed, and carries its caution', () => {
    expect(torque).toContain('- Assumed: the wound strings are taken to be phosphor bronze.');
    expect(torque).toContain('it does not show that a top will survive');
  });

  it('shows where each number comes from: measured, handbook, recipe', () => {
    const held = hover(
      'recipe v-37 from v-31 { change top.wood: sitka-31 -> engelmann-37  hold top.stiffness.al|ong by top.thickness }',
    );
    expect(row(held, 'top.wood.modulus.along')).toEqual(['9.1 GPa', 'measured']);
    expect(row(held, 'top.wood.poisson')).toEqual(['0.422', 'handbook']);
    expect(row(held, 'top.thickness')).toEqual(['2.96 mm', 'written down']);
    expect(held).toContain('- In v-31: 20 N·m (the same).');
  });

  it('names what is missing instead of a number', () => {
    const sides = hover('recipe v-32 from v-31 { expect sides.m|ass: below 200 g }');
    expect(sides).toContain('**sides.mass**: not known');
    expect(sides).toContain('It would be known with `sides.wood.density` and `sides.thickness`.');
    expect(sides).not.toMatch(/NaN|undefined/);
  });

  it('is listed with the others of its part', () => {
    const part = hover('recipe v-32 from v-31 { expect to|p.mass: below 190 g }');
    expect(part).toContain('**top**: The plate that the bridge drives.');
    expect(row(part, 'top.stiffness.along')[0]).toMatch(/ N·m$/);
  });
});

describe('wood', () => {
  const wood = hover('recipe v-37 from v-31 { change top.wood: sitka-31 -> engel|mann-37 }');

  it('lays what was measured beside the handbook', () => {
    expect(row(wood, 'density')).toEqual(['372 kg/m³, measured', '392 ± 39 kg/m³']);
    expect(row(wood, 'stiffness along the grain')[0]).toBe('9.1 GPa, measured');
    expect(row(wood, 'resistance to twist')[0]).toMatch(/ GPa, handbook and measured$/);
  });

  it('says how thick it would be for the stiffness of the parent', () => {
    // 2.80 mm · (10.8/9.1)^(1/3), the small difference of the Poisson terms aside: 2.96 mm.
    expect(wood).toMatch(/For the top of v-31 \(20 N·m along the grain\) engelmann-37 is planed to 2\.96 mm, \d+ g\./);
  });

  it('carries each caution of the species once', () => {
    expect(wood.match(/\*\*Caution\.\*\*/g)).toHaveLength(1);
    expect(wood).toContain('Can sensitise the airways');
  });

  it('shows a species with the handbook alone', () => {
    const species = hover('wood w is western-red|cedar { }');
    expect(species).toContain('**western-redcedar**: species (Thuja plicata), as the handbooks have it');
    expect(row(species, 'density')[0]).toMatch(/^\d+ ± \d+ kg\/m³$/);
  });

  it('does without a species it does not know', () => {
    expect(hover('wood w| is moonwood { density: 400 kg/m³ }')).toContain('a set of wood of no known species');
  });
});

describe('a photograph', () => {
  it('is shown where a build names it, and nothing elsewhere is fetched', () => {
    const of = (address: string) => hover(`build no-32 of v-31 { pho|to: "${address}" }`);
    expect(of('pictures/braced (1).jpg')).toMatch(
      /^!\[pictures\/braced \\?\(1\\?\)\.jpg\|width=360\]\(file:\/\/.*pictures\/braced%20%281%29\.jpg\)$/,
    );
    expect(of('https://example.org/a.jpg')).not.toContain('![');
    expect(of('in the blue folder')).not.toContain('![');
  });
});

describe('names, units, words', () => {
  it('shows a recipe with its line, reason, changes and builds', () => {
    const recipe = hover(`
      recipe v-32 from v-31 { because "Lighter *bridge*."  change bridge.mass: 27 g -> 22 g }
      build no-32 of v-|32 { }`);
    expect(recipe).toContain('**v-32**: recipe from v-31');
    expect(recipe).toContain('“Lighter \\*bridge\\*.”');
    expect(recipe).toContain('Line: v-31 → v-32 (model vennick).');
    expect(recipe).toContain('1 change counted.\n\n- bridge.mass: 27 g → 22 g; by itself: bridge moving mass −5 g');
    expect(recipe).toContain('Built as no-32.');
  });

  it('counts the family of a model', () => {
    const model = hover('recipe v-32 from v-31 { }\nbuild no-1 of v-32 { }\nrecipe w for ven|nick { }');
    expect(model).toContain('3 recipes, 1 build.');
  });

  it('shows a build by what was made otherwise and what was read', () => {
    const build = hover(
      'build no|-1 of v-31 { top { thickness: 2.74 mm }  reading day-1 { humidity: 45 %RH  resonance.top: 186 Hz } }',
    );
    expect(build).toContain('- top.thickness: 2.74 mm, meant 2.80 mm');
    expect(build).toContain('- day-1: resonance.top 186 Hz');
  });

  it('says what a unit is, and converts', () => {
    const inch = hover('recipe v-32 from v-31 { bridge.height: 3/8| in }'.replace('3/8| in', '3/8 i|n'));
    expect(inch).toContain('**in**: Inch, exactly 25.4 mm');
    expect(inch).toContain('3/8 in = 9.53 mm');
  });

  it.each([
    ['recipe v-32 from v-31 { cha|nge top.thickness: 2.80 mm -> 2.7 mm }', '**change**: Says what differs'],
    ['recipe v-32 from v-31 { change top.thickness: b|y -1 % }', '**by**: A step'],
    ['recipe v-32 from v-31 { hold top.mass b|y top.thickness }', '**by**: The value that is solved for'],
    ['recipe v-32 from v-31 { toge|ther "x" { change bridge.mass: by -1 g } }', '**together**: One tweak'],
    ['recipe v-32 from v-31 { allow 2 bec|ause "x" }', '**because**: The reason'],
    ['rec|ipe v-32 from v-31 { }', '**recipe**: One instrument as meant'],
    ['recipe v-32 fr|om v-31 { }', '**from**: Names the parent'],
    ['recipe v-32 from v-31 { accept too-many|-changes because "x" }', '**too-many-changes**: '],
  ])('%s', (marked, expected) => {
    expect(hover(marked)).toContain(expected);
  });

  it.each([
    'recipe v-32 from v-31 { because "we ho|ld on" }',
    'recipe v-32 from v-31 { together "x" { // to|gether\n change bridge.mass: by -1 g } }',
    '// a remark| about change\nrecipe v-32 from v-31 { }',
    'recipe v-32 from v-31 { accept no-such-c|ode because "x" }',
  ])('says nothing about words that mean nothing: %s', (marked) => {
    expect(hover(marked)).toBe('nothing');
  });

  it('shows examples that the language itself can read', () => {
    for (const { word, around, example } of KEYWORDS) {
      const text = around.includes('head') ? example : `recipe r from v-31 {\n${example}\n}`;
      const { definitions, problems } = deskOf(text, VENNICK).shelf.file('file:0')!;
      const all = [...problems, ...definitions.flatMap(({ definition }) => definition.problems)];
      expect(all, word).toEqual([]);
    }
  });

  it('covers just the word pointed at', () => {
    const { desk, uri, position } = deskAt('\nrecipe v-32 from v-31 { change top.thick|ness: by -1 % }', VENNICK);
    expect(hoverAt(desk, uri, position)!.range).toEqual({
      start: { line: 1, character: 35 },
      end: { line: 1, character: 44 },
    });
  });
});

describe('text that is not finished', () => {
  it.each([
    'recipe v-32 from v-31 { change top.th|',
    'recipe v-32 from nob|ody { top.thickness: 2 }',
    'recipe v-32 from v-31 { top.thickness: |mm }',
    'recipe v-32 from v-31 { hold top.ma|ss }',
    'recipe a from b { change top.thick|ness: by -1 % }\nrecipe b from a { }',
    'build no-1 of no|thing { top.mass: 5 }',
    'wood| ',
    'recipe v-31 from v-31 { top.thick|ness: 2 mm }',
  ])('never fails and never shows nonsense: %s', (marked) => {
    expect(hover(marked)).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });
});
