/** A table of what many made-up shops show: `node esbuild.config.mjs run tests/recipes/builds/simulate.ts [SHOPS]`. */
import type { Kind } from './made-shops.js';
import { median, tallyOf } from './simulation.js';

const shops = Number(process.argv[2] ?? 200);
const share = (part: number, whole: number) => (whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`);
console.log(
  '| shops | effects | builds alone hold the truth | together hold it | together, where not told to disagree | width against builds alone | wrong beyond both, told so | right, told to disagree | stand out | shops with any |',
);
console.log('|---|---|---|---|---|---|---|---|---|---|');
for (const kind of ['computed right', 'computed half', 'confounded', 'drifting', 'nothing'] as const satisfies Kind[]) {
  const t = tallyOf(kind, shops);
  console.log(
    `| ${kind} | ${t.effects} | ${share(t.builds, t.effects)} | ${share(t.both, t.effects)} | ${share(t.bothAgreeing, t.agreeing)} | ${median(t.ratios).toFixed(2)} | ${share(t.wrongTold, t.wrong)} of ${t.wrong} | ${share(t.falseAlarms, t.effects)} | ${share(t.standOut, t.effects)} | ${share(t.shopsWithAlarm, shops)} |`,
  );
}
