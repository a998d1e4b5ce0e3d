/** Days as they are spoken and stamped: `12 March 2009`, `March 12, 2009`, `12. März 2009`, `20090312`, `2009/3/12`. */

/** The months by the beginnings of their names, in English and German. */
const MONTHS: readonly RegExp[] = [
  /^jan|^jän/,
  /^feb/,
  /^mar|^mär|^mrz/,
  /^apr/,
  /^may|^mai/,
  /^jun/,
  /^jul/,
  /^aug/,
  /^sep/,
  /^oct|^okt/,
  /^nov/,
  /^dec|^dez/,
];

/** The day, year first; undefined where the words are no day, or could be two. Two figures of a year are of this century. */
export function dateIn(written: string): string | undefined {
  const words = written.trim().replace(/^"|"$/g, '').replace(/[.,]/g, ' ').replace(/\s+/g, ' ').trim();
  const spoken =
    /^(?:\p{L}+day )?(\d{1,2})(?:st|nd|rd|th)? (?:of )?(\p{L}{3,9}) (\d{4}|\d{2})$/iu.exec(words) ??
    swapped(/^(\p{L}{3,9}) (\d{1,2})(?:st|nd|rd|th)? (\d{4}|\d{2})$/iu.exec(words));
  if (spoken) {
    const [, day = '', name = '', year = ''] = spoken;
    const month = MONTHS.findIndex((begins) => begins.test(name.toLowerCase())) + 1;
    return month === 0 ? undefined : calendarDay(year, month, Number(day));
  }
  const [, year, month, day] =
    /^(\d{4})(\d{2})(\d{2})$/.exec(words) ?? /^(\d{4})[/ \u2013](\d{1,2})[/ \u2013](\d{1,2})$/.exec(words) ?? [];
  return year === undefined ? undefined : calendarDay(year, Number(month), Number(day));
}

function swapped(found: RegExpExecArray | null): readonly string[] | undefined {
  return found ? [found[0], found[2] ?? '', found[1] ?? '', found[3] ?? ''] : undefined;
}

function calendarDay(written: string, month: number, day: number): string | undefined {
  const year = written.length === 2 ? 2000 + Number(written) : Number(written);
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  return date.toISOString().slice(0, 10);
}
