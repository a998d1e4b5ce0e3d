/** Neck, heel, head, truss rod and the joint to the body. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { NECK_ANGLE_FREEZE, NECK_DEPTH_FREEZE, NECK_FREEZE, SCALE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const neck = entries({ where: OPTIONAL, class: 'option', freeze: NECK_FREEZE });
const slim = entries({ where: OPTIONAL, class: 'option', freeze: NECK_DEPTH_FREEZE });
const seen = entries({ where: OPTIONAL, class: 'appointment', freeze: NECK_FREEZE });

export const NECK_PROPERTIES: readonly Property[] = [
  neck.name('neck.wood', 'wood', 'The blank the neck is cut from.', { also: ['blank', 'species', 'timber'] }),
  neck.text('neck.lamination', 'The layers of a laminated neck, from bass to treble.', { class: 'appointment' }),
  neck.count('neck.join-fret', 'The fret at which the neck meets the body.', {
    class: 'body',
    freeze: SCALE_FREEZE,
    also: ['body-fret', 'joint-fret'],
    ranges: [range('', 12, 14, 14, 'common practice', { note: '13 occasionally' })],
  }),
  neck.choice(
    'neck.joint',
    ['dovetail', 'bolted-tenon', 'bolted-butt', 'glued-tenon', 'spanish-heel', 'other'],
    'How the neck is joined to the body.',
  ),
  slim.quantity('neck.depth.fret-1', 'mm', 'Depth of the neck at the first fret, with the fingerboard.', {
    ranges: [
      range('mm', 19.5, 21, 23.5, 'from memory', { of: 'steel-string', note: 'including fingerboard' }),
      range('mm', 20.5, 21.5, 23, 'classicalguitars.ca', { of: 'classical' }),
    ],
  }),
  slim.quantity('neck.depth.fret-3', 'mm', 'Depth of the neck at the third fret, with the fingerboard.', {
    ranges: [
      range('mm', 20.3, 21.6, 23, 'talkovichguitars.com; from memory for bounds', {
        of: 'steel-string',
        note: '22.2 called chunky',
      }),
    ],
  }),
  slim.quantity('neck.depth.fret-9', 'mm', 'Depth of the neck at the ninth fret, with the fingerboard.', {
    ranges: [range('mm', 21.5, 22.5, 24.5, 'classicalguitars.ca', { of: 'classical' })],
  }),
  slim.quantity('neck.depth.fret-10', 'mm', 'Depth of the neck at the tenth fret, with the fingerboard.', {
    ranges: [range('mm', 21.5, 23.4, 26, 'from memory', { of: 'steel-string' })],
  }),
  slim.quantity('neck.depth.fret-12', 'mm', 'Depth of the neck at the twelfth fret, with the fingerboard.', {
    ranges: [range('mm', 22, 24, 27, 'from memory')],
  }),
  neck.choice(
    'neck.profile',
    ['c', 'd', 'u', 'oval', 'soft-v', 'v', 'asymmetric'],
    'Shape of the back of the neck, as a hand would say it.',
    { also: ['shape', 'carve'] },
  ),
  neck.quantity('neck.angle', 'deg', 'Angle of the neck against the plane of the top at the bridge.', {
    class: 'setup',
    freeze: NECK_ANGLE_FREEZE,
    also: ['set', 'neck-set', 'pitch'],
    ranges: [
      range('deg', 0.5, 1.5, 2.5, 'from memory', {
        note: 'to plane of top at bridge; depends on dome and fingerboard thickness',
      }),
    ],
  }),
  neck.quantity('neck.heel.length', 'mm', 'Length of the heel along the side.', {
    ranges: [range('mm', 60, 85, 110, 'from memory')],
  }),
  neck.quantity('neck.heel.width', 'mm', 'Width of the heel at the body.', {
    ranges: [range('mm', 35, 55, 75, 'from memory')],
  }),
  neck.quantity('neck.mass', 'g', 'Mass of the neck with fingerboard and rod, without tuners.', {
    ranges: [range('g', 420, 530, 690, 'from memory', { note: 'with fingerboard and rod' })],
  }),
  neck.text('neck.stiffener.material', 'What the stiffening bars in the neck are made of.'),
  neck.quantity('neck.stiffener.width', 'mm', 'Width of one stiffening bar.', {
    ranges: [range('mm', 2, 3.2, 6.5, 'from memory')],
  }),
  neck.quantity('neck.stiffener.height', 'mm', 'Height of one stiffening bar.', {
    ranges: [range('mm', 5, 9.5, 13, 'from memory')],
  }),
  neck.count('neck.stiffener.count', 'How many stiffening bars there are.', {
    ranges: [range('', 0, 2, 3, 'common practice')],
  }),
  neck.choice(
    'truss-rod.kind',
    ['none', 'single-action', 'double-action', 'fixed'],
    'The rod that sets the neck’s bow.',
    { also: ['type', 'action'] },
  ),
  neck.quantity('truss-rod.length', 'mm', 'Length of the rod.', {
    ranges: [range('mm', 320, 380, 460, 'from memory')],
  }),
  neck.quantity('truss-rod.mass', 'g', 'Mass of the rod.', { ranges: [range('g', 40, 90, 160, 'from memory')] }),
  neck.choice('truss-rod.access', ['head', 'soundhole'], 'The end at which the rod is turned.'),

  neck.choice('headstock.kind', ['solid', 'slotted'], 'Whether the head is solid or slotted.', { also: ['type'] }),
  neck.quantity('headstock.angle', 'deg', 'Angle at which the head leans back from the neck.', {
    ranges: [
      range('deg', 9, 14, 17, 'from memory', { of: 'steel-string' }),
      range('deg', 10, 13, 17, 'from memory', { of: 'classical' }),
    ],
  }),
  neck.quantity('headstock.thickness', 'mm', 'Thickness of the head, with its veneers.', {
    ranges: [
      range('mm', 13, 15, 17, 'from memory', { of: 'solid', note: 'with headplate' }),
      range('mm', 18, 20, 22, 'classicalguitars.ca; from memory for bounds', { of: 'slotted' }),
    ],
  }),
  neck.quantity('headstock.length', 'mm', 'Length of the head from the nut.', {
    ranges: [range('mm', 150, 180, 215, 'from memory')],
  }),
  neck.quantity('headstock.width', 'mm', 'Greatest width of the head.', {
    ranges: [range('mm', 60, 74, 85, 'from memory')],
  }),
  neck.choice('headstock.scarf', ['yes', 'no'], 'Whether the head is joined on with a scarf joint.'),
  neck.choice('headstock.volute', ['yes', 'no'], 'Whether a volute is left behind the nut.', { class: 'appointment' }),
  seen.name('headplate.wood', 'wood', 'The veneer on the face of the head.'),
  seen.quantity('headplate.thickness', 'mm', 'Thickness of the veneer on the face of the head.', {
    ranges: [range('mm', 1, 2, 3.2, 'from memory')],
  }),
  seen.name('headstock.back-veneer', 'wood', 'The veneer on the back of the head.'),
  seen.text('headstock.inlay', 'The inlay in the head.'),
  seen.name('heel-cap.wood', 'wood', 'The plate on the end of the heel.'),
];

export const NECK_PARTS: readonly Part[] = [
  part('neck', 'What the left hand holds, from head to heel.', ['hals', 'manche', 'mastil']),
  part('neck.depth', 'How deep the neck is, with the fingerboard.', ['thickness']),
  part('neck.heel', 'The foot of the neck at the body.', ['talon', 'tacon']),
  part('neck.stiffener', 'Bars let into the neck to stiffen it.', [
    'stiffeners',
    'carbon',
    'carbon-bars',
    'reinforcement',
  ]),
  part('truss-rod', 'The rod that sets the neck’s bow.', ['trussrod', 'adjustable-rod', 'rod']),
  part('headstock', 'The head that carries the tuners.', ['head', 'peghead', 'kopf']),
  part('headplate', 'The veneer on the face of the head.', [
    'head-veneer',
    'head-plate',
    'overlay',
    'headstock-veneer',
  ]),
  part('heel-cap', 'The plate on the end of the heel.', ['heel-plate', 'heelcap']),
];
