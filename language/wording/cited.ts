/** Where a number or a rule comes from, as people read it: titles of books stay, what is said beside them is translated. */
import type { Wording } from './wording.js';

/** `Wood Handbook (2021), Table 5-1, from memory; common practice`, piece by piece. */
export function cited(source: string, { text, say }: Pick<Wording, 'text' | 'say'>): string {
  return (
    ifKnown(source, text) ??
    source
      .split(PARTING)
      .map((piece) => ifKnown(piece, text) ?? told(piece))
      .join('')
  );

  function told(piece: string): string {
    return piece.split(MARKS).map(fragment).join('');
  }

  function fragment(piece: string): string {
    const [, volume] = /^(\S+) on green volume$/.exec(piece) ?? [];
    if (volume !== undefined) return say`${volume} on green volume`;
    const [, shrinkage] = /^brought to 12 %MC with (.+) volumetric shrinkage$/.exec(piece) ?? [];
    if (shrinkage !== undefined) return say`brought to 12 %MC with ${shrinkage} volumetric shrinkage`;
    const [, what, which = ''] = /^(Tables?|Eqs?\.|Appendix|scatter) (\S+(?: %)?)$/.exec(piece) ?? [];
    switch (what) {
      case 'Table':
        return say`Table ${which}`;
      case 'Tables':
        return say`Tables ${which}`;
      case 'Eq.':
      case 'Eqs.':
        return say`Eq. ${which}`;
      case 'Appendix':
        return say`Appendix ${which}`;
      case 'scatter':
        return say`scatter ${which}`;
      default:
        return text(piece);
    }
  }
}

/** In the middle of a sentence: the title of a book is told; pages of makers are only called that, since the hover names them. */
export function citedInBrief(source: string, wording: Pick<Wording, 'text' | 'say'>): string {
  const all = [...new Set(source.split('; '))];
  const titles = all.filter((one) => !isAddress(one)).map((one) => cited(one, wording));
  const pages = all.length - titles.length;
  if (pages === 0) return titles.length <= 2 ? titles.join('; ') : wording.say`${titles[0] ?? ''} and others`;
  return pages === 1 ? wording.text('a maker’s published figure') : wording.text('makers’ published figures');
}

/** `example.com`, or that with a remark behind it. */
function isAddress(source: string): boolean {
  return /^[\w-]+(\.[\w-]+)+( \(|,|$)/.test(source);
}

/** The smallest pieces of a source that may be looked up. */
export function fragmentsOf(source: string): readonly string[] {
  return source.split(PARTING).flatMap((piece) => piece.split(MARKS));
}

function ifKnown(english: string, text: Wording['text']): string | undefined {
  const translated = text(english);
  return translated === english ? undefined : translated;
}

const PARTING = /(; )/;
const MARKS = /(, | \(|\)|: )/;
