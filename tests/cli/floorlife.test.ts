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

  const at25 = [{ from: '2026-03-02T06:00:00+01:00', where: 'floor', celsius: 25, humidity: 40 }];
  it.each([
    ['a ball grid array', { package: 'bga' }, 'A', 10],
    ['a leadless pack', { package: 'qfn' }, 'C', null],
    ['a package that nobody gives: the worse', {}, 'A', 10],
    ['one that is given as not known', { package: null }, 'A', 10],
    ['a flat pack of unknown pins: the worse', { package: 'pqfp', thickness: 2.8 }, 'A', 10],
    ['a flat pack of 64 pins', { package: 'pqfp', pins: 64, thickness: 2.8 }, 'B', 12],
    ['a square chip carrier', { package: 'plcc', pins: 44, bodyMm: [16.6, 16.6], thickness: 2.8 }, 'A', 10],
    ['a class known better', { package: 'bga', class: 'C' }, 'C', null],
  ])('takes the class of %s', async (_, more, packageClass, days) => {
    const { out } = await call(['floorlife', '-'], question({ thickness: 1.4, history: at25, ...more }));
    const leftSeconds = days === null ? null : days * 86_400 - 72_000;
    expect(JSON.parse(out)).toMatchObject({ class: packageClass, leftSeconds });
  });

  // J-STD-033 table 4-1 for level 3 and 1.4 mm, floor life exceeded by more than 72 h: 9 h at 125 °C, 13 days at 40 °C (partly from memory).
  it.each([
    [{ package: 'qfn' }, 125, 9, 168],
    [{ package: 'qfn' }, 125, 8.9, 0],
    [{ package: 'qfn' }, 40, 13 * 24, 168],
    [{ package: 'qfn' }, 40, 13 * 24 - 1, 0],
    [{ package: 'bga', bodyMm: [15, 15] }, 125, 9, 168],
    [{ package: 'bga', bodyMm: [23, 23] }, 125, 95, 0],
    [{ package: 'bga', bodyMm: [23, 23] }, 125, 96, 168],
    [{ package: 'bga' }, 125, 95, 0],
    [{}, 125, 9, 168],
    [{ package: 'qfn', thickness: null }, 125, 47, 0],
    [{ package: 'qfn', thickness: null }, 125, 48, 168],
  ])('gives back what the row grants: %j, %d °C, %d h', async (more, celsius, baked, left) => {
    const from = Date.parse('2026-03-01T00:00:00Z');
    const at = (hours: number) => new Date(from + hours * 3_600_000).toISOString();
    const history = [
      { from: at(0), to: at(300), ...floor },
      { from: at(300), to: at(300 + baked), where: 'bake', celsius },
    ];
    const asked = { thickness: 1.4, openedAt: at(0), now: at(300 + baked), history, ...more };
    const { out } = await call(['floorlife', '-'], question(asked));
    expect(JSON.parse(out).leftSeconds).toBe(left * 3600);
  });

  it('asks for the time on the label at level 6, and counts hot hours', async () => {
    const history = [
      { from: '2026-03-02T06:00:00+01:00', to: '2026-03-06T10:00:00+01:00', where: 'bake', celsius: 125 },
      { from: '2026-03-06T10:00:00+01:00', to: '2026-03-06T12:00:00+01:00', ...floor },
    ];
    const asked = { msl: '6', now: '2026-03-06T12:00:00+01:00', history, package: 'qfn' };
    const { out } = await call(['floorlife', '-'], question({ ...asked, timeOnLabel: 21_600 }));
    expect(JSON.parse(out)).toMatchObject({ leftSeconds: 14_400, hotBakeHours: 100 });
    expect(JSON.parse(out).notes.map(({ code }: { code: string }) => code)).toContain('hotBakesOver');
    expect(JSON.parse((await call(['floorlife', '-'], question(asked))).out).leftSeconds).toBe(0);
  });

  it('stops the clock of level 4 in a 5 % cabinet only where the edition says so', async () => {
    const history = [
      { from: '2026-03-02T06:00:00+01:00', to: '2026-03-02T16:00:00+01:00', ...floor },
      { from: '2026-03-02T16:00:00+01:00', to: '2026-03-03T02:00:00+01:00', where: 'dry', humidity: 5 },
    ];
    const left = async (more: object) =>
      JSON.parse((await call(['floorlife', '-'], question({ msl: '4', history, ...more }))).out).leftSeconds;
    expect(await left({})).toBe(52 * 3600);
    expect(await left({ cabinets: true })).toBe(62 * 3600);
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
    ['an unknown package', { package: 'round' }, 'package: expected one of bga'],
    ['half a body', { bodyMm: [5] }, 'bodyMm'],
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
