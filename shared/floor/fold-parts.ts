// The plant's list of its parts. What it says of packages and makers goes where everything else asks for it (`parts`, approvals), so that there is
// one answer; the rest is kept here, part by part.

import type { EntryOf } from './kinds.ts';
import { approveMaker, approveMakerIn } from './maker-lists.ts';
import type { FloorState } from './state.ts';
import type { ListedFacts } from './store-state.ts';

/** Kinds that this fold handles. */
type PartEntry = EntryOf<'parts.listed' | 'parts.priced' | 'part.unlisted' | 'part.pictured'>;

/** Applies one entry to the list of parts. */
export function foldParts(state: FloorState, entry: PartEntry): void {
  switch (entry.kind) {
    case 'parts.listed':
      for (const part of entry.payload.parts) list(state, part, entry.payload.source);
      return;
    case 'parts.priced':
      for (const { part, price } of entry.payload.parts)
        if (price === null) state.prices.delete(part);
        else state.prices.set(part, { ...price, source: entry.payload.source });
      return;
    case 'part.unlisted':
      state.listed.delete(entry.payload.part);
      state.prices.delete(entry.payload.part);
      return;
    case 'part.pictured':
      if (entry.payload.picture === null) state.pictures.delete(entry.payload.part);
      else state.pictures.set(entry.payload.part, entry.payload.picture);
      return;
    default:
      entry satisfies never;
  }
}

type Told = EntryOf<'parts.listed'>['payload']['parts'][number];

function list(state: FloorState, told: Told, source: string): void {
  const { part, family, pins, bodyMm, bodyXMm, bodyYMm, msl, makers, ...facts } = told;
  const isSized = bodyXMm !== null && bodyYMm !== null;
  const packed = {
    family,
    pins,
    bodyMm,
    msl,
    bodyXMm: isSized ? bodyXMm : null,
    bodyYMm: isSized ? bodyYMm : null,
  };
  const before = state.parts.get(part);
  if (before || Object.values(packed).some((value) => value !== null))
    // Whether dies are stacked is asked of a person alone.
    state.parts.set(part, { part, ...packed, isStacked: before?.isStacked ?? null, source });
  for (const { supplierPart, product } of makers) {
    if (product === null) approveMaker(state, supplierPart, part);
    else approveMakerIn(state, product, { supplierPart, part });
  }
  const kept: ListedFacts = { part, ...facts, source };
  state.listed.set(part, kept);
}
