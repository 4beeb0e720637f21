// The loading sheet on paper: slot by slot as one walks, each with its code to scan and room for the feeder's number. It shows on paper only.

import type { LinePlaces } from '../../../../../shared/assign/places.ts';
import { THE_PLANT } from '../../../../../shared/floor/state.ts';
import { code128Bars } from '../../../ui/code128.ts';
import { boardWords } from '../../../words/board.ts';
import { sheetWords } from '../../../words/sheet.ts';
import { formatCount, say } from '../../../words/words.ts';
import { type BoardContext, boardPlaces, byWalk, type SlotRow } from './board-model.ts';
import type { TakeForm } from './model.ts';
import { sayWidth } from './slot-width.ts';

interface LoadingSheetProps {
  readonly context: BoardContext;
  readonly rows: readonly SlotRow[];
  readonly form: TakeForm;
}

/** Machine and bank of a slot by name; `own` for a place of its own. */
function bankName(places: LinePlaces | null, slot: string, own: string): string {
  const at = places?.find(slot) ?? null;
  const machine = at === null ? undefined : places?.line.machines[at.machine];
  const bank = at === null ? undefined : machine?.banks[at.bank];
  return machine && bank ? `${machine.name}, ${bank.name}` : own;
}

export function LoadingSheet({ context, rows, form }: LoadingSheetProps) {
  const words = say(boardWords);
  const sheet = say(sheetWords);
  const places = boardPlaces(context);
  const { placed } = byWalk(rows);
  const line = context.floor.lines.get(context.line)?.name ?? context.line;
  const plant = context.floor.plant.get(THE_PLANT)?.name ?? '';
  const about = [plant, line, form.product, sheet.sides[context.side], form.revision].filter(
    (text) => text !== '',
  );
  return (
    <div class="load-paper" aria-hidden="true">
      <h2>{words.paper.title}</h2>
      <p>{about.join(' · ')}</p>
      <p>{words.isProposal}</p>
      <table>
        <thead>
          <tr>
            {[sheet.fields.slot, '', sheet.fields.part, words.paper.perPanel, sheet.fields.tapeWidth].map(
              (text, index) => (
                <th key={`${text}${index}`}>{text}</th>
              ),
            )}
            <th>{words.paper.feeder}</th>
          </tr>
        </thead>
        <tbody>
          {placed.map((row, index) => {
            const bank = bankName(places, row.slot, words.ownPlaces);
            const before = placed[index - 1];
            const isNew = before === undefined || bankName(places, before.slot, words.ownPlaces) !== bank;
            return <PaperRow key={row.part} row={row} bank={isNew ? bank : null} />;
          })}
        </tbody>
      </table>
    </div>
  );
}

interface PaperRowProps {
  readonly row: SlotRow & { readonly slot: string };
  /** Where a bank begins: its name. */
  readonly bank: string | null;
}

function PaperRow({ row, bank }: PaperRowProps) {
  const words = say(boardWords);
  return (
    <>
      {bank !== null && (
        <tr>
          <th colSpan={6}>{bank}</th>
        </tr>
      )}
      <tr>
        <td>{row.slot}</td>
        <td>
          <Bars text={row.slot} />
        </td>
        <td>
          {row.part}
          <br />
          <small>{row.board.supplierParts.join(' · ')}</small>
        </td>
        <td>{formatCount(row.perPanel)}</td>
        <td>{row.widthFrom === null ? '' : sayWidth(words, row)}</td>
        <td />
      </tr>
    </>
  );
}

const moduleMm = 0.26;

/** The slot as bars, as its own label has it; nothing for a text that bars cannot say. */
function Bars({ text }: { readonly text: string }) {
  if (!/^[ -~]+$/.test(text)) return null;
  const { bars, width } = code128Bars(text);
  return (
    <svg
      role="presentation"
      width={`${width * moduleMm}mm`}
      height="9mm"
      viewBox={`0 0 ${width} 36`}
      preserveAspectRatio="none"
    >
      {bars.map((bar) => (
        <rect key={bar.from} x={bar.from} y="0" width={bar.width} height="36" shape-rendering="crispEdges" />
      ))}
    </svg>
  );
}
