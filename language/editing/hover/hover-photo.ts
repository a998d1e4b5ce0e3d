/** Photographs that a build names, shown where they are named. */
import { addressesIn } from '../../reports/photo-addresses.js';
import { plain } from '../markdown.js';
import type { Spot } from '../navigation/spot.js';

/** px */
const WIDTH = 360;

/** Undefined where the line names no picture by a relative address. Nothing is read: whoever shows the hover looks for the file. */
export function photographsHover({ statements }: Spot, uri: string): string | undefined {
  const statement = statements.at(-1);
  if (statement?.kind !== 'property') return undefined;
  const shown = addressesIn(statement.value).flatMap((address) => {
    const whole = URL.canParse(address, uri) ? new URL(encodeURI(address), uri).href : undefined;
    // Round brackets would end the address.
    const target = whole?.replaceAll('(', '%28').replaceAll(')', '%29');
    return target === undefined ? [] : [`![${plain(address)}|width=${WIDTH}](${target})`];
  });
  return shown.length === 0 ? undefined : shown.join('\n\n');
}
