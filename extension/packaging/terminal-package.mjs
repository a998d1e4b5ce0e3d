/** What npm needs beside the program of the terminal: its manifest, a page to read, the licence. */
import { copyFileSync, cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Writes them into `folder`, in which the program lies already; `manifest` is that of the extension. */
export function writeTerminalPackage(folder, { name, version, license, engines }) {
  const own = {
    name,
    version,
    description: 'Checks, shows and compares build recipes for acoustic guitars.',
    license,
    type: 'module',
    bin: { [name]: './bookmatch.mjs' },
    files: ['bookmatch.mjs', 'third-party-notices.txt', 'schemas'],
    engines: { node: engines.node },
  };
  writeFileSync(join(folder, 'package.json'), `${JSON.stringify(own, null, 2)}\n`);
  writeFileSync(join(folder, 'README.md'), PAGE);
  copyFileSync('LICENSE', join(folder, 'LICENSE'));
  cpSync('language/cli/json/schemas', join(folder, 'schemas'), { recursive: true });
}

const PAGE = `# Bookmatch in the terminal

Build recipes for acoustic guitars, checked, shown and compared without an editor. One file, nothing else to install.

\`\`\`sh
bookmatch check                    # every finding of the folder; exit code 1 when there are errors
bookmatch show NAME                # a recipe, build, model, wood or set of strings, in half a page
bookmatch compare A B              # what differs, what that does, and whether anybody could tell
bookmatch --help
\`\`\`

What \`--format json\` prints is described in \`schemas\` (JSON Schema 2020-12).

What the language says and how to write it: the page of the extension of the same name for VS Code.
`;
