// The parser is generated from the grammar. Whatever bundles, runs or tests the language asks for it here first: code with
// the parser of an older grammar would misread files, and say nothing of it.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

const MADE_FROM = [
  'language/grammar/bookmatch.langium',
  'langium-config.json',
  'node_modules/langium-cli/package.json',
];
const MADE = ['ast.ts', 'grammar.ts', 'module.ts'].map((name) => join('language/grammar/generated', name));
/** Which files were last seen to belong together. Not beside the parser: the generator asks about files it does not know. */
const SEEN = '.cache/grammar.txt';

/** Generates the parser anew unless it is the one made from the grammar as it stands. Throws where that fails. */
export function freshGrammar(root = '.') {
  const seen = join(root, SEEN);
  const isThere = MADE.every((file) => existsSync(join(root, file)));
  if (isThere && existsSync(seen) && readFileSync(seen, 'utf8') === printOf(root)) return;
  // On the Node that npm brings: the machine's own may be too old for the generator.
  const node = resolve(root, 'node_modules/node/bin/node');
  const generator = resolve(root, 'node_modules/langium-cli/bin/langium.js');
  const command = existsSync(node) ? node : process.execPath;
  const made = spawnSync(command, [generator, 'generate'], { cwd: root, encoding: 'utf8' });
  if (made.status !== 0) {
    throw new Error(
      `The parser could not be generated from ${MADE_FROM[0]}:\n${made.stdout ?? ''}${made.stderr ?? ''}`,
    );
  }
  mkdirSync(dirname(seen), { recursive: true });
  writeFileSync(seen, printOf(root));
}

function printOf(root) {
  const hash = createHash('sha256');
  for (const file of [...MADE_FROM, ...MADE]) hash.update(readFileSync(join(root, file))).update('\0');
  return hash.digest('hex');
}
