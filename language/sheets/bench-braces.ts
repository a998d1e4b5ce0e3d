/** Braces on the bench sheet: one row each, and each from the side with its heights at its stations. */
import type { Held } from '../recipes/instrument/instrument.js';
import type { Workshop } from '../recipes/workshop.js';
import { dimensionWords } from '../reports/plan/drawing-words.js';
import type { Plan } from '../reports/plan/plan.js';
import { partInWords } from '../reports/part-words.js';
import { english } from '../wording/wording.js';
import { isDoneHere, onPaper, remaining } from './bench-targets.js';
import { profileFigure } from './figures.js';
import { type SheetCell, type SheetSection, WRITE } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

/** A value of one brace, told in its row. */
export function isOfBrace({ path }: Pick<Held, 'path'>): boolean {
  return /^(?:back-)?bracing\.[^.]+\./.test(path);
}

const COLUMNS = ['width', 'height', 'end-height'] as const;

export function braceSections(workshop: Workshop, subject: SheetSubject, plan: Plan): readonly SheetSection[] {
  const { text } = workshop.wording;
  const { length } = dimensionWords(workshop.settings(), workshop.wording);
  const tables = (['bracing', 'back-bracing'] as const).flatMap((root): readonly SheetSection[] => {
    const told = subject.values.filter((held) => isOfBrace(held) && held.path.startsWith(`${root}.`));
    const members = [...new Set(told.map(({ path }) => path.split('.')[1]!))];
    if (members.length === 0) return [];
    return [
      {
        title: root === 'bracing' ? text('Braces of the top') : text('Braces of the back'),
        columns: COLUMN_TITLES.map(text),
        rows: members.map((member) => braceRow(workshop, subject, `${root}.${member}`)),
      },
    ];
  });
  if (plan.profiles.length === 0) return tables;
  const figure = plan.profiles.map((profile) => `<figure>${profileFigure(profile, length)}</figure>`).join('\n');
  return [
    ...tables,
    {
      title: text('Braces from the side'),
      text: [text('Above: height; below: distance along the brace. Notches are drawn where braces cross.')],
      figure,
    },
  ];
}

const COLUMN_TITLES = [
  english('brace'),
  english('from'),
  english('to'),
  english('width'),
  english('height'),
  english('at the ends'),
  english('as made'),
  english('remark'),
];

function braceRow(workshop: Workshop, subject: SheetSubject, part: string): readonly SheetCell[] {
  const { say } = workshop.wording;
  const of = (word: string) => subject.values.find(({ path }) => path === `${part}.${word}`);
  const cell = (word: string): SheetCell => {
    const held = of(word);
    if (!held) return '–';
    const meant = held.via === 'built' && held.before ? held.before : held;
    const written = onPaper(meant, workshop);
    return isDoneHere(held, subject) && held.via !== 'built' ? { strong: written } : written;
  };
  const changed = subject.values.filter(
    (held) => held.path.startsWith(`${part}.`) && isDoneHere(held, subject) && held.before && held.via !== 'built',
  );
  const was = changed.map((held) => say`was ${onPaper(held.before!, workshop)}`);
  const left = remaining(workshop, subject, `${part}.height`);
  const made = of('height')?.via === 'built' ? onPaper(of('height')!, workshop) : WRITE;
  return [
    partInWords(part, workshop.wording),
    cell('from'),
    cell('to'),
    ...COLUMNS.map(cell),
    made,
    [...was, left].filter((each) => each !== '').join('; '),
  ];
}
