/** What scatter is taken from: groups of replicates, or while there are none the shop's own figure, or common practice. */
import { DIMENSION } from '../../quantities/dimension.js';
import type { BuildRecord } from './builds.js';
import type { EvidenceContext } from './evidence.js';
import type { Questions } from '../questions.js';

export function evidenceContext(workshop: Questions, groups: readonly (readonly BuildRecord[])[]): EvidenceContext {
  const { shelf, catalogue } = workshop;
  const shop = shelf.shop();
  const scatter = shop && workshop.stated(shop).get('scatter.frequency')?.value;
  return {
    groups,
    stated:
      scatter?.kind === 'quantity' && scatter.quantity.si > 0
        ? { share: scatter.quantity.si, basis: 'shop' }
        : { share: 0.02, basis: 'common practice' },
    isFrequency: (path) => catalogue.property(path, 'build')?.dimension?.name === DIMENSION.frequency.name,
  };
}
