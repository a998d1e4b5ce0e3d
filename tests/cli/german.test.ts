import { describe, expect, it } from 'vitest';
import { bookmatch, bookmatchIn } from './terminal.js';

const SHOP = { 'a.bookmatch': 'model tarn { scale: 645 mm  top.thickness: .110 }\n' };

describe('in German', () => {
  it('findings, severities and the summary are said so when it is asked for', async () => {
    const { code, out } = await bookmatch(SHOP, 'check', '--language', 'de');
    expect(code).toBe(1);
    expect(out).toContain('a.bookmatch:1:44  Fehler  missing-unit');
    expect(out).toContain('.110 hat keine Einheit. War 0.110 in = 2.79 mm gemeint?');
    expect(out).toContain('1 Fehler in 1 Datei.');
  });

  it('the language of the terminal is spoken, unless another is asked for', async () => {
    const german = await bookmatchIn({ locale: 'de_AT.UTF-8' }, SHOP, 'rules', 'missing-unit');
    expect(german.out).toContain('**Eine Zahl ohne Einheit** (Fehler)');
    const english = await bookmatchIn({ locale: 'de_AT.UTF-8' }, SHOP, 'rules', 'missing-unit', '--language', 'en');
    expect(english.out).toContain('**A number without a unit** (error)');
  });

  it('commands explain themselves', async () => {
    const { out } = await bookmatchIn({ locale: 'de' }, {}, '--help');
    expect(out).toContain('Prüft, zeigt und vergleicht Baurezepte für akustische Gitarren.');
    expect(out).toContain('Befehle:');
  });

  it('wrong use is explained too', async () => {
    const { err } = await bookmatchIn({ locale: 'de' }, SHOP, 'show', 'tarm');
    expect(err).toBe('Hier heißt nichts tarm. War tarn gemeint?\n');
    const unknown = await bookmatchIn({ locale: 'de' }, SHOP, 'shwo');
    expect(unknown.err).toContain('Einen Befehl shwo gibt es nicht.');
  });

  it('what another program reads is the same in every language', async () => {
    const codes = (out: string) =>
      (JSON.parse(out) as { findings: { code: string }[] }).findings.map(({ code }) => code);
    const german = await bookmatch(SHOP, 'check', '--format', 'json', '--language', 'de');
    const english = await bookmatch(SHOP, 'check', '--format', 'json');
    expect(codes(german.out)).toEqual(codes(english.out));
  });

  it('what cannot be computed, and what is assumed, is told in German from end to end', async () => {
    const { out } = await bookmatch({ 'a.bookmatch': NOT_COMPUTABLE }, 'show', 'tarn-1', '--language', 'de');
    expect(out).toContain('Dicke muss größer als null sein');
    const checked = await bookmatch({ 'a.bookmatch': NOT_COMPUTABLE }, 'check', '--language', 'de');
    expect(checked.out).toContain('Dicke muss größer als null sein');
    for (const said of [out, checked.out]) expect(said).not.toMatch(/must be|cannot be|is taken|are taken|is used/);
    const english = await bookmatch({ 'a.bookmatch': NOT_COMPUTABLE }, 'show', 'tarn-1');
    expect(english.out).toContain('The thickness must be more than zero.');
  });
});

const NOT_COMPUTABLE = `model tarn {
  soundhole.diameter: 100 mm
  back.thickness: 2.6 mm
  top.wood: spruce-1
  back.wood: spruce-1
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
  }
}
recipe tarn-1 for tarn { top.thickness: 0 mm }
wood spruce-1 is sitka-spruce { density: 420 kg/m³ }
`;

describe('what stands in the middle of a sentence', () => {
  it('is German too: the stage of the work', async () => {
    const order = `model tarn { scale: 645 mm  nut.width: 44.5 mm }
recipe tarn-1 for tarn { }
order c-07 of tarn-1 { reached: neck-angle  request 2026-06-12 { scale: 610 mm  nut.width: 46 mm } }
`;
    const { out } = await bookmatch({ 'a.bookmatch': order }, 'check', '--language', 'de');
    expect(out.replace(/\s+/g, ' ')).toContain('Zu spät für scale: der Arbeitsgang Halswinkel ist erledigt');
  });

  it('is German too: a doubtful range', async () => {
    const { out } = await bookmatch(
      { 'a.bookmatch': 'recipe a for b { expect top.mass: .012...016 oz }\n' },
      'check',
      '--language',
      'de',
    );
    expect(out).toContain('Endet dieser Bereich bei .016 oder bei 016? Mit zwei Punkten schreiben.');
  });
});
