// What is said of a reel that was used up long ago is true in a plant without a server too: in no language does it send people to one.

import { afterEach, expect, test } from 'vitest';
import { fetchEveryArea } from '../../../../src/app/words/fetch.ts';
import { sayReason } from '../../../../src/app/words/verdict.ts';
import { language, languages } from '../../../../src/app/words/words.ts';

const server = /server|serveur|servidor|szerver|serwer|サーバー|서버|máy chủ|服务器|الخادم/i;

afterEach(() => {
  language.value = 'en';
});

test.each(languages)('in %s it names the reel, and no server', async (each) => {
  await fetchEveryArea(each);
  language.value = each;
  const words = sayReason('reel-gone');
  const text = [words?.title, words?.say({ reel: 'K1' }), words?.act].join(' ');
  expect(text).toContain('K1');
  expect(text).not.toMatch(server);
});
