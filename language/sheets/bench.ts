/**
 * The bench sheet: what to make at each stage in the trade's order, how close, what it was before, what to read, with
 * boxes to write in.
 */
import { cautionOnSpecies, cautionsOnSheet, cautionsOnValue, DEFERRAL } from '../catalogue/cautions.js';
import { type Property, type Stage, STAGES } from '../catalogue/property.js';
import { shown } from '../checks/phrases.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import { writeQuantity } from '../quantities/write.js';
import type { Held } from '../recipes/instrument/instrument.js';
import { halfWidth } from '../recipes/instrument/tolerances.js';
import type { Workshop } from '../recipes/workshop.js';
import { cited } from '../wording/cited.js';
import { english } from '../wording/wording.js';
import { onceEach, type Sheet, type SheetCell, type SheetSection, WRITE } from './sheet.js';
import { reasonOf, type SheetSubject } from './sheet-subject.js';
import { speciesSaying } from './sheet-woods.js';
import { unitOnPaper, writeOnPaper } from '../reports/on-paper.js';

export function benchSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const { kind, name, relation } = subject.definition;
  const reason = reasonOf(subject);
  const tried = triedSection(workshop, subject);
  return {
    kind: 'bench',
    language,
    title: say`Bench sheet: ${subject.title}`,
    shop: workshop.settings().title ?? '',
    intro: [
      ...(relation ? [`${kind} ${name.text} ${relation.word} ${relation.target.text}`] : []),
      ...(reason === undefined ? [] : [reason]),
    ],
    boxes: [text('Serial number'), text('Started'), text('Hygrometer'), text('Humidity'), text('Temperature')],
    sections: [...(tried ? [tried] : []), ...stageSections(workshop, subject)],
    cautions: cautionsOf(workshop, subject),
    closing: text(DEFERRAL),
  };
}

/** What this instrument does otherwise than its parent. */
function triedSection(workshop: Workshop, subject: SheetSubject): SheetSection | undefined {
  const { text } = workshop.wording;
  const settings = workshop.settings();
  const rows = subject.values.flatMap((held): readonly (readonly SheetCell[])[] => {
    if (!isDoneHere(held, subject)) return [];
    const how = { solved: english('solved by a hold'), built: english('as made'), added: english('added') };
    const word = held.via in how ? how[held.via as keyof typeof how] : english('changed');
    const before = held.before ? writeOnPaper(held.path, held.before.value, settings) : '–';
    return [[held.path, before, { strong: writeOnPaper(held.path, held.value, settings) }, text(word)]];
  });
  if (rows.length === 0) return undefined;
  return {
    title: text('What is different in this one'),
    columns: [text('what'), text('before'), text('now'), text('how')],
    rows,
  };
}

/** Changed, added or solved by the very definition the sheet is of, in something it has from elsewhere. */
function isDoneHere({ from, via, before }: Held, { definition, order }: SheetSubject): boolean {
  // What a client chose is always worth seeing at the bench.
  if (from.definition === order) return true;
  if (from.definition !== definition) return false;
  return via === 'added' || (before !== undefined && before.from.definition !== definition);
}

function stageSections(workshop: Workshop, subject: SheetSubject): readonly SheetSection[] {
  const { text } = workshop.wording;
  const byStage = new Map<Stage, Held[]>();
  for (const held of subject.values) {
    const property = workshop.catalogue.property(held.path, 'recipe');
    const stage = property && stageOf(property);
    if (stage) byStage.set(stage, [...(byStage.get(stage) ?? []), held]);
  }
  return STAGES.flatMap((stage): readonly SheetSection[] => {
    const targets = targetRows(workshop, subject, byStage.get(stage) ?? []);
    const readings = (READ_AT[stage] ?? []).map((path) => readingRow(workshop, subject, path));
    if (targets.length + readings.length === 0) return [];
    return [
      {
        title: text(STAGE_TITLES[stage]),
        columns: [text('what'), text('target'), text('tolerance'), text('as made'), text('remark')],
        rows: [...targets, ...readings],
        ...(readings.length > 0 ? { boxes: [text('Read on'), text('Humidity'), text('By')] } : {}),
      },
    ];
  });
}

/** By when it is settled: a change after that means re-work. What can always be changed is settled at the setup. */
function stageOf({ class: kind, freeze, kind: sort }: Property): Stage | undefined {
  if (kind === 'record' || sort === 'text') return undefined;
  return freeze?.costly ?? freeze?.impossible ?? 'setup';
}

/** A row for each figure; the places and words of one member (from, to, profile) stand together in one. */
function targetRows(
  workshop: Workshop,
  subject: SheetSubject,
  all: readonly Held[],
): readonly (readonly SheetCell[])[] {
  const rows: (readonly SheetCell[])[] = [];
  const told = new Set<string>();
  for (const held of all) {
    const member = memberOf(held);
    if (member === undefined) rows.push(targetRow(workshop, subject, held));
    else if (!told.has(member)) {
      told.add(member);
      rows.push(
        wordsRow(
          subject,
          member,
          all.filter((other) => memberOf(other) === member),
        ),
      );
    }
  }
  return rows;
}

/** `bracing.x-bass` for a place or a word said of that brace. */
function memberOf({ path, value }: Held): string | undefined {
  const words = path.split('.');
  return words.length > 2 && (value.kind === 'point' || value.kind === 'name')
    ? words.slice(0, -1).join('.')
    : undefined;
}

function wordsRow(subject: SheetSubject, member: string, said: readonly Held[]): readonly SheetCell[] {
  const written = said.map(({ path, value }) => `${path.slice(member.length + 1)} ${writeInShopUnit(path, value)}`);
  const text = written.join(', ');
  const isHere = said.some((held) => isDoneHere(held, subject));
  return [member, isHere ? { strong: text } : text, '', WRITE, ''];
}

function targetRow(workshop: Workshop, subject: SheetSubject, held: Held): readonly SheetCell[] {
  const { say, text } = workshop.wording;
  const settings = workshop.settings();
  const { path, value, before, via } = held;
  const target = writeOnPaper(path, value, settings);
  const isHere = isDoneHere(held, subject);
  // A dome is checked with its own dish, not to the half millimetre.
  const off = path.endsWith('radius') ? 0 : halfWidth(path, value, settings.tolerances);
  const tolerance =
    off > 0 && value.kind === 'quantity'
      ? `±${writeQuantity(off, value.quantity.dimension, { unit: unitOnPaper(path, settings), digits: 2 })}`
      : '';
  const was = isHere && before ? say`was ${writeOnPaper(path, before.value, settings)}` : '';
  const how = isHere && via === 'solved' ? text('solved by a hold') : '';
  const remark = [was, how].filter((part) => part !== '').join(', ');
  return [path, isHere ? { strong: target } : target, tolerance, WRITE, remark];
}

/** What is worth reading once a stage is done: computed paths, and readings a build knows. (common practice) */
const READ_AT: Partial<Record<Stage, readonly string[]>> = {
  thicknessing: ['top.mass', 'top.sag', 'back.mass'],
  bracing: ['mass.braced-top', 'mass.braced-back'],
  rim: ['mass.rim'],
  closing: ['mass.box'],
  setup: ['bridge.rotation'],
  'first-tests': ['resonance.air', 'resonance.top', 'resonance.back', 'mass.finished'],
};

const STAGE_TITLES: Readonly<Record<Stage, string>> = {
  commission: english('Commission'),
  wood: english('Wood'),
  joining: english('Joining'),
  rosette: english('Rosette'),
  thicknessing: english('Thicknessing'),
  outline: english('Outline'),
  bracing: english('Bracing'),
  rim: english('Rim'),
  closing: english('Closing'),
  binding: english('Binding'),
  neck: english('Neck'),
  'neck-angle': english('Neck angle and bridge place'),
  finish: english('Finish'),
  setup: english('Bridge and setup'),
  'first-tests': english('First tests'),
  settling: english('Settling'),
  delivery: english('Delivery'),
  returns: english('Returns'),
};

/** The weighed name of what is computed under another. */
const COMPUTED_AS: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    'mass.braced-top': 'top.braced-mass',
    'mass.braced-back': 'back.braced-mass',
  }),
);

function readingRow({ wording }: Workshop, { evaluation }: SheetSubject, path: string): readonly SheetCell[] {
  const { text } = wording;
  const asked = COMPUTED_AS.get(path) ?? path;
  const computed = evaluation.derived(asked);
  const remark = text(REMARKS.get(path) ?? english('read'));
  if (!computed?.known) {
    const waiting = computed?.pending ? text('being worked out') : text('not computed');
    return [path, waiting, '', WRITE, remark];
  }
  const { si, quantity } = computed;
  const spread = 2 * evaluation.uncertainty(asked);
  const band = Math.hypot(spread, (quantity.scatter ?? 0) * Math.abs(si));
  const { dimension, unit } = quantity;
  const off = band > 0 ? `±${writeQuantity(band, dimension, { ...(unit === '' ? {} : { unit }), digits: 2 })}` : '';
  return [path, shown(si, quantity), off, WRITE, remark];
}

const REMARKS: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    'top.mass': english('weigh, cut to outline'),
    'back.mass': english('weigh, cut to outline'),
    'top.sag': english('sag in the rig; write down which'),
    'mass.braced-top': english('weigh'),
    'mass.braced-back': english('weigh'),
    'mass.rim': english('weigh'),
    'mass.box': english('weigh'),
    'mass.finished': english('weigh, strung'),
    'bridge.rotation': english('level on the bridge, before and after stringing'),
    'resonance.air': english('strings on and damped; write down the days since stringing'),
    'resonance.top': english('strings on and damped'),
    'resonance.back': english('strings on and damped'),
  }),
);

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
