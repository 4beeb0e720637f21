// Leg of the tour: the plant's state grows towards what may be handed to a new tablet, and beyond.

import { waitReady } from '../browser.ts';
import { goThere, type Here, type Leg } from './here.ts';

/** What lies between says how large the state is: to make such a one takes years. */
async function* newTablets(here: Here): AsyncGenerator<string> {
  const { page } = here;
  for (const [stateShare, word, what] of [
    [0.62, 'nears', 'server, new tablets will soon start slowly'],
    [1.2, 'over', 'server, new tablets start slowly'],
  ] as const) {
    await page.route('**/api/offer', async (route) => {
      const response = await route.fetch();
      const told = (await response.json()) as object;
      await route.fulfill({ response, json: { ...told, stateShare } });
    });
    // A tablet hears of it when it begins to sync.
    await page.reload();
    await waitReady(page);
    await goThere(here, '#/plant/server');
    await page.getByTestId(`new-tablets-${word}`).waitFor({ timeout: 60_000 });
    yield what;
    await page.unroute('**/api/offer');
  }
}

/** After joining: the screen of the server says how new tablets start. */
export const newTabletsLeg: Leg = { name: 'new-tablets', stops: newTablets };
