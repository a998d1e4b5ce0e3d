import { describe, expect, it } from 'vitest';
import { check, codesOf, finding } from './marked-text.js';

describe('cautions', () => {
  it('are said once for each species, at the first set of it', () => {
    const text =
      'wood walnut-1 is black-walnut { use: back }\nwood walnut-2 is black-walnut { use: back }\nmodel tarn { back.wood: black-walnut }';
    expect(codesOf(text).filter((code) => code === 'dust-caution')).toHaveLength(1);
  });

  it('on trade carry the day they were looked up, and claim no compliance', () => {
    const { message, severity } = finding(check('wood old-1 is brazilian-rosewood { use: veneer }'), 'trade-caution');
    expect(message).toMatch(/Looked up \d{4}-\d{2}/);
    expect(message).not.toMatch(/you comply|is legal|is safe/i);
    expect(severity).toBe('hint');
  });

  it('warn whoever is sensitised, through the set to its species and from the family to its members', () => {
    const shop = 'shop marram { sensitised: "rosewood", epoxy }\n';
    const text = `${shop}wood back-4 is indian-rosewood { use: back }\nmodel tarn { back.wood: back-4  bridge.glue: "epoxy" }`;
    const found = check(text).findings.filter(({ code }) => code === 'sensitised');
    expect(found.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^back-4 \(indian-rosewood\): marram lists rosewood/),
      expect.stringMatching(/^epoxy: marram lists epoxy/),
    ]);
    expect(found[0]!.severity).toBe('warning');
  });

  it('do not follow a recipe down its descendants', () => {
    const text =
      'model tarn { finish.system: nitrocellulose }\nrecipe tarn-1 for tarn { }\nrecipe tarn-2 from tarn-1 { }';
    expect(codesOf(text).filter((code) => code === 'material-caution')).toHaveLength(1);
  });
});
