/** What the bench sets by, on the path a maker takes: written in a recipe, computed with its name. */
import { describe, expect, it } from 'vitest';
import { bracedShop } from './braced-shop.js';

const shop = bracedShop(`recipe v-2 for vennick {
  because "Set up."
  top { wood: sitka-31  thickness: 2.80 mm }
  setup { action { bass: 2.4 mm  treble: 1.8 mm }  string-height: 12.5 mm }
  fingerboard.thickness: 6 mm
  nut { width: 44.5 mm  string-spread: 38 mm }
}
`);
const evaluation = shop.workshop.evaluation('v-2')!;
const mm = (path: string) => evaluation.number(path)! * 1000;

describe('heights and angle', () => {
  it('half the height at the saddle is over the twelfth fret, with half of that at the nut', () => {
    // A straight string over a straight neck: (0.4 + h)/2 = action.
    expect(mm('setup.saddle-height.bass')).toBeCloseTo(2 * 2.4 - 0.4, 6);
    expect(mm('setup.saddle-height.treble')).toBeCloseTo(2 * 1.8 - 0.4, 6);
    expect(mm('setup.projection')).toBeCloseTo(12.5 - 3.8, 6);
  });

  it('the neck angle is what brings the frets up to their projection', () => {
    // Common practice for a fourteen-fret steel-string: half a degree to two.
    const degrees = (evaluation.number('neck.angle')! * 180) / Math.PI;
    const rise = 8.7 - 6 - 1.1;
    expect(degrees).toBeCloseTo(
      (Math.atan(rise / (1000 * evaluation.number('scale')! * 2 ** (-14 / 12))) * 180) / Math.PI,
      6,
    );
  });
});

describe('strings', () => {
  it('setback grows from the highest string to the lowest plain one, within what makers find: 0.5 to 6 mm', () => {
    const members = evaluation.ground.members('strings');
    const setbacks = members.map((member) => mm(`strings.${member}.setback`));
    for (const setback of setbacks) {
      expect(setback).toBeGreaterThan(0.4);
      expect(setback).toBeLessThan(6);
    }
    expect(setbacks[1]).toBeGreaterThan(setbacks[0]!);
  });

  it('lie in the nut as far apart as told, evenly about its middle', () => {
    const places = ['1', '2', '3', '4', '5', '6'].map((member) => mm(`strings.${member}.at-nut`));
    expect(places[0]! - places[5]!).toBeCloseTo(38, 6);
    expect((places[0]! + places[5]!) / 2).toBeCloseTo(22.25, 0);
  });
});
