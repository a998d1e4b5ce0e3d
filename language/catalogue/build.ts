/** A build: when it was made, how far it is, what was used, what was found. */
import { entries, part, range } from './entry.js';
import { type Part, type Property, STAGES } from './property.js';

const build = entries({ where: ['build'], class: 'record' });

/** What each stage's date in `done { … }` means. */
const STAGE_SENTENCES: Readonly<Record<(typeof STAGES)[number], string>> = {
  commission: 'When the commission was agreed.',
  wood: 'When the woods were chosen.',
  joining: 'When top and back were joined.',
  rosette: 'When the rosette was in.',
  thicknessing: 'When the plates were at their thickness.',
  outline: 'When outline and soundhole were cut.',
  bracing: 'When the plates were braced and voiced.',
  rim: 'When the rim was made.',
  closing: 'When the box was closed.',
  binding: 'When the edges were bound.',
  neck: 'When the neck was made.',
  'neck-angle': 'When the neck was set and the bridge’s place found.',
  finish: 'When the finish was on.',
  setup: 'When it was strung and set up.',
  'first-tests': 'When the first tests were made.',
  settling: 'When the settling tests were made.',
  delivery: 'When it was delivered.',
  returns: 'When it last came back.',
};

export const BUILD_PROPERTIES: readonly Property[] = [
  build.text('serial', 'The number on the label.', { also: ['number', 'serial-number'] }),
  build.date('started', 'When work began.', { also: ['begun'] }),
  build.date('finished', 'When it was finished.', { also: ['completed'] }),
  build.date('strung', 'When it was first strung to pitch.', { also: ['first-strung'] }),
  build.date('delivered', 'When it was handed over.'),
  build.choice(
    'reached',
    STAGES,
    'The last stage that is done; what is frozen by it can no longer be changed freely.',
    { also: ['progress', 'at-stage'] },
  ),
  ...STAGES.map((stage) => build.date(`done.${stage}`, STAGE_SENTENCES[stage])),
  build.choice('attribution', ['yes', 'no'], 'Whether this build may speak for the effect of its change.', {
    also: ['counts'],
  }),
  build.text('damage', 'What broke, cracked or came loose.', { also: ['cracks', 'fault'] }),
  build.text('repair', 'What was done about it.', { also: ['repairs', 'adjusted'] }),
  build.text('lived-in', 'The climate it lived in before it came back.', { also: ['climate'] }),
  build.text('photo', 'Where the pictures are.', { also: ['photos', 'picture'] }),
  build.text('glue.*', 'The glue used for this joint, with its batch.'),
  build.text('billet.*', 'The billet or batch this part came from, where it has no definition of its own.'),
  build.quantity('mass.braced-top', 'g', 'Mass of the braced top.', {
    ranges: [range('g', 175, 215, 265, 'from memory', { of: 'om' })],
  }),
  build.quantity('mass.braced-back', 'g', 'Mass of the braced back.', {
    ranges: [range('g', 330, 390, 460, 'from memory', { of: 'om indian-rosewood' })],
  }),
  build.quantity('mass.rim', 'g', 'Mass of the rim with linings and blocks.', {
    ranges: [range('g', 380, 480, 620, 'from memory', { of: 'om' })],
  }),
  build.quantity('mass.box', 'g', 'Mass of the closed box, without bridge.', {
    also: ['body'],
    ranges: [range('g', 850, 1020, 1250, 'from memory', { of: 'om', note: 'no bridge' })],
  }),
  build.quantity('mass.neck', 'g', 'Mass of the neck with fingerboard and rod, without tuners.', {
    ranges: [range('g', 420, 530, 690, 'from memory', { note: 'with fingerboard and rod' })],
  }),
  build.quantity('mass.bridge', 'g', 'Mass of the bridge with saddle and pins.', {
    ranges: [range('g', 28, 40, 58, 'from memory', { of: 'steel-string' })],
  }),
  build.quantity('mass.finished', 'g', 'Mass of the finished instrument, strung.', {
    also: ['whole', 'total', 'guitar'],
    ranges: [
      range('g', 1250, 1550, 1850, 'ratingriffs.com; from memory', { of: 'parlor' }),
      range('g', 1500, 1800, 2150, 'from memory', { of: 'om' }),
      range('g', 1700, 2000, 2450, 'ratingriffs.com; from memory', { of: 'dreadnought' }),
      range('g', 1800, 2150, 2600, 'from memory', { of: 'jumbo' }),
      range('g', 1200, 1500, 1800, 'ratingriffs.com; from memory', { of: 'classical' }),
    ],
  }),
  build.quantity('balance', 'mm', 'Distance from the tail to the point it balances on.', {
    also: ['balance-point'],
    ranges: [range('mm', 380, 450, 560, 'from memory')],
  }),
];

export const BUILD_PARTS: readonly Part[] = [
  part('done', 'The date on which each stage was done.', ['dates', 'stages']),
  part('glue', 'The glues used, joint by joint.', ['glues']),
  part(
    'glue.*',
    'The glue of one joint.',
    [],
    ['top-joint', 'braces', 'box', 'bridge', 'neck', 'fingerboard', 'binding'],
  ),
  part('billet', 'Stock that has no definition of its own.', ['billets', 'batch']),
  part('billet.*', 'The stock of one part.', [], ['braces', 'linings', 'bridge', 'neck']),
  part('mass', 'Masses of assemblies, as weighed.', ['masses', 'weight', 'weights']),
];
