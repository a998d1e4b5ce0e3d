/** A client asks for more while the guitar is being built. */
import { describe, expect, it } from 'vitest';
import { codesOf, expectMarked } from './marked-text.js';

const ARDLE = `model ardle {
  scale: 622 mm
  nut.width: 44.5 mm
  soundhole.diameter: 90 mm
  back.thickness: 2.5 mm
}
recipe ardle-1 for ardle { }
recipe ardle-44 from ardle-1 { because "A livelier back."  change back.thickness: 2.5 mm -> 2.3 mm }
`;

const order = (reached: string, ...lines: readonly string[]) =>
  `${ARDLE}order c-07 of ardle-44 {\n  agreed: 2026-02-03\n  reached: ${reached}\n${lines.join('\n')}\n}`;

describe('a request', () => {
  it('of a cutaway is free while the rim is not made, and breaks the trial of the back', () => {
    expectMarked(
      order(
        'bracing',
        '    request 2026-04-28 { add cutaway { kind: venetian  depth: 65 mm }  nut.width: 46 mm  finish.sheen: satin }',
        '  //^^^^^^^^^^^^^^^^^^ request-breaks-trial: This guitar was to show what back.thickness does: cutaway would be heard as well.',
      ),
      'request-too-late',
      'request-costly',
    );
  });

  it('of another scale is refused once the fingerboard is slotted', () => {
    expectMarked(
      order(
        'setup',
        '  request 2026-06-12 {',
        '    scale: 610 mm',
        '  //^^^^^ request-too-late: Too late for scale: the setup stage is done, and after the neck stage it cannot be changed',
        '  }',
      ),
      'request-costly',
    );
  });

  it('for a larger hole stays open longer than for a smaller one', () => {
    const hole = (diameter: string, reached: string) =>
      codesOf(order(reached, `  request 2026-05-01 { soundhole.diameter: ${diameter} }`));
    expect(hole('85 mm', 'thicknessing')).toContain('request-too-late');
    expect(hole('95 mm', 'thicknessing')).not.toContain('request-too-late');
    expect(hole('95 mm', 'bracing')).toContain('request-costly');
  });

  it('is not judged while nothing says how far the guitar is', () => {
    const text = `${ARDLE}order c-07 of ardle-44 { request 2026-06-12 { scale: 610 mm } }`;
    expect(codesOf(text).filter((code) => code === 'request-too-late' || code === 'request-costly')).toEqual([]);
  });

  it('is answered for what it takes up as a package, where it takes it up', () => {
    const asked = order(
      'delivery',
      '  request 2026-06-12 {',
      '    with ember',
      '  //^^^^^^^^^^ request-too-late: Too late for rosette: the delivery stage is done',
      '  }',
    );
    expectMarked(`${asked}\nappointments ember { rosette: "red stone band" }`, 'request-costly');
  });
});
