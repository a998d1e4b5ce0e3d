import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatch } from './terminal.js';

/** Without bodies and braces, so that nothing has to be solved: readings only. */
const READ = {
  'line.bookmatch': `shop wick { title: "Wick Lane"  vary at most 1 }
model corrie { scale: 645 mm  bridge.mass: 27 g  bracing.wood: billet-1 }
wood billet-1 is sitka-spruce { use: brace }
wood billet-2 is sitka-spruce { use: brace }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
recipe corrie-2 from corrie-1 { because "Thinner."  change top.thickness: 2.8 mm -> 2.6 mm }
build no-1 of corrie-1 { reading day-1 { resonance.top: 183 Hz } }
build no-2 of corrie-1 { reading day-1 { resonance.top: 181 Hz } }
build no-3 of corrie-1 { reading day-1 { resonance.top: 182 Hz } }
build no-4 of corrie-2 { bracing.wood: billet-2  reading day-1 { resonance.top: 170 Hz } }`,
};

describe('effects', () => {
  it('tells for each build what its change did, against the noise floor of the replicates', async () => {
    const { out, code } = await bookmatch(READ, 'effects');
    expect(code).toBe(0);
    expect(out).toContain('no-4, corrie-2: top.thickness');
    expect(out).toContain('against no-1, no-2 and no-3');
    expect(out).toMatch(/resonance\.top day-1 +170 Hz +182 Hz +−12 Hz +lower +±5 Hz +– +stands out/);
    expect(out).toContain('bracing.wood is billet-2 in no-4 and billet-1 in no-3: no recipe declares it.');
    // Replicates show no effect.
    expect(out).not.toMatch(/^no-[123],/m);
  });

  it('of one build, recipe or model, as data too', async () => {
    const { out } = await bookmatch(READ, 'effects', 'corrie-2', '--format', 'json');
    const { effects } = JSON.parse(out) as { effects: { build: string; rows: { shares: { difference: number } }[] }[] };
    expect(effects.map(({ build }) => build)).toEqual(['no-4']);
    expect(effects[0]!.rows[0]!.shares.difference).toBeCloseTo(170 / 182 - 1, 3);
  });

  it('says what it takes where no build can be held against another', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'effects');
    expect(code).toBe(0);
    expect(out).toContain('No build can be held against an earlier one yet');
  });

  it('is wrong use for a name that is not there', async () => {
    const { err, code } = await bookmatch(READ, 'effects', 'corrie-22');
    expect(code).toBe(2);
    expect(err).toContain('corrie-2');
  });
});

describe('sheet', () => {
  const shop = Object.fromEntries(
    readdirSync('examples/hollin-reach').map((name) => [
      name,
      readFileSync(join('examples/hollin-reach', name), 'utf8'),
    ]),
  );

  it('is a page for the browser, the bench sheet unless another is asked for', async () => {
    const { out, code } = await bookmatch(shop, 'sheet', 'vennick-38');
    expect(code).toBe(0);
    expect(out).toMatch(/^<!DOCTYPE html>/);
    expect(out).toContain('<h1>Bench sheet: vennick-38</h1>');
    expect((await bookmatch(shop, 'sheet', 'vennick-38', '--kind', 'papers')).out).toContain('Picea abies');
  });

  it('is plain data where that is asked for', async () => {
    const { out } = await bookmatch(shop, 'sheet', 'vennick-38', '--kind', 'care', '--format', 'json');
    expect(JSON.parse(out)).toMatchObject({ sheet: { kind: 'care', title: 'Setup and care: vennick-38' } });
  });

  it('is wrong use for an unknown name or kind', async () => {
    expect((await bookmatch(shop, 'sheet', 'nobody')).code).toBe(2);
    expect((await bookmatch(shop, 'sheet', 'vennick-38', '--kind', 'poster')).code).toBe(2);
  });
});
