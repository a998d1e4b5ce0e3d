/** Refactorings within one recipe: a plain value as a change, another unit, a group, appointments of their own. */
import { describe, expect, it } from 'vitest';
import { VENNICK } from '../desk-of.js';
import { after, offersIn } from './marked-desk.js';

const line = (body: string) => `recipe v-32 from v-31 {\n  because "Lighter."\n${body}\n}\n`;
const done = (title: string, body: string, ...others: readonly string[]) => {
  const texts = after(offersIn(line(body), VENNICK, ...others), title);
  return typeof texts === 'string' ? texts : texts[0];
};

describe('write as a change', () => {
  it('takes the old value from the parent, in a block too', () => {
    expect(done('Write as a change', '  top { thick$0ness: 2.7 mm }')).toBe(
      line('  top { change thickness: 2.80 mm -> 2.7 mm }'),
    );
    expect(done('Write as a change', '  bridge.mass: $025 g // lighter')).toBe(
      line('  change bridge.mass: 27 g -> 25 g // lighter'),
    );
  });

  it('does all that are marked', () => {
    expect(done('Write 2 values', '  $0bridge.mass: 25 g\n  top.thickness: 2.7 mm$0')).toBe(
      line('  change bridge.mass: 27 g -> 25 g\n  change top.thickness: 2.80 mm -> 2.7 mm'),
    );
  });

  it('says why not: nothing to change, nothing that changes, a source that would be lost', () => {
    expect(done('Write as a change', '  top.edge-thick$0ness: 2.4 mm')).toContain('v-31 has no top.edge-thickness');
    expect(done('Write as a change', '  bridge.ma$0ss: 27 g')).toContain('already has 27 g');
    expect(done('Write as a change', '  bridge.ma$0ss: 25 g per "scales"')).toContain('no place for a source');
    expect(done('Write as a change', '  bridge.ma$0ss: 25 g\n  scale blah blah')).toContain('cannot be read');
  });

  it('is not offered where there is no plain value', () => {
    const { offers } = offersIn(line('  change bridge.mass: 27 g -> 2$05 g'), VENNICK);
    expect(offers.some(({ title }) => title.includes('as a change'))).toBe(false);
  });
});

describe('convert units', () => {
  const units = (body: string) =>
    offersIn(line(body), VENNICK)
      .offers.filter(({ title }) => /^Write (in |[\d.-]+ [^v]|\d+\/\d+ in$)/.test(title))
      .map(({ title }) => title);

  it('the other system first, then whatever else measures the same', () => {
    expect(units('  bridge.length: 6 i$0n').slice(0, 3)).toEqual(['Write 152.4 mm', 'Write 6000 thou', 'Write 0.5 ft']);
    expect(units('  top.thickness: 3.17$05 mm')[0]).toBe('Write 0.125 in');
    expect(units('  top.thickness: 1.984375$0 mm')[0]).toBe('Write 5/64 in');
  });

  it('the old value, a range, a size, a point, a tolerance: whole', () => {
    expect(done('Write 1.25 in', '  change top.thickness: 31.75 m$0m -> 27 mm')).toBe(
      line('  change top.thickness: 1.25 in -> 27 mm'),
    );
    // Nobody notes 1.1023622047 in, or 28000 µm.
    expect(units('  change top.thickness: 28 m$0m -> 27 mm')).toEqual(['Write 2.8 cm', 'Write 0.028 m']);
    expect(done('Write in in', '  expect top.sag: 2.54..5.08 m$0m')).toBe(line('  expect top.sag: 0.1 in..0.2 in'));
    expect(done('Write in in', '  bracing.x-bass.from: (2$054 mm, -127 mm)')).toBe(
      line('  bracing.x-bass.from: (10 in, -5 in)'),
    );
    expect(done('Write 0.1 in', '  top.thickness: 2.5$04 mm ± 0.0254 mm')).toBe(
      line('  top.thickness: 0.1 in ± 0.001 in'),
    );
  });

  it('not of a pure number, a share, or two values at once', () => {
    expect(units('  change top.thickness: by -$05 %')).toEqual([]);
    expect(units('  $0bridge.mass: 25 g\n  top.thickness: 2.7 mm$0')).toEqual([]);
  });
});

describe('group as one tweak', () => {
  it('lines that follow one another are wrapped with their comments', () => {
    expect(
      done(
        'Group',
        '  $0change bridge.mass: 27 g -> 25 g // so\n  // and\n  change top.thickness: 2.80 mm -> 2.7 mm$0 // on',
      ),
    ).toBe(
      line(
        '  together "" {\n    change bridge.mass: 27 g -> 25 g // so\n    // and\n    change top.thickness: 2.80 mm -> 2.7 mm // on\n  }',
      ),
    );
  });

  it('lines apart come together where the first stands', () => {
    expect(
      done(
        'Group',
        '  change $0bridge.mass: 27 g -> 25 g\n  note "x"\n  top {\n    change thickness: 2.80 mm ->$0 2.7 mm\n  }',
      ),
    ).toBe(
      line(
        '  together "" {\n    change bridge.mass: 27 g -> 25 g\n    change top.thickness: 2.80 mm -> 2.7 mm\n  }\n  note "x"',
      ),
    );
  });

  it('says why not', () => {
    expect(done('Group', '  $0change bridge.mass: 27 g -> 25 g$0')).toContain('two changes at least');
    expect(done('Group', '  $0together "x" { top.thickness: 2.7 mm }\n  bridge.mass: 25 g$0')).toContain(
      'in a group already',
    );
    expect(done('Group', '  $0with ember\n  bridge.mass: 25 g$0', 'appointments ember { rosette: "red" }')).toContain(
      'Leave them out',
    );
  });
});

describe('appointments of their own', () => {
  it('everything the player sees or plugs in, from the cursor; the recipe takes it up', () => {
    const body =
      '  rosette: $0"red band"\n  bridge.mass: 25 g\n  electronics { pickup { kind: "under-saddle"  mass: 12 g } }';
    expect(done('Move to appointments', body)).toBe(
      `appointments v-32-appointments {\n  rosette: "red band"\n  electronics.pickup.kind: "under-saddle"\n  electronics.pickup.mass: 12 g\n}\n\n${line('  with v-32-appointments\n  bridge.mass: 25 g')}`,
    );
  });

  it('refuses what belongs to the recipe, and is not offered elsewhere', () => {
    expect(done('Move to appointments', '  $0rosette: "red"\n  bridge.mass: 25 g$0')).toContain(
      'bridge.mass is no appointment',
    );
    const { offers } = offersIn(line('  rosette: "red"\n  bridge.mass: 2$05 g'), VENNICK);
    expect(offers.some(({ title }) => title.startsWith('Move to'))).toBe(false);
  });

  const order = (...lines: readonly string[]) =>
    `order c-07 of v-31 {\n  agreed: 2026-02-03\n${lines.map((each) => `  ${each}\n`).join('')}}\n`;
  const asked = (...lines: readonly string[]) => {
    const texts = after(offersIn(order(...lines), VENNICK), 'Move to appointments');
    return typeof texts === 'string' ? texts : texts[0]!.replace(/(?<=\S) +}/g, ' }');
  };

  it('out of what a client asks for, which the request takes up', () => {
    const wish =
      'request 2026-04-28 { soundhole.diameter: 95 mm  rosette: "r$0ed"  electronics { pickup { mass: 12 g } } }';
    expect(asked(wish, 'request 2026-05-01 { binding.wood: black-walnut }')).toBe(
      `appointments c-07-appointments {\n  rosette: "red"\n  electronics.pickup.mass: 12 g\n}\n\n${order(
        'request 2026-04-28 { soundhole.diameter: 95 mm  with c-07-appointments }',
        'request 2026-05-01 { binding.wood: black-walnut }',
      )}`,
    );
  });

  it('out of a request of several lines, and of one that asks for nothing else', () => {
    const lines = ['request 2026-04-28 {', '  rosette: "r$0ed"', '  soundhole.diameter: 95 mm', '  label: "17"', '}'];
    expect(asked(...lines)).toContain(
      order('request 2026-04-28 {', '  with c-07-appointments', '  soundhole.diameter: 95 mm', '}'),
    );
    expect(asked('request 2026-04-28 { electronics { pickup { ma$0ss: 12 g } } }')).toContain(
      'request 2026-04-28 { with c-07-appointments }',
    );
  });

  it('refuses what stays in the request, and is not offered on the order itself or across two requests', () => {
    expect(asked('request 2026-04-28 { $0rosette: "red"  soundhole.diameter: 95 mm$0 }')).toContain(
      'soundhole.diameter is no appointment',
    );
    const titles = (text: string) => offersIn(text, VENNICK).offers.map(({ title }) => title);
    const two = ['request 2026-04-28 { rosette: "r$0ed" }', 'request 2026-05-01 { label: "1$07" }'];
    for (const text of [order(...two), order('pri$0ce: "as quoted"', 'request 2026-05-01 { label: "17" }')]) {
      expect(titles(text).some((title) => title.startsWith('Move to'))).toBe(false);
    }
  });
});

describe('ways to a missed expectation', () => {
  const missed = '  expect to$0p.mass: below 150 g';

  it('are offered with what comes of them, and written by one press', () => {
    const [offer] = offersIn(line(missed), VENNICK).offers.filter(({ title }) =>
      title.startsWith('top.thickness: 2.8 mm → '),
    );
    expect(offer?.title).toMatch(
      /^top\.thickness: 2\.8 mm → 2\.\d+ mm \(top\.mass 1[34]\d(\.\d)? ± \S+ g, from 1\d\d(\.\d)? g\)$/,
    );
    expect(done(offer!.title, missed)).toMatch(
      / {2}change top\.thickness: 2\.8 mm -> 2\.\d+ mm\n {2}expect top\.mass: below 150 g/,
    );
  });

  it('are not offered where it is met, and said to be none where no single change does', () => {
    expect(
      offersIn(line('  expect to$0p.mass: below 250 g'), VENNICK)
        .offers.map(({ title }) => title)
        .join(),
    ).not.toContain('→');
    expect(done('Ways to meet top.mass', '  expect to$0p.mass: below 15 g')).toContain('No single change');
  });
});
