/** The client sheet: woods, appointments, options and setup, and of an order what was agreed. No voicing numbers. */
import { DEFERRAL } from '../catalogue/cautions.js';
import type { Property } from '../catalogue/property.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import { partOf, partTitle, withinPart } from '../reports/part-of.js';
import type { Workshop } from '../recipes/workshop.js';
import { english } from '../wording/wording.js';
import type { Sheet, SheetSection } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';
import { asTitle, inWords } from './sheet-words.js';
import { woodsOf } from './sheet-woods.js';
import { writeOnPaper } from '../reports/on-paper.js';

export function clientSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const agreed = agreedSection(workshop, subject);
  return {
    kind: 'client',
    language,
    title: subject.order ? say`${subject.title}, for order ${subject.order.name.text}` : subject.title,
    shop: workshop.settings().title ?? '',
    intro: [],
    boxes: [],
    sections: [
      woodSection(workshop, subject),
      choiceSection(workshop, subject),
      ...(agreed ? [agreed] : []),
      signed(text),
    ],
    cautions: [],
    closing: text(DEFERRAL),
  };
}

function woodSection(workshop: Workshop, subject: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  return {
    title: text('Woods'),
    columns: [text('part'), text('wood'), text('Latin name')],
    rows: woodsOf(workshop, subject).map(({ part, species, set, latin }) => [
      asTitle(part, workshop.wording),
      asTitle(species ?? set, workshop.wording),
      latin ?? '–',
    ]),
  };
}

/** What a player sees, feels under the hand or plugs in. */
function choiceSection(workshop: Workshop, subject: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  const shown = subject.values.filter(({ path, value }) => {
    const property = workshop.catalogue.property(path, 'recipe');
    return property !== undefined && value.kind !== 'unknown' && isForClient(property);
  });
  return {
    title: text('The instrument'),
    columns: [text('part'), text('what'), text('choice')],
    rows: shown.map(({ path, value }, i) => [
      // A part is named once.
      i > 0 && partOf(path) === partOf(shown[i - 1]!.path) ? '' : partTitle(partOf(path), workshop.wording),
      text(inWords(withinPart(path))),
      value.kind === 'text'
        ? value.text
        : value.kind === 'name'
          ? text(inWords(value.name))
          : writeOnPaper(path, value, workshop.settings()),
    ]),
  };
}

/** Numbers by which the voice is made stay in the shop: of voicing and body only words, the scale and the neck. */
export function isForClient({ path, kind, class: of }: Property): boolean {
  if (kind === 'wood') return false;
  if (FOR_EVERYBODY.has(path)) return true;
  if (!SAID_IN_WORDS.has(kind) && !FELT.test(path)) return false;
  return of === 'setup' || of === 'option' || of === 'appointment';
}

const SAID_IN_WORDS: ReadonlySet<Property['kind']> = new Set(['text', 'choice', 'species', 'strings']);

const FOR_EVERYBODY: ReadonlySet<string> = new Set(['kind', 'form', 'scale', 'nut.width', 'handed', 'strings']);

/** Numbers a player feels under the hand. */
const FELT = /^(?:setup|nut|neck|fingerboard)\./;

const AGREED: readonly (readonly [path: string, title: string])[] = [
  ['agreed', english('Agreed on')],
  ['promised', english('Promised for')],
  ['price', english('Price')],
  ['terms', english('Terms')],
];

function agreedSection(workshop: Workshop, { order }: SheetSubject): SheetSection | undefined {
  if (!order) return undefined;
  const { text } = workshop.wording;
  const stated = workshop.stated(order);
  const rows = AGREED.flatMap(([path, title]) => {
    const value = stated.get(path)?.value;
    if (!value) return [];
    return [[text(title), value.kind === 'text' ? value.text : writeInShopUnit(path, value, 'order')]];
  });
  return rows.length === 0 ? undefined : { title: text('What was agreed'), rows };
}

function signed(text: (english: string) => string): SheetSection {
  return { title: text('Seen and agreed'), boxes: [text('Maker'), text('Client'), text('Date')] };
}
