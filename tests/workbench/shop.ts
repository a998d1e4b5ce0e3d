import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inject } from 'vitest';

/** The line, counted from 1, of the first one in a file of the shop that contains `text`. */
export function lineOf(file: string, text: string): number {
  const lines = readFileSync(join(inject('shop'), file), 'utf8').split('\n');
  const index = lines.findIndex((line) => line.includes(text));
  if (index < 0) throw new Error(`${file} has no line with "${text}".`);
  return index + 1;
}
