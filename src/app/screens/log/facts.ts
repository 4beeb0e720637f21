// The facts of an entry in words: all of them for its dialog, the telling ones for its row.

import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { type FactName, factWords } from '../../words/log-facts.ts';
import { say } from '../../words/words.ts';
import { isFactName, sayFact } from './sayings.ts';

/** One fact: which, what it is called, what it says. */
export interface ToldFact {
  readonly name: FactName;
  readonly label: string;
  readonly text: string;
}

/** All that an entry says, in the order in which it was written. */
export function allFacts(entry: Entry, floor: FloorState): readonly ToldFact[] {
  const { names } = say(factWords);
  return Object.entries(entry.payload).flatMap(([name, value]) => {
    const told = sayFact(name, value, entry, floor);
    return told === null || !isFactName(name) ? [] : [{ name, label: names[name], text: told }];
  });
}

/** Facts worth a word in the list, in this order. Verdict, reasons and source stand beside them as marks. */
const inRow: readonly FactName[] = [
  'name',
  'tablet',
  'person',
  'account',
  'role',
  'credential',
  'title',
  'checklist',
  'template',
  'step',
  'value',
  'right',
  'station',
  'total',
  'code',
  'recipe',
  'what',
  'said',
  'says',
  'depleted',
  'active',
  'jar',
  'paste',
  'slot',
  'part',
  'supplierPart',
  'reel',
  'lot',
  'quantity',
  'parts',
  'feeder',
  'comesIn',
  'placements',
  'type',
  'tapeWidthMm',
  'cart',
  'place',
  'size',
  'air',
  'product',
  'side',
  'revision',
  'run',
  'panelsWanted',
  'add',
  'panels',
  'serial',
  'skipped',
  'level',
  'due',
  'operators',
  'celsius',
  'hours',
  'humidity',
  'rule',
  'format',
  'rows',
  'settled',
  'entries',
  'jobs',
  'slots',
  'seen',
  'family',
  'pins',
  'edition',
  'lives',
  'bakes',
  'hours',
  'packageClass',
  'leftSeconds',
  'missing',
  'short',
  'changeover',
  'passkey',
  'of',
  'to',
  'reason',
  'note',
];
/** Of kinds that say only where. */
const inRowElse: readonly FactName[] = ['setup', 'line'];
/** More would not be read. */
const ROW_MOST = 7;

/** What an entry says in one line. */
export function rowFacts(entry: Entry, floor: FloorState): readonly ToldFact[] {
  const all = new Map(allFacts(entry, floor).map((fact) => [fact.name, fact]));
  // A reel belongs to its run, and a count says how many: neither is told twice.
  if (all.has('slot') && entry.kind !== 'panels.counted')
    for (const name of ['run', 'panels'] as const) all.delete(name);
  if (all.has('product')) all.delete('run');
  const found = inRow.flatMap((name) => all.get(name) ?? []).slice(0, ROW_MOST);
  return found.length > 0 ? found : inRowElse.flatMap((name) => all.get(name) ?? []).slice(0, 1);
}
