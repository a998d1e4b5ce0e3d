/** What a maker really mistypes: each slip costs one finding, at its place, and nothing is made of what follows from it. */
import { describe, expect, it } from 'vitest';
import { check, fixed } from './marked-text.js';

const SHOP = `wood s-1 is sitka-spruce { use: top  density: 420 kg/m³  modulus { along: 11 GPa  across: 0.8 GPa } }
wood s-2 is sitka-spruce { use: top  density: 425 kg/m³  modulus { along: 11 GPa  across: 0.8 GPa } }
model tarn {
  kind: steel-string
  top { wood: s-1  thickness: 2.8 mm }
  bracing {
    wood: s-1
    x-bass   { from: (69 mm, -174 mm)  to: (389 mm, 130 mm)   width: 7.9 mm  height: 15.9 mm }
    x-treble { from: (69 mm, 174 mm)   to: (389 mm, -130 mm)  width: 7.9 mm  height: 15.9 mm }
  }
  bridge { kind: pin  mass: 27 g }
}
recipe tarn-1 for tarn { because "The first." }
`;

/** Codes of what is found beyond what the shop gives anyway. */
function found(text: string): readonly string[] {
  const before = check(SHOP).findings.map(({ code, message }) => `${code} ${message}`);
  return check(SHOP + text)
    .findings.filter(({ code, message }) => !before.includes(`${code} ${message}`))
    .map(({ code, message }) => `${code}: ${message}`);
}

const next = (line: string): string => `recipe tarn-2 from tarn-1 {\n  because "Why."\n  ${line}\n}\n`;

describe('one slip, one finding', () => {
  it.each([
    ['a decimal comma', next('top.thickness: 2,7 mm'), 'bad-number'],
    ['no unit', next('top.thickness: 2.7'), 'missing-unit'],
    ['no unit on the old value', next('change top.thickness: 2.8 -> 2.7 mm'), 'missing-unit'],
    ['a unit nobody knows', next('top.thickness: 2.7 MM'), 'unknown-unit'],
    ['a wood nobody has', next('top.wood: s-9'), 'unknown-name'],
    ['a wood of two words', next('top.wood: Sitka spruce'), 'unreadable-line'],
    ['a wood in quotes', next('top.wood: "Sitka spruce"'), 'wrong-kind-of-value'],
    ['a range where a number belongs', next('top.thickness: 2.6..2.8 mm'), 'wrong-kind-of-value'],
    ['a slip in a path', next('change top.thikness: 2.8 mm -> 2.7 mm'), 'unknown-path'],
    ['a slip in a brace’s name', next('change bracing.xbass.height: 15.9 mm -> 15 mm'), 'unknown-part'],
    ['the same as a plain value', next('bracing.xbass.height: 15 mm'), 'unknown-part'],
    ['a value for a whole part', next('bridge: s-1'), 'value-on-a-part'],
    ['another arrow', next('change top.thickness: 2.8 mm => 2.7 mm'), 'unreadable-line'],
    ['a comma between entries', next('top { wood: s-1, thickness: 2.8 mm }'), 'unreadable-line'],
    ['a remark with a cross', next('# not yet heard'), 'unreadable-line'],
    ['a word behind the unit', next('scale: 645 mm approx'), 'unreadable-line'],
    [
      'a reason with a colon',
      next('change top.thickness: 2.8 mm -> 2.7 mm').replace('because', 'because:'),
      'unknown-path',
    ],
    ['a reason without quotes', next('change top.thickness: 2.8 mm -> 2.7 mm').replace(/"/g, ''), 'unreadable-line'],
    ['a number that is not sure', next('bridge.mass: about 25 g'), 'unreadable-line'],
    ['a shape that is a part', next('bracing.x-bass.profile: scalloped'), 'unknown-choice'],
    ['no unit on what was built', 'build no-1 of tarn-1 { top.thickness: .110 }', 'missing-unit'],
    ['a property of a wood in a recipe', next('top.wood.density: 400 kg/m³'), 'misplaced'],
    ['a part that is of something else', next('glue: "hide"'), 'misplaced'],
    ['another unit on what was built', 'build no-1 of tarn-1 { top.thickness: 0.110 mm }', 'implausible'],
    ['thousands with a point', next('top.thickness: 1.234,5 mm'), 'bad-number'],
    ['thousands with an apostrophe', next("top.thickness: 1'234.5 mm"), 'bad-number'],
    ['a list without a unit', 'strings q { kind: steel  gauges: .013, .017, .026, .035, .045, .056 }', 'missing-unit'],
    [
      'notes without commas',
      'strings q { kind: steel  tuning: E4 B3 G3 D3 A2 E2  description: "q" }',
      'unreadable-line',
    ],
    ['letters lost in another encoding', 'strings q { kind: steel  description: "h\uFFFDher" }', 'bad-character'],
    ['a brace forgotten inside', next('top { thickness: 2.7 mm\n  bridge.mass: 24 g'), 'unclosed-block'],
    ['a recipe copied with its name', 'recipe tarn-1 for tarn { because "Again." }', 'duplicate-name'],
  ])('%s', (_, text, code) => {
    const codes = found(text).filter((one) => !/^(?:silent-override|too-many-changes|no-change)/.test(one));
    expect(codes.map((one) => one.slice(0, one.indexOf(':')))).toEqual([code]);
    // Nothing that cannot be used is offered as a change.
    expect(found(text).filter((one) => one.startsWith('silent-override') && code !== 'unclosed-block')).toEqual([]);
  });
});

describe('a value for a whole part', () => {
  const offered = (line: string) => {
    const one = check(`${SHOP}model hollow {\n  ${line}\n}`).findings.filter(({ code }) => code === 'value-on-a-part');
    return one.flatMap(({ fixes }) => fixes.map(({ title }) => title.replace('Write ', '')));
  };

  it('is moved to what of the part it fits', () => {
    expect(offered('body.lower-bout: 15 5/8"')).toEqual(['body.lower-bout.width']);
    expect(offered('top: s-1')).toEqual(['top.wood']);
    expect(offered('bridge: ebony')).toEqual(['bridge.wood']);
    expect(offered('nut: 1 3/4"')).toEqual(['nut.width', 'nut.string-spread']);
    expect(offered('frets: 20')).toEqual(['frets.count']);
    expect(offered('finish: nitrocellulose')).toEqual(['finish.system', 'finish.neck-system']);
    expect(offered('bracing: x')).toEqual(['bracing.pattern']);
  });

  it('is mended inside its block', () => {
    expect(fixed(check('model tarn { body { lower-bout: 390 mm } }'), 'value-on-a-part', 'Write')).toBe(
      'model tarn { body { lower-bout.width: 390 mm } }',
    );
  });
});

describe('names of woods', () => {
  const meant = (name: string) => {
    const { findings } = check(`wood e-1 is ${name} { use: top }`);
    return findings.flatMap(({ code, fixes }) => (code === 'unknown-name' ? fixes.map(({ title }) => title) : []));
  };

  it('are found by what else the wood is called, and never lead to the wood itself', () => {
    expect(meant('ebony')).toEqual(['Write african-ebony']);
    expect(meant('western-red-cedar')).toEqual(['Write western-redcedar']);
    expect(meant('honduran-mahogany')).toEqual(['Write true-mahogany']);
    expect(meant('Sitka')).toEqual(['Write sitka-spruce']);
    expect(meant('rosewood')).toEqual(['Write indian-rosewood', 'Write brazilian-rosewood', 'Write cocobolo']);
    expect(meant('e-1')).toEqual([]);
  });
});

describe('a property nobody knows', () => {
  const said = (line: string) => check(`model tarn { ${line} }`).findings.map(({ message }) => message);

  it('is looked for among the other words makers use, and inside the part it begins with', () => {
    expect(said('bridge { wieght: 24 g }')).toContain('There is no property bridge.wieght. Did you mean bridge.mass?');
    expect(said('electronics { pickup-mass: 12 g }')).toContain(
      'There is no property electronics.pickup-mass. Did you mean electronics.pickup.mass?',
    );
  });

  it('is looked for under the word the path would make', () => {
    expect(said('top.radius: 28 ft')).toContain('There is no property top.radius. Did you mean body.top-radius?');
    expect(said('heel.cap: "rosewood"').join()).toContain('Did you mean heel-cap?');
    expect(said('top.thickness.edge: 2.4 mm').join()).toContain('Did you mean top.edge-thickness?');
  });

  it('where nothing is near is answered with what there is, or with a place for it', () => {
    expect(said('top.grain: "fine"').join()).toMatch(/top has wood, joint, /);
    expect(said('hours: 120').join()).toContain('kept as a note: `note "…"`');
    expect(said('saddle { zzzz: 24 g }').join()).toMatch(/There is no property saddle\.zzzz\. saddle has material, /);
  });
});

describe('numbers without a unit', () => {
  const offered = (text: string) =>
    check(text).findings.flatMap(({ code, fixes }) => (code === 'missing-unit' ? fixes.map(({ title }) => title) : []));

  it('in a list are given one together', () => {
    expect(offered('strings q { gauges: .013, .017, .026, .035, .045, .056 }')).toEqual([
      'Write .013, .017, .026, .035, .045, .056 in',
    ]);
    expect(offered('strings q { gauges: 13, 17, 26 }')).toEqual(['Write 13, 17, 26 thou']);
  });

  it('are asked about in the units people speak in', () => {
    const build = 'model tarn { scale: 645 mm }\nrecipe tarn-1 for tarn { }\nbuild no-1 of tarn-1 {\n  reading d { ';
    expect(offered(`${build}days-strung: 30 }\n}`)).toEqual(['Write 30 days']);
  });
});

describe('a word behind a value', () => {
  it('is made a remark', () => {
    expect(fixed(check('model tarn {\n  scale: 645 mm more or less\n}'), 'unreadable-line', 'Write')).toBe(
      'model tarn {\n  scale: 645 mm // more or less\n}',
    );
  });
});
