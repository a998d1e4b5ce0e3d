/** Names of the language as a client or an authority reads them: `bridge.plate` is the bridge plate. */
import type { Wording } from '../wording/wording.js';

/** `bridge plate`, `french polish`. */
export function inWords(name: string): string {
  return name.replaceAll(/[-.]/g, ' ');
}

/** At the head of a line: `Bridge plate`, `Norway spruce`. A member keeps the name its maker gave it: `Bracing x-bass`. */
export function asTitle(name: string, { text }: Wording): string {
  const whole = capitalised(inWords(name));
  const [part = '', ...members] = name.split('.');
  const known = text(whole);
  return known === whole && members.length > 0 ? [text(capitalised(inWords(part))), ...members].join(' ') : known;
}

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
