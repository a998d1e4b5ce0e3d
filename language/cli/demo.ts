/** The main job on the example shop: every finding, two instruments side by side, and how to go on from there. */
import { resolve } from 'node:path';
import { check } from './check-command.js';
import { compare } from './compare-command.js';
import type { Io } from './io.js';
import { styleFor } from './text/style.js';

export const EXAMPLE_SHOP = 'examples/hollin-reach';
const [A, B] = ['vennick-37', 'vennick-38'];

/** Answers 0 when everything could be shown: the example shop has slips on purpose. */
export async function demonstrate(io: Io): Promise<number> {
  const style = styleFor(io);
  const command = (text: string) => io.print(`\n${style.bold(`$ bookmatch ${text}`)}\n\n`);
  const { say, text } = io.wording;
  io.print(`${say`The example shop in ${EXAMPLE_SHOP} has a history, and slips a real shop would make.`}\n`);
  command(`check ${EXAMPLE_SHOP}`);
  await check([EXAMPLE_SHOP], { format: 'text', failOn: 'error' }, io);
  command(`compare ${A} ${B} --in ${EXAMPLE_SHOP}`);
  const code = await compare(A, B, { format: 'text', in: EXAMPLE_SHOP }, io);
  io.print(
    [
      '',
      style.bold(text('To open the shop and edit it:')),
      `  npm run try              ${text('opens it in an editor in the browser, nothing else to install')}`,
      `  npm run package          ${text('makes the extension for VS Code; then:')}`,
      '    code --install-extension bookmatch.vsix',
      `    code ${resolve(io.cwd, EXAMPLE_SHOP)}`,
      '',
    ].join('\n'),
  );
  return code;
}
