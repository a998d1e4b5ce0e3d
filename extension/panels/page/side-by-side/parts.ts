import { type TemplateResult, html } from 'lit';

/** A table's rows, those of one part under its heading. */
export function byTitle<Row extends { readonly title: string }>(
  rows: readonly Row[],
  columns: number,
  draw: (row: Row) => TemplateResult,
): readonly TemplateResult[] {
  const groups: { readonly title: string; readonly rows: Row[] }[] = [];
  for (const row of rows) {
    const last = groups.at(-1);
    if (last?.title === row.title) last.rows.push(row);
    else groups.push({ title: row.title, rows: [row] });
  }
  return groups.map(
    (group) =>
      html`<tbody role="rowgroup">
        <tr role="row" class="part">
          <th role="rowheader" scope="rowgroup" colspan=${columns}>${group.title}</th>
        </tr>
        ${group.rows.map(draw)}
      </tbody>`,
  );
}

/** Which build, and how it was read: a heading for the readings of one occasion. */
export function occasionOf(row: { readonly build: string; readonly conditions: string }): string {
  return [row.build, row.conditions].filter(Boolean).join(': ');
}
