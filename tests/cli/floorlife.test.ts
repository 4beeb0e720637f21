import { describe, expect, it } from 'vitest';
import { call } from './call.ts';

const floor = { where: 'floor', celsius: 30, humidity: 60 };

function question(more: Readonly<Record<string, unknown>> = {}) {
  return JSON.stringify({
    msl: '3',
    thickness: 3.5,
    openedAt: '2026-03-02T06:00:00+01:00',
    now: '2026-03-03T02:00:00+01:00',
    history: [{ from: '2026-03-02T06:00:00+01:00', to: '2026-03-03T02:00:00+01:00', ...floor }],
    ...more,
  });
}

describe('floorlife', () => {
  it('answers in seconds and with a moment at the offset of now', async () => {
    const { code, out } = await call(['floorlife', '-'], question());
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      usedSeconds: 72_000,
      leftSeconds: 532_800,
      expiresAt: '2026-03-09T06:00:00+01:00',
      class: 'A',
    });
  });

  it('reads moments at different offsets as the same clock', async () => {
    const history = [{ from: '2026-03-02T05:00:00Z', to: '2026-03-02T20:00:00-05:00', ...floor }];
    const { out } = await call(['floorlife', '-'], question({ history }));
    expect(JSON.parse(out)).toMatchObject({ usedSeconds: 72_000, leftSeconds: 532_800 });
  });

  it('takes a level written as a number and a stretch that still lasts', async () => {
    const history = [{ from: '2026-03-02T06:00:00+01:00', ...floor }];
    const { code, out } = await call(['floorlife', '-'], question({ msl: 3, history }));
    expect(code).toBe(0);
    expect(JSON.parse(out).leftSeconds).toBe(532_800);
  });

  it('leaves null at level 1', async () => {
    const { out } = await call(['floorlife', '-'], question({ msl: '1' }));
    expect(JSON.parse(out)).toMatchObject({ leftSeconds: null, expiresAt: null });
  });

  it('says what is assumed as notes with a code and a sentence', async () => {
    const { out } = await call(['floorlife', '-'], question({ history: [] }));
    const note = JSON.parse(out).notes.find((entry: { code: string }) => entry.code === 'standardClimate');
    expect(note.message).toContain('30 °C and 60 %');
  });

  it.each([
    ['an unknown key', { thicknes: 1 }, 'thicknes: key not known here'],
    ['an unknown level', { msl: '7' }, 'msl: expected one of 1, 2, 2a, 3, 4, 5, 5a, 6'],
    ['a moment without offset', { now: '2026-03-03T02:00:00' }, 'now: expected a moment such as'],
    ['a day that no calendar has', { now: '2026-02-30T02:00:00Z' }, 'now: expected a moment such as'],
    [
      'a bag opened later than now',
      { openedAt: '2026-03-04T00:00:00Z' },
      'openedAt: expected a moment not after now',
    ],
    [
      'a stretch that ends before it starts',
      { history: [{ from: '2026-03-02T08:00:00Z', to: '2026-03-02T07:00:00Z', ...floor }] },
      'history[0].to: expected a moment not before from',
    ],
    [
      'a misspelt key inside the history',
      { history: [{ from: '2026-03-02T08:00:00Z', where: 'floor', celsius: 20, humidty: 50 }] },
      'history[0].humidty: key not known here',
    ],
    [
      'an unknown place',
      { history: [{ from: '2026-03-02T08:00:00Z', where: 'shelf' }] },
      'history[0].where: ',
    ],
    ['a thickness of 0', { thickness: 0 }, 'thickness: '],
  ])('exits 2 with one line on %s', async (_, more, wanted) => {
    const { code, out, err } = await call(['floorlife', '-'], question(more));
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(wanted);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  it('exits 2 without a file', async () => {
    expect(await call(['floorlife'])).toMatchObject({ code: 2 });
  });

  it('explains itself', async () => {
    const { code, out } = await call(['floorlife', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('leftSeconds');
  });
});
