/** Photographs a build names: addresses relative to the file that names them. */
import { addressesIn } from '../reports/photo-addresses.js';
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
