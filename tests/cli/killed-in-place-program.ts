/** The same program, but for a writer that does what ours must not: it writes into the file itself. */
import { writeFile } from 'node:fs/promises';
import { DISK } from '../../language/cli/disk.js';
import { processIo } from '../../language/cli/process-io.js';
import { run } from '../../language/cli/run.js';

const files = {
  ...DISK,
  replace: async (path: string, _: unknown, text: string) => {
    await writeFile(path, text);
    return undefined;
  },
};
process.exitCode = await run(process.argv.slice(2), { ...processIo(), files });
