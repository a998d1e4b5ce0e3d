/** Parts and properties in the words of the trade, for paper and panels: `bracing.tone-bar-1.width` is "Tone bar 1, width". */
import type { Wording } from '../wording/wording.js';

/** `Tone bar 1`, `X brace, bass`, `Bridge plate`. */
export function partInWords(part: string, wording: Wording): string {
  const { text } = wording;
  const words = part.split('.');
  const [root = '', member] = words;
  if (member !== undefined && (root === 'bracing' || root === 'back-bracing' || root === 'side-bracing')) {
    return [braceInWords(member, root, wording), ...words.slice(2).map((word) => text(inWords(word)))].join(', ');
  }
  const whole = capitalised(inWords(part));
  const known = text(whole);
  if (known !== whole || words.length === 1 || wording.language === 'en') return known;
  const [first = '', ...inner] = words.map((word, i) => text(i === 0 ? capitalised(inWords(word)) : inWords(word)));
  return [first, ...inner].join(', ');
}

/** `width`, `end height`, `taper length`. */
export function pathInWords(path: string, { text }: Wording): string {
  const whole = inWords(path);
  const known = text(whole);
  if (known !== whole) return known;
  return path
    .split('.')
    .map((word) => text(inWords(word)))
    .join(' ');
}

/** A path with its part: `Tone bar 1, width`; what belongs to the instrument as a whole by itself: `Scale`. */
export function valueInWords(path: string, partOf: (path: string) => string | undefined, wording: Wording): string {
  if (path.startsWith('mass.')) {
    const weighed = capitalised(path.slice(5).replaceAll('-', ' '));
    return `${wording.text(weighed)}, ${wording.text('mass')}`;
  }
  const part = partOf(path);
  if (part === undefined) return capitalised(pathInWords(path, wording));
  if (part === path) return partInWords(part, wording);
  return `${partInWords(part, wording)}, ${pathInWords(path.slice(part.length + 1), wording)}`;
}

/** A member keeps its number and the name its maker gave it; what the trade knows is said in the reader's language. */
function braceInWords(member: string, root: string, { text, say }: Wording): string {
  const [, name = member, number] = /^(.*?)-?(\d+)?$/.exec(member) ?? [];
  const x = /^(?:main-)?x-(.+)$/.exec(name);
  if (x) {
    const side = text(inWords(x[1]!));
    return number === undefined ? say`X brace, ${side}` : say`X brace, ${side} ${number}`;
  }
  const spaced = name === '' || (root === 'back-bracing' && name === 'back') ? 'back brace' : inWords(name);
  const known = text(capitalised(spaced));
  return number === undefined ? known : `${known} ${number}`;
}

function inWords(name: string): string {
  return name.replaceAll(/[-.]/g, ' ');
}

function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A word of the language as people read it: `french-polish` is "French polish" in the reader's language. */
export function nameInWords(name: string, { text }: Wording): string {
  return text(inWords(name));
}
