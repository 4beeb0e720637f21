// Who works in the invented plant. Every PIN is the number on the badge: the demo keeps nothing that needs a secret.
// The verifiers were made once with PBKDF2-SHA-256, as a tablet makes them (the salt as text), since 600 000 rounds take their time.

import type { PayloadOf } from '../shared/floor/kinds.ts';
import type { Role } from '../shared/floor/vocabulary.ts';

type PersonRow = readonly [number: string, name: string, role: Role, salt: string, hash: string];

const rows: readonly PersonRow[] = [
  [
    '2201',
    'Ailsa',
    'operator',
    '8d9274800f6a549db134c77684c328e4',
    '477d1f663cf9e3fa25e9d898da95be9f33cf06638604c0dbe3bd1593e582b937',
  ],
  [
    '2202',
    'Tomasz',
    'operator',
    '22ca0252a537e985d30f2377bc43aaab',
    'eb72b6051e77dc2b811bdc3094bac274e93e21c30cb38df9383eabe26f70fd66',
  ],
  [
    '2203',
    'Ngozi',
    'operator',
    '5a13123beb966e299495ad6b01852408',
    'c57e3b93de5c74542e324e4c748e815aa95aadadc23b6c1feb14a70a65f9d0a8',
  ],
  [
    '2204',
    'Priya',
    'operator',
    '68ea6b80ab62c960324e472b3c3965d0',
    '3db00eb05c5888b5178518a981724641afa5ba3393e9e325409bde7fb89524d4',
  ],
  [
    '2205',
    'Diego',
    'operator',
    'ba654431ad149c1df3f0684fb867cb98',
    '83642150aa2962d20807e247924bc0cf61be2853aa6eddc77e89d1adfcd0d772',
  ],
  [
    '2206',
    'Linh',
    'operator',
    'ae01d0481b843a49f271e412bc816ce5',
    'd706d83910641cdaa624de5f0437302e3b81b57755f0ecb14153c34edf46ef49',
  ],
  [
    '3301',
    'Morag',
    'lead',
    '8d66ba9c6512ea29975e62bb666df316',
    'fcd7cf0f0d1599b72a364faa3536f317cf3f7ac9973b65cbf9251f7b07fa3889',
  ],
  [
    '3302',
    'Kwame',
    'lead',
    'f0bb29b582df0a3d6d75e2b74773b9bc',
    'a568c73ea60adb688b974789dbb2f09f984a5eb08c097a21ecf54f1c67760a56',
  ],
  [
    '4401',
    'Elif',
    'engineer',
    '3703a91636b1ff660ab21ecdf8089d38',
    'd60c4d5cc4aced939de71f4f70fc372db5d258f214d2e19a14633e2ca226be08',
  ],
  [
    '4402',
    'Henrik',
    'engineer',
    'a9ff218f5e80dfc87e93bb71e79499d5',
    'e8907b2dbc11b6318f835516b9c08e1963e3816186f0d05e4916e2e7361de681',
  ],
];

/** The people, as their entries say. */
export const people: readonly PayloadOf<'person.added'>[] = rows.map(([number, name, role, salt, hash]) => ({
  person: `p-${number}`,
  name,
  role,
  badge: `BADGE-${number}`,
  pin: { salt, hash, rounds: 600_000 },
}));

/** The people of one role, in the order of the list. */
export function peopleOf(role: Role): readonly PayloadOf<'person.added'>[] {
  return people.filter((person) => person.role === role);
}
