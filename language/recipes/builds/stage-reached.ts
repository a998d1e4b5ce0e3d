/** How far the making of an ordered instrument has come. */
import { STAGES } from '../../catalogue/property.js';
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../workshop.js';

/** Number of the last stage done, as the order or the build that fills it says; −1 where neither does. */
export function stageReached(order: Definition, workshop: Pick<Workshop, 'stated' | 'shelf'>): number {
  const stated = workshop.stated(order);
  const named = stated.get('build')?.value;
  const name = named?.kind === 'text' ? named.text : named?.kind === 'name' ? named.name : undefined;
  const build = name === undefined ? undefined : workshop.shelf.find('build', name);
  const ofBuild = build && workshop.stated(build);
  const reached = [stated, ofBuild].map((values) => {
    const value = values?.get('reached')?.value;
    return value?.kind === 'name' ? STAGES.findIndex((one) => one === value.name) : -1;
  });
  const dated = STAGES.map((stage, i) => (ofBuild?.has(`done.${stage}`) ? i : -1));
  return Math.max(...reached, ...dated);
}
