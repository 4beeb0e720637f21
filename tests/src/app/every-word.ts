// In unit tests of the page every language is at hand from the start; in the page itself a part waits for its words.

import { expect } from 'vitest';

if (expect.getState().testPath?.includes('/tests/src/app/')) {
  const { fetchEveryArea } = await import('../../../src/app/words/fetch.ts');
  const { languages } = await import('../../../src/app/words/words.ts');
  await Promise.all(languages.map(fetchEveryArea));
}
