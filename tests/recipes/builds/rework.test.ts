/** What was done to a finished instrument between two readings. */
import { describe, expect, it } from 'vitest';
import { check, codesOf, finding } from '../../checks/marked-text.js';
import { shopOf, TOPS, VENNICK } from '../shop-of.js';

const RECIPE = `${TOPS}${VENNICK}recipe v-1 for vennick { top { wood: sitka-31  thickness: 2.8 mm } }
`;
const BUILD = `build no-31 of v-1 {
  bracing.x-bass.height: 15.8 mm
  reading day-1 { resonance.top: 183 Hz }
  rework "shaved the bass leg through the hole" { change bracing.x-bass.height: 15.8 mm -> 15.2 mm }
  reading day-2 { resonance.top: 181 Hz }
  rework "lighter pins" {
    date: 2026-03-14
    change bridge.mass: by -2 g
  }
  reading day-3 { resonance.top: 182 Hz }
}`;

describe('a rework', () => {
  const { workshop, problems } = shopOf(RECIPE + BUILD);
  const build = workshop.build('no-31')!;

  it('reads without a problem', () => {
    expect(problems()).toEqual([]);
  });

  it('holds from then on: readings know the instrument they were taken of', () => {
    expect(build.readings.map(({ name, state }) => [name, state])).toEqual([['day-1', 0], ['day-2', 1], ['day-3', 2]]); // prettier-ignore
    const height = (state: number) => build.states[state]!.values.get('bracing.x-bass.height')?.value;
    expect([0, 1, 2].map((state) => height(state))).toMatchObject([
      { quantity: { si: expect.closeTo(0.0158, 9) as number } },
      { quantity: { si: expect.closeTo(0.0152, 9) as number } },
      { quantity: { si: expect.closeTo(0.0152, 9) as number } },
    ]);
    expect(build.values.get('bridge.mass')?.value).toMatchObject({
      quantity: { si: expect.closeTo(0.025, 9) as number },
    });
  });

  it('is no departure from the recipe, which the instrument as first made is held against', () => {
    expect(build.departures.map(({ path }) => path)).toEqual(['bracing.x-bass.height']);
  });

  it('is checked like a change of a recipe', () => {
    expect(codesOf(RECIPE + BUILD).filter((code) => /change|step|rework/.test(code))).toEqual([]);
    const stale = check(
      RECIPE + BUILD.replace('change bracing.x-bass.height: 15.8 mm', 'change bracing.x-bass.height: 15 mm'),
    );
    expect(finding(stale, 'stale-change').message).toContain('no-31 has 15.8 mm for bracing.x-bass.height, not 15 mm');
    const nothing = BUILD.replace('change bridge.mass: by -2 g', 'change back.thickness: 2.4 mm -> 2.2 mm');
    expect(codesOf(RECIPE + nothing)).toContain('change-of-nothing');
  });

  it('says what is missing when half typed, and loses nothing', () => {
    const half = shopOf(`${RECIPE}build no-1 of v-1 {\n  rework\n  reading day-1 { resonance.top: 183 Hz }\n}`);
    expect(
      half
        .problems()
        .map(({ message }) => message)
        .join(),
    ).toContain('After `rework` say what was done');
    expect(half.workshop.build('no-1')!.readings).toHaveLength(1);
    const bare = shopOf(`${RECIPE}build no-1 of v-1 { rework { change bridge.mass: 27 g -> 25 g } }`);
    expect(bare.workshop.build('no-1')!.states).toHaveLength(2);
  });
});
