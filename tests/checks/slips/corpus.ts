/**
 * The slips makers make, as tables: one file for each kind, one line a slip. A line says where the slip stands, what was written,
 * the one finding a colleague would speak of, and the line as that colleague would put it right at once ('-': he would ask).
 * Written and judged from the trade's words before the answers of the tool were looked at; sources: common practice.
 */
import { readdirSync, readFileSync } from 'node:fs';

export interface Slip {
  readonly kind: string;
  readonly where: string;
  readonly written: string;
  readonly code: string;
  /** Undefined: there is nothing that could be put right without asking. */
  readonly mended: string | undefined;
}

/** What every slip stands beside. */
const FOLDER = `wood s-1 is sitka-spruce { use: top  density: 420 kg/m³  modulus { along: 11 GPa  across: 0.8 GPa  twist: 0.7 GPa } }
wood s-2 is sitka-spruce { use: top  density: 425 kg/m³  modulus { along: 11 GPa  across: 0.8 GPa  twist: 0.7 GPa } }
wood m-1 is true-mahogany { use: neck  density: 520 kg/m³ }
strings light-12 { kind: steel  tuning: E4, B3, G3, D3, A2, E2  gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in }
rig r2 { span: 500 mm  load: 2.268 kg  at: middle  width: 400 mm }
appointments plain { rosette: "three rings" }
model tarn {
  kind: steel-string
  scale: 645 mm
  top { wood: s-1  thickness: 2.8 mm }
  bracing {
    wood: s-1
    x-bass   { from: (69 mm, -174 mm)  to: (389 mm, 130 mm)   width: 7.9 mm  height: 15.9 mm }
    x-treble { from: (69 mm, 174 mm)   to: (389 mm, -130 mm)  width: 7.9 mm  height: 15.9 mm }
  }
  bridge { kind: pin  mass: 27 g }
}
recipe tarn-1 for tarn { because "The first." }
build no-1 of tarn-1 { humidity: 45 %RH }
`;

const FRAMES: ReadonlyMap<string, (line: string) => string> = new Map(
  Object.entries({
    file: (line: string) => `${line}\n`,
    model: (line: string) => `model beck {\n  ${line}\n}\n`,
    recipe: (line: string) => `recipe tarn-2 from tarn-1 {\n  because "Why."\n  ${line}\n}\n`,
    wood: (line: string) => `wood s-3 is sitka-spruce {\n  ${line}\n}\n`,
    strings: (line: string) => `strings own {\n  ${line}\n}\n`,
    rig: (line: string) => `rig r3 {\n  ${line}\n}\n`,
    build: (line: string) => `build no-2 of tarn-1 {\n  ${line}\n}\n`,
    reading: (line: string) => `build no-2 of tarn-1 {\n  reading day-2 {\n    ${line}\n  }\n}\n`,
    order: (line: string) => `order c-02 of tarn-1 {\n  ${line}\n}\n`,
    shop: (line: string) => `shop marram {\n  ${line}\n}\n`,
  }),
);

/** The whole text a line stands in; without a line, the folder by itself. */
export function textWith(where: string, line?: string): string {
  const frame = FRAMES.get(where);
  if (!frame) throw new Error(`There is no place called ${where}.`);
  return line === undefined ? FOLDER : FOLDER + frame(line);
}

/** Every slip, in the order of the files and their lines. */
export function slips(): readonly Slip[] {
  const here = new URL('.', import.meta.url);
  return readdirSync(here)
    .filter((name) => name.endsWith('.csv'))
    .sort()
    .flatMap((name) => {
      const [, , ...lines] = readFileSync(new URL(name, here), 'utf8').trimEnd().split('\n');
      return lines.map((line) => {
        const [where = '', written = '', code = '', mended = ''] = line
          .split(' | ')
          .map((cell) => cell.trim().replaceAll('⏎', '\n'));
        return { kind: name.replace('.csv', ''), where, written, code, mended: mended === '-' ? undefined : mended };
      });
    });
}
