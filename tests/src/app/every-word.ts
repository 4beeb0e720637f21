// In unit tests of the page English and Spanish are at hand from the start; in the page itself a part waits for its words. Tests of the other
// languages fetch them themselves: all of them would be read by every test file.

import { expect } from 'vitest';

if (expect.getState().testPath?.includes('/tests/src/app/')) {
  const { fetchEveryArea } = await import('../../../src/app/words/fetch.ts');
  await Promise.all((['en', 'es'] as const).map(fetchEveryArea));
}
