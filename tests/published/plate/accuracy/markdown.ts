/** Tables of Markdown, and differences as they are written in them. */
export type Cell = string | number;

export function table(head: readonly Cell[], rows: readonly (readonly Cell[])[]): string {
  const line = (cells: readonly Cell[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, i) => (i === 0 ? '---' : '---:'))), ...rows.map(line)].join('\n');
}

/** Percent with a sign, rounded to `digits` decimals. */
export function difference(ours: number, source: number, digits = 1): string {
  const text = Math.abs((ours / source - 1) * 100).toFixed(digits);
  if (Number(text) === 0) return text;
  return `${ours < source ? '−' : '+'}${text}`;
}

/** The greatest, with its sign. */
export function greatest(ours: readonly number[], source: readonly number[], digits = 2): string {
  let worst = 0;
  source.forEach((value, i) => {
    if (Math.abs(ours[i]! / value - 1) > Math.abs(ours[worst]! / source[worst]! - 1)) worst = i;
  });
  return difference(ours[worst]!, source[worst]!, digits);
}

export const list = (values: readonly number[], digits: number): string =>
  values.map((value) => value.toFixed(digits)).join(', ');
