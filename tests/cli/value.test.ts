import { describe, expect, it } from 'vitest';
import { call } from './call.ts';

describe('reelward value', () => {
  it('gives every reading', async () => {
    const { code, out } = await call(['value', '10R']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({
      readings: [
        {
          kind: 'resistor',
          value: 10,
          unit: 'Ω',
          tolerance: null,
          code: 'IEC 60062',
          series: ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'],
        },
        { kind: 'resistor', value: 1.24, unit: 'Ω', tolerance: 1, code: 'EIA-96', series: ['E96', 'E192'] },
      ],
    });
  });

  it('gives one kind where asked, limits that differ as an object', async () => {
    const { out } = await call(['value', '104Z', '--kind', 'capacitor']);
    expect(JSON.parse(out)).toMatchObject({
      readings: [
        { kind: 'capacitor', value: 1e-7, unit: 'F', tolerance: { plus: 80, minus: 20, unit: '%' } },
      ],
    });
    expect(JSON.parse((await call(['value', '4R7C', '--kind', 'capacitor'])).out)).toMatchObject({
      readings: [{ tolerance: { plus: 0.25, minus: 0.25, unit: 'pF' } }],
    });
  });

  it('answers no for a text that is no value code', async () => {
    const { code, out, err } = await call(['value', 'hello']);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toEqual({ readings: [] });
    expect(err).toContain('hello');
  });

  it('reads a value in plain, and says why where there is none', async () => {
    expect(JSON.parse((await call(['value', '4,7 kΩ'])).out)).toMatchObject({
      readings: [{ kind: 'resistor', value: 4700, unit: 'Ω', tolerance: null, code: 'plain' }],
    });
    const coil = await call(['value', '10 µH']);
    expect(coil.code).toBe(1);
    expect(JSON.parse(coil.out)).toEqual({ readings: [] });
    expect(coil.err).toContain('a value in H');
    expect((await call(['value', '4k7', '--kind', 'capacitor'])).err).toContain('of a resistor only');
  });

  it('refuses a call that it does not understand', async () => {
    expect((await call(['value'])).code).toBe(2);
    expect((await call(['value', '10R', '--kind', 'coil'])).err).toContain('resistor or capacitor');
    expect((await call(['value', '--help'])).code).toBe(0);
  });
});
