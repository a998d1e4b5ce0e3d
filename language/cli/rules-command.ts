/** `bookmatch rules`: what a finding means. */
import { rulePage, rulePages } from '../checks/manual.js';
import { didYouMean } from '../quantities/suggest.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { table } from './text/columns.js';
import { styleFor } from './text/style.js';
import { sentences } from '../wording/wording.js';

export function rules(code: string | undefined, io: Io): number {
  const style = styleFor(io);
  const { say, or, text } = io.wording;
  if (code === undefined) {
    const rows = rulePages().map((page) => [
      page.code,
      { text: text(page.severity), paint: (word: string) => style.severity(page.severity, word) },
      text(page.title),
    ]);
    io.print(`${table(rows, { indent: 0 }).join('\n')}\n`);
    return EXIT.fine;
  }
  const page = rulePage(code, io.wording);
  if (page === undefined) {
    const near = didYouMean(
      code,
      rulePages().map((each) => each.code),
    );
    const hint = near.length > 0 ? say`Did you mean ${or(near)}?` : say`\`bookmatch rules\` lists them all.`;
    throw new WrongUse(sentences(say`There is no finding with the code ${code}.`, hint));
  }
  io.print(`${page.trimEnd()}\n`);
  return EXIT.fine;
}
