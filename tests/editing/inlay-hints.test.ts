/** What is shown behind the lines: each hint beside the line it stands on. */
import { describe, expect, it } from 'vitest';
import { inlayHints, type InlayOptions } from '../../language/editing/hints/inlay-hints.js';
import { deskOf, VENNICK } from './desk-of.js';

const EVERYWHERE = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

/** The text with each hint written where it is shown, between ‹ and ›. */
function shownIn(text: string, options: InlayOptions = {}): string {
  const lines = text.split('\n');
  const hints = inlayHints(deskOf(text, VENNICK), 'file:0', EVERYWHERE, options);
  for (const { position, text: hint } of [...hints].reverse()) {
    const line = lines[position.line]!;
    lines[position.line] = `${line.slice(0, position.character)} ‹${hint}›${line.slice(position.character)}`;
  }
  return lines.join('\n');
}

describe('inlay hints', () => {
  it('show what a hold solved, and what it was', () => {
    const text = `recipe v-37 from v-31 {
      change top.wood: sitka-31 -> engelmann-37
      hold top.stiffness.along by top.thickness
    }`;
    expect(shownIn(text)).toContain('hold top.stiffness.along by top.thickness ‹= 2.96 mm ± 0.03 mm, was 2.80 mm›');
  });

  it('say that a hold had nothing to do', () => {
    const text = 'recipe v-32 from v-31 { hold top.mass by top.thickness }';
    expect(shownIn(text)).toContain('by top.thickness ‹= 2.80 mm ± 0.03 mm, as it was›');
  });

  it('show nothing for a hold that could not be solved; a finding says why', () => {
    expect(shownIn('recipe v-32 from v-31 { hold top.sag at 60 mm by top.thickness }')).not.toContain('‹');
  });

  it('show the old value a change leaves out, and what a step comes to', () => {
    expect(shownIn('recipe v-32 from v-31 { change top.thickness: -> 2.7 mm }')).toContain('2.7 mm ‹was 2.80 mm›');
    expect(shownIn('recipe v-32 from v-31 { change top.thickness: by -0.1 mm }')).toContain(
      'by -0.1 mm ‹= 2.70 mm, was 2.80 mm›',
    );
    expect(shownIn('recipe v-32 from v-31 { change top.thickness: 2.80 mm -> 2.7 mm }')).not.toContain('‹');
  });

  it('show what an expectation met or missed', () => {
    const text = `recipe v-32 from v-31 {
      expect bridge.moving-mass: below 30 g
      expect bridge.moving-mass: below 20 g
      expect sides.mass: below 200 g
    }`;
    expect(shownIn(text)).toContain('below 30 g ‹27 g, met›');
    expect(shownIn(text)).toContain('below 20 g ‹27 g, missed›');
    expect(shownIn(text)).toContain('below 200 g ‹not known without sides.wood.density, sides.thickness›');
  });

  it('convert inches and ounces, but not where the trade speaks in them', () => {
    expect(shownIn('build no-1 of v-31 { top.thickness: 110 thou }')).toContain('110 thou ‹= 2.79 mm›');
    expect(shownIn('build no-1 of v-31 { bridge.mass: 1.1 oz }')).toContain('1.1 oz ‹= 31.2 g›');
    expect(shownIn('strings s { gauges: .012 in, .016 in }')).not.toContain('‹');
    expect(shownIn('build no-1 of v-31 { top.thickness: 2.79 mm }')).not.toContain('‹');
  });

  it('leave alone the line being typed', () => {
    const text = 'recipe v-32 from v-31 {\n  change top.thickness: by -0.1 mm\n  change bridge.mass: by -1 g\n}';
    const hints = shownIn(text, { except: 1 });
    expect(hints).toContain('by -0.1 mm\n');
    expect(hints).toContain('by -1 g ‹= 26 g, was 27 g›');
  });

  it('keep to the range asked for', () => {
    const text = 'recipe v-32 from v-31 {\n  change top.thickness: by -0.1 mm\n  change bridge.mass: by -1 g\n}';
    const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 100 } };
    expect(inlayHints(deskOf(text, VENNICK), 'file:0', range).map(({ text: hint }) => hint)).toEqual([
      '= 26 g, was 27 g',
    ]);
  });
});
