/**
 * Writes `language/mechanics/plate/continuity.md`: node esbuild.config.mjs run tests/published/plate/continuity/write.ts [TOP]
 * With the name of a top only its rows are made anew, with `missing` only those that are not there yet; the others stay.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { format, resolveConfig } from 'prettier';
import { FIVE_TOPS, MOVES } from './five-tops.js';
import { roughness, WANTED } from './sweeps.js';

const FILE = 'language/mechanics/plate/continuity.md';
const HEAD = `# How smoothly the top solver's answers move

Made by \`tests/published/plate/continuity/write.ts\`; do not edit. One size moves by ± 15 mm in steps of half a millimetre, on five
tops. Each number is the greatest second difference between neighbouring steps, percent of the value. Wanted: ${WANTED[0]} for the
first mode, ${WANTED[1]} for the rotation of the bridge, ${WANTED[2]} for dip and belly; what is over is in bold. A curve bends by itself
too: some hundredths of a percent where nothing jumps. \`continuity.test.ts\` beside the script repeats a few of these.

| top | what moves | first mode | rotation | dip | belly |
| --- | --- | ---: | ---: | ---: | ---: |`;

const known = rowsOf(FILE);
const only = process.argv[2];
for (const { name } of FIVE_TOPS) {
  if (only !== undefined && only !== 'missing' && only !== name) continue;
  for (const move of Object.keys(MOVES)) {
    if (only === 'missing' && known.has(`${name} ${move}`)) continue;
    const cells = roughness(name, move, 15, 0.5).map((value, i) => {
      const text = value.toFixed(2);
      return value > WANTED[i]! ? `**${text}**` : text;
    });
    known.set(`${name} ${move}`, `| ${name} | ${move} | ${cells.join(' | ')} |`);
    await write();
  }
}

/** After every row: a sweep takes its time. */
async function write(): Promise<void> {
  const rows = FIVE_TOPS.flatMap(({ name }) =>
    Object.keys(MOVES).flatMap((move) => known.get(`${name} ${move}`) ?? []),
  );
  const text = `${HEAD}\n${rows.join('\n')}\n`;
  writeFileSync(FILE, await format(text, { ...(await resolveConfig(FILE)), parser: 'markdown' }));
}

function rowsOf(file: string): Map<string, string> {
  try {
    const lines = readFileSync(file, 'utf8').split('\n');
    const cells = lines
      .filter((line) => line.startsWith('|'))
      .map((line) => line.split('|').map((cell) => cell.trim()));
    return new Map(cells.slice(2).map((row) => [`${row[1]} ${row[2]}`, row.join(' | ').trim()]));
  } catch {
    return new Map();
  }
}
