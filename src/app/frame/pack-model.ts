// What is entered of a package: its kind, how its trays lie or how many tubes it has, and which pocket is next. Pure: texts as typed in, a form or
// what is wrong with it out.

import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { Pack } from '../../../shared/floor/state.ts';
import { leftFrom, type Pocket, type TrayForm } from '../../../shared/floor/tray.ts';
import type { Corner, PackageKind } from '../../../shared/floor/vocabulary.ts';

/** The form as typed. */
export interface PackForm {
  readonly kind: PackageKind;
  readonly rows: string;
  readonly columns: string;
  readonly trays: string;
  readonly first: Corner;
  readonly along: TrayForm['along'];
  readonly pin1: Corner | '';
  /** The next pocket; null: nobody tapped one, so that the count stays as it is. */
  readonly next: Pocket | null;
  /** Full tubes that are left; empty where they were told before: then the count stays as it is. */
  readonly tubes: string;
  readonly parts: string;
  /** Parts in the tube that is open; empty: none is. */
  readonly loose: string;
  /** Tubes of the package as it was last told; null where nobody told. Not what is left of it: parts were taken since. */
  readonly toldTubes: number | null;
}

/** What a form says: the package, and its count where it tells one. */
export interface PackRead {
  readonly pack: Pick<PayloadOf<'reel.packed'>, 'comesIn' | 'tray' | 'tube'>;
  readonly left: number | null;
}

/** The form with what is known of the package filled in; `wanted`: what its slot is fed from. */
export function startPack(known: Pack | null, wanted: PackageKind | null): PackForm {
  const { tray, tube } = known ?? {};
  const text = (value: number | undefined) => (value === undefined ? '' : String(value));
  return {
    kind: known?.comesIn ?? wanted ?? 'tape',
    rows: text(tray?.rows),
    columns: text(tray?.columns),
    trays: text(tray?.trays ?? 1),
    first: tray?.first ?? 'top-left',
    along: tray?.along ?? 'rows',
    pin1: tray?.pin1 ?? '',
    next: null,
    tubes: '',
    parts: text(tube?.parts),
    loose: '',
    toldTubes: tube?.tubes ?? null,
  };
}

function whole(text: string, most: number, least = 1): number | null {
  const plain = text.trim();
  const value = /^\d{1,6}$/.test(plain) ? Number(plain) : Number.NaN;
  return value >= least && value <= most ? value : null;
}

/** The trays as entered; null where a figure is missing or none. */
export function trayOf({ rows, columns, trays, first, along, pin1 }: PackForm): TrayForm | null {
  const [down, across, high] = [whole(rows, 100), whole(columns, 100), whole(trays, 100)];
  if (down === null || across === null || high === null) return null;
  return { rows: down, columns: across, trays: high, first, along, pin1: pin1 === '' ? null : pin1 };
}

/** What the form says, or which figure is wrong. */
export function readPack(form: PackForm): PackRead | { readonly wrong: 'figures' | 'loose' } {
  const { kind, next } = form;
  if (kind === 'tray') {
    const tray = trayOf(form);
    if (tray === null) return { wrong: 'figures' };
    return {
      pack: { comesIn: kind, tray },
      left: next === null ? null : leftFrom(tray, next),
    };
  }
  if (kind === 'tube') {
    const [tubes, parts] = [whole(form.tubes, 1000, 0), whole(form.parts, 10_000)];
    const { toldTubes } = form;
    if (toldTubes !== null && parts !== null && form.tubes.trim() === '' && form.loose.trim() === '')
      return { pack: { comesIn: kind, tube: { tubes: toldTubes, parts } }, left: null };
    if (tubes === null || parts === null) return { wrong: 'figures' };
    const loose = form.loose.trim() === '' ? 0 : whole(form.loose, parts - 1, 0);
    if (loose === null) return { wrong: 'loose' };
    const all = tubes + (loose > 0 ? 1 : 0);
    return all === 0
      ? { wrong: 'figures' }
      : { pack: { comesIn: kind, tube: { tubes: all, parts } }, left: tubes * parts + loose };
  }
  return { pack: { comesIn: kind }, left: null };
}
