/** Completion, one line each: a text with the cursor in it, and what is offered there or what accepting it makes. */
import { describe, expect, it, test } from 'vitest';
import { completionsAt } from '../../language/editing/completion/completion.js';
import type { Completion } from '../../language/editing/completion/offer.js';
import { filledIn } from '../../language/editing/completion/snippet.js';
import { VENNICK, deskAt } from './desk-of.js';

const SHOP = `${VENNICK}
recipe v-32 from v-31 { because "Thinner."  change top.thickness: 2.80 mm -> 2.6 mm }
build no-31 of v-31 { top.thickness: 2.81 mm }
appointments plain { rosette: "rings" }
wood billet-3 is sitka-spruce { use: brace  density: 412 kg/m³ }
`;

/** What is offered at the bar, best first. */
function offered(marked: string): readonly Completion[] {
  const { desk, uri, position } = deskAt(marked, SHOP);
  return [...completionsAt(desk, uri, position).items].sort((a, b) => a.rank - b.rank || (a.label < b.label ? -1 : 1));
}

const labels = (marked: string): readonly string[] => offered(marked).map(({ label }) => label);

/** The text with a completion accepted, blanks in ‹ ›, the cursor's end as `$0`. */
function accepting(marked: string, label: string): string {
  const found = offered(marked).find((each) => each.label === label);
  if (!found) throw new Error(`${label} is not offered, but ${labels(marked).slice(0, 20).join(' | ')}`);
  const { range, insert, snippet } = found;
  const lines = marked.replace('|', '').split('\n');
  const line = lines[range.start.line]!;
  const put = snippet ? insert.replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '‹$1›').replace(/\\(.)/g, '$1') : insert;
  lines[range.start.line] = line.slice(0, range.start.character) + put + line.slice(range.end.character);
  return lines.join('\n');
}

const inRecipe = (line: string) => `recipe v-33 from v-32 {\n  ${line}\n}`;
const inBuild = (line: string) => `build no-33 of v-32 {\n  ${line}\n}`;
const inModel = (line: string) => `model m {\n  ${line}\n}`;
const inWood = (line: string) => `wood w is sitka-spruce {\n  ${line}\n}`;

describe('accepting', () => {
  it.each<[string, string, string, string]>([
    // where the cursor is, text, what is accepted, text afterwards
    ['a definition', 're|', 'recipe', 'recipe ‹v-33› from ‹v-32› {\n  because "‹why›"\n  $0\n}'],
    ['a build', 'bu|', 'build', 'build ‹no-1› of ‹v-32› {\n  $0\n}'],
    ['a first recipe', '|', 'recipe for a model', 'recipe ‹name› for ‹vennick› {\n  $0\n}'],
    ['the word of a head', 'recipe v-33 | {\n}', 'from', 'recipe v-33 from  {\n}'],
    ['a parent', 'recipe v-33 from | {\n}', 'v-32', 'recipe v-33 from v-32 {\n}'],
    ['a parent by its number', 'recipe v-33 from 32| {\n}', 'v-32', 'recipe v-33 from v-32 {\n}'],
    ['a model', 'recipe v-33 for ve| {\n}', 'vennick', 'recipe v-33 for vennick {\n}'],
    ['a species', 'wood w is sitka| {\n}', 'sitka-spruce', 'wood w is sitka-spruce {\n}'],
    ['a built recipe', 'build no-9 of | {\n}', 'v-31', 'build no-9 of v-31 {\n}'],

    ['a statement', inRecipe('bec|'), 'because', inRecipe('because "$1"')],
    ['a group', inRecipe('tog|'), 'together', inRecipe('together "‹why they belong together›" {\n  $0\n}')],
    ['a whole change', inRecipe('|'), 'change top.thickness', inRecipe('change top.thickness: 2.6 mm -> ‹2.6› mm')],
    [
      'a whole change by the name of the part',
      inRecipe('top|'),
      'change top.wood',
      inRecipe('change top.wood: sitka-31 -> ‹sitka-31›'),
    ],
    [
      'a whole change in a group',
      inRecipe('together "x" { | }'),
      'change bracing.x-bass.height',
      inRecipe('together "x" { change bracing.x-bass.height: 15.9 mm -> ‹15.9› mm }'),
    ],
    [
      'a path to change',
      inRecipe('change top.th|'),
      'top.thickness',
      inRecipe('change top.thickness: 2.6 mm -> ‹2.6› mm'),
    ],
    [
      'the parent’s value as old',
      inRecipe('change top.thickness: |'),
      '2.6 mm -> …',
      inRecipe('change top.thickness: 2.6 mm -> ‹2.6› mm'),
    ],
    ['a step', inRecipe('change top.thickness: |'), 'by …', inRecipe('change top.thickness: by ‹-0.1› mm')],
    [
      'a new wood',
      inRecipe('change top.wood: sitka-31 -> |'),
      'sitka-32',
      inRecipe('change top.wood: sitka-31 -> sitka-32'),
    ],
    [
      'a new number',
      inRecipe('change top.thickness: 2.6 mm -> |'),
      '2.6 mm',
      inRecipe('change top.thickness: 2.6 mm -> 2.6 mm'),
    ],
    ['a member to add', inRecipe('add |'), 'bracing.tone-bar-1', inRecipe('add bracing.tone-bar-1 {\n  $0\n}')],
    ['a member to drop', inRecipe('drop |'), 'bracing.x-bass', inRecipe('drop bracing.x-bass')],
    ['a package', inRecipe('with |'), 'plain', inRecipe('with plain')],
    ['what is held', inRecipe('hold top.st|'), 'top.stiffness.along', inRecipe('hold top.stiffness.along by ')],
    ['how it is held', inRecipe('hold top.sag |'), 'by', inRecipe('hold top.sag by ')],
    [
      'what holds it',
      inRecipe('hold top.stiffness.along by |'),
      'top.thickness',
      inRecipe('hold top.stiffness.along by top.thickness'),
    ],
    ['the unit of what it is held at', inRecipe('hold top.mass at 150 |'), 'g', inRecipe('hold top.mass at 150 g')],
    ['what is expected', inRecipe('expect top.m|'), 'top.mass', inRecipe('expect top.mass: ')],
    ['the reason of an allowance', inRecipe('allow 2 |'), 'because', inRecipe('allow 2 because "$1"')],
    ['the limit of the shop', 'shop s {\n  vary |\n}', 'at most', 'shop s {\n  vary at most ‹1›\n}'],

    ['a property with its usual value', inModel('bridge { heig| }'), 'height', inModel('bridge { height: ‹9.2› mm }')],
    ['a deeper path', inModel('thick|'), 'back.thickness', inModel('back.thickness: ‹2.5› mm')],
    ['a part', inModel('bra|'), 'bracing', inModel('bracing {\n  $0\n}')],
    ['a member', inModel('bracing { x-| }'), 'x-bass', inModel('bracing { x-bass {\n  $0\n} }')],
    ['a path after its part', inModel('bridge.pl|'), 'bridge.plate', inModel('bridge.plate {\n  $0\n}')],
    ['a point', inModel('bracing.x-bass { fro| }'), 'from', inModel('bracing.x-bass { from: (‹0› mm, ‹0› mm) }')],
    ['a choice', inModel('bracing.x-bass.profile: |'), 'parabolic', inModel('bracing.x-bass.profile: parabolic')],
    ['a word in place of a number', inModel('body.top-radius: |'), 'flat', inModel('body.top-radius: flat')],
    ['what was built, from the recipe', inBuild('top { thi| }'), 'thickness', inBuild('top { thickness: ‹2.6› mm }')],
    ['what is usual in a build', inBuild('top|'), 'top.thickness', inBuild('top.thickness: ‹2.6› mm')],
    ['a value nobody knows', inBuild('top.thickness: |'), 'unknown', inBuild('top.thickness: unknown')],
    [
      'an inch mark before',
      inBuild('top { thickness: 7/64"  | }'),
      'mass',
      inBuild('top { thickness: 7/64"  mass: ‹158› g }'),
    ],
    ['a size', inWood('bla|'), 'blank', inWood('blank: ‹0› mm x ‹0› mm x ‹0› mm')],
    ['a date', inBuild('finished: |'), 'a date', inBuild('finished: ‹2026-01-31›')],
    ['a tuning', 'strings s {\n  tun|\n}', 'tuning', 'strings s {\n  tuning: ‹E4›, ‹B3›, ‹G3›, ‹D3›, ‹A2›, ‹E2›\n}'],
    ['the source of a number', inWood('density: 400 kg/m³ |'), 'per', inWood('density: 400 kg/m³ per "$1"')],

    ['a unit', inBuild('top.thickness: 2.8 |'), 'mm', inBuild('top.thickness: 2.8 mm')],
    ['a unit that touches', inBuild('top.thickness: 2.8m|'), 'mm', inBuild('top.thickness: 2.8mm')],
    ['a unit in a point', inModel('bracing.x-bass.from: (78 |'), 'mm', inModel('bracing.x-bass.from: (78 mm')],
    [
      'a unit behind the arrow',
      inRecipe('change bridge.mass: 27 g -> 22 |'),
      'g',
      inRecipe('change bridge.mass: 27 g -> 22 g'),
    ],
    [
      'a unit of what is expected',
      inRecipe('expect top.mass: below 150 |'),
      'g',
      inRecipe('expect top.mass: below 150 g'),
    ],
    ['per cent of a step', inRecipe('change top.thickness: by -5 |'), '%', inRecipe('change top.thickness: by -5 %')],
  ])('%s', (_, text, label, after) => {
    expect(accepting(text, label)).toBe(after);
  });
});

describe('order', () => {
  it.each([
    ['the property’s own unit', inBuild('top.thickness: 2.8 |'), 'mm'],
    ['wood meant for the part', inRecipe('bracing.wood: |'), 'billet-3'],
    ['wood meant for the top', inRecipe('top.wood: |'), 'engelmann-37'],
    ['the recipe that was not built yet', 'build no-9 of | {\n}', 'v-32'],
    ['the last of a line as a parent', 'recipe v-33 from | {\n}', 'v-32'],
    ['a species the shop has', 'wood w is | {\n}', 'engelmann-spruce'],
    ['a voicing change over others, set since the model', inRecipe('change |'), 'top.thickness'],
    ['what is expected, below first', inRecipe('expect top.mass: |'), expect.stringMatching(/^below … g$/)],
  ])('%s', (_, text, first) => {
    expect(labels(text)[0]).toEqual(first);
  });

  it('members the parent has are not offered for adding', () => {
    expect(labels(inRecipe('add |'))).not.toContain('bracing.x-bass');
  });

  it('what a recipe inherits is changed rather than stated again', () => {
    const all = labels(inRecipe('top.th|'));
    expect(all.indexOf('top.thickness-spread')).toBe(-1);
    const there = labels(inRecipe('t|'));
    expect(there.indexOf('change top.thickness')).toBeLessThan(there.indexOf('top.thickness'));
  });
});

describe('nothing is offered', () => {
  it.each([
    ['in a line comment', inBuild('// top|')],
    ['in a comment of several lines', `/* wood\n  to|\n*/\n${inBuild('')}`],
    ['in a text', inBuild('note "to|"')],
    ['in a text not closed yet', inBuild('note "to|')],
    ['behind a list item that is a number', 'strings s {\n  gauges: .012 in, |\n}'],
    ['in a point', inModel('bracing.x-bass.from: (78 mm, |)')],
    ['for a path nobody knows', inBuild('wobble: |')],
  ])('%s', (_, text) => {
    expect(labels(text)).toEqual([]);
  });
});

test('a comment that was closed is over, and inch marks open no text', () => {
  expect(labels(`/* a */ ${inBuild('|')}`)).toContain('top');
  expect(labels(inBuild('top { thickness: 7/64"  ma| }  // 5"'))).toContain('mass');
});

test('deeper paths come with the first letter, so the list is asked for again', () => {
  const { desk, uri, position } = deskAt(inBuild('|'), SHOP);
  expect(completionsAt(desk, uri, position).incomplete).toBe(true);
  expect(labels(inBuild('|'))).not.toContain('top.thickness');
  expect(labels(inBuild('t|'))).toContain('top.thickness');
});

test('every offer explains itself: a sentence or a detail', () => {
  const places = [
    inRecipe('|'),
    inBuild('t|'),
    inModel('|'),
    inWood('|'),
    inRecipe('change |'),
    inBuild('humidity: 45 |'),
  ];
  for (const { label, detail, sentence } of places.flatMap(offered)) expect(detail ?? sentence, label).toBeTruthy();
});

test('a snippet can be written out for an editor that knows none', () => {
  expect(filledIn('thickness: ${1:2.8} mm, \\$ and \\} $2$0')).toEqual({
    text: 'thickness: 2.8 mm, $ and } ',
    blanks: [[11, 14]],
  });
});
