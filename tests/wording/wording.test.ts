import { describe, expect, it } from 'vitest';
import { ENGLISH, Wording } from '../../language/wording/wording.js';

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
