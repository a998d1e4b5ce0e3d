/** `bookmatch rules`: what a finding means. */
import { rulePage, rulePages } from '../checks/manual.js';
import { didYouMean } from '../quantities/suggest.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { table } from './text/layout.js';
import { styleFor } from './text/style.js';

export function rules(code: string | undefined, io: Io): number {
  const style = styleFor(io);
  if (code === undefined) {
    const rows = rulePages().map((page) => [
      page.code,
      { text: page.severity, paint: (text: string) => style.severity(page.severity, text) },
      page.title,
    ]);
    io.write(`${table(rows, { indent: 0 }).join('\n')}\n`);
    return EXIT.fine;
  }
  const page = rulePage(code);
  if (page === undefined) {
    const near = didYouMean(
      code,
      rulePages().map((each) => each.code),
    );
    const hint = near.length > 0 ? `Did you mean ${near.join(' or ')}?` : '`bookmatch rules` lists them all.';
    throw new WrongUse(`There is no finding with the code ${code}. ${hint}`);
  }
  io.write(`${page.trimEnd()}\n`);
  return EXIT.fine;
}
