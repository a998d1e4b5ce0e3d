/** What the player sees: rosette, edges, inlay, hardware, case. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { BINDING_FREEZE, ROSETTE_FREEZE, SHEEN_FREEZE, TUNER_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const rosette = entries({ where: OPTIONAL, class: 'appointment', freeze: ROSETTE_FREEZE });
const edge = entries({ where: OPTIONAL, class: 'appointment', freeze: BINDING_FREEZE });
const fitted = entries({ where: OPTIONAL, class: 'appointment', freeze: SHEEN_FREEZE });
const tuner = entries({ where: OPTIONAL, class: 'appointment', freeze: TUNER_FREEZE });

function edgePropertiesOf(path: string, name: string): readonly Property[] {
  return [
    edge.text(path, `The ${name}, in words.`),
    edge.quantity(`${path}.width`, 'mm', `Width of the ${name}, all lines together.`, {
      ranges: [range('mm', 0.5, 2, 6, 'from memory')],
    }),
    edge.quantity(`${path}.depth`, 'mm', `Depth of the channel for the ${name}.`, {
      ranges: [range('mm', 1, 1.6, 3, 'from memory')],
    }),
  ];
}

export const APPOINTMENT_PROPERTIES: readonly Property[] = [
  rosette.text('rosette', 'The ring around the soundhole, in words.'),
  rosette.name('rosette.wood', 'wood', 'The wood of the rosette.'),
  rosette.quantity('rosette.inner-diameter', 'mm', 'Diameter of the rosette’s inner edge.', {
    ranges: [range('mm', 84, 108, 125, 'from memory')],
  }),
  rosette.quantity('rosette.width', 'mm', 'Breadth of the rosette’s ring.', {
    ranges: [range('mm', 3, 12, 30, 'from memory')],
  }),
  rosette.quantity('rosette.channel-depth', 'mm', 'Depth of the channel the rosette is laid in.', {
    also: ['depth'],
    ranges: [range('mm', 1, 1.6, 2.4, 'from memory')],
  }),
  rosette.quantity('rosette.mass', 'g', 'Mass of the rosette.', { ranges: [range('g', 1, 4, 15, 'from memory')] }),
  edge.text('binding', 'The binding of the body, in words.'),
  edge.name('binding.wood', 'wood', 'The wood of the binding.'),
  edge.quantity('binding.height', 'mm', 'Height of the binding down the side.', {
    ranges: [range('mm', 4, 6, 8, 'from memory')],
  }),
  edge.quantity('binding.thickness', 'mm', 'Thickness of the binding.', {
    also: ['width'],
    ranges: [range('mm', 1.2, 1.5, 2.5, 'from memory')],
  }),
  ...edgePropertiesOf('purfling', 'purfling of the top'),
  ...edgePropertiesOf('back-purfling', 'purfling of the back'),
  edge.text('side-purfling', 'The line under the binding on the side, in words.'),
  edge.text('back-strip', 'The decorative strip in the back’s centre joint, in words.'),
  edge.quantity('back-strip.width', 'mm', 'Width of the strip in the back’s centre joint.', {
    ranges: [range('mm', 1, 6, 25, 'from memory')],
  }),
  edge.text('inlay', 'Inlay other than in the fingerboard or the head, in words.'),
  tuner.text('tuners', 'The tuning machines, in words.'),
  tuner.choice(
    'tuners.kind',
    ['open-back', 'enclosed', 'slotted-head', 'friction', 'planetary'],
    'The build of the tuners.',
    { also: ['type'] },
  ),
  tuner.quantity('tuners.mass', 'g', 'Mass of the set of tuners.', {
    ranges: [range('g', 110, 190, 280, 'from memory')],
  }),
  tuner.ratio('tuners.ratio', '', 'Turns of the button for one turn of the post.', {
    ranges: [range('', 4, 16, 40, 'from memory')],
  }),
  tuner.text('tuners.buttons', 'What the buttons are made of.'),
  tuner.quantity('tuners.hole', 'mm', 'Diameter of the hole for the post or bushing.', {
    ranges: [range('mm', 6, 8.8, 10.2, 'from memory')],
  }),
  fitted.text('pickguard', 'The guard beside the soundhole, in words.'),
  fitted.text('pickguard.material', 'What the guard is made of.'),
  fitted.quantity('pickguard.thickness', 'mm', 'Thickness of the guard.', {
    ranges: [range('mm', 0.1, 0.8, 2, 'from memory')],
  }),
  fitted.quantity('pickguard.mass', 'g', 'Mass of the guard.', { ranges: [range('g', 6, 15, 30, 'from memory')] }),
  fitted.choice('pickguard.fixing', ['glued', 'film', 'floating', 'none'], 'How the guard is held.'),
  fitted.text('end-pin', 'The pin at the tail, in words.'),
  fitted.quantity('end-pin.mass', 'g', 'Mass of the end pin.', { ranges: [range('g', 1, 4, 30, 'from memory')] }),
  fitted.text('strap-button', 'The buttons a strap is hung on, in words.'),
  fitted.count('strap-button.count', 'How many strap buttons there are.', {
    ranges: [range('', 0, 1, 2, 'common practice')],
  }),
  fitted.text('strap-button.material', 'What the strap buttons are made of.'),
  fitted.text('strap-button.place', 'Where the strap buttons sit.'),
  fitted.text('label', 'The words on the label.'),
  fitted.text('case', 'The case, in words.'),
  fitted.quantity('case.humidity', '%RH', 'Humidity the case is kept at.', {
    ranges: [range('%RH', 35, 45, 55, 'genone-luthier-supply.com', { note: 'short spells 25-65' })],
  }),
];

export const APPOINTMENT_PARTS: readonly Part[] = [
  part('rosette', 'The ring around the soundhole.', ['rose', 'soundhole-ring', 'roseta', 'rosace']),
  part('binding', 'The strip along the edges of the box.', ['bindings', 'edge-binding', 'edging', 'body-binding']),
  part('purfling', 'The lines beside the binding on the top.', ['purflings', 'top-purfling', 'fillet']),
  part('back-purfling', 'The lines beside the binding on the back.', []),
  part('back-strip', 'The decorative strip in the back’s centre joint.', [
    'marquetry-strip',
    'back-stripe',
    'back-inlay',
  ]),
  part('tuners', 'The machines that tune the strings.', [
    'machines',
    'machine-heads',
    'tuning-machines',
    'tuner',
    'mechaniken',
  ]),
  part('pickguard', 'The guard beside the soundhole.', ['guard', 'scratchplate', 'golpeador', 'plectrum-guard']),
  part('end-pin', 'The pin at the tail.', ['endpin', 'tail-pin']),
  part('strap-button', 'The buttons a strap is hung on.', ['strap-buttons', 'strap-pin']),
  part('case', 'What the instrument travels in.', ['hard-case']),
];
