/** Photographs a build names: addresses relative to the file that names them. */
import type { Value } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import type { SheetSection } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

export function photosOf(workshop: Workshop, { definition }: SheetSubject): NonNullable<SheetSection['photos']> {
  if (definition.kind !== 'build') return [];
  const stated = workshop.written(definition).filter(({ canonical }) => canonical === 'photo');
  return stated.flatMap(({ values, occasion }) =>
    values.flatMap(({ value }) =>
      addressesIn(value).map((address) => ({
        address,
        caption: occasion?.kind === 'reading' ? (occasion.name?.text ?? address) : address,
      })),
    ),
  );
}

/** Pictures by a relative address; where they are kept in words is no address. */
function addressesIn(value: Value): readonly string[] {
  if (value.kind === 'list') return value.items.flatMap(addressesIn);
  if (value.kind !== 'text') return [];
  return value.text.split(/\s*[,;]\s*/).filter((each) => isPicture(each));
}

/** Never an address elsewhere: a sheet fetches nothing. */
export function isPicture(address: string): boolean {
  return /\.(?:jpe?g|png|webp|gif|avif)$/i.test(address) && !/^(?:[a-z][a-z0-9+.-]*:|\/|\\)/i.test(address);
}
