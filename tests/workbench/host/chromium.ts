import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The Chromium to drive, or `undefined` when the machine has none. `BOOKMATCH_CHROMIUM` names one outright. */
export function findChromium(env: NodeJS.ProcessEnv = process.env): string | undefined {
  if (env['BOOKMATCH_CHROMIUM']) return env['BOOKMATCH_CHROMIUM'];
  const folders = (env['PATH'] ?? '').split(delimiter).concat('/usr/bin');
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...MACOS].find(isExecutable);
}

export const HOW_TO_GET_CHROMIUM =
  'Install Chromium ("apt-get install chromium" on Debian), or set BOOKMATCH_CHROMIUM to the path of a Chromium or Chrome.';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const MACOS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
