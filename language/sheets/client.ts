/** The client sheet: everything that was ordered, and nothing of the voicing. */
import { DEFERRAL } from '../catalogue/cautions.js';
import type { Property } from '../catalogue/property.js';
import { planOfSide } from '../reports/plan/plan-of.js';
import { valueInWords } from '../reports/part-words.js';
import type { Held } from '../recipes/instrument/instrument.js';
import { saysNone } from '../recipes/instrument/values.js';
import type { Workshop } from '../recipes/workshop.js';
import { english } from '../wording/wording.js';
import { onPaper } from './bench-targets.js';
import { clientFigure } from './figures.js';
import { orderText, requestsSection } from './order-words.js';
import { boxFor, type Sheet, type SheetSection } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';
import { asTitle } from './sheet-words.js';
import { speciesOf } from './sheet-woods.js';

export function clientSheet(workshop: Workshop, subject: SheetSubject): Sheet {
  const { say, text, language } = workshop.wording;
  const figure = clientFigure(planOfSide(workshop, subject.side, subject.definition));
  const requests = subject.order && requestsSection(workshop, subject.order);
  const agreed = agreedSection(workshop, subject);
  const description = subject.values.find(({ path }) => path === 'description')?.value;
  return {
    kind: 'client',
    language,
    title: subject.title,
    shop: workshop.settings().title ?? '',
    intro: [
      ...(subject.order ? [say`Order ${subject.order.name.text}`] : []),
      ...(description?.kind === 'text' ? [description.text] : []),
    ],
    boxes: [
      boxFor(text('Client'), subject.order && orderText(workshop, subject.order, 'client')),
      boxFor(text('Maker'), makerOf(workshop)),
    ],
    sections: [
      ...(figure === undefined ? [] : [{ title: text('From the front'), figure }]),
      choiceSection(workshop, subject),
      woodSection(workshop, subject),
      ...(requests ? [requests] : []),
      ...(agreed ? [agreed] : []),
      { title: text('Seen and agreed'), boxes: [text('Maker'), text('Client'), text('Date')] },
    ],
    cautions: [],
    closing: text(DEFERRAL),
  };
}

/** Who works here, or the shop where nobody is named. */
export function makerOf(workshop: Workshop): string | undefined {
  const shop = workshop.shelf.shop();
  const maker = shop && workshop.stated(shop).get('maker')?.value;
  return maker?.kind === 'text' ? maker.text : workshop.settings().title;
}

/** One row a species, with the parts it is in. */
function woodSection(workshop: Workshop, subject: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  return {
    title: text('Woods'),
    columns: [text('wood'), text('Latin name'), text('parts')],
    rows: speciesOf(workshop, subject).map(({ name, latin, parts }) => [
      asTitle(name, workshop.wording),
      latin ?? '–',
      parts.join(', '),
    ]),
  };
}

/** What a player sees, feels under the hand or plugs in, and whatever the order itself asks for. */
function choiceSection(workshop: Workshop, subject: SheetSubject): SheetSection {
  const { text } = workshop.wording;
  const shown = subject.values.filter((held) => isShown(workshop, subject, held));
  return {
    title: text('The instrument'),
    columns: [text('what'), text('choice')],
    rows: shown.map((held) => {
      const what = valueInWords(held.path, (path) => workshop.catalogue.partOf(path), workshop.wording);
      const choice = saysNone(held.value) ? text('none') : onPaper(held, workshop);
      return [what, isOrdered(subject, held) ? { strong: choice } : choice];
    }),
  };
}

function isShown(workshop: Workshop, subject: SheetSubject, held: Held): boolean {
  const property = workshop.catalogue.property(held.path, 'recipe');
  if (property === undefined || held.value.kind === 'unknown' || ABOUT.has(held.path)) return false;
  if (FOR_THE_BENCH.test(held.path)) return false;
  if (isOrdered(subject, held)) return property.class !== 'voicing' || SAID_IN_WORDS.has(property.kind);
  return isForClient(property);
}

/** Told at the head of the sheet. */
const ABOUT: ReadonlySet<string> = new Set(['title', 'description', 'model']);

/** Chosen by the client: in the order itself, or with a package it takes up. */
function isOrdered({ order }: SheetSubject, { from, via }: Held): boolean {
  return order !== undefined && (from.definition === order || via === 'package');
}

/** Numbers by which the voice is made stay in the shop: of voicing and body only words, the scale and the neck. */
export function isForClient({ path, kind, class: of }: Property): boolean {
  if (kind === 'wood') return false;
  if (FOR_EVERYBODY.has(path)) return true;
  if (!SAID_IN_WORDS.has(kind) && !FELT.test(path)) return false;
  return of === 'setup' || of === 'option' || of === 'appointment';
}

const SAID_IN_WORDS: ReadonlySet<Property['kind']> = new Set(['text', 'choice', 'species', 'strings']);

/** What shapes the box for the player's reach, too, whatever it does to the voice. */
const FOR_EVERYBODY: ReadonlySet<string> = new Set([
  ...['kind', 'form', 'scale', 'nut.width', 'handed', 'strings', 'neck.join-fret', 'frets.count'],
  ...['cutaway.kind', 'cutaway.side', 'port.side', 'electronics.jack'],
]);

/** Numbers a player feels under the hand; what parts weigh is no concern of theirs. */
const FELT = /^(?:setup\.(?:action|relief)|nut\.string-spread|neck\.depth|fingerboard\.(?:radius|width))/;

/** What an option weighs, and which part carries it, is for the bench. */
const FOR_THE_BENCH = /(?:[.-]mass|[.-]on)$/;

const AGREED: readonly (readonly [path: string, title: string])[] = [
  ['agreed', english('Agreed on')],
  ['promised', english('Promised for')],
  ['price', english('Price')],
  ['terms', english('Terms')],
  ['player', english('How it will be played')],
  ['destination', english('It goes to')],
];

function agreedSection(workshop: Workshop, { order }: SheetSubject): SheetSection | undefined {
  if (!order) return undefined;
  const { text } = workshop.wording;
  const rows = AGREED.flatMap(([path, title]) => {
    const said = orderText(workshop, order, path);
    return said === undefined ? [] : [[text(title), said]];
  });
  return rows.length === 0 ? undefined : { title: text('What was agreed'), rows };
}
