// Who works in the invented plant. Every PIN is the number on the badge: the demo keeps nothing that needs a secret.
// The verifiers were made once with PBKDF2-SHA-256, as a tablet makes them, since 600 000 rounds take their time.

import type { PayloadOf } from '../shared/setup/kinds.ts';
import type { Role } from '../shared/setup/vocabulary.ts';

type PersonRow = readonly [number: string, name: string, role: Role, salt: string, hash: string];

const rows: readonly PersonRow[] = [
  [
    '2201',
    'Ailsa',
    'operator',
    '8d9274800f6a549db134c77684c328e4',
    '681a252e6a8869e184e0206fe8ec2e7a6b5589115bac6a3eb9fd377678576abd',
  ],
  [
    '2202',
    'Tomasz',
    'operator',
    '22ca0252a537e985d30f2377bc43aaab',
    'b104720197dac69909e3ee1f4032d960c7ff5b2e2599e7be721f3c2fda759904',
  ],
  [
    '2203',
    'Ngozi',
    'operator',
    '5a13123beb966e299495ad6b01852408',
    'e720ffea2ecd21137bb2d76971d62a40d937d1f7ee3b57c7fefa03f62682b592',
  ],
  [
    '2204',
    'Priya',
    'operator',
    '68ea6b80ab62c960324e472b3c3965d0',
    '002ac2ed29515dacd89d57b69a982261b1400af99ebee2c317a1b8019ec75bc8',
  ],
  [
    '2205',
    'Diego',
    'operator',
    'ba654431ad149c1df3f0684fb867cb98',
    '0710fe7ca7e5578bc8e8c3f96853045d39f4bdf845c6657ccc86b3b2501f507a',
  ],
  [
    '2206',
    'Linh',
    'operator',
    'ae01d0481b843a49f271e412bc816ce5',
    '81434d0a6b339147dc2370f6d0d4325feca0f53434786c75fb9632f025f90ab7',
  ],
  [
    '3301',
    'Morag',
    'lead',
    '8d66ba9c6512ea29975e62bb666df316',
    '5c195ccbc818c3e4323c661b438ea0f3a8807e4893639c5fbe6f44d5a90fc247',
  ],
  [
    '3302',
    'Kwame',
    'lead',
    'f0bb29b582df0a3d6d75e2b74773b9bc',
    '5f2e64c6df6146ff2eb40a58b2b957e54fbd5465c892b69f0aa10865838da7b4',
  ],
  [
    '4401',
    'Elif',
    'engineer',
    '3703a91636b1ff660ab21ecdf8089d38',
    'dd094ba05632064911cc768df52a5ea373b37a8ab151816e4f68d12def3f857f',
  ],
  [
    '4402',
    'Henrik',
    'engineer',
    'a9ff218f5e80dfc87e93bb71e79499d5',
    '660825ef1b9f4c252ed0b5f05267e060e35c36cfcefe52dd7c3caab36bb484a8',
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
