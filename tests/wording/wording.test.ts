import { describe, expect, it } from 'vitest';
import { ENGLISH, languageOf, Wording } from '../../language/wording/wording.js';
import { translationsOf } from './translations.js';

describe('the words people read', () => {
  const german = new Wording({ '{0} is thinner than {1}.': '{0} ist dünner als {1}.', Top: 'Decke' }, 'de');

  it('are English where nothing else is asked for', () => {
    expect(ENGLISH.say`${'top'} is thinner than ${'2 mm'}.`).toBe('top is thinner than 2 mm.');
  });

  it('are translated sentence by sentence, the parts in their places', () => {
    expect(german.say`${'top'} is thinner than ${'2 mm'}.`).toBe('top ist dünner als 2 mm.');
    expect(german.text('Top')).toBe('Decke');
  });

  it('stay English rather than go missing', () => {
    expect(german.say`${'top'} is thicker.`).toBe('top is thicker.');
  });

  it('take a part for what it is, whatever is written in it', () => {
    expect(ENGLISH.say`${'{1}'} and ${'b'}`).toBe('{1} and b');
  });
});

describe('a finished English sentence', () => {
  const german = new Wording(translationsOf('de'), 'de');

  it.each([
    ['The plate thickness must be more than zero.', 'Die Plattendicke muss größer als null sein.'],
    ['The temperature must lie between -50 °C and 60 °C.', 'Die Temperatur muss zwischen -50 °C und 60 °C liegen.'],
    ['The height of the x-bass must be more than zero.', 'Die Höhe (x-bass) muss größer als null sein.'],
    [
      'The shear stiffness through the thickness along the grain of the bridge plate is not a number.',
      'Die Schubsteifigkeit durch die Dicke längs der Faser (Stegplatte) ist keine Zahl.',
    ],
    ['the top is taken to be thinned over the outer 60 mm', 'die Decke ist auf den äußeren 60 mm dünner gearbeitet'],
    ['The thickness of the bridge plate is not a number.', 'Die Dicke (Stegplatte) ist keine Zahl.'],
    [
      'The load of the deflection test must be more than zero.',
      'Die Last des Biegeversuchs muss größer als null sein.',
    ],
    ['Two soundholes overlap.', 'Zwei Schalllöcher überlappen sich.'],
  ])('is recognised: %s', (english, told) => {
    expect(german.told(english)).toBe(told);
    expect(ENGLISH.told(english)).toBe(english);
  });

  it('has a name without an article where the language knows none for it', () => {
    const wording = new Wording({ 'The {0} is not a number.': '{0} ist keine Zahl.', brace: 'Leiste' }, 'de');
    expect(wording.told('The brace is not a number.')).toBe('Leiste ist keine Zahl.');
  });

  it('stays as it is where it is not recognised', () => {
    expect(german.told('Qwertz (1.5+).')).toBe('Qwertz (1.5+).');
  });

  it('is taken for the one with most words of its own', () => {
    const wording = new Wording({ '{0} of the {1}': '{1}-{0}', 'edge of the {0}': 'Rand: {0}', top: 'Decke' }, 'de');
    expect(wording.told('edge of the top')).toBe('Rand: Decke');
    expect(wording.told('half of the top')).toBe('Decke-half');
  });
});

describe('the language to speak', () => {
  it('is that of the editor or terminal where there is a table for it', () => {
    expect(['de', 'de-AT', 'de_DE.UTF-8', 'DE'].map(languageOf)).toEqual(['de', 'de', 'de', 'de']);
  });

  it('is English otherwise', () => {
    expect(['en', 'fr_FR.UTF-8', 'C', 'POSIX', '', undefined, 'denmark'].map(languageOf)).toEqual(Array(7).fill('en'));
  });
});

describe('lists', () => {
  it('are joined in words, and cut short', () => {
    expect(ENGLISH.and(['a', 'b', 'c'])).toBe('a, b and c');
    expect(ENGLISH.or(['a', 'b'])).toBe('a or b');
    expect(ENGLISH.and(['a'])).toBe('a');
    expect(ENGLISH.some(['a', 'b', 'c', 'd'], 2)).toBe('a, b and 2 more');
    expect(new Wording({ and: 'und' }, 'de').and(['a', 'b', 'c'])).toBe('a, b und c');
  });
});
