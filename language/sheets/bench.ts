/**
 * The bench sheet: what to make at each stage in the trade's order, how close, what it was before, what to read, with
 * boxes to write in and a drawing of what is made.
 */
import { cautionOnSpecies, cautionsOnSheet, cautionsOnValue, DEFERRAL } from '../catalogue/cautions.js';
import { madeAt } from '../catalogue/made-at.js';
import { type Stage, STAGES } from '../catalogue/property.js';
import { stageTitle } from '../catalogue/stage-titles.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import { planOfSide } from '../reports/plan/plan-of.js';
import type { Plan } from '../reports/plan/plan.js';
import type { Held } from '../recipes/instrument/instrument.js';
import type { Workshop } from '../recipes/workshop.js';
import { cited } from '../wording/cited.js';
import { benchBoxes } from './bench-boxes.js';
import { braceSections, isOfBrace } from './bench-braces.js';
import { targetRow, triedSection } from './bench-targets.js';
import { READ_AT, readingRow } from './bench-readings.js';
import { fretSection } from './bench-frets.js';
import { stageFigure } from './figures.js';
import { photosOf } from './photos.js';
import { onceEach, type Sheet, type SheetSection } from './sheet.js';
import { reasonOf, type SheetSubject } from './sheet-subject.js';
import { speciesSaying } from './sheet-woods.js';

export function benchSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const reason = reasonOf(subject);
  const tried = triedSection(workshop, subject);
  const photos = photosOf(workshop, subject);
  return {
    kind: 'bench',
    language,
    title: say`Bench sheet: ${subject.title}`,
    shop: workshop.settings().title ?? '',
    intro: [originOf(workshop, subject), ...(reason === undefined ? [] : [reason])],
    boxes: benchBoxes(workshop, subject),
    sections: [
      ...(tried ? [tried] : []),
      ...(photos.length > 0 ? [{ title: text('Photographs'), photos }] : []),
      ...stageSections(workshop, subject),
    ],
    cautions: cautionsOf(workshop, subject),
    closing: text(DEFERRAL),
  };
}

/** What the sheet is of, and where that comes from. */
function originOf({ wording: { say } }: Workshop, { definition, order }: SheetSubject): string {
  const { kind, name, relation } = definition;
  const target = relation?.target.text ?? '';
  const own =
    kind === 'build'
      ? say`Build ${name.text}, made by recipe ${target}.`
      : relation?.word === 'from'
        ? say`Recipe ${name.text}, a change of ${target}.`
        : say`Recipe ${name.text} for the model ${target}.`;
  return order ? `${own} ${say`Order ${order.name.text}.`}` : own;
}

function stageSections(workshop: Workshop, subject: SheetSubject): readonly SheetSection[] {
  const plan = planOfSide(workshop, subject.side, subject.definition);
  const byStage = new Map<Stage, Held[]>();
  for (const held of subject.values) {
    const property = workshop.catalogue.property(held.path, 'recipe');
    const stage = property && madeAt(property, held.path);
    if (stage) byStage.set(stage, [...(byStage.get(stage) ?? []), held]);
  }
  return STAGES.flatMap((stage) => stageSection(workshop, subject, plan, stage, byStage.get(stage) ?? []));
}

function stageSection(
  workshop: Workshop,
  subject: SheetSubject,
  plan: Plan,
  stage: Stage,
  made: readonly Held[],
): readonly SheetSection[] {
  const { say, text } = workshop.wording;
  const targets = made.filter((held) => !isOfBrace(held)).map((held) => targetRow(workshop, subject, held));
  const readings = (READ_AT.get(stage) ?? []).map((path) => readingRow(workshop, subject, path));
  const braces = stage === 'bracing' ? braceSections(workshop, subject, plan) : [];
  const frets = stage === 'neck' ? fretSection(workshop, subject) : [];
  if (targets.length + readings.length + braces.length === 0) return [];
  const figure = stageFigure(plan, stage);
  return [
    {
      title: stageTitle(stage, workshop.wording),
      // What needs no drawing stands below the stage before.
      ...(figure !== undefined && stage !== 'rosette' ? { ownPage: true } : {}),
      ...(figure === undefined ? {} : { figure }),
      ...(targets.length + readings.length > 0
        ? {
            columns: [text('what'), text('target'), text('tolerance'), text('as made'), text('remark')],
            rows: [...targets, ...readings],
          }
        : {}),
      ...(readings.length > 0 ? { boxes: [text('Read on'), text('Humidity'), text('By')] } : {}),
    },
    ...braces,
    ...frets,
    ...(PHOTOGRAPHED.has(stage)
      ? [{ title: text('Photograph'), photo: say`${stageTitle(stage, workshop.wording)}, on` }]
      : []),
  ];
}

/** Where a picture says more than a line afterwards. */
const PHOTOGRAPHED: ReadonlySet<Stage> = new Set(['bracing']);

function cautionsOf(workshop: Workshop, subject: SheetSubject): Sheet['cautions'] {
  const { text } = workshop.wording;
  const due = onceEach([
    ...cautionsOnSheet('bench'),
    ...subject.values.flatMap(({ path, value }) =>
      // Its own set of strings is no other set.
      path === 'strings' ? [] : cautionsOnValue(path, writeInShopUnit(path, value)),
    ),
  ]);
  const sensitising = speciesSaying(workshop, subject, 'dust');
  const dust = sensitising.length > 0 ? cautionOnSpecies('dust') : undefined;
  return [
    ...due.map((caution) => ({ text: text(caution.text), source: cited(caution.source, workshop.wording) })),
    ...(dust
      ? [{ text: `${sensitising.join(' ')} ${text(dust.text)}`, source: cited(dust.source, workshop.wording) }]
      : []),
  ];
}
