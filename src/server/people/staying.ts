// Which entries the server reads whenever it starts or checks somebody, so that their texts never leave the store for a month's file.

import { kindsWithRight } from '../../../shared/floor/acts.ts';
import { plantPeople } from './fold.ts';

/** Their kinds, as this version knows them (one that a later version adds is read out of the files): who belongs to the plant, what takes a right, and what proves it. */
export const stayingKinds: ReadonlySet<string> = new Set([
  ...plantPeople.kinds,
  ...kindsWithRight,
  'ticket.taken',
]);
