import { expect, test } from 'vitest';
import { reader } from './facts-in-words.js';

const { says, file } = reader();

test.each([
  ['thickness: 2.85 mm', 'thickness = 0.00285 length'],
  ['top.thickness: 2.85 mm', 'top.thickness = 0.00285 length'],
  ['top { thickness: 2.85 mm }', 'top { top.thickness = 0.00285 length }'],
  ['bracing.x-bass { height: 15 mm }', 'bracing.x-bass { bracing.x-bass.height = 0.015 length }'],
  ['bracing { x-bass { height: 15 mm } }', 'bracing { bracing.x-bass { bracing.x-bass.height = 0.015 length } }'],
  ['density: 400 kg/m³ per "weighed, 2025"', 'density = 400 density per "weighed, 2025"'],
  ['change top.wood: sitka-118 -> red-spruce-9', 'change top.wood sitka-118 -> red-spruce-9'],
  ['change top.wood: sitka-118 → red-spruce-9', 'change top.wood sitka-118 -> red-spruce-9'],
  ['change h:15 mm->14 mm', 'change h 0.015 length -> 0.014 length'],
  ['change nut.width: -> 46 mm', 'change nut.width -> 0.046 length'],
  ['change nut.width: by -0.15 mm', 'change nut.width by -0.00015 length'],
  ['change nut.width: by −5 %', 'change nut.width by -0.05'],
  ['top { change thickness: 3 mm -> 2.9 mm }', 'top { change top.thickness 0.003 length -> 0.0029 length }'],
  ['add bracing.finger-3 { width: 6 mm }', 'add bracing.finger-3 { bracing.finger-3.width = 0.006 length }'],
  ['add soundport', 'add soundport { }'],
  ['drop bracing.finger-3', 'drop bracing.finger-3'],
  ['together "lighter X" { change a: 2 mm -> 1 mm }', 'together "lighter X" { change a 0.002 length -> 0.001 length }'],
  ['together { drop a }', 'together { drop a }'],
  ['hold top.stiffness.along by top.thickness', 'hold top.stiffness.along by top.thickness'],
  ['hold bridge.torque at 19.5 N·m by saddle.height', 'hold bridge.torque at 19.5 torque by saddle.height'],
  ['hold top.mass\n  by top.thickness', 'hold top.mass by top.thickness'],
  ['expect top.mass: below 190 g', 'expect top.mass below 0.19 mass'],
  ['with ember', 'with ember'],
  ['with 31', 'with 31'],
  ['because "a quicker response"', 'because "a quicker response"'],
  ['because\n  "a quicker response"', 'because "a quicker response"'],
  ['note "Opened up."', 'note "Opened up."'],
  ['allow 2 because "both plates at once"', 'allow 2 because "both plates at once"'],
  ['allow 2', 'allow 2'],
  ['accept stale-change because "parent was mended"', 'accept stale-change because "parent was mended"'],
  ['vary at most 1', 'vary at most 1'],
  ['reading day-1 { strings: on }', 'reading day-1 { strings = on }'],
  ['reading 2026-03-14 { air: 101 Hz }', 'reading 2026-03-14 { air = 101 frequency }'],
  ['reading "two weeks" { air: 101 Hz }', 'reading two weeks { air = 101 frequency }'],
  ['reading { air: 101 Hz }', 'reading { air = 101 frequency }'],
  ['request 2026-04-28 { nut.width: 46 mm }', 'request 2026-04-28 { nut.width = 0.046 length }'],
  ['request { add cutaway }', 'request { add cutaway { } }'],
  ['top\n{ thickness: 2 mm }', 'top { top.thickness = 0.002 length }'],
])('%s', (text, told) => {
  expect(says(text)).toEqual([told]);
});

test('several statements may stand on one line', () => {
  expect(says('count: 3 note "abc" with ember drop a add b change c: 1 -> 2 hold d by e expect f: 3 use: top')).toEqual(
    [
      'count = 3',
      'note "abc"',
      'with ember',
      'drop a',
      'add b { }',
      'change c 1 -> 2',
      'hold d by e',
      'expect f 3',
      'use = top',
    ],
  );
});

test('the text after an allowance is its reason only on the same line', () => {
  expect(says('allow 2\nbecause "quicker"')).toEqual(['allow 2', 'because "quicker"']);
});

test.each([
  ['shop marram-lane { }', 'shop', 'marram-lane', undefined],
  ['species sitka-spruce { }', 'species', 'sitka-spruce', undefined],
  ['wood sitka-118 is sitka-spruce { }', 'wood', 'sitka-118', 'is sitka-spruce'],
  ['model tarn { }', 'model', 'tarn', undefined],
  ['recipe tarn-1 for tarn { }', 'recipe', 'tarn-1', 'for tarn'],
  ['recipe tarn-2 from tarn-1 { }', 'recipe', 'tarn-2', 'from tarn-1'],
  ['build no-31 of tarn-2 { }', 'build', 'no-31', 'of tarn-2'],
  ['build 31 of tarn-2 { }', 'build', '31', 'of tarn-2'],
  ['rig long-span { }', 'rig', 'long-span', undefined],
  ['strings light-12 { }', 'strings', 'light-12', undefined],
  ['appointments ember { }', 'appointments', 'ember', undefined],
  ['order c-07 of tarn-9 { }', 'order', 'c-07', 'of tarn-9'],
  ['recipe from from from { }', 'recipe', 'from', 'from from'],
  ['wood wood is species { }', 'wood', 'wood', 'is species'],
  ['recipe a from b\n{\n}', 'recipe', 'a', 'from b'],
  ['model épicéa-Ø7 { }', 'model', 'épicéa-Ø7', undefined],
])('%s', (text, kind, name, relation) => {
  const facts = file(text);
  expect(facts.problems).toEqual([]);
  const [{ definition }] = facts.definitions as [(typeof facts.definitions)[number]];
  expect(definition.problems).toEqual([]);
  expect([definition.kind, definition.name.text]).toEqual([kind, name]);
  expect(definition.relation && `${definition.relation.word} ${definition.relation.target.text}`).toBe(relation);
});
