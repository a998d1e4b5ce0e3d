import { describe, expect, it } from 'vitest';
import { VENNICK } from '../recipes/shop-of.js';
import { check, codesOf, expectMarked, finding, fixed } from './marked-text.js';

describe('lay-out', () => {
  it('of a sound model gives no finding', () => {
    expect(codesOf(VENNICK).filter((code) => code === 'off-the-plate' || code === 'sizes-disagree')).toEqual([]);
  });

  it('finds a brace that ends beyond the edge, where its end is written', () => {
    const text = VENNICK.replace('to: (405 mm, -92 mm)', 'to: (405 mm, -292 mm)');
    const { message } = finding(check(text), 'off-the-plate');
    expect(message).toMatch(
      /^bracing\.x-treble\.to lies outside the body: at station 405 mm the body is 14\d(\.\d)? mm wide/,
    );
  });

  it('finds it in the recipe that makes the body smaller', () => {
    const text = `${VENNICK}recipe v-1 for vennick { }
recipe v-2 from v-1 {
  because "A narrow one."
  change body.upper-bout.width: 286 mm -> 250 mm
  change body.waist.width: 241 mm -> 200 mm
  change bracing.x-bass.from: (78 mm, -150 mm) -> (20 mm, -180 mm)
}`;
    expect(
      check(text)
        .findings.filter(({ code }) => code === 'off-the-plate')
        .map(({ message }) => message),
    ).toEqual([expect.stringContaining('bracing.x-bass.from')]);
  });

  it('finds a hole that does not lie on the top', () => {
    expect(
      codesOf(VENNICK.replace('diameter: 101 mm  station: 335 mm', 'diameter: 101 mm  station: 460 mm')),
    ).toContain('off-the-plate');
  });

  it('finds sizes the wrong way round', () => {
    expectMarked(`
model tarn {
  top { thickness: 2.4 mm  edge-thickness: 2.8 mm }
  //                       ^^^^^^^^^^^^^^^^^^^^^^ sizes-disagree: thicker at the edge
  bracing.x-bass { height: 15 mm  end-height: 16 mm }
  //                              ^^^^^^^^^^^^^^^^^ sizes-disagree: higher there than its full height
}`);
  });
});

/** The least of a fourteen-fret OM with an X that clears its hole. */
function om(...lines: readonly string[]): string {
  return `model om {
  body {
    length: 496 mm
    lower-bout { width: 388 mm  station: 114 mm }
    waist { width: 246 mm  station: 295 mm }
    upper-bout { width: 292 mm  station: 425 mm }
  }
  scale: 645 mm
  neck.join-fret: 14
  bracing {
    x-bass   { from: (69 mm, -174 mm)  to: (389 mm, 130 mm)   width: 8 mm  height: 16 mm }
    x-treble { from: (69 mm, 174 mm)   to: (389 mm, -130 mm)  width: 8 mm  height: 16 mm }
  }
  ${lines.join('\n  ')}
}
recipe om-1 for om { because "The first." }
`;
}
const HOLE = 'soundhole { diameter: 101 mm  station: 338 mm }';
const LAYOUT = [
  'off-the-plate',
  'over-the-hole',
  'bridge-off-the-scale',
  'bridge-plate-under-brace',
  'cutaway-into-neck',
  'implausible',
];
const laidOut = (text: string) =>
  check(text)
    .findings.filter(({ code }) => LAYOUT.includes(code))
    .map(({ code, message }) => `${code}: ${message}`);

describe('the place of the bridge', () => {
  // 645 mm · 2^(−14/12) = 287.3 mm from fret 14 to the saddle (equal temperament, ISO 16); 496 − 287.3 = 208.7 mm.
  it('that scale, join and body do not give costs one finding, with the right number', () => {
    const text = om('bridge.station: 250 mm');
    expect(laidOut(text)).toEqual([
      'bridge-off-the-scale: bridge.station is 250 mm, but a scale of 645 mm, joined to a body of 496 mm at fret 14, puts the saddle 208.7 mm from the tail, less a few millimetres of compensation.',
    ]);
    expect(fixed(check(text), 'bridge-off-the-scale', 'Write 208.7 mm')).toBe(om('bridge.station: 208.7 mm'));
  });

  it('is fine with the compensation makers give', () => {
    expect(laidOut(om('bridge.station: 206 mm'))).toEqual([]);
    expect(laidOut(om('bridge.station: 203 mm'))).toEqual([]);
  });

  it('is told where another of the four was changed, and the change is offered', () => {
    const text = `${om('bridge.station: 206 mm')}recipe om-2 from om-1 {
  because "Shorter."
  change scale: 645 mm -> 628 mm
  // the scale
}
`;
    const { message, fixes } = finding(check(text), 'bridge-off-the-scale');
    // 628 · 2^(−14/12) = 279.7; 496 − 279.7 = 216.3 mm.
    expect(message).toContain('puts the saddle 216.3 mm from the tail');
    expect(fixes.map(({ title }) => title)).toEqual(['Add `change bridge.station: 206 mm -> 216.3 mm`']);
  });

  it('that nobody told is asked about where the join puts it off the top', () => {
    // A neck joined at the twentieth fret leaves 645 · 2^(−20/12) = 203 mm to the saddle: 293 mm from the tail.
    expect(laidOut(om().replace('join-fret: 14', 'join-fret: 20'))).toEqual([
      expect.stringMatching(/^bridge-off-the-scale: Check scale.*292\.8 mm from the tail/),
    ]);
  });
});

describe('parts over the soundhole', () => {
  it('are none where the X clears it', () => {
    expect(laidOut(om(HOLE))).toEqual([]);
  });

  it('cost one finding at the hole that grew, with the largest that clears', () => {
    // The legs cross at station 252.2; the hole's middle is 85.8 · sin 43.5° − 4 = 55.1 mm from them: 110 mm clears.
    const text = `${om(HOLE)}recipe om-2 from om-1 {
  because "Bigger."
  change soundhole.diameter: 101 mm -> 116 mm
}`;
    const checked = check(text);
    expect(laidOut(text)).toEqual([
      expect.stringMatching(
        /^over-the-hole: Braces run over the soundhole: bracing\.x-bass for 3\d mm and bracing\.x-treble for 3\d mm\. A hole of 110 mm would clear it\.$/,
      ),
    ]);
    expect(fixed(checked, 'over-the-hole', 'Write 110 mm')).toContain('101 mm -> 110 mm');
  });

  it('cost one at the brace that was moved', () => {
    const text = `${om(HOLE)}recipe om-2 from om-1 {
  because "A brace behind the hole."
  add bracing.cross { from: (300 mm, -60 mm)  to: (300 mm, 60 mm)  width: 10 mm  height: 8 mm }
}`;
    // A chord of a circle of 50.5 mm, 33 mm from its middle: 2 · √(50.5² − 33²) = 76.5 mm.
    expect(laidOut(text)).toEqual(['over-the-hole: bracing.cross runs over the soundhole for 76 mm.']);
  });

  it('are told of frets past the end of the board, once, with how many fit', () => {
    // Fret 22 lies 645 · (2^(−14/12) − 2^(−22/12)) = 106.3 mm from the join, at station 389.7; the hole begins at 388.5.
    expect(laidOut(om(HOLE, 'frets.count: 22'))).toEqual([]);
    const text = om(HOLE.replace('338', '345'), 'frets.count: 22').replaceAll(', -130 mm)', ', -128 mm)');
    expect(laidOut(text)).toEqual([
      expect.stringMatching(/^over-the-hole: Fret 22 would lie 5\.\d mm over the soundhole; 21 fit before it\.$/),
    ]);
    expect(laidOut(om(HOLE.replace('338', '345'), 'frets.count: 22', 'fingerboard.end: floating'))).toEqual([]);
  });

  it('are not told again by a recipe that leaves them as they are', () => {
    const text = `${om(HOLE.replace('101', '114'))}recipe om-2 from om-1 {
  because "Another plate."
  bridge.plate.width: 30 mm
}`;
    expect(laidOut(text)).toHaveLength(1);
  });
});

describe('braces at the edge', () => {
  it('may not stand out with a corner, and are ended a little sooner', () => {
    // As wide a brace at the slope behind the waist: its centre line ends inside, its corner does not.
    const text = om(
      'back-bracing.back-3 { from: (205 mm, -152 mm)  to: (205 mm, 152 mm)  width: 16 mm  height: 13 mm }',
    );
    expect(laidOut(text)).toEqual([
      'off-the-plate: back-bracing.back-3 is 16 mm wide, and a corner of its end stands 3.1 mm out of the body. End it a little sooner.',
    ]);
    expect(fixed(check(text), 'off-the-plate', 'End it inside the body')).toContain(
      'from: (205 mm, -148 mm)  to: (205 mm, 148 mm)',
    );
  });

  it('may not leave the body between their ends', () => {
    const text = om('bracing.rim { from: (114 mm, 180 mm)  to: (425 mm, 135 mm)  width: 6 mm  height: 8 mm }');
    expect(laidOut(text)).toEqual([
      expect.stringMatching(/^off-the-plate: bracing\.rim leaves the body between its ends: 2\d\d mm/),
    ]);
  });
});

describe('a soundhole wider than the waist', () => {
  it('costs one finding', () => {
    const text = om('soundhole { station: 300 mm  width: 260 mm  length: 60 mm }').replace(
      /bracing \{[^]*?\n {2}\}\n/,
      '',
    );
    expect(laidOut(text)).toEqual([
      'off-the-plate: The soundhole, 260 mm across at station 300 mm, does not lie wholly on the top: the body is 246.2 mm wide there.',
    ]);
  });
});

describe('a cutaway', () => {
  it('may not reach into the neck', () => {
    const text = om('cutaway { kind: venetian  station: 400 mm  depth: 110 mm }', 'nut.width: 44.5 mm');
    // Half of 44.5 + 11.5 mm at the body; 143 mm of body at station 400 leave 115 mm.
    expect(laidOut(text)).toEqual([]);
    expect(laidOut(text.replace('depth: 110', 'depth: 125'))).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^cutaway-into-neck: The cut leaves 18 mm .*half the fingerboard is 28 mm/),
      ]),
    );
  });

  it('may not begin beyond the end of the body', () => {
    expect(laidOut(om('cutaway { station: 510 mm  depth: 60 mm }'))).toEqual(
      expect.arrayContaining([
        'cutaway-into-neck: The cut leaves the outline at station 510 mm, beyond the end of the body at 496 mm.',
      ]),
    );
  });
});

describe('a bridge plate', () => {
  it('that reaches under the legs is told, once', () => {
    const bridge = (length: number) => om(`bridge { width: 37 mm  plate { width: 38 mm  length: ${length} mm } }`);
    expect(laidOut(bridge(130))).toEqual([
      expect.stringMatching(
        /^bridge-plate-under-brace: .*bracing\.x-bass for 5\d mm and bracing\.x-treble for 5\d mm\.$/,
      ),
    ]);
    expect(laidOut(bridge(50)).filter((one) => one.startsWith('bridge-plate'))).toEqual([]);
  });
});
