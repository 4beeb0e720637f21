// The log as people read it: newest first, filtered, each entry with its seal; and the export of what is shown.

import { useEffect, useState } from 'preact/hooks';
import { isHeld } from '../../../../shared/floor/fold-contain.ts';
import { verdicts } from '../../../../shared/floor/vocabulary.ts';
import { DAY_MS } from '../../../../shared/kit/moment.ts';
import { verifyChains } from '../../../../shared/log/chain.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { filterToTest } from '../../../../shared/log/export.ts';
import { type ExportFormat, exportFormats } from '../../../../shared/log/export-formats.ts';
import { useApp, useFloor } from '../../app.ts';
import { useNotWhole } from '../../behind.ts';
import { saveFile } from '../../device/save-file.ts';
import { useRefusal } from '../../may.ts';
import { address, place } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { logWords } from '../../words/log.ts';
import { shellWords } from '../../words/shell.ts';
import { traceWords } from '../../words/trace.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { say } from '../../words/words.ts';
import { Conflicts } from './Conflicts.tsx';
import { EntryDialog } from './EntryDialog.tsx';
import { EntryRow } from './EntryRow.tsx';
import { exportName, exportStore } from './export-log.ts';
import { Held } from './Held.tsx';
import { firstFilters, type LogFilters, type Span, spans, toExportFilter } from './model.ts';
import { NotWhole } from './NotWhole.tsx';
import { Trace } from './Trace.tsx';
import { Unproven, waiting } from './Unproven.tsx';
import './log.css';
import { Field, SelectField } from '../../ui/Field.tsx';

/** Rows shown at first and added by each press of "older". */
const PAGE = 60;
/** Entries read at once while looking for rows that fit. */
const CHUNK = 400;

const pages = ['entries', 'trace', 'held', 'conflicts', 'unproven'] as const;

/** The log screen: its entries, what can be asked of them, and what tablets disagree about. */
export function Log() {
  const floor = useFloor();
  const words = say(traceWords);
  const unproven = waiting(floor).length;
  const held = [...floor.contained.values()].filter(isHeld).length;
  const page = pages.find((each) => each === place.value.rest[0]) ?? 'entries';
  return (
    <div class="stack">
      <nav class="choice" aria-label={say(shellWords).nav.log}>
        {pages.map((each) => (
          <a
            key={each}
            class={`button${page === each ? ' chosen' : ''}`}
            href={each === 'entries' ? address('log') : address('log', each)}
            data-testid={`log-${each}`}
            {...(page === each ? { 'aria-current': 'page' as const } : {})}
          >
            {each === 'unproven' ? say(unprovenWords).page : words[each]}
            {each === 'held' && held > 0 && ` (${held})`}
            {each === 'conflicts' && floor.conflicts.size > 0 && ` (${floor.conflicts.size})`}
            {each === 'unproven' && unproven > 0 && ` (${unproven})`}
          </a>
        ))}
      </nav>
      <NotWhole />
      {page === 'entries' && <Entries />}
      {page === 'trace' && <Trace />}
      {page === 'held' && <Held />}
      {page === 'conflicts' && <Conflicts />}
      {page === 'unproven' && <Unproven />}
    </div>
  );
}

function Entries() {
  const app = useApp();
  const floor = useFloor();
  const words = say(logWords);
  const [filters, setFilters] = useState<LogFilters>(firstFilters);
  const [wanted, setWanted] = useState(PAGE);
  const [rows, setRows] = useState<readonly Entry[]>([]);
  const [more, setMore] = useState(false);
  const [shown, setShown] = useState<Entry | null>(null);
  const [busy, setBusy] = useState<string | null>(null);
  const change = (part: Partial<LogFilters>) => {
    setWanted(PAGE);
    setFilters({ ...filters, ...part });
  };

  useEffect(() => {
    let isOver = false;
    readRows(app, filters, wanted).then(
      (found) => {
        if (isOver) return;
        setRows(found.rows);
        setMore(found.more);
        const asked = found.rows.find((entry) => entryId(entry) === place.value.rest.join('/'));
        if (asked) setShown(asked);
      },
      () => undefined, // a closed database is told by the fault screen
    );
    return () => {
      isOver = true;
    };
  }, [filters, wanted, app.tick.value]);

  const notWhole = useNotWhole();
  const refused = useRefusal('export-log') ?? notWhole;

  async function save(format: ExportFormat): Promise<void> {
    setBusy(words.exporting);
    const filter = toExportFilter(filters, app.clock.nowMs());
    const { blob, rows: count } = await exportStore(app.store, filter, format);
    const name = exportName(format, app.clock.nowMs());
    saveFile(name, blob);
    setBusy(null);
    app.notice.value = { tone: 'go', text: words.exported(count, name) };
    await app.write([
      { kind: 'log.exported', payload: { format, filter: JSON.stringify(filter), rows: count } },
    ]);
  }

  async function check(): Promise<void> {
    setBusy(words.checking);
    const all: Entry[] = [];
    await app.store.readAll((entries) => void all.push(...entries));
    const report = verifyChains(all);
    setBusy(null);
    app.notice.value = report.firstBroken
      ? { tone: 'stop', text: words.broken(report.firstBroken.id) }
      : { tone: 'go', text: words.checked(report.entries) };
  }

  return (
    <div class="stack">
      <Filters filters={filters} onChange={change} />
      <div class="row">
        <span class="soft">{words.exportTitle}:</span>
        {exportFormats.map((format) => (
          <Button
            key={format}
            disabledReason={refused}
            testId={`export-${format}`}
            onPress={() => void save(format)}
          >
            <Icon name="save" size={20} /> {words[format]}
          </Button>
        ))}
        <span class="grow" />
        <Button onPress={() => void check()} disabledReason={notWhole} testId="check-seals">
          {words.check}
        </Button>
      </div>
      {busy !== null && (
        <p class="chip" role="status">
          {busy}
        </p>
      )}
      {rows.length === 0 ? (
        <p class="empty">{words.none}</p>
      ) : (
        <div class="entries" data-testid="entries">
          {rows.map((entry) => (
            <EntryRow key={entryId(entry)} entry={entry} floor={floor} onShow={() => setShown(entry)} />
          ))}
        </div>
      )}
      {more && (
        <div>
          <Button onPress={() => setWanted(wanted + PAGE)} testId="older">
            {words.more}
          </Button>
        </div>
      )}
      <p class="soft">{words.exportHelp}</p>
      {shown && <EntryDialog entry={shown} floor={floor} onClose={() => setShown(null)} />}
    </div>
  );
}

function Filters({
  filters,
  onChange,
}: {
  readonly filters: LogFilters;
  readonly onChange: (part: Partial<LogFilters>) => void;
}) {
  const floor = useFloor();
  const words = say(logWords);
  return (
    <div class="filters">
      <div class="choice">
        {(Object.keys(spans) as Span[]).map((span) => (
          <button
            type="button"
            key={span}
            aria-pressed={filters.span === span}
            data-testid={`span-${span}`}
            onClick={() => onChange({ span })}
          >
            {words.times[span]}
          </button>
        ))}
      </div>
      <div class="choice">
        {verdicts.map((verdict) => (
          <button
            type="button"
            key={verdict}
            aria-pressed={filters.verdict === verdict}
            data-testid={`verdict-${verdict}`}
            onClick={() => onChange({ verdict: filters.verdict === verdict ? null : verdict })}
          >
            {words.verdicts[verdict]}
          </button>
        ))}
      </div>
      <Field
        label={words.filters.slot}
        testId="filter-slot"
        placeholder={words.slotHelp}
        value={filters.slot}
        onInput={(text) => onChange({ slot: text })}
      />
      <SelectField
        label={words.filters.person}
        value={filters.who ?? ''}
        onChoose={(who) => onChange({ who: who || null })}
      >
        <option value="">{words.filters.all}</option>
        {[...floor.people.values()].map((person) => (
          <option key={person.person} value={person.person}>
            {person.name}
          </option>
        ))}
      </SelectField>
      {floor.lines.size > 1 && (
        <SelectField
          label={words.filters.line}
          value={filters.line ?? ''}
          onChoose={(line) => onChange({ line: line || null })}
        >
          <option value="">{words.filters.all}</option>
          {[...floor.lines.values()].map((line) => (
            <option key={line.line} value={line.line}>
              {line.name}
            </option>
          ))}
        </SelectField>
      )}
    </div>
  );
}

/** Looks backwards through the log until enough rows fit or the span's start is passed. */
async function readRows(
  app: ReturnType<typeof useApp>,
  filters: LogFilters,
  wanted: number,
): Promise<{ rows: readonly Entry[]; more: boolean }> {
  const filter = toExportFilter(filters, app.clock.nowMs());
  const isKept = filterToTest(filter);
  const fromMs = filter.from === undefined ? null : Date.parse(filter.from);
  const rows: Entry[] = [];
  let before: Entry | undefined;
  for (;;) {
    const chunk = await app.store.newest(CHUNK, before);
    for (const entry of chunk) if (isKept(entry)) rows.push(entry);
    before = chunk.at(-1);
    if (rows.length > wanted) return { rows: rows.slice(0, wanted), more: true };
    if (!before || chunk.length < CHUNK) return { rows, more: false };
    // The order is the hybrid clock's, which never lies behind the wall clock by more than a clock set back.
    if (fromMs !== null && before.hlc.ms < fromMs - DAY_MS) return { rows, more: false };
  }
}
