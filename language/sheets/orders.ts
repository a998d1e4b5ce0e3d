/** All open orders of the shop by the stage they have reached. */
import { STAGES } from '../catalogue/property.js';
import { stageTitle } from '../catalogue/stage-titles.js';
import type { Definition } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import { stageReached } from '../recipes/builds/stage-reached.js';
import { askedFor, orderText } from './order-words.js';
import type { Sheet, SheetCell, SheetSection } from './sheet.js';
import { subjectOf } from './sheet-subject.js';
import { propertiesOf } from '../recipes/instrument/values.js';

export function ordersSheet(workshop: Workshop): Sheet {
  const { text, language } = workshop.wording;
  const orders = workshop.shelf.names('order').flatMap((name) => workshop.shelf.find('order', name) ?? []);
  const open = orders.filter((order) => !isDelivered(workshop, order));
  const byStage = new Map<number, Definition[]>();
  for (const order of open) {
    const reached = stageReached(order, workshop);
    byStage.set(reached, [...(byStage.get(reached) ?? []), order]);
  }
  return {
    kind: 'orders',
    language,
    title: text('Open orders'),
    shop: workshop.settings().title ?? '',
    intro: open.length === 0 ? [text('No order is open.')] : [],
    boxes: [],
    sections: [...byStage].sort(([a], [b]) => a - b).map(([reached, all]) => stageSection(workshop, reached, all)),
    cautions: [],
    closing: '',
  };
}

function isDelivered(workshop: Workshop, order: Definition): boolean {
  const stated = workshop.stated(order);
  const build = orderText(workshop, order, 'build');
  const made = build === undefined ? undefined : workshop.shelf.find('build', build);
  return stated.has('delivered') || (made !== undefined && workshop.stated(made).has('delivered'));
}

function stageSection(workshop: Workshop, reached: number, orders: readonly Definition[]): SheetSection {
  const { text, say } = workshop.wording;
  const stage = STAGES[reached];
  const due = (order: Definition) => orderText(workshop, order, 'promised') ?? '9999';
  return {
    title: stage === undefined ? text('Not begun') : say`Done: ${stageTitle(stage, workshop.wording)}`,
    columns: [
      text('order'),
      text('client'),
      text('instrument'),
      text('agreed'),
      text('promised'),
      text('open requests'),
    ],
    rows: [...orders].sort((a, b) => (due(a) < due(b) ? -1 : 1)).map((order) => orderRow(workshop, order)),
  };
}

function orderRow(workshop: Workshop, order: Definition): readonly SheetCell[] {
  const said = (path: string) => orderText(workshop, order, path) ?? '–';
  const open = order.statements.flatMap((request) => {
    if (request.kind !== 'request') return [];
    const answer = [...propertiesOf(request.statements)].find(({ statement }) => statement.path.text === 'answer');
    const value = answer?.statement.value;
    const isOpen = value === undefined || (value.kind === 'name' && value.name === 'open');
    return isOpen ? askedFor(workshop, order, request) : [];
  });
  const subject = subjectOf(workshop, order.name.text);
  return [
    order.name.text,
    said('client'),
    subject?.title ?? order.relation?.target.text ?? '–',
    said('agreed'),
    said('promised'),
    open.length === 0 ? '–' : open.join('; '),
  ];
}
