/**
 * Setting down at the bench: a reading written into its build, in its place behind the readings before it, with the
 * hygrometer and the rig of last time.
 */
import type { Edit } from '../checks/finding.js';
import type { Desk } from '../checks/desk.js';
import { behind, indentOf, insertAt, insertLine } from '../checks/mending.js';
import { valueInWords } from '../reports/part-words.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import type { Condition } from '../recipes/builds/builds.js';
import { english } from '../wording/wording.js';

/** What is usually read at each stage; members of the bracing one by one. (common practice) */
const READ_AT: ReadonlyMap<string, readonly string[]> = new Map([
  [
    'free-plate',
    [
      'top.thickness',
      'back.thickness',
      'sides.thickness',
      'top.mass',
      'back.mass',
      'deflection.along',
      'deflection.across',
      'tap.along',
      'tap.across',
      'tap.twist',
    ],
  ],
  [
    'braced',
    [
      'bracing.*.height',
      'back-bracing.*.height',
      'mass.braced-top',
      'mass.braced-back',
      'top.thickness',
      'deflection.bridge',
    ],
  ],
  ['box-closed', ['mass.rim', 'mass.box', 'resonance.air', 'resonance.top', 'resonance.back']],
  ['in-the-white', ['mass.box', 'resonance.air', 'resonance.top', 'resonance.back', 'finish.film']],
  [
    'strung',
    [
      'resonance.air',
      'resonance.top',
      'resonance.back',
      'mass.finished',
      'setup.action.bass',
      'setup.action.treble',
      'setup.relief',
      'bridge.rotation',
    ],
  ],
]);

export interface Readable {
  readonly stage: string;
  /** In the reader's language. */
  readonly title: string;
  readonly values: readonly { readonly path: string; readonly title: string; readonly unit: string }[];
}

/** What can be read of a build, stage by stage; undefined when there is no such build. */
export function readableOf(desk: Desk, build: string): readonly Readable[] | undefined {
  const { workshop } = desk;
  const record = workshop.build(build);
  if (!record) return undefined;
  const { wording, catalogue } = workshop;
  const stages = catalogue.property('stage', 'build')?.choices ?? [];
  const members = (root: string) => record.evaluation.ground.members(root);
  return stages.flatMap((stage): readonly Readable[] => {
    const paths = (READ_AT.get(stage) ?? READ_AT.get('strung')!).flatMap((path) => {
      const [root = '', rest] = path.split('.*.');
      return rest === undefined ? [path] : members(root).map((member) => `${root}.${member}.${rest}`);
    });
    const values = paths.map((path) => ({
      path,
      title: valueInWords(path, (each) => catalogue.partOf(each), wording),
      unit: catalogue.property(path, 'build')?.unit ?? '',
    }));
    return [{ stage, title: wording.text(stage.replaceAll('-', ' ')), values }];
  });
}

export interface ReadingTaken {
  readonly build: string;
  readonly stage: string;
  /** ISO 8601, of the day. */
  readonly date: string;
  /** As read off the hygrometer: `45 %RH`; empty: not read. */
  readonly humidity: string;
  readonly values: readonly { readonly path: string; readonly value: string }[];
}

/** The line to write, or one sentence on why not. Undefined when there is no such build. */
export function recordReading(
  desk: Desk,
  taken: ReadingTaken,
): { readonly edits: readonly Edit[] } | { readonly reason: string } | undefined {
  const { workshop, shelf } = desk;
  const build = shelf.find('build', taken.build);
  const record = build && workshop.build(taken.build);
  if (!build || !record) return undefined;
  const { wording } = workshop;
  const told = taken.values.filter(({ value }) => value.trim() !== '');
  if (told.length === 0) return { reason: wording.text(english('Nothing was read, so nothing is written.')) };
  const odd = [...told.map(({ value }) => value), taken.humidity].find((value) => /[{}"\n]|\/\/|\/\*/.test(value));
  if (odd !== undefined) return { reason: wording.say`${odd} is no reading: write a number and its unit.` };
  const last = (condition: Condition) =>
    record.readings.flatMap(({ conditions }) => conditions.get(condition) ?? []).at(-1);
  const again = (condition: Condition) => {
    const held = last(condition);
    return held ? [`${condition}: ${writeInShopUnit(condition, held.value, 'build')}`] : [];
  };
  const needsRig = told.some(({ path }) => path.startsWith('deflection.'));
  const parts = [
    `stage: ${taken.stage}`,
    `date: ${taken.date}`,
    ...(taken.humidity.trim() === '' ? [] : [`humidity: ${taken.humidity.trim()}`]),
    ...again('hygrometer'),
    ...(needsRig ? again('rig') : []),
    ...told.map(({ path, value }) => `${path}: ${value.trim()}`),
  ];
  const line = `reading ${nameFor(
    taken,
    record.readings.map(({ name }) => name),
  )} { ${parts.join('   ')} }`;
  const before = build.statements.filter(({ kind }) => kind === 'reading').at(-1) ?? build.statements.at(-1);
  if (!before) return { edits: [insertLine(build, line)] };
  const isOneLine = build.span.start.line === build.span.end.line;
  const gap = isOneLine ? '  ' : `\n${indentOf(build, before.span.start)}`;
  return { edits: [insertAt(build, isOneLine ? before.span.end : behind(build, before.span), `${gap}${line}`)] };
}

/** After the stage and the day, and a number where that name is taken. */
function nameFor({ stage, date }: ReadingTaken, taken: readonly string[]): string {
  const name = `${stage}-${date}`;
  if (!taken.includes(name)) return name;
  let n = 2;
  while (taken.includes(`${name}-${n}`)) n += 1;
  return `${name}-${n}`;
}
