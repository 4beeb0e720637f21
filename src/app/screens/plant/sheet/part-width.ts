// How much room does a part's feeder take, and how is that known: by a person's word, by the setups, by what its package usually comes on?

import type { SetupSlot } from '../../../../../shared/floor/kinds.ts';
import { standsOnTrays } from '../../../../../shared/floor/place.ts';
import type { FloorState, Line } from '../../../../../shared/floor/state.ts';
import type { ListedFacts } from '../../../../../shared/floor/store-state.ts';
import type { BoardPart } from '../../../../../shared/sheet/board-parts.ts';
import { isUsuallyOnTray, usualTapeWidth } from '../../../../../shared/sheet/tape-of-package.ts';
import { type PositionsByWidth, positionsForWidth } from '../../../../../shared/sheet/tapes.ts';

/** Tape widths that a person said, mm, or that a part comes on trays; by part in capitals: they outlive a plan. */
export type SaidWidths = ReadonlyMap<string, number | 'tray'>;

/** One name for a part, however its capitals are written. */
export const partKey = (part: string) => part.trim().toUpperCase();

/** Whether a line has places for trays. */
export function hasTrays({ machines }: Pick<Line, 'machines'>): boolean {
  return machines.some(({ banks }) =>
    banks.some(({ holds, positions }) => holds === 'trays' && positions > 0),
  );
}

/** What the newest setup slot with a part says, and whether trays stand there. */
export interface KnownPart {
  readonly about: SetupSlot;
  readonly isOnTray: boolean;
}

/** What setups of any line say of a part, by part in capitals: the newest that names it. */
export function knownParts(floor: FloorState): ReadonlyMap<string, KnownPart> {
  const known = new Map<string, KnownPart>();
  const setups = [...floor.setups.values()].sort((a, b) => b.takenMs - a.takenMs);
  for (const { line, slots } of setups) {
    const there = floor.lines.get(line);
    for (const about of slots) {
      if (known.has(partKey(about.part))) continue;
      const isOnTray = standsOnTrays(there, about.slot);
      known.set(partKey(about.part), { about, isOnTray });
    }
  }
  return known;
}

/** Positions by tape width as the plant's own feeders take them; of several the most. */
export function feederWidths(floor: FloorState): PositionsByWidth {
  const widths: Record<number, number> = {};
  for (const { tapeWidthMm, positions } of floor.feeders.values())
    widths[tapeWidthMm] = Math.max(positions, widths[tapeWidthMm] ?? 0);
  return widths;
}

/** How wide a part's tape is, and who says so. */
export interface PartWidth {
  /** mm; null where nobody knows. `usual`: by the package's name, good for room only. */
  readonly widthMm: number | null;
  readonly widthFrom: 'said' | 'setup' | 'list' | 'usual' | null;
  /** It comes on trays; `widthFrom` tells who says so. */
  readonly isOnTray: boolean;
}

/** How wide a part's tape is, or that it comes on trays, by the first who says so. `trays`: the line has places for them. */
export function widthOfPart(
  part: BoardPart,
  known: KnownPart | null,
  {
    said,
    trays,
    listed,
  }: {
    readonly said: number | 'tray' | undefined;
    readonly trays: boolean;
    /** What the plant's part list says of it. */
    readonly listed: Pick<ListedFacts, 'tapeWidthMm' | 'comesIn'> | null;
  },
): PartWidth {
  if (said === 'tray') return { widthMm: null, widthFrom: 'said', isOnTray: true };
  if (said !== undefined) return { widthMm: said, widthFrom: 'said', isOnTray: false };
  if (known?.isOnTray) return { widthMm: null, widthFrom: 'setup', isOnTray: true };
  const widthMm = known?.about.tapeWidthMm ?? null;
  if (widthMm !== null) return { widthMm, widthFrom: 'setup', isOnTray: false };
  if (trays && listed?.comesIn === 'tray') return { widthMm: null, widthFrom: 'list', isOnTray: true };
  if (listed !== null && listed.tapeWidthMm !== null)
    return { widthMm: listed.tapeWidthMm, widthFrom: 'list', isOnTray: false };
  if (trays && isUsuallyOnTray(part.package)) return { widthMm: null, widthFrom: 'usual', isOnTray: true };
  const usual = usualTapeWidth(part.package);
  return { widthMm: usual, widthFrom: usual === null ? null : 'usual', isOnTray: false };
}

/** Positions that a part's feeder takes; a tray takes one place. */
export function positionsOfPart(width: PartWidth, known: KnownPart | null, own: PositionsByWidth): number {
  if (width.isOnTray) return 1;
  if (width.widthFrom === 'setup' && known !== null) return known.about.positions;
  return (width.widthMm === null ? null : positionsForWidth(width.widthMm, own)) ?? 1;
}
