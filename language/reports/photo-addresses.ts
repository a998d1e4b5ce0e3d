/** Addresses of photographs as a recipe gives them: relative to the file that names them. */
import type { Value } from '../facts/facts.js';

/** Pictures by a relative address; where they are kept in words is no address. */
export function addressesIn(value: Value): readonly string[] {
  if (value.kind === 'list') return value.items.flatMap(addressesIn);
  if (value.kind !== 'text') return [];
  return value.text.split(/\s*[,;]\s*/).filter((each) => isPicture(each));
}

/** Never an address elsewhere: a sheet fetches nothing. */
export function isPicture(address: string): boolean {
  return /\.(?:jpe?g|png|webp|gif|avif)$/i.test(address) && !/^(?:[a-z][a-z0-9+.-]*:|\/|\\)/i.test(address);
}
