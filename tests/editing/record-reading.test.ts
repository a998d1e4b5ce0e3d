/** A reading set down at the bench goes into its build, in its place, with what held last time. */
import { describe, expect, it } from 'vitest';
import { readableOf, recordReading } from '../../language/editing/record-reading.js';
import { deskOf, VENNICK } from './desk-of.js';

const BUILD = `build no-7 of v-31 {
  hygrometer: bench
  reading plate { stage: free-plate   humidity: 45 %RH   rig: r2   deflection.along: 7.3 mm }   // on the old rig
  note "Stiff."
}
`;
const TAKEN = {
  build: 'no-7',
  stage: 'free-plate',
  date: '2026-11-30',
  humidity: '46 %RH',
  values: [
    { path: 'top.thickness', value: '2.94 mm' },
    { path: 'deflection.along', value: '7.1 mm' },
  ],
};

function after(build: string, taken: Partial<typeof TAKEN> = {}): string {
  const desk = deskOf(build, VENNICK);
  const made = recordReading(desk, { ...TAKEN, ...taken })!;
  if ('reason' in made) return made.reason;
  const [edit] = made.edits;
  const lines = build.split('\n');
  const { line, character } = edit!.place.span.start;
  const at = lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0) + character;
  return build.slice(0, at) + edit!.text + build.slice(at);
}

describe('a reading', () => {
  it('stands behind the last one, with its date, and hygrometer and rig of last time', () => {
    const written = after(BUILD).split('\n');
    expect(written[2]).toContain('// on the old rig');
    expect(written[3]).toBe(
      '  reading free-plate-2026-11-30 { stage: free-plate   date: 2026-11-30   humidity: 46 %RH   hygrometer: bench   rig: r2   top.thickness: 2.94 mm   deflection.along: 7.1 mm }',
    );
    expect(written[4]).toContain('note');
  });

  it('is read back as it was taken', () => {
    const { workshop } = deskOf(after(BUILD), VENNICK);
    const last = workshop.build('no-7')!.readings.at(-1)!;
    expect(last.values.get('top.thickness')?.value).toMatchObject({ quantity: { si: 0.00294 } });
    expect(last.conditions.get('date')?.value).toMatchObject({ date: '2026-11-30' });
  });

  it('has a name of its own where the day has one already, and goes into an empty build and one of one line', () => {
    expect(after(after(BUILD))).toContain('reading free-plate-2026-11-30-2 {');
    expect(after('build no-7 of v-31 {\n}\n')).toContain('reading free-plate-2026-11-30 {');
    const one = after('build no-7 of v-31 { serial: "7" }\n');
    expect(one).toMatch(/serial: "7" {2}reading .* \} \}$/m);
  });

  it('writes nothing that is no reading, and says so', () => {
    expect(after(BUILD, { values: [] })).toContain('Nothing was read');
    expect(after(BUILD, { values: [{ path: 'top.thickness', value: '2.9 mm } recipe x {' }] })).toContain(
      'is no reading',
    );
    expect(recordReading(deskOf(VENNICK), TAKEN)).toBeUndefined();
  });
});

it('what can be read is named in words, brace by brace', () => {
  const stages = readableOf(deskOf(BUILD, VENNICK), 'no-7')!;
  expect(stages.map(({ stage }) => stage)).toEqual(['free-plate', 'braced', 'box-closed', 'in-the-white', 'strung']);
  expect(stages[1]!.values[0]).toEqual({ path: 'bracing.x-bass.height', title: 'X brace, bass, height', unit: 'mm' });
});
