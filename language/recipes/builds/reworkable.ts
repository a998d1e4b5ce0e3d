/** Whether a change can be made on a finished instrument, so that it can be read before and after. */
import { STAGES } from '../../catalogue/property.js';
import type { Workshop } from '../workshop.js';
import type { DesignVariable } from './design-matrix.js';

/** By the catalogue: until when each property may be changed, and which way stays open longer. */
export function canRework({ catalogue }: Workshop, { kind, paths, step }: DesignVariable): boolean {
  return paths.every((path) => {
    const property = catalogue.property(path, 'recipe');
    if (!property || kind === 'member') return false;
    const { freeze } = property;
    if (!freeze) return property.class === 'setup' || property.class === 'voicing';
    const way = step < 0 ? 'smaller' : 'larger';
    const limit = freeze.easier?.way === way ? freeze.easier.impossible : freeze.impossible;
    return kind === 'number' && (limit === undefined || STAGES.indexOf(limit) >= STAGES.indexOf('setup'));
  });
}
