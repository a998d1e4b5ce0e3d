import { type TemplateResult, html, svg } from 'lit';
import { scaleLinear, scaleLog, type ScaleContinuousNumeric } from 'd3-scale';
import type { ComparedFingerboard, ComparedString } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';

const [LEFT, WIDTH, ROW, GAP, AXIS] = [64, 460, 44, 18, 34];
const LAST_FRET = 12;

type Side = 'a' | 'b';
type What = 'level' | 'sustain';

interface Names {
  readonly a: string;
  readonly b: string;
}

/** Loudness and sustain, each with one strip for each string; the first of the pair hollow and dashed, the second filled. */
export function fingerboardPlot(
  fingerboard: ComparedFingerboard,
  names: Names,
  words: SideBySideWords,
): TemplateResult {
  return html`<div class="fingerboards">
      ${plot(fingerboard, 'level', words.loudnessPlot)} ${plot(fingerboard, 'sustain', words.sustainPlot)}
    </div>
    <p class="quiet legends">
      <span class="legend">${sample('a')}${names.a}</span> <span class="legend">${sample('b')}${names.b}</span>
    </p>`;
}

function plot({ strings }: ComparedFingerboard, what: What, label: string): TemplateResult {
  const values = strings.flatMap(({ notes }) =>
    notes.flatMap(({ a, b }) => [a, b].flatMap((side) => side?.[what] ?? [])),
  );
  const range = [Math.min(...values), Math.max(...values)] as const;
  const x = scaleLinear([0, LAST_FRET], [LEFT, WIDTH - 12]);
  const y = what === 'level' ? scaleLinear(range, [ROW, 0]) : scaleLog(range, [ROW, 0]);
  const bottom = strings.length * (ROW + GAP);
  return html`<figure>
    <figcaption>${label}</figcaption>
    <svg class="fingerboard" role="img" aria-label=${label} viewBox="0 -6 ${WIDTH} ${bottom + AXIS}">
      ${strings.map((string, i) => svg`<g transform="translate(0 ${i * (ROW + GAP)})">${strip(string, what, x, y)}</g>`)}
      ${Array.from(
        { length: LAST_FRET + 1 },
        (_, fret) => svg`<text class="tick" x=${x(fret)} y=${bottom + 8}>${fret}</text>`,
      )}
    </svg>
  </figure>`;
}

type Scale = ScaleContinuousNumeric<number, number>;

/** Grid lines at the ends of the scale, so that every strip reads alike. */
function strip({ name, notes }: ComparedString, what: What, x: Scale, y: Scale): TemplateResult {
  const [low, high] = y.domain() as [number, number];
  const line = (side: Side) =>
    notes.flatMap((note) => (note[side] ? [`${x(note.fret)},${y(note[side][what])}`] : [])).join(' ');
  const unit = what === 'level' ? 'dB' : 's';
  const written = (value: number) => `${value.toFixed(what === 'level' ? 0 : 1)} ${unit}`;
  return svg`<line class="axis" x1=${LEFT} x2=${WIDTH - 12} y1=${ROW} y2=${ROW} />
    <text class="string" x="4" y=${ROW / 2 + 4}>${name}</text>
    <text class="end" x=${LEFT - 6} y="6">${written(high)}</text>
    <text class="end" x=${LEFT - 6} y=${ROW}>${written(low)}</text>
    <polyline class="a" points=${line('a')} />
    <polyline class="b" points=${line('b')} />
    ${notes.map(({ fret, a, b }) => [a && mark('a', x(fret), y(a[what])), b && mark('b', x(fret), y(b[what]))])}`;
}

function mark(side: Side, x: number, y: number): TemplateResult {
  return svg`<circle class=${side} cx=${x} cy=${y} r="2.6" />`;
}

function sample(side: Side): TemplateResult {
  return html`<svg class="fingerboard" width="34" height="10" viewBox="0 0 34 10" aria-hidden="true">
    ${svg`<polyline class=${side} points="0,5 34,5" />${mark(side, 17, 5)}`}
  </svg>`;
}
