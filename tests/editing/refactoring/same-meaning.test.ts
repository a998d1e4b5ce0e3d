/** Whatever the recipes: a refactoring that is to keep the meaning keeps it, and nothing a person wrote is lost. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Desk } from '../../../language/checks/desk.js';
import type { Offer } from '../../../language/editing/refactoring/refactorings.js';
import type { Position, Value } from '../../../language/facts/facts.js';
import { sameValues } from '../../../language/recipes/instrument/instrument.js';
import { sameValue } from '../../../language/recipes/instrument/values.js';
import { deskOf, VENNICK } from '../desk-of.js';
import { applied, offersFor } from './marked-desk.js';

/** Each reads a folder many times over. */
const RUNS = Number(process.env['BOOKMATCH_RUNS'] ?? 40);

const mm = (low: number, high: number) => fc.integer({ min: low * 100, max: high * 100 }).map((n) => `${n / 100} mm`);
const grams = fc.integer({ min: 15, max: 40 }).map((n) => `${n} g`);
const of = (...lines: readonly (string | fc.Arbitrary<string>)[]) =>
  fc
    .tuple(...lines.map((line) => (typeof line === 'string' ? fc.constant(line) : line)))
    .map((parts) => parts.join(''));

const LINE = fc.oneof(
  of('top.thickness: ', mm(2, 4)),
  of('change top.thickness: 2.80 mm -> ', mm(2, 4)),
  of('change top.thickness: by ', fc.constantFrom('-5 %', '-0.1 mm', '3 thou')),
  of('top { edge-thickness: ', mm(2, 3), ' }'),
  of('top {\n    // by ear\n    thickness: ', mm(2, 3), '\n    edge-thickness: ', mm(2, 3), '\n  }'),
  of('change bridge.mass: 27 g -> ', grams, ' // weighed'),
  of('bridge.mass: ', grams),
  of('change bridge.mass: by -', grams),
  of('change top.wood: sitka-31 -> ', fc.constantFrom('sitka-32', 'engelmann-37')),
  of('hold top.stiffness.along by top.thickness'),
  of('with ', fc.constantFrom('ember', 'plain')),
  of('rosette: ', fc.constantFrom('"red"', '"“blue”, twice"')),
  of('binding.kind: ', fc.constantFrom('"wood"', '"none"')),
  of('add bracing.finger-1 { height: ', mm(5, 8), '  width: ', mm(5, 8), ' }'),
  of('drop bracing.', fc.constantFrom('x-bass', 'finger-1')),
  of('bracing.x-treble.height: ', mm(12, 16)),
  of(
    'together "lower X" {\n    change bracing.x-bass.height: 15.9 mm -> ',
    mm(12, 16),
    '\n    bracing.x-treble.height: ',
    mm(12, 16),
    '\n  }',
  ),
  of('expect top.mass: below 170 g'),
  of('hold bridge.rotation by bridge.mass'),
  of('allow 3 because "a trial"'),
  of('note "as heard"'),
);

const BODY = fc.array(LINE, { minLength: 1, maxLength: 6 });
const CHAIN = fc
  .tuple(BODY, BODY, BODY)
  .map((bodies) =>
    bodies
      .map((body, i) => `recipe v-${32 + i} from v-${31 + i} {\n  because "Why ${i}."\n  ${body.join('\n  ')}\n}\n`)
      .join('\n'),
  );
const PACKAGES =
  'appointments ember { rosette: "red"  electronics { pickup { mass: 12 g } } }\nappointments plain { rosette: "none" }\n';

/** Every value of every recipe, and what came of every expectation. */
function meaningOf(desk: Desk, names: readonly string[]) {
  return names.map((name) => ({
    values: desk.workshop.instrument(name)!.values,
    expected: desk.workshop.expectations(name).map(({ outcome }) => outcome),
  }));
}

function nearly(a: Value | undefined, b: Value | undefined): boolean {
  if (sameValue(a, b)) return true;
  // Solved again on another way: as close as the solver comes.
  if (a?.kind !== 'quantity' || b?.kind !== 'quantity') return false;
  return Math.abs(a.quantity.si - b.quantity.si) <= 1e-6 * Math.abs(a.quantity.si);
}

function comments(text: string): readonly string[] {
  return [...text.matchAll(/\/\/.*$/gm)].map(([comment]) => comment.trim()).sort();
}

function rangesIn(text: string, name: string): { start: Position; end: Position }[] {
  const lines = text.split('\n');
  const head = lines.findIndex((line) => line.startsWith(`recipe ${name} `));
  const end = lines.indexOf('}', head);
  const cursor = (line: number) => ({ line, character: Math.min(8, lines[line]!.length) });
  const cursors = Array.from({ length: end - head }, (_, i) => cursor(head + i));
  const body = { start: { line: head + 1, character: 0 }, end: { line: end - 1, character: lines[end - 1]!.length } };
  return [...cursors.map((at) => ({ start: at, end: at })), body];
}

const NAMES = ['v-32', 'v-33', 'v-34'] as const;
const ASKED = fc.record({ chain: CHAIN, name: fc.constantFrom(...NAMES), pick: fc.nat() });
type Asked = typeof ASKED extends fc.Arbitrary<infer One> ? One : never;

/** The whole recipe, its head, what a client wished for, or anywhere in it. */
function offersAt({ chain, name, pick }: Asked) {
  const ranges = rangesIn(chain, name);
  const wish = ranges.find(({ start }) => /^ *(rosette|binding)/.test(chain.split('\n')[start.line]!));
  const anywhere = ranges[pick % ranges.length]!;
  const range = [ranges.at(-1)!, ranges[0]!, wish ?? anywhere, anywhere][pick % 4]!;
  const given = offersFor([chain, PACKAGES, VENNICK], range);
  const kept = given.offers.filter(
    (offer): offer is Exclude<Offer, { reason: string }> =>
      !('reason' in offer) && offer.kind !== 'move' && offer.kind !== 'change',
  );
  return { given, kept };
}

it('split, group, take in, extract, write as a change, convert: every value stays', () => {
  fc.assert(
    fc.property(ASKED, (asked) => {
      const { chain } = asked;
      const { given, kept } = offersAt(asked);
      const before = meaningOf(given.desk, NAMES);
      for (const offer of someOfEach(kept)) {
        const after = applied(given, offer);
        const desk = deskOf(...after);
        const now = meaningOf(desk, NAMES);
        const why = `${offer.title}\n${chain}\n----\n${after[0]!}`;
        for (const [i, { values, expected }] of before.entries()) {
          const paths = new Set([...values.keys(), ...now[i]!.values.keys()]);
          const moved = [...paths].filter((path) => !nearly(values.get(path)?.value, now[i]!.values.get(path)?.value));
          expect(moved, why).toEqual([]);
          expect(now[i]!.expected, why).toEqual(expected);
        }
        expect(comments(after[0]!), why).toEqual(expect.arrayContaining([...comments(chain)]));
        const unread = desk.shelf.file('file:0')!.definitions.flatMap(({ definition }) => definition.problems);
        expect(unread, why).toEqual([]);
      }
    }),
    { numRuns: RUNS },
  );
}, 240_000);

/** The same for every seed of the run: what the drawn recipes are able to say is no matter of luck. */
const FIXED = { numRuns: 60, seed: 3 };

it('such recipes bring up every offer that is to keep the meaning', () => {
  const words = fc
    .sample(ASKED, FIXED)
    .flatMap((asked) => offersAt(asked).kept.map(({ title }) => title.split(' ')[0]));
  expect([...new Set(words)]).toEqual(expect.arrayContaining(['Split', 'Group', 'Take', 'Move', 'Write']));
}, 240_000);

function isComputed(value: Value | undefined): boolean {
  return value?.kind === 'quantity' && value.written === '';
}

/** Units come by the dozen. */
function someOfEach<T extends Offer>(offers: readonly T[]): readonly T[] {
  const units = offers.filter(({ title }) => /^Write [\d.-]/.test(title));
  return [...offers.filter((offer) => !units.includes(offer)), ...units.slice(0, 1)];
}

const OTHER = `model dene { scale: 630 mm  bridge { mass: 31 g } }
recipe dene-8 for dene { top { wood: sitka-32  thickness: 3.2 mm }  bracing { x-bass { height: 14 mm } } }
`;

it('another parent, another line: every measure changes by as much as before, and nothing else does', () => {
  fc.assert(
    fc.property(CHAIN, (chain) => {
      const texts = [chain, PACKAGES, VENNICK, OTHER];
      const given = offersFor(texts, rangesIn(chain, 'v-34')[0]!);
      const was = given.desk.workshop.instrument('v-34')!;
      for (const offer of given.offers) {
        if ('reason' in offer || offer.kind !== 'move') continue;
        const isCarried = offer.title.startsWith('Carry');
        if (isCarried && !offer.title.endsWith('dene-8')) continue;
        const { workshop } = deskOf(...applied(given, offer));
        const is = workshop.instrument(isCarried ? 'dene-9' : 'v-34')!;
        const why = `${offer.title}\n${chain}`;
        expect(
          is.changes.map(({ path }) => path),
          why,
        ).toEqual(was.changes.map(({ path }) => path));
        if (isCarried) expect(sameValues(workshop.instrument('v-34')!.values, was.values), why).toBe(true);
        for (const [i, { statement, before, after, path }] of was.changes.entries()) {
          const now = is.changes[i]!;
          if (statement.kind !== 'change' || !statement.old || statement.by) continue;
          // A change of nothing has no step; what was computed is taken as it is shown.
          if (!before || !now.before) continue;
          if (isComputed(before.value) || isComputed(now.before.value)) continue;
          if (was.changes.some((one, k) => k < i && one.path === path)) continue;
          const step = (a: Value | undefined, b: Value | undefined) =>
            a?.kind === 'quantity' && b?.kind === 'quantity' ? b.quantity.si - a.quantity.si : 0;
          const wanted = step(before.value, after?.value);
          expect(step(now.before.value, now.after?.value), why).toBeCloseTo(wanted, 9);
        }
      }
    }),
    { numRuns: RUNS / 2 },
  );
}, 240_000);

it('such recipes bring up another parent and another line', () => {
  const titles = fc
    .sample(CHAIN, { ...FIXED, numRuns: 10 })
    .flatMap((chain) => offersFor([chain, PACKAGES, VENNICK, OTHER], rangesIn(chain, 'v-34')[0]!).offers)
    .flatMap((offer) => ('reason' in offer || offer.kind !== 'move' ? [] : [offer.title]));
  expect(titles.some((title) => title.startsWith('Carry') && title.endsWith('dene-8'))).toBe(true);
  expect(titles.some((title) => !title.startsWith('Carry'))).toBe(true);
});
