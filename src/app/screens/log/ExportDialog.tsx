// Everything that leaves the log, and the check of its seals, behind one button; the right that it takes is told once.

import { useEffect, useState } from 'preact/hooks';
import { THE_PLANT } from '../../../../shared/floor/state.ts';
import { verifyChains } from '../../../../shared/log/chain.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { type ExportFormat, exportFormats } from '../../../../shared/log/export-formats.ts';
import { consumptionOf } from '../../../../shared/trace/consumption.ts';
import { type App, useApp } from '../../app.ts';
import { useNotWhole } from '../../behind.ts';
import { saveFile } from '../../device/save-file.ts';
import { leave, toldOf } from '../../let-out.ts';
import { useRefusal } from '../../may.ts';
import { tabletPictures } from '../../store/pictures.ts';
import { ActGroup } from '../../ui/ActGroup.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Icon } from '../../ui/Icon.tsx';
import { logWords } from '../../words/log.ts';
import { picturesWords } from '../../words/pictures.ts';
import { shellWords } from '../../words/shell.ts';
import { say } from '../../words/words.ts';
import { whileBusy } from './busy.ts';
import { consumptionName, consumptionToCsv } from './consumption-csv.ts';
import { exportName, exportStore } from './export-log.ts';
import { exportPictures, picturesName } from './export-pictures.ts';
import { useFiltersTold } from './Filters.tsx';
import { type LogFilters, toExportFilter } from './model.ts';
import { readIndex } from './read-index.ts';

interface ExportProps {
  readonly filters: LogFilters;
}

/** The button, and what it opens. */
export function Export({ filters }: ExportProps) {
  const words = say(logWords);
  const [isOpen, setOpen] = useState(false);
  const [busy, setBusy] = useState<string | null>(null);
  return (
    <>
      {busy !== null && (
        <p class="chip" role="status">
          {busy}
        </p>
      )}
      <Button onPress={() => setOpen(true)} testId="log-export">
        <Icon name="save" size={20} /> {words.exportTitle}
      </Button>
      {isOpen && <ExportDialog filters={filters} onBusy={setBusy} onClose={() => setOpen(false)} />}
    </>
  );
}

interface ExportDialogProps extends ExportProps {
  /** Told what it is at, and null once that is done. */
  readonly onBusy: (text: string | null) => void;
  readonly onClose: () => void;
}

function ExportDialog({ filters, onBusy, onClose }: ExportDialogProps) {
  const app = useApp();
  const words = say(logWords);
  const told = useFiltersTold(filters);
  const notWhole = useNotWhole();
  const refused = useRefusal('export-log', true) ?? notWhole;
  const refusedPictures = useRefusal('export-log') ?? notWhole; // those that lie here are of the real line

  /** Does one of them, with the dialog out of the way. */
  function begin(text: string, work: () => Promise<void>): void {
    onClose();
    const onFailed = () => {
      app.notice.value = { tone: 'stop', text: words.unfinished };
    };
    void whileBusy(work, { text, onBusy, onFailed });
  }

  async function save(format: ExportFormat): Promise<void> {
    const filter = toExportFilter(filters, app.clock.nowMs());
    const { blob, rows } = await exportStore(app.store, filter, format);
    const name = exportName(format, app.clock.nowMs(), plantName(app));
    leave(app, name, blob);
    recordExport(app, { format, filter, rows }, toldOf(app, name, words.exported(rows, name)));
  }

  /** What runs took, each as a whole: those of the line that the filters name, and that went on in their time. */
  async function saveConsumption(): Promise<void> {
    const { line, from } = toExportFilter(filters, app.clock.nowMs());
    const index = await readIndex(app, () => undefined);
    const fromMs = from === undefined ? null : Date.parse(from);
    const rows = consumptionOf(index, { line: line ?? null, fromMs });
    const name = consumptionName(app.clock.nowMs(), plantName(app));
    leave(app, name, new Blob([consumptionToCsv(rows, index.state)], { type: 'text/csv' }));
    const filter = { line: line ?? null, from: from ?? null };
    const told = toldOf(app, name, words.consumptionSaved(rows.length, name));
    recordExport(app, { format: 'consumption', filter, rows: rows.length }, told);
  }

  async function savePictures(): Promise<void> {
    const { from } = toExportFilter(filters, app.clock.nowMs());
    const { blob, rows } = await exportPictures(tabletPictures(), fromMsOf(from));
    const name = picturesName(app.clock.nowMs(), plantName(app));
    saveFile(name, blob);
    const told = say(picturesWords).saved(name);
    recordExport(app, { format: 'pictures', filter: { from: from ?? null }, rows }, told);
  }

  async function check(): Promise<void> {
    const all: Entry[] = [];
    await app.store.readAll((entries) => void all.push(...entries));
    const report = verifyChains(all);
    app.notice.value = report.firstBroken
      ? { tone: 'stop', text: words.broken(report.firstBroken.id) }
      : { tone: 'go', text: words.checked(report.entries) };
  }

  return (
    <Dialog title={words.exportTitle} onClose={onClose}>
      <div class="stack">
        <p>
          <b>{words.onlyShown(told)}</b>
          <br />
          <span class="soft">{words.exportHelp}</span>
        </p>
        <ActGroup reason={refused}>
          <div class="row">
            {exportFormats.map((format) => (
              <Button
                key={format}
                large
                disabledReason={refused}
                testId={`export-${format}`}
                onPress={() => begin(words.exporting, () => save(format))}
              >
                <Icon name="save" size={20} /> {words[format]}
              </Button>
            ))}
          </div>
          <SavePictures
            filters={filters}
            refused={refusedPictures}
            onSave={() => begin(words.exporting, savePictures)}
          />
          <div class="row">
            <Button
              large
              disabledReason={refused}
              testId="export-consumption"
              onPress={() => begin(words.exporting, saveConsumption)}
            >
              <Icon name="save" size={20} /> {words.consumption}
            </Button>
          </div>
          <p class="soft">{words.consumptionHelp}</p>
        </ActGroup>
        <div class="row">
          <Button
            large
            onPress={() => begin(words.checking, check)}
            disabledReason={notWhole}
            testId="check-seals"
          >
            {words.check}
          </Button>
          <Button large tone="quiet" onPress={onClose}>
            {say(shellWords).close}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}

/** Since when pictures are asked for, ms since 1970; 0 = all of them. */
const fromMsOf = (from: string | undefined) => (from === undefined ? 0 : Date.parse(from));

const plantName = (app: App) => app.store.floor().plant.get(THE_PLANT)?.name ?? '';

/**
 * Tells the log what left it, and then the person: a notice goes with the next entry, so that it must not come before this one. A write that
 * fails is shown by the fault screen: the file is saved all the same.
 */
function recordExport(
  app: App,
  { format, filter, rows }: { readonly format: string; readonly filter: object; readonly rows: number },
  text: string,
): void {
  app.record([{ kind: 'log.exported', payload: { format, filter: JSON.stringify(filter), rows } }], {
    notice: { tone: 'go', text },
  });
}

/** Beside the log, where pictures of labels are kept on this tablet. */
function SavePictures(props: {
  readonly filters: LogFilters;
  readonly refused: string | null;
  readonly onSave: () => void;
}) {
  const app = useApp();
  const { filters, refused, onSave } = props;
  const fromMs = fromMsOf(toExportFilter(filters, app.clock.nowMs()).from);
  const [count, setCount] = useState(0);
  useEffect(() => {
    // Where they cannot be read there is nothing to save.
    tabletPictures()
      .count(fromMs)
      .then(setCount, () => setCount(0));
  }, [filters]);
  if (count === 0) return null;
  return (
    <Button large disabledReason={refused} testId="export-pictures" onPress={onSave}>
      <Icon name="save" size={20} /> {say(picturesWords).exported}
    </Button>
  );
}
