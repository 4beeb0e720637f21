// A plant that is played through the link's own files and the tablets' own fold: is the final count exact wherever a device kept its total,
// and is every other difference explained? Three machines, ten thousand panels; lost, doubled and late messages, power cuts, a killed
// link, a network that is away while people count.

import { describe, expect, test } from 'vitest';
import { simulate } from '../../../src/link/simulate.ts';
import { newFolder } from '../../contract/databases.ts';

describe('a simulated plant', () => {
  test.each([1, 7])('ends with the panels that passed, by seed %i', async (seed) => {
    const folder = newFolder();
    try {
      const played = await simulate({ folder: folder.path, panels: 10_000, seed });
      for (const machine of played.machines) {
        expect(machine.unexplained).toBe(0);
        expect(machine.counted).toBeGreaterThan(3_000);
        if (machine.keepsTotal) expect(machine.unsaid).toBe(0);
      }
      expect(played.lost).toBeGreaterThan(100);
      expect(played.doubled).toBeGreaterThan(50);
      expect(played.late).toBeGreaterThan(100);
      expect(played.powerCuts).toBeGreaterThan(3);
      expect(played.kills).toBeGreaterThan(3);
    } finally {
      folder.remove();
    }
  });
});
