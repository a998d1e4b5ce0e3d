/** What goes into a text: statements, slips, and characters that programs stumble over. */
import type { Dice } from './dice.js';

/** Bits typed or pasted at any place. */
const BITS: readonly string[] = [
  ...['{', '}', '}}', '"', '“', '/*', '*/', '//', ' // by hand', ':', '->', '.', ',', '-', '±', '(', '@', '½'],
  ...[
    '\n',
    '\r',
    '\r\n',
    '\n\n',
    '\t',
    '\u00A0',
    '\u2028',
    '\uFEFF',
    '\u0000',
    '\uFFFD',
    '\uD834',
    '\uDD1E',
    '𝄞',
    'e\u0301',
  ],
  ...['toString', '__proto__', 'constructor', 'unknown', 'recipe', 'model', 'wood', 'together', 'allow', 'hold'],
  ...['\n  change top.thickness: 2.80 mm -> 2.60 mm', '\n  allow 2 because "Both at once."', '\n  note "Tried."'],
  ...['\n  hold top.stiffness.along by top.thickness', '\n  expect top.mass: below 190 g', '\n  top.thickness: 2.7'],
  ...['\n}\n\nrecipe ', ' from ', ' for vennick {', '\n  top { wood: sitka-31 }', '\n  change bridge.mass: by -1 g'],
  ...['0', '7', '1/8"', ' mm', ' in', ' GPa', 'é', 'ß', '20260230'],
];

export function bit(dice: Dice): string {
  return dice.one(BITS);
}

/** A whole text made anew from another, as other programs and people on other machines leave it. */
export function rewritten(text: string, dice: Dice): string {
  const lines = text.split(/\r\n|\n|\r/);
  const at = dice.below(lines.length);
  const other = dice.below(lines.length);
  switch (dice.below(10)) {
    case 0:
      return lines.join('\r\n');
    case 1:
      return lines.join('\r');
    case 2:
      return lines.join('\n');
    case 3:
      return lines.toSpliced(at, 1).join('\n');
    case 4:
      return lines.toSpliced(at, 0, lines[other] ?? '').join('\n');
    case 5:
      return lines.with(at, (lines[at] ?? '').slice(0, dice.below(40))).join('\n');
    case 6:
      return text.startsWith('\uFEFF') ? text.slice(1) : `\uFEFF${text}`;
    case 7:
      return numberChanged(text, dice);
    case 8:
      return definitionsTurned(text, dice);
    default:
      return `${text}\n`;
  }
}

/** One number, somewhere, a little different. */
export function numberChanged(text: string, dice: Dice): string {
  const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)];
  if (numbers.length === 0) return text;
  const { index, 0: written } = dice.one(numbers);
  const value = Number(written) + (dice.below(9) - 4) * (written.includes('.') ? 0.01 : 1);
  const places = written.split('.')[1]?.length ?? 0;
  return text.slice(0, index) + Math.abs(value).toFixed(places) + text.slice(index + written.length);
}

/** The last definition comes first. */
function definitionsTurned(text: string, dice: Dice): string {
  const parts = text.split(/^(?=(?:recipe|build|wood|model|order|species|rig|strings|appointments) )/m);
  const turn = dice.below(parts.length);
  return [...parts.slice(turn), ...parts.slice(0, turn)].join('');
}
