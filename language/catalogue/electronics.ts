/** What is plugged in. Not counted as a change, unless it weighs enough to matter. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { PICKUP_FREEZE } from './freeze.js';
import type { Part, PlausibleRange, Property } from './property.js';

const fitted = entries({ where: OPTIONAL, class: 'option', freeze: PICKUP_FREEZE });

/** Parts that devices are mostly fixed to. (common practice) */
const CARRIERS = ['bridge-plate', 'top', 'sides', 'neck-block', 'tail-block', 'back'];

function devicePropertiesOf(path: string, name: string, masses: readonly PlausibleRange[]): readonly Property[] {
  return [
    fitted.text(path, `The ${name}, in words.`),
    fitted.text(`${path}.kind`, `What sort of ${name} it is.`, { also: ['type', 'model'] }),
    fitted.quantity(`${path}.mass`, 'g', `Mass of the ${name} with its leads.`, { also: ['weight'], ranges: masses }),
    fitted.name(`${path}.on`, 'part', `The part the ${name} is fixed to, which carries its mass.`, {
      also: ['at', 'place', 'fixed-to'],
      words: CARRIERS,
    }),
  ];
}

export const ELECTRONICS_PROPERTIES: readonly Property[] = [
  ...devicePropertiesOf('electronics.pickup', 'pickup', [range('g', 3, 10, 30, 'from memory')]),
  ...devicePropertiesOf('electronics.second-pickup', 'second pickup', [range('g', 2, 10, 40, 'from memory')]),
  ...devicePropertiesOf('electronics.microphone', 'microphone', [range('g', 1, 8, 40, 'from memory')]),
  ...devicePropertiesOf('electronics.preamp', 'preamplifier', [range('g', 5, 45, 200, 'from memory')]),
  ...devicePropertiesOf('electronics.battery', 'battery with its holder', [range('g', 5, 50, 80, 'from memory')]),
  fitted.quantity('electronics.jack', 'in', 'Size of the jack.', {
    also: ['socket', 'output'],
    ranges: [range('in', 0.125, 0.25, 0.25, 'common practice')],
  }),
  fitted.quantity('electronics.jack-mass', 'g', 'Mass of the jack.', {
    ranges: [range('g', 5, 30, 60, 'from memory')],
  }),
  fitted.name('electronics.jack-on', 'part', 'The part the jack is fixed to.', { words: CARRIERS }),
  fitted.text('electronics.controls', 'Which controls there are, and where.'),
];

export const ELECTRONICS_PARTS: readonly Part[] = [
  part('electronics', 'Pickups and what belongs to them.', ['pickup-system', 'wiring']),
  part('electronics.pickup', 'What turns the string’s or the top’s movement into a signal.', ['transducer', 'sensor']),
  part('electronics.second-pickup', 'A second pickup.', []),
  part('electronics.microphone', 'A microphone inside the box.', ['mic']),
  part('electronics.preamp', 'The preamplifier.', ['pre-amp', 'preamplifier']),
  part('electronics.battery', 'The battery and its holder.', ['batteries']),
];
