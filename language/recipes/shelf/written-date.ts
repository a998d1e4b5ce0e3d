import { ENGLISH, type Wording } from '../../wording/wording.js';
/** Dates are written year-month-day (ISO 8601 calendar date), and only days that exist are dates. */

export type DateReading =
  | { readonly ok: true; readonly date: string }
  | { readonly ok: false; readonly message: string; readonly suggestions: readonly string[] };

export function readDate(written: string, { say, text }: Wording = ENGLISH): DateReading {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(written);
  if (iso) {
    const [year, month, day] = [Number(iso[1]), Number(iso[2]), Number(iso[3])];
    const date = dateText(year, month, day);
    if (date === undefined) return no(say`${written} is not a day of the calendar.`);
    return date === written ? { ok: true, date } : no(say`Write the date as ${date}.`, date);
  }
  const [first, second, last] = written.split(/[./]/).map(Number);
  if (first === undefined || second === undefined || last === undefined) return no(say`Write a date as 2026-03-14.`);
  // Two figures are taken for this century, and only to suggest: the maker decides.
  const year = last < 100 ? 2000 + last : last;
  const dayFirst = dateText(year, second, first);
  const monthFirst = written.includes('/') ? dateText(year, first, second) : undefined;
  const readings = [dayFirst, monthFirst].filter((date) => date !== undefined);
  return readings.length === 0
    ? no(say`${written} is not a day of the calendar. Write a date as 2026-03-14.`)
    : no(say`Write the date year first: ${[...new Set(readings)].join(` ${text('or')} `)}.`, ...new Set(readings));
}

function dateText(year: number, month: number, day: number): string | undefined {
  const date = new Date(Date.UTC(2000, month - 1, day));
  date.setUTCFullYear(year, month - 1, day);
  const exists = date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  if (!exists || month < 1 || day < 1) return undefined;
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

function no(message: string, ...suggestions: string[]): DateReading {
  return { ok: false, message, suggestions };
}
