/** An order: what was agreed with a client, by code, never by name. */
import { entries, range } from './entry.js';
import { type Property, STAGES } from './property.js';

const order = entries({ where: ['order'], class: 'record' });

export const ORDER_PROPERTIES: readonly Property[] = [
  order.text('client', 'The client, by a code or initials and never more.', { also: ['for', 'customer'] }),
  order.date('agreed', 'When it was agreed.', { also: ['signed', 'ordered', 'date'] }),
  order.date('promised', 'When it was promised for.', { also: ['due', 'deadline', 'delivery'] }),
  order.date('delivered', 'When it was handed over.'),
  order.text('build', 'The instrument that fills the order, by its build’s name.', {
    also: ['instrument', 'filled-by'],
  }),
  order.choice('reached', STAGES, 'The last stage that is done, where no build says so.', { also: ['progress'] }),
  order.text('price', 'What was agreed on price, in the shop’s own words.', { also: ['quote'] }),
  order.text('terms', 'What was agreed on deposit, cancellation and warranty.', {
    also: ['conditions', 'deposit', 'warranty'],
  }),
  order.text('player', 'How the client plays, and what they ask of the sound.', { also: ['style', 'playing'] }),
  order.text('destination', 'The country it goes to, for the papers.', { also: ['country', 'ship-to'] }),
  order.text('asked-by', 'Who asked for the change, by a code or initials.', { also: ['by', 'from'] }),
  order.date('answered', 'When the request was answered.'),
  order.choice('answer', ['open', 'accepted', 'declined', 'withdrawn'], 'What became of the request.', {
    also: ['decision'],
  }),
  order.quantity('delay', 'days', 'How much later the instrument will be.', {
    ranges: [range('days', 0, 14, 400, 'common practice')],
  }),
  order.text('extra', 'What the request adds to the price, in the shop’s own words.', { also: ['surcharge'] }),
];
