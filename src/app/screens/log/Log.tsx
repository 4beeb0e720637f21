// The log as people read it: newest first, filtered, each entry with its seal; and the export of what is shown.

import { useEffect, useState } from 'preact/hooks';
import { isHeld } from '../../../../shared/floor/fold-contain.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { useApp, useFloor } from '../../app.ts';
import { LongRows } from '../../long-rows.tsx';
import type { Watch } from '../../outlook/watch.ts';
import { address, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { logWords } from '../../words/log.ts';
import { shellWords } from '../../words/shell.ts';
import { shiftWords } from '../../words/shift.ts';
import { traceWords } from '../../words/trace.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { say } from '../../words/words.ts';
import { Conflicts } from './Conflicts.tsx';
import { EntryDialog } from './EntryDialog.tsx';
import { EntryRow } from './EntryRow.tsx';
import { Export } from './ExportDialog.tsx';
import { Filters } from './Filters.tsx';
import { Held } from './Held.tsx';
import { filtersAsked, type LogFilters } from './model.ts';
import { NotWhole } from './NotWhole.tsx';
import { readRows } from './read-rows.ts';
import { Shift } from './Shift.tsx';
import { Trace } from './Trace.tsx';
import { Unproven, waiting } from './Unproven.tsx';
import './log.css';

/** Rows shown at first and added by each press of "older". */
const PAGE = 60;

const pages = ['entries', 'trace', 'shift', 'held', 'conflicts', 'unproven'] as const;

/** The log screen: its entries, what can be asked of them, and what tablets disagree about. */
export function Log({ watch }: { readonly watch: Watch }) {
  const floor = useFloor();
  const words = say(traceWords);
  const [filters, setFilters] = useState<LogFilters>(() => filtersAsked(place.value.rest));
  const unproven = waiting(floor).length;
  const held = [...floor.contained.values()].filter(isHeld).length;
  const page = pages.find((each) => each === place.value.rest[0]) ?? 'entries';
  return (
    <div class="stack log">
      <div class="log-bar">
        <nav aria-label={say(shellWords).nav.log}>
          {pages.map((each) => (
            <a
              key={each}
              class={page === each ? 'chosen' : ''}
              href={each === 'entries' ? address('log') : address('log', each)}
              data-testid={`log-${each}`}
              {...(page === each ? { 'aria-current': 'page' as const } : {})}
            >
              {each === 'unproven'
                ? say(unprovenWords).page
                : each === 'shift'
                  ? say(shiftWords).page
                  : words[each]}
              {each === 'held' && held > 0 && ` (${held})`}
              {each === 'conflicts' && floor.conflicts.size > 0 && ` (${floor.conflicts.size})`}
              {each === 'unproven' && unproven > 0 && ` (${unproven})`}
            </a>
          ))}
        </nav>
        {page === 'entries' && <Export filters={filters} />}
      </div>
      <NotWhole />
      {page === 'entries' && <Entries filters={filters} onFilter={setFilters} />}
      {page === 'trace' && <Trace />}
      {page === 'shift' && <Shift watch={watch} />}
      {page === 'held' && <Held />}
      {page === 'conflicts' && <Conflicts />}
      {page === 'unproven' && <Unproven />}
    </div>
  );
}

interface EntriesProps {
  readonly filters: LogFilters;
  readonly onFilter: (filters: LogFilters) => void;
}

function Entries({ filters, onFilter }: EntriesProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(logWords);
  const [wanted, setWanted] = useState(PAGE);
  const [rows, setRows] = useState<readonly Entry[]>([]);
  const [more, setMore] = useState(false);
  const [shown, setShown] = useState<Entry | null>(null);
  const change = (part: Partial<LogFilters>) => {
    setWanted(PAGE);
    onFilter({ ...filters, ...part });
  };

  useEffect(() => {
    let isOver = false;
    readRows(app, filters, wanted).then(
      (found) => {
        if (isOver) return;
        setRows(found.rows);
        setMore(found.more);
      },
      () => undefined, // a closed database is told by the fault screen
    );
    return () => {
      isOver = true;
    };
  }, [filters, wanted, app.tick.value]);

  // A link may name an entry, however old.
  useEffect(() => {
    const [page, tablet = '', epoch = '', seq = ''] = place.value.rest;
    if (page !== 'entry') return;
    app.store.entry([tablet, epoch, Number(seq)]).then(setShown, () => undefined);
  }, [place.value]);

  return (
    <>
      <Filters filters={filters} onChange={change} />
      {rows.length === 0 ? (
        <p class="empty">{words.none}</p>
      ) : (
        <div class="entries" data-testid="entries">
          <LongRows
            items={rows}
            keyOf={entryId}
            draw={(entry) => (
              <EntryRow key={entryId(entry)} entry={entry} floor={floor} onShow={() => setShown(entry)} />
            )}
          />
        </div>
      )}
      {more && (
        <div>
          <Button onPress={() => setWanted(wanted + PAGE)} testId="older">
            {words.more}
          </Button>
        </div>
      )}
      {shown && <EntryDialog entry={shown} floor={floor} onClose={() => setShown(null)} />}
    </>
  );
}
