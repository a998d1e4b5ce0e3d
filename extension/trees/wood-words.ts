import { l10n } from 'vscode';
import type { RankedSet, WoodChoice } from '../../language/server/protocol.js';

/** Above the list: what is kept while the sets are compared. */
export function heading({ quantity, target, from, recipe, sets }: WoodChoice): string {
  const kept = quantity === 'top.stiffness.along' ? l10n.t('stiffness along the grain') : quantity;
  const whose = from === recipe ? l10n.t('as {0} has it', from) : l10n.t('as in {0}', from);
  if (sets.length === 0) return l10n.t('No set for tops has been weighed and tested yet.');
  return l10n.t('Tops of equal {0}, {1} ({2}); the lightest first.', kept, target, whose);
}

/** Beside the name: `2.66 mm · 144 g · across +8 %`. */
export function describeSet(set: RankedSet): string {
  const figures = [set.thickness, set.mass, set.acrossChange && l10n.t('across {0}', set.acrossChange)];
  return [...figures, ...remarks(set)].filter(Boolean).join(' · ');
}

/** In full, a line for each thing. */
export function explainSet(set: RankedSet): string {
  const lines = [
    set.species ? `${set.wood}, ${set.species}` : set.wood,
    set.thickness && l10n.t('thickness needed: {0}', set.thickness),
    set.mass &&
      (set.heavier
        ? l10n.t('mass: {0} ({1} against the lightest)', set.mass, set.heavier)
        : l10n.t('mass: {0}', set.mass)),
    set.across &&
      (set.acrossChange
        ? l10n.t('stiffness across the grain: {0} ({1})', set.across, set.acrossChange)
        : l10n.t('stiffness across the grain: {0} (as before)', set.across)),
    set.leaves && l10n.t('left of the blank: {0}', set.leaves),
    ...remarks(set),
  ];
  return lines.filter(Boolean).join('\n');
}

function remarks({ current, builtInto, trouble }: RankedSet): readonly string[] {
  const said: string[] = [];
  if (current) said.push(l10n.t('in this recipe'));
  if (builtInto.length > 0) said.push(l10n.t('built into {0}', builtInto.join(', ')));
  if (trouble === 'too-thin-blank') said.push(l10n.t('the blank is too thin'));
  if (trouble === 'not-usual') said.push(l10n.t('not a usual thickness'));
  if (trouble === 'out-of-reach') said.push(l10n.t('no thickness gets there'));
  if (trouble === 'unknown') said.push(l10n.t('not enough is known'));
  return said;
}
