import { l10n } from 'vscode';
import type { ListedValue } from '../../language/server/protocol.js';

/** Beside the name: `2.66 mm · solved here, was 2.77 mm`. */
export function describeValue({ value, here, was, from, basis, trouble, sort }: ListedValue): string {
  const origin =
    here === undefined
      ? sort === 'written' && from !== undefined
        ? l10n.t('from {0}', from)
        : basis
      : was === undefined
        ? here
        : l10n.t('{0}, was {1}', here, was);
  const known = sort === 'unknown' ? l10n.t('not known') : value;
  return [known, origin, trouble].filter(Boolean).join(' · ');
}

/** In full, a line for each thing. */
export function explainValue(value: ListedValue): string {
  const computed = value.sort === 'computed' && value.basis ? l10n.t('computed from: {0}', value.basis) : undefined;
  const told =
    value.sort === 'computed' ? `${value.path}: ${value.value ?? ''}` : `${value.path}: ${describeValue(value)}`;
  return [told, computed].filter(Boolean).join('\n');
}
