/** What rides on the plates is in masses, balance and modes. */
import { describe, expect, it } from 'vitest';
import { bracedShop } from './braced-shop.js';

const recipe = (name: string, from: string, line: string) =>
  `recipe ${name} from ${from} { because "Why."  ${line} }\n`;
const { workshop } = bracedShop(
  [
    recipe('thin', 'v-1', 'finish { system: nitrocellulose  film: 0.06 mm }'),
    recipe('thick', 'thin', 'change finish.film: 0.06 mm -> 0.2 mm'),
    recipe('stiff', 'thick', 'finish.modulus: 2 GPa'),
    recipe('guarded', 'v-1', 'pickguard { material: "celluloid"  mass: 18 g }'),
    recipe('wired', 'v-1', 'electronics.pickup { kind: soundboard  mass: 12 g  on: top }'),
    recipe('ringed', 'v-1', 'rosette.mass: 9 g'),
    recipe('weighed', 'v-1', 'electronics.battery { mass: 45 g  on: neck-block }'),
  ].join(''),
);
const number = (name: string, path: string) => workshop.inFull(name)!.number(path)!;

describe('a finish', () => {
  it('of 0.2 mm in place of 0.06 mm weighs on the top and lowers its resonance', () => {
    // 0.14 mm at 1200 kg/m³ (common practice) on the area of the top.
    const added = 0.14e-3 * 1200 * number('thin', 'top.area');
    expect(added).toBeGreaterThan(0.018);
    const [before, after] = ['thin', 'thick'].map((name) => number(name, 'top.main-resonance'));
    // Rayleigh: f ∝ 1/√M with the mass spread evenly over plate, braces and bridge, give or take where they lie.
    const mass = number('thin', 'top.braced-mass') + 0.027;
    const even = 1 / Math.sqrt(1 + added / mass);
    expect(after! / before!).toBeLessThan(1 - 0.5 * (1 - even));
    expect(after! / before!).toBeGreaterThan(1 - 2 * (1 - even));
  });

  it('counts when it can be told', () => {
    const count = workshop.count('thick');
    expect(count.variables.map(({ variable, verdict }) => `${variable.label} ${verdict}`)).toEqual([
      'finish.film promoted',
    ]);
  });

  it('that is known to be stiff raises it again', () => {
    expect(number('stiff', 'top.main-resonance')).toBeGreaterThan(number('thick', 'top.main-resonance'));
  });

  it('knows its slope', () => {
    const evaluation = workshop.inFull('thin')!;
    const slope = evaluation.gradient('top.main-resonance').get('finish.film')!;
    const step = (number('thick', 'top.main-resonance') - number('thin', 'top.main-resonance')) / 0.14e-3;
    expect(slope / step).toBeGreaterThan(0.9);
    expect(slope / step).toBeLessThan(1.25); // the curve is steeper at its beginning
  });
});

describe('a device, a guard and a rosette', () => {
  it('that sit on the top lower it; one on the neck block does not', () => {
    const bare = number('v-1', 'top.main-resonance');
    for (const name of ['guarded', 'wired', 'ringed'])
      expect(number(name, 'top.main-resonance'), name).toBeLessThan(bare);
    expect(number('weighed', 'top.main-resonance')).toBe(bare);
  });

  it('know their slopes', () => {
    const [lighter, heavier] = ['17 g', '19 g'].map((mass) =>
      workshop
        .evaluateInFull(
          bracedShop(recipe('other', 'v-1', `pickguard { material: "celluloid"  mass: ${mass} }`)).workshop.instrument(
            'other',
          )!.values,
        )
        .number('top.main-resonance')!,
    );
    const slope = workshop.inFull('guarded')!.gradient('top.main-resonance').get('pickguard.mass')!;
    expect(slope / ((heavier! - lighter!) / 0.002)).toBeCloseTo(1, 2);
  });
});
