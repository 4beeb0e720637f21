// The rows of a board bank by bank, with what is free between them: what is shown, and where a part can be dropped. Pure.

import { type LinePlaces, positionKey, takenKeys } from '../../../../../shared/assign/places.ts';
import { byWalk, type SlotRow } from './board-model.ts';

/** One line of a bank: a part on its slot, or free places between two parts. */
export type SlotLine =
  | { readonly is: 'part'; readonly row: SlotRow & { readonly slot: string } }
  | { readonly is: 'free'; readonly first: string; readonly last: string };

/** A bank with its lines in walking order; `bank` null = places of their own. */
export interface BankList {
  readonly key: string;
  readonly bank: { readonly machine: string; readonly name: string; readonly hasTrays: boolean } | null;
  readonly lines: readonly SlotLine[];
}

/** Every bank of the line with what stands there and what is free; then places of their own that have a part. */
export function bankLists(rows: readonly SlotRow[], places: LinePlaces): readonly BankList[] {
  const { placed } = byWalk(rows);
  const bankOf = (slot: string) => {
    const at = places.find(slot);
    return at === null ? null : `${at.machine}/${at.bank}`;
  };
  const taken = new Set(placed.flatMap(({ slot, positions }) => takenKeys(places, slot, positions)));
  for (const key of [...taken]) taken.add(positionKey(key));
  const known = places.line.machines.flatMap((machine, m) =>
    machine.banks.map((bank, b) => {
      const key = `${m}/${b}`;
      const lines: SlotLine[] = [];
      const parts = placed.filter(({ slot }) => bankOf(slot) === key);
      for (let position = 1; position <= bank.positions; position++) {
        const here = parts.filter(({ slot }) => places.find(slot)?.position === position);
        lines.push(...here.map((row) => ({ is: 'part' as const, row })));
        if (taken.has(`${key}/${position}`)) continue;
        const first = places.write(m, b, position);
        while (position < bank.positions && !taken.has(`${key}/${position + 1}`)) position++;
        lines.push({ is: 'free', first, last: places.write(m, b, position) });
      }
      const about = { machine: machine.name, name: bank.name, hasTrays: bank.holds === 'trays' };
      return { key, bank: about, lines };
    }),
  );
  const own = placed.filter(({ slot }) => bankOf(slot) === null);
  const lists: readonly BankList[] = known.filter(({ lines }) => lines.length > 0);
  if (own.length === 0) return lists;
  return [...lists, { key: 'own', bank: null, lines: own.map((row) => ({ is: 'part', row })) }];
}
