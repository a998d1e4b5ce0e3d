/** The setup and care card: how the instrument left the shop, what to keep it at, what to look at. */
import { takenAs } from '../catalogue/taken-as.js';
import { cautionsOnQuantity, cautionsOnSheet, DEFERRAL } from '../catalogue/cautions.js';
import { shown } from '../checks/phrases.js';
import { unitFor, writeInShopUnit } from '../reports/shop-values.js';
import { writeQuantity } from '../quantities/write.js';
import { DIMENSION } from '../quantities/dimension.js';
import type { Workshop } from '../recipes/workshop.js';
import { cited } from '../wording/cited.js';
import { english } from '../wording/wording.js';
import { said, serialOf } from './bench-boxes.js';
import { makerOf } from './client.js';
import { boxFor, onceEach, type Sheet, type SheetSection, WRITE } from './sheet.js';
import { climateFigures, setupFigures } from './setup-section.js';
import type { SheetSubject } from './sheet-subject.js';
import { valueInWords } from '../reports/part-words.js';
import { inWords } from './sheet-words.js';
import { writeOnPaper } from '../reports/on-paper.js';

export function careCard(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const cautions = onceEach([...cautionsOnSheet('care'), ...cautionsOnQuantity('strings.total-tension')]);
  return {
    kind: 'care',
    language,
    title: say`Setup and care: ${subject.title}`,
    shop: workshop.settings().title ?? '',
    intro: [],
    boxes: [
      boxFor(text('Serial number'), serialOf(workshop, subject)),
      boxFor(text('Date'), said(workshop, subject, 'finished')),
      boxFor(text('Maker'), makerOf(workshop)),
    ],
    sections: [
      setupSection(workshop, subject),
      ...setupFigures(workshop, subject),
      stringSection(workshop, subject),
      climateSection(workshop),
      ...climateFigures(workshop, subject),
      watched(text),
    ],
    cautions: cautions.map((caution) => ({
      text: text(caution.text),
      source: cited(caution.source, workshop.wording),
    })),
    closing: text(DEFERRAL),
  };
}

function setupSection(workshop: Workshop, { values, definition }: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  const settings = workshop.settings();
  const rows = values
    .filter(({ path, value }) => value.kind === 'quantity' && (path.startsWith('setup.') || OTHERS.has(path)))
    .map(({ path, value, before, from }) => {
      const what = valueInWords(path, (each) => workshop.catalogue.partOf(each), workshop.wording);
      const written = writeOnPaper(path, value, settings);
      // What a build says of its setup is how it was set; the recipe says how it was meant.
      if (definition.kind !== 'build' || from.definition !== definition) return [what, written, WRITE];
      return [what, before ? writeOnPaper(path, before.value, settings) : '–', written];
    });
  return { title: text('As it left the shop'), columns: [text('what'), text('meant'), text('as set')], rows };
}

const OTHERS: ReadonlySet<string> = new Set(['scale', 'nut.width']);

function stringSection(workshop: Workshop, { values, evaluation }: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  const named = values.find(({ path }) => path === 'strings')?.value;
  const set = named?.kind === 'name' ? workshop.shelf.find('strings', named.name) : undefined;
  const stated = set && workshop.stated(set);
  const tension = evaluation.derived('strings.total-tension');
  const rows = [
    ...(named?.kind === 'name' ? [[text('set'), named.name]] : []),
    ...SHOWN_OF_STRINGS.flatMap(([path, title]) => {
      const value = stated?.get(path)?.value;
      if (!value) return [];
      return [
        [text(title), value.kind === 'name' ? text(inWords(value.name)) : writeInShopUnit(path, value, 'strings')],
      ];
    }),
    ...(tension?.known ? [[text('pull of the whole set'), shown(tension.si, tension.quantity)]] : []),
  ];
  return { title: text('Strings it was made for'), rows };
}

const SHOWN_OF_STRINGS: readonly (readonly [path: string, title: string])[] = [
  ['kind', english('kind')],
  ['material', english('material')],
  ['tuning', english('tuning, highest first')],
  ['gauges', english('gauges, highest first')],
];

/** How far from the humidity of the shop an instrument is best kept, as a fraction. (common practice) */
const NEAR = 0.05;

function climateSection(workshop: Workshop): SheetSection {
  const { say, text } = workshop.wording;
  const { humidity } = workshop.settings();
  const usual = takenAs('shop.climate.humidity')!.si;
  const write = (si: number) => writeQuantity(si, DIMENSION.humidity, { unit: unitFor('humidity', 'build') });
  return {
    title: text('Where it lives'),
    text: [
      humidity === undefined
        ? say`It is happiest between ${write(usual - NEAR)} and ${write(usual + NEAR)}, in its case when nobody plays it (common practice).`
        : say`It was built at ${write(humidity)}. It is happiest near that: between ${write(humidity - NEAR)} and ${write(humidity + NEAR)}, in its case when nobody plays it (common practice).`,
      text('Keep it away from heaters, from the sun behind glass and out of a parked car.'),
      text(
        'Fret ends that can be felt and a sunken top say that it is too dry; a rising action and a swollen belly, too damp.',
      ),
    ],
  };
}

function watched(text: (english: string) => string): SheetSection {
  return {
    title: text('Look at it twice a year'),
    text: [text('Write it down; if one of these has moved by more than you can explain, show it to its maker.')],
    columns: [
      text('day'),
      text('humidity'),
      text('action, bass'),
      text('action, treble'),
      text('relief'),
      text('remark'),
    ],
    rows: Array.from({ length: 4 }, () => [WRITE, WRITE, WRITE, WRITE, WRITE, WRITE]),
  };
}
