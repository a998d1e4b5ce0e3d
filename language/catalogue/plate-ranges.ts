/** How thick tops and backs are made, by instrument and wood. Shops differ; these raise a question, never an error. */
import { range } from './entry.js';
import type { PlausibleRange } from './property.js';

export const TOP_THICKNESS: readonly PlausibleRange[] = [
  range('mm', 2, 2.8, 3.6, 'gitarist.su', { of: 'steel-string', note: 'one maker, same target deflection' }),
  range(
    'mm',
    2.4,
    2.8,
    3.2,
    'startingvossguitars.blogspot.com; en.gammelgura.se; stephengodbe.com; from memory by species',
    { of: 'om sitka-spruce', note: 'centre, finished; edge 0.2-0.6 less if graduated' },
  ),
  range('mm', 2.3, 2.7, 3.1, 'from memory', {
    of: 'om red-spruce',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range(
    'mm',
    2.4,
    2.8,
    3.3,
    'startingvossguitars.blogspot.com; en.gammelgura.se; stephengodbe.com; from memory by species',
    { of: 'om norway-spruce', note: 'centre, finished; edge 0.2-0.6 less if graduated' },
  ),
  range('mm', 2.5, 2.85, 3.2, 'from memory', {
    of: 'om lutz-spruce',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.6, 2.95, 3.4, 'from memory', {
    of: 'om engelmann-spruce',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.7, 3.1, 3.6, 'from memory', {
    of: 'om western-redcedar',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.7, 3.1, 3.6, 'from memory', {
    of: 'om redwood',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.3, 2.7, 3.1, 'from memory', {
    of: 'om mahogany',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.3, 2.6, 3, 'from memory', { of: 'om koa', note: 'centre, finished; edge 0.2-0.6 less if graduated' }),
  range('mm', 2.3, 2.6, 3, 'from memory', {
    of: 'om black-walnut',
    note: 'centre, finished; edge 0.2-0.6 less if graduated',
  }),
  range('mm', 2.5, 2.9, 3.4, 'from memory', { of: 'dreadnought' }),
  range('mm', 2.1, 2.5, 2.9, 'from memory', { of: 'parlor' }),
  range('mm', 1.8, 2.2, 2.7, 'esomogyi.com; startingvossguitars.blogspot.com', {
    of: 'classical',
    note: 'older book value 2.34',
  }),
  range('mm', 2, 2.4, 2.9, 'from memory', { of: 'classical western-redcedar' }),
];

export const BACK_THICKNESS: readonly PlausibleRange[] = [
  range('mm', 2.0, 2.5, 3.1, 'from memory, over the woods listed', { of: 'steel-string' }),
  range('mm', 2.1, 2.4, 2.8, 'from memory', { of: 'steel-string indian-rosewood' }),
  range('mm', 2, 2.3, 2.7, 'from memory', { of: 'steel-string rosewood' }),
  range('mm', 2.3, 2.7, 3.1, 'from memory', { of: 'steel-string mahogany' }),
  range('mm', 2.3, 2.7, 3.1, 'from memory', { of: 'steel-string sapele' }),
  range('mm', 2.2, 2.5, 2.9, 'from memory', { of: 'steel-string maple' }),
  range('mm', 2.3, 2.6, 3, 'from memory', { of: 'steel-string black-walnut' }),
  range('mm', 2.2, 2.5, 2.9, 'stephengodbe.com; from memory', {
    of: 'steel-string koa',
    note: '2.8 koa called thin by one builder',
  }),
  range('mm', 2, 2.3, 2.6, 'from memory', { of: 'steel-string african-blackwood' }),
  range('mm', 2, 2.3, 2.6, 'from memory', { of: 'steel-string african-ebony' }),
  range('mm', 2, 2.3, 2.7, 'from memory', { of: 'classical' }),
  range('mm', 1.8, 2.2, 2.6, 'from memory', { of: 'flamenco cypress' }),
];

export const SIDE_THICKNESS: readonly PlausibleRange[] = [
  range('mm', 1.7, 2.15, 2.6, 'vandruffguitar.com; st8less.com; stephengodbe.com', {
    of: 'steel-string',
    note: '2.16 in two shops; 3.0 called thick',
  }),
  range('mm', 1.5, 1.9, 2.2, 'vandruffguitar.com', { of: 'steel-string cutaway' }),
  range('mm', 2.6, 3.3, 4.2, 'from memory', { of: 'laminated' }),
  range('mm', 0.8, 1.6, 2.7, 'johnsaucier.com', { of: 'classical', note: 'collection survey, mean 1.6' }),
];
