/** The page's colours as numbers, so that they can be mixed for each facet. */
export type Rgb = readonly [number, number, number];

export interface ReliefColours {
  readonly paper: Rgb;
  readonly ink: Rgb;
  /** Where the plate moves out, in, and not. */
  readonly out: Rgb;
  readonly into: Rgb;
  readonly still: Rgb;
}

/** Read from probes in the page, so that whatever a theme writes is understood as the browser understands it. */
export function coloursOf(element: HTMLElement): ReliefColours {
  const probe = document.createElement('span');
  probe.hidden = true;
  element.append(probe);
  const read = (colour: string): Rgb => {
    probe.style.color = colour;
    const parts = /(\d+)\D+(\d+)\D+(\d+)/.exec(getComputedStyle(probe).color) ?? [];
    return [Number(parts[1] ?? 128), Number(parts[2] ?? 128), Number(parts[3] ?? 128)];
  };
  const [paper, ink] = [read('var(--paper)'), read('var(--ink)')];
  const colours = {
    paper,
    ink,
    out: read('var(--vscode-charts-orange, #d18616)'),
    into: read('var(--vscode-charts-blue, #3794ff)'),
    still: mixed(paper, ink, 0.3),
  };
  probe.remove();
  return colours;
}

/** `share` of the second in the first. */
export function mixed(one: Rgb, other: Rgb, share: number): Rgb {
  return [0, 1, 2].map((i) => one[i]! + (other[i]! - one[i]!) * share) as unknown as Rgb;
}

export function written([red, green, blue]: Rgb): string {
  return `rgb(${Math.round(red)} ${Math.round(green)} ${Math.round(blue)})`;
}
