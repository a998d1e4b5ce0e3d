/** The box as seen from the front and from the side: lengths, bouts, depths and domes. */
import { entries, INSTRUMENT, part, range } from './entry.js';
import { OUTLINE_FREEZE, RIM_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const outline = entries({ where: INSTRUMENT, class: 'body', freeze: OUTLINE_FREEZE });
const rim = entries({ where: INSTRUMENT, class: 'body', freeze: RIM_FREEZE });

export const BODY_OUTLINE_PROPERTIES: readonly Property[] = [
  outline.quantity('body.length', 'mm', 'Length of the box on the centre line, from tail to neck end.', {
    ranges: [
      range('mm', 445, 470, 490, 'from memory', { of: 'parlor' }),
      range('mm', 465, 480, 495, 'from memory', { of: 'size-00' }),
      range('mm', 480, 489, 500, 'from memory', { of: 'om' }),
      range('mm', 500, 508, 515, 'from memory', { of: 'dreadnought' }),
      range('mm', 515, 525, 535, 'from memory', { of: 'jumbo' }),
      range('mm', 475, 485, 495, 'classicalguitars.ca; from memory for bounds', { of: 'classical' }),
    ],
  }),
  outline.quantity('body.lower-bout.width', 'mm', 'Greatest width of the lower bout.', {
    ranges: [
      range('mm', 304, 325, 343, 'dreamguitars.com; overthewireless.com; from memory for typical', { of: 'parlor' }),
      range('mm', 350, 359, 366, 'dreamguitars.com; from memory for bounds', { of: 'size-00' }),
      range('mm', 375, 381, 390, 'dreamguitars.com; from memory for bounds', { of: 'om' }),
      range('mm', 390, 397, 412, 'dreamguitars.com; from memory for bounds', { of: 'dreadnought' }),
      range('mm', 415, 432, 440, 'from memory', { of: 'jumbo' }),
      range('mm', 360, 370, 378, 'dreamguitars.com; from memory for bounds', { of: 'classical' }),
    ],
  }),
  outline.quantity('body.lower-bout.station', 'mm', 'Distance from the tail to the widest place of the lower bout.', {
    ranges: [range('mm', 85, 115, 150, 'from memory')],
  }),
  outline.quantity('body.waist.width', 'mm', 'Least width of the waist.', {
    ranges: [
      range('mm', 180, 195, 215, 'from memory', { of: 'parlor' }),
      range('mm', 215, 226, 238, 'from memory', { of: 'size-00' }),
      range('mm', 230, 241, 250, 'from memory', { of: 'om' }),
      range('mm', 265, 276, 285, 'from memory', { of: 'dreadnought' }),
      range('mm', 245, 262, 280, 'from memory', { of: 'jumbo' }),
      range('mm', 230, 240, 248, 'from memory', { of: 'classical' }),
    ],
  }),
  outline.quantity('body.waist.station', 'mm', 'Distance from the tail to the narrowest place of the waist.', {
    ranges: [range('mm', 250, 292, 330, 'from memory')],
  }),
  outline.quantity('body.upper-bout.width', 'mm', 'Greatest width of the upper bout.', {
    ranges: [
      range('mm', 225, 240, 255, 'from memory', { of: 'parlor' }),
      range('mm', 245, 255, 270, 'from memory', { of: 'size-00' }),
      range('mm', 280, 286, 295, 'from memory', { of: 'om' }),
      range('mm', 285, 292, 300, 'from memory', { of: 'dreadnought' }),
      range('mm', 300, 314, 325, 'from memory', { of: 'jumbo' }),
      range('mm', 270, 280, 292, 'from memory', { of: 'classical' }),
    ],
  }),
  outline.quantity('body.upper-bout.station', 'mm', 'Distance from the tail to the widest place of the upper bout.', {
    ranges: [range('mm', 360, 420, 460, 'from memory')],
  }),
  outline.quantity('body.tail-radius', 'mm', 'Radius of the outline at the tail, on the centre line.', {
    words: ['flat'],
    ranges: [range('mm', 150, 300, 900, 'from memory')],
  }),
  outline.quantity('body.neck-radius', 'mm', 'Radius of the outline at the neck end, on the centre line.', {
    words: ['flat'],
    ranges: [range('mm', 80, 220, 900, 'from memory')],
  }),
  outline.list('body.outline', 'mm', 'Points of a traced outline from tail to neck end, as station and half width.', {
    also: ['trace'],
  }),
  outline.text('body.template', 'The name or revision of the template or mould the outline was taken from.', {
    class: 'record',
    also: ['mould', 'mold', 'form', 'solera'],
  }),
  rim.quantity('body.depth.tail', 'mm', 'Depth of the box at the tail, outside.', {
    also: ['end', 'tail-block'],
    ranges: [
      range('mm', 85, 98, 110, 'from memory', { of: 'parlor' }),
      range('mm', 95, 104, 112, 'from memory', { of: 'size-00' }),
      range('mm', 95, 105, 112, 'from memory', { of: 'om' }),
      range('mm', 115, 124, 130, 'from memory', { of: 'dreadnought' }),
      range('mm', 115, 124, 130, 'from memory', { of: 'jumbo' }),
      range('mm', 95, 100, 108, 'from memory', { of: 'classical' }),
    ],
  }),
  rim.quantity('body.depth.waist', 'mm', 'Depth of the box at the waist, outside.', {
    ranges: [range('mm', 75, 97, 125, 'from memory')],
  }),
  rim.quantity('body.depth.neck', 'mm', 'Depth of the box at the neck end, outside.', {
    also: ['heel', 'neck-block'],
    ranges: [
      range('mm', 70, 85, 95, 'from memory', { of: 'parlor' }),
      range('mm', 78, 86, 95, 'from memory', { of: 'size-00' }),
      range('mm', 78, 86, 98, 'from memory', { of: 'om' }),
      range('mm', 92, 100, 106, 'from memory', { of: 'dreadnought' }),
      range('mm', 95, 105, 112, 'from memory', { of: 'jumbo' }),
      range('mm', 88, 94, 102, 'from memory', { of: 'classical' }),
    ],
  }),
  outline.quantity('body.top-radius', 'ft', 'Radius of the dome the top is built to.', {
    freeze: { costly: 'bracing', impossible: 'closing' },
    words: ['flat'],
    also: ['top-dome', 'top-arch', 'dish'],
    ranges: [
      range('ft', 20, 28, 40, 'lmii.com; manualshive.com', {
        of: 'steel-string',
        note: '25 and 28 usual; dishes sold from 12 to 50; 1 ft = 304.8 mm; above 60 treat as flat',
      }),
      range('ft', 15, 25, 999, 'from memory', {
        of: 'classical',
        note: 'often flat rim with 1.5-3 mm arch, or flat; 999 = flat',
      }),
    ],
  }),
  outline.quantity('body.back-radius', 'ft', 'Radius of the dome the back is built to.', {
    freeze: { costly: 'bracing', impossible: 'closing' },
    words: ['flat'],
    also: ['back-dome', 'back-arch'],
    ranges: [range('ft', 10, 15, 25, 'lmii.com; kozlikguitars.co.uk', { note: '15 most often stated' })],
  }),
  rim.quantity('body.top-area', 'm²', 'Area of the top inside the outline, as measured from a template.', {
    where: ['build'],
    class: 'record',
    ranges: [
      range('m²', 0.105, 0.115, 0.122, 'worked out from the other ranges', {
        of: 'parlor',
        note: 'from outline by integration, approximate',
      }),
      range('m²', 0.136, 0.143, 0.15, 'worked out from the other ranges', {
        of: 'om',
        note: 'from outline by integration, approximate',
      }),
      range('m²', 0.15, 0.158, 0.166, 'worked out from the other ranges', {
        of: 'dreadnought',
        note: 'from outline by integration, approximate',
      }),
      range('m²', 0.163, 0.172, 0.182, 'worked out from the other ranges', {
        of: 'jumbo',
        note: 'from outline by integration, approximate',
      }),
      range('m²', 0.132, 0.14, 0.147, 'worked out from the other ranges', {
        of: 'classical',
        note: 'from outline by integration, approximate',
      }),
    ],
  }),
  rim.quantity('body.volume', 'L', 'Air inside the box, as measured by filling it.', {
    where: ['build'],
    class: 'record',
    also: ['air-volume'],
    ranges: [
      range('L', 7.5, 9.2, 11, 'worked out from the other ranges', { of: 'parlor', note: 'area x mean inside depth' }),
      range('L', 12, 13.5, 15, 'worked out from the other ranges', { of: 'om', note: 'area x mean inside depth' }),
      range('L', 16, 17.5, 19.5, 'worked out from the other ranges', {
        of: 'dreadnought',
        note: 'area x mean inside depth',
      }),
      range('L', 17, 19, 21, 'worked out from the other ranges', { of: 'jumbo', note: 'area x mean inside depth' }),
      range('L', 12, 13.2, 14.5, 'worked out from the other ranges', {
        of: 'classical',
        note: 'area x mean inside depth',
      }),
    ],
  }),
];

export const BODY_OUTLINE_PARTS: readonly Part[] = [
  part('body', 'The box: outline, depths and domes.', ['box', 'corpus', 'soundbox']),
  part('body.lower-bout', 'The wide part behind the waist.', ['lower']),
  part('body.waist', 'The narrow part between the bouts.', ['middle']),
  part('body.upper-bout', 'The part next to the neck.', ['upper', 'shoulder']),
  part('body.depth', 'How deep the box is, outside, from top to back.', ['side-depth']),
];
