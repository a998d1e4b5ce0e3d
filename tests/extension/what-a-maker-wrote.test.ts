/**
 * Names, reasons and texts where VS Code would make something of their signs. Its own expressions, from memory of its source (MIT):
 * `base/common/iconLabels.ts` for `$(icon)`, `base/common/linkedText.ts` for links in messages.
 */
import { expect, it } from 'vitest';
import { inLabel, inMessage } from '../../language/server/protocol.js';

const ICON = /(\\)?\$\(([A-Za-z0-9-]+(?:~[A-Za-z]+)?)\)/g;
const LINK = /\[([^\]]+)\]\(((?:https?:\/\/|command:|file:)[^)\s]+)(?: (["'])(.+?)(\3))?\)/gi;

const HOSTILE = [
  '$(bug)',
  '$(sync~spin) busy',
  '$$(bug) $((bug)) $(bug',
  '[here](command:workbench.action.quit)',
  '[a][b](command:x) [c](https://example.org "d")',
  '[x](file:///etc/passwd)',
  '\\$(bug) \\[x](command:y)',
];

/** As VS Code shows a label: what follows a backslash is left as it stands. */
const iconsIn = (label: string) => [...label.matchAll(ICON)].filter(([, escaped]) => escaped === undefined);

it.each(HOSTILE)('%s is words in a label and in a message', (text) => {
  expect(iconsIn(inLabel(text))).toEqual([]);
  expect(inMessage(text).match(LINK)).toBeNull();
});

it('leaves what makers write as it is', () => {
  for (const text of ['no-31', 'Lower the X (a little)', 'costs $ 300', 'vennick-38 [spare]']) {
    expect([inLabel(text), inMessage(text)]).toEqual([text, text]);
  }
});
