/** Where a panel that follows the cursor stays, and where it goes along. */
import { describe, expect, it } from 'vitest';
import { Visit } from '../../extension/panels/visit.js';

describe('a panel', () => {
  it('goes along with the cursor', () => {
    const visit = new Visit();
    expect(visit.leadsOn('tarn-1', 'tarn-1')).toBe(false);
    expect(visit.leadsOn('tarn-2', 'tarn-1')).toBe(true);
  });

  it('stays while what was clicked in it is looked at, and goes along again afterwards', () => {
    const visit = new Visit();
    visit.begin('tarn');
    expect(visit.leadsOn('tarn', 'tarn-1')).toBe(false);
    expect(visit.leadsOn('tarn', 'tarn-1')).toBe(false);
    expect(visit.leadsOn('tarn-1', 'tarn-1')).toBe(false);
    expect(visit.leadsOn('tarn', 'tarn-1')).toBe(true);
  });

  it('stays though news of an edit comes while the cursor is on its way', () => {
    const visit = new Visit();
    visit.begin('tarn');
    expect(visit.leadsOn('tarn-1', 'tarn-1')).toBe(false);
    expect(visit.leadsOn('tarn', 'tarn-1')).toBe(false);
  });

  it('goes along when the cursor went somewhere else than it was sent', () => {
    const visit = new Visit();
    visit.begin('tarn');
    expect(visit.leadsOn('tarn-2', 'tarn-1')).toBe(true);
    expect(visit.leadsOn('tarn', 'tarn-2')).toBe(true);
  });
});
