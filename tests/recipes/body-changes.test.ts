/** A port, a cutaway and a mass at the bridge move the body's resonances, through the recipe, the way and as far as the closed forms say. */
import { describe, expect, it } from 'vitest';
import { rigidAirFrequency } from '../../language/mechanics/body/air.js';
import { bracedShop } from './braced-shop.js';

function after(change: string) {
  const { workshop } = bracedShop(`recipe v-2 from v-1 { because "To hear it."  ${change} }`);
  const [before, now] = ['v-1', 'v-2'].map((name) => workshop.inFull(name)!);
  const both = (path: string) => [before!.number(path)!, now!.number(path)!] as const;
  return { both, ratio: (path: string) => both(path)[1] / both(path)[0] };
}

describe('the body', () => {
  it('with a port breathes higher: the air by what the second opening adds, coupled as well', () => {
    const { both, ratio } = after('port.area: 12 cm²');
    const [volume] = both('body.volume');
    const hole = { area: (Math.PI / 4) * 0.101 ** 2, thickness: 0.0028 };
    const port = { area: 12e-4, thickness: 0.0021 };
    const air = (openings: (typeof hole)[]) => rigidAirFrequency({ volume, openings, celsius: 20 });
    expect(ratio('resonance.rigid-air')).toBeCloseTo(air([hole, port]) / air([hole]), 6);
    expect(ratio('resonance.air')).toBeGreaterThan(1.005);
    // Walls that give way take part of what the opening does to the air.
    expect(ratio('resonance.air')).toBeLessThan(ratio('resonance.rigid-air'));
  });

  it('with a cutaway holds less air and breathes higher, by the root of the volume', () => {
    const { both, ratio } = after('add cutaway { kind: venetian  depth: 60 mm }');
    expect(ratio('body.volume')).toBeLessThan(0.995);
    expect(ratio('resonance.rigid-air')).toBeCloseTo(Math.sqrt(both('body.volume')[0] / both('body.volume')[1]), 6);
    expect(ratio('resonance.air')).toBeGreaterThan(1);
  });

  it('with more mass at the bridge has a lower top: by the root of the mass that moves', () => {
    const { both, ratio } = after('change bridge.mass: 27 g -> 37 g');
    const [mass, heavier] = both('top.effective-mass');
    expect(heavier - mass).toBeGreaterThan(0.005);
    expect(heavier - mass).toBeLessThan(0.012);
    // The shape follows a little, and the stiffness with it.
    expect(Math.abs(ratio('top.main-resonance') - Math.sqrt(mass / heavier))).toBeLessThan(0.01);
    expect(ratio('top.main-resonance')).toBeLessThan(0.99);
    expect(ratio('resonance.top')).toBeLessThan(0.995);
  });
});
