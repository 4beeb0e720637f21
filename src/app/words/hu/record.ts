import type { words as english } from '../en/record.ts';
import { plural, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'Bejegyzés papíron',
  asking: 'A bizonyítás lekérése a szervertől…',
  proven: (place, size) =>
    `Bizonyított: az üzem naplójának ${place}. bejegyzése a(z) ${size} közül, az üzem kulcsával aláírva.`,
  holds: 'A kód tartalmazza a bizonyítást. A „reelward log verify --record” napló nélkül is ellenőrzi.',
  seen: (count, names) =>
    plural(
      count,
      `1 tablet ellenőrizte és aláírta: ${names}.`,
      `${count} tablet ellenőrizte és aláírta: ${names}.`,
    ),
  since: (when) => `Még nem bizonyított: nincs szerver ${when} óta.`,
  never: 'Még nem bizonyított: nem volt elérhető szerver.',
  waiting: 'Még nem bizonyított: a szervernél nincs meg ez a bejegyzés.',
  noProof: 'Nem bizonyított: a szerver nem adott bizonyítást.',
  later: 'Nyomtassa ki újra, ha a szervernél megvan a bejegyzés. Akkor a papíron rajta lesz a bizonyítás.',
  key: (fingerprint) => `Az üzem kulcsa: ${fingerprint}`,
  brought: {
    'one-log': 'Ez a papír ugyanabból a naplóból való, mint ez a tablet.',
    'not-one-log': 'Ez a papír és a szerver két különböző naplót mutat. Hívja a minőségügyi vezetőt.',
    'not-the-plants': 'Ezt a papírt nem ennek az üzemnek a kulcsával írták alá.',
    'no-server': 'Nincs szerver. A papír ellenőrzése akkor történik, amikor a szerver válaszol.',
    'not-checked': 'A papír nincs ellenőrizve. Olvassa be egy szinkronban lévő tableten.',
  },
};
