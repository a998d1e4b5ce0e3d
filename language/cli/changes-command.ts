/** `bookmatch changes`: what edits to the texts since a commit did to the instruments. */
import { folderChanges, type Range } from '../reports/history/folder-changes.js';
import { finished, forJson } from './border.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { Opener } from './open-shop.js';
import { changesAsMarkdown } from './text/changes-markdown.js';
import { changesAsText } from './text/changes-text.js';
import { styleFor } from './text/style.js';

export const CHANGES_FORMATS = ['text', 'markdown', 'json'] as const;

export interface ChangesOptions {
  readonly format: (typeof CHANGES_FORMATS)[number];
  readonly in: string;
}

/** `asked`: `REV..REV`, `REV..` or `REV` up to the files as they are; without it, since the last commit. */
export async function changes(asked: string | undefined, options: ChangesOptions, io: Io): Promise<number> {
  const { from, to } = rangeOf(asked ?? 'HEAD', io);
  const opener = new Opener(io);
  const before = await opener.openAt(options.in, from);
  const after = to === undefined ? await opener.open(options.in) : await opener.openAt(options.in, to);
  const found = io.busy(io.wording.text('Computing both'), () => folderChanges(before.workshop, after.workshop));
  const range = { from, ...(to === undefined ? {} : { to }) };
  if (options.format === 'json') io.write(forJson({ ...range, ...found }));
  else if (options.format === 'markdown') io.write(finished(changesAsMarkdown(found, range, io.wording)));
  else io.print(changesAsText(found, range, styleFor(io)));
  return EXIT.fine;
}

function rangeOf(asked: string, { wording: { say } }: Io): Range {
  const [from = '', to = '', ...more] = asked.split('..');
  if (more.length > 0 || to.startsWith('.'))
    throw new WrongUse(say`Two commits are written ${'REV..REV'}, with two dots.`);
  return { from: from === '' ? 'HEAD' : from, ...(to === '' ? {} : { to }) };
}
