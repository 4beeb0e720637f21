// What does an envelope of IPC-2591 say, as far as a line's counts, tapes and losses go? Field names are the standard's own, as its
// organisation publishes them (IPCConnectedFactoryExchange/CFX on GitHub: Production, Materials, ResourcePerformance, Structures).

import type { AiredSays } from '../../../shared/floor/vocabulary.ts';
import { asList, asNumber, asRecord, asText, type Envelope } from './envelope.ts';

/** By which message a station counts its panels. */
export const countedBys = ['work-completed', 'units-departed', 'units-arrived'] as const;
export type CountedBy = (typeof countedBys)[number];

/** A place of material on a machine, and what is there. */
export interface Place {
  /** What the machine calls it, its name before its code. */
  readonly names: readonly string[];
  readonly reel: string | null;
  /** The site's part number, as the machine has it. */
  readonly part: string | null;
  /** Parts, as the machine has it. */
  readonly quantity: number | null;
  readonly feeder: string | null;
  /** Parts of which nobody can tell to which of two tapes they belong. */
  readonly grey: number;
}

/** Parts taken from a place. */
export interface Use {
  readonly place: Place;
  readonly used: number;
  readonly spoiled: number;
}

/** A setup that a machine asks for. */
export interface WantedSetup {
  readonly recipe: string | null;
  readonly revision: string | null;
  readonly rows: readonly {
    readonly place: string;
    readonly part: string;
    readonly alternates: readonly string[];
    readonly suppliers: readonly string[];
  }[];
}

/** What an envelope says. */
export type Said =
  | { readonly is: 'beat'; readonly everyMs: number | null }
  | (Panel & { readonly is: 'started' })
  | (Panel & { readonly is: 'panel'; readonly by: CountedBy })
  /** Work that was broken off or left out: no panel. */
  | { readonly is: 'no-panel' }
  | { readonly is: 'state'; readonly code: number }
  | { readonly is: 'splice'; readonly from: Place; readonly to: Place }
  | { readonly is: 'used'; readonly by: 'consumed' | 'installed'; readonly uses: readonly Use[] }
  | { readonly is: 'empty'; readonly places: readonly Place[] }
  /** What it has loaded; `isCut`: not all of it could be read. */
  | { readonly is: 'loaded'; readonly places: readonly Place[]; readonly isCut: boolean }
  /** Something was loaded, spliced on or taken out. */
  | { readonly is: 'moved' }
  /** The setup that it asks for. */
  | { readonly is: 'wanted'; readonly wanted: WantedSetup }
  /** It asks for another setup from now on. */
  | { readonly is: 'wants-other' }
  /** A fault of picking at a place; `fault`: its own name, by which it is told cleared. */
  | {
      readonly is: 'pick-fault';
      readonly place: Place;
      readonly fault: string | null;
      readonly lane: number | null;
    }
  | { readonly is: 'cleared'; readonly fault: string }
  | { readonly is: 'aired'; readonly says: AiredSays; readonly reels: readonly string[] }
  | {
      readonly is: 'recipe';
      readonly recipe: string;
      readonly revision: string | null;
      readonly lane: number | null;
    }
  | { readonly is: 'unused' }
  | { readonly is: 'unread'; readonly why: string };

/** A panel: its work's id, its code, and which of its boards are skipped (from 1; null where units are not told of). */
interface Panel {
  readonly work: string | null;
  readonly code: string | null;
  readonly skipped: readonly number[] | null;
  readonly lane: number | null;
}

/** Rows of a setup, as many as twenty entries hold. */
const WANTED_MOST = 2_000;
/** Places of one answer that are read. */
const ROWS_MOST = 10_000;

type Body = Readonly<Record<string, unknown>>;

const MSD = 'CFX.Materials.Management.MSDManagement';

const readers: Readonly<Record<string, (body: Body) => Said>> = {
  'CFX.Heartbeat': (body) => ({ is: 'beat', everyMs: spanMs(body['HeartbeatFrequency']) }),
  'CFX.EndpointConnected': () => ({ is: 'beat', everyMs: null }),
  'CFX.Production.WorkStarted': (body) => ({ is: 'started', ...panelOf(body) }),
  'CFX.Production.WorkCompleted': readCompleted,
  'CFX.Production.UnitsDeparted': (body) => ({ is: 'panel', by: 'units-departed', ...panelOf(body) }),
  'CFX.Production.UnitsArrived': (body) => ({ is: 'panel', by: 'units-arrived', ...panelOf(body) }),
  'CFX.ResourcePerformance.StationStateChanged': readState,
  'CFX.Materials.Storage.SplicePointDetected': readSplice,
  'CFX.Materials.Management.MaterialsConsumed': readConsumed,
  'CFX.Production.Assembly.MaterialsInstalled': readInstalled,
  'CFX.Materials.Storage.MaterialsEmpty': readEmpty,
  'CFX.Materials.Storage.GetLoadedMaterialsResponse': readLoaded,
  'CFX.Production.GetRequiredSetupResponse': readWanted,
  'CFX.Production.SetupRequirementsChanged': () => ({ is: 'wants-other' }),
  'CFX.Production.RecipeActivated': readRecipe,
  'CFX.ResourcePerformance.FaultOccurred': readFault,
  'CFX.ResourcePerformance.FaultCleared': readCleared,
  [`${MSD}.MaterialsOpened`]: readAired('opened'),
  [`${MSD}.MaterialsPlacedInDryStorage`]: readAired('put-dry'),
  [`${MSD}.MaterialsRemovedFromDryStorage`]: readAired('taken-out'),
  [`${MSD}.MaterialsExpired`]: readAired('expired'),
  [`${MSD}.MaterialsRestored`]: readAired('restored'),
  'CFX.Materials.Storage.MaterialsLoaded': () => ({ is: 'moved' }),
  'CFX.Materials.Storage.MaterialsUnloaded': () => ({ is: 'moved' }),
  // A splice as the machine has it: what it has loaded then says where.
  'CFX.Materials.Management.MaterialsJoined': () => ({ is: 'moved' }),
};

/** What an envelope says. A message that is not used here is `unused`, one of the used that cannot be understood `unread`. */
export function readSaid({ name, body }: Envelope): Said {
  const read = Object.hasOwn(readers, name) ? readers[name] : undefined;
  return read ? read(body) : { is: 'unused' };
}

function readCompleted(body: Body): Said {
  const result = asText(body['Result'], 40);
  if (result === 'Completed' || result === 'Failed')
    return { is: 'panel', by: 'work-completed', ...panelOf(body) };
  if (result === 'Aborted' || result === 'Skipped') return { is: 'no-panel' };
  return { is: 'unread', why: `Result ${result ?? 'missing'}` };
}

/** One message is one panel; its units are circuits. */
function panelOf(body: Body): Panel {
  const units = asList(body['Units']).map(asRecord);
  const skipped = units.flatMap((unit, at) =>
    unit?.['Status'] === 'Skip' ? [asNumber(unit['PositionNumber'], 1, 10_000) ?? at + 1] : [],
  );
  const isTold = units.some((unit) => unit !== null && typeof unit['Status'] === 'string');
  return {
    // The standard's own two spellings.
    work: asText(body['TransactionID'] ?? body['TransactionId'], 64),
    code: asText(body['PrimaryIdentifier'], 200),
    skipped: isTold ? [...new Set(skipped.map(Math.trunc))].slice(0, 1000) : null,
    lane: asNumber(body['Lane'], 0, 1000),
  };
}

/** A state by the numbers of SEMI E58; a few send the number as a text, or the name, whose class alone is taken. */
function readState(body: Body): Said {
  const state = body['NewState'];
  const code = typeof state === 'string' && /^\d{1,6}$/.test(state) ? Number(state) : state;
  if (typeof code === 'number' && Number.isSafeInteger(code) && Math.abs(code) <= 999_999)
    return { is: 'state', code };
  const known: Readonly<Record<string, number>> = {
    PRD: 1000,
    SBY: 2000,
    ENG: 3000,
    SDT: 4000,
    USD: 5000,
    NST: 6000,
  };
  const kind = typeof state === 'string' ? (state.split('_')[0] ?? '') : '';
  const byName = Object.hasOwn(known, kind) ? known[kind] : undefined;
  return byName === undefined
    ? { is: 'unread', why: `NewState ${asText(state, 40) ?? 'missing'}` }
    : { is: 'state', code: byName };
}

/** Of faults, those of picking are used (SMTPlacementFault, PlacementFaultType PickupError); the machine's screen tells the rest. */
function readFault(body: Body): Said {
  const fault = asRecord(body['Fault']);
  if (!fault) return { is: 'unread', why: 'no Fault' };
  if (asText(fault['PlacementFaultType'], 40) !== 'PickupError') return { is: 'unused' };
  const place = placeOf(fault['MaterialLocation']);
  if (!place) return { is: 'unread', why: 'PickupError without MaterialLocation' };
  const lane = fault['Lane'];
  return {
    is: 'pick-fault',
    place,
    fault: asText(fault['FaultOccurrenceId'], 64),
    // A text in this message, a number in others.
    lane: asNumber(typeof lane === 'string' && /^\d{1,4}$/.test(lane) ? Number(lane) : lane, 0, 1000),
  };
}

function readRecipe(body: Body): Said {
  const recipe = asText(body['RecipeName'], 200);
  if (recipe === null || recipe.trim() === '') return { is: 'unread', why: 'no RecipeName' };
  return {
    is: 'recipe',
    recipe,
    revision: asText(body['Revision'], 200),
    lane: asNumber(body['Lane'], 0, 1000),
  };
}

function readAired(says: AiredSays): (body: Body) => Said {
  return (body) => {
    const rows = asList(body['Materials']).slice(0, ROWS_MOST);
    const reels = rows.map((row) => asText(asRecord(row)?.['UniqueIdentifier'], 64));
    const named = reels.filter((reel) => reel !== null && reel !== '') as readonly string[]; // just looked at
    return named.length > 0 && named.length === rows.length
      ? { is: 'aired', says, reels: [...new Set(named)] }
      : { is: 'unread', why: 'Materials without UniqueIdentifier' };
  };
}

function readCleared(body: Body): Said {
  const fault = asText(body['FaultOccurrenceId'], 64);
  return fault === null ? { is: 'unread', why: 'no FaultOccurrenceId' } : { is: 'cleared', fault };
}

function readSplice(body: Body): Said {
  const [from, to] = [placeOf(body['DepletedMaterial']), placeOf(body['NewlyActiveMaterial'])];
  return from && to ? { is: 'splice', from, to } : { is: 'unread', why: 'no place of both materials' };
}

function readConsumed(body: Body): Said {
  return usesOf('consumed', body['ConsumedMaterials'], (row) => ({
    place: placeOf(row['MaterialLocation']),
    used: row['QuantityUsed'],
    spoiled: row['QuantitySpoiled'],
  }));
}

/** Where parts are installed, the package stands beside its carrier's place. */
function readInstalled(body: Body): Said {
  return usesOf('installed', body['InstalledMaterials'], (row) => ({
    place: placeOf({ MaterialPackage: row['Material'], ...asRecord(row['CarrierLocation']) }),
    used: row['QuantityInstalled'],
    spoiled: row['QuantityNonInstalled'] ?? 0,
  }));
}

type Row = { readonly place: Place | null; readonly used: unknown; readonly spoiled: unknown };

function usesOf(by: 'consumed' | 'installed', rows: unknown, read: (row: Body) => Row): Said {
  const uses: Use[] = [];
  for (const each of asList(rows).slice(0, 2_000)) {
    const row = read(asRecord(each) ?? {});
    const used = asNumber(row.used, 0, 1e7);
    const spoiled = asNumber(row.spoiled, 0, 1e7);
    if (row.place === null || used === null || spoiled === null)
      return { is: 'unread', why: 'a row without place and quantities' };
    uses.push({ place: row.place, used, spoiled });
  }
  return { is: 'used', by, uses };
}

function readEmpty(body: Body): Said {
  const places = asList(body['EmptyMaterials']).slice(0, 500).map(placeOf);
  const known = places.filter((place) => place !== null);
  return known.length > 0 && known.length === places.length
    ? { is: 'empty', places: known }
    : { is: 'unread', why: 'no EmptyMaterials' };
}

/** All rows or none: a setup of which a row is missing would be built. */
function readWanted(body: Body): Said {
  const result = asRecord(body['Result']);
  if (asText(result?.['Result'], 40) === 'Failed')
    return { is: 'unread', why: `Result Failed ${asText(result?.['Message'], 100) ?? ''}`.trim() };
  const wanted = asList(asRecord(body['SetupRequirements'])?.['MaterialSetupRequirements']);
  const rows = wanted.slice(0, WANTED_MOST).flatMap((each) => {
    const row = asRecord(each) ?? {};
    const place = asText(row['Position'], 64);
    const part = asText(row['PartNumber'], 64);
    const alternates = textsOf(row['ApprovedAlternateParts']);
    const suppliers = textsOf(row['ApprovedManufacturerParts']);
    return place && part && alternates && suppliers ? [{ place, part, alternates, suppliers }] : [];
  });
  if (rows.length === 0) return { is: 'unread', why: 'no MaterialSetupRequirements' };
  if (rows.length < wanted.length)
    return { is: 'unread', why: `${wanted.length - rows.length} of ${wanted.length} rows cannot be read` };
  const [recipe, revision] = [asText(body['RecipeName'], 200), asText(body['RecipeRevision'], 200)];
  return { is: 'wanted', wanted: { recipe, revision, rows } };
}

/** Texts of a list, at most eight; none where there is no list; null where one of them is no text. */
function textsOf(value: unknown): readonly string[] | null {
  const all = asList(value).map((each) => asText(each, 64));
  const texts = all.filter((each) => each !== null);
  return texts.length === all.length && texts.length <= 8 ? texts : null;
}

/** Rows that are none, or name no place, are left out, and the rest is not all. */
function readLoaded(body: Body): Said {
  const result = asRecord(body['Result']);
  const word = asText(result?.['Result'], 40);
  if (word === 'Failed')
    return { is: 'unread', why: `Result Failed ${asText(result?.['Message'], 100) ?? ''}`.trim() };
  if (!Array.isArray(body['Materials'])) return { is: 'unread', why: 'no Materials' };
  const rows = asList(body['Materials']);
  const places = rows.slice(0, ROWS_MOST).map(placeOf);
  const known = places.filter((place) => place !== null && place.names.length > 0) as readonly Place[];
  const isCut = known.length < rows.length || word === 'PartialSuccess';
  return { is: 'loaded', places: known, isCut };
}

/** A MaterialLocation; null for anything else. */
export function placeOf(value: unknown): Place | null {
  const location = asRecord(value);
  if (!location) return null;
  const inside = asRecord(location['MaterialPackage']) ?? {};
  const carrier = asRecord(location['CarrierInformation']) ?? {};
  const names = [asText(location['LocationName'], 64), asText(location['LocationIdentifier'], 64)];
  return {
    names: names.filter((name) => name !== null),
    reel: asText(inside['UniqueIdentifier'], 64),
    part: asText(inside['InternalPartNumber'], 64),
    quantity: asNumber(inside['Quantity'], 0, 1e7),
    feeder: asText(carrier['UniqueIdentifier'], 64) ?? asText(carrier['Name'], 64),
    grey: asNumber(inside['GreyZone'], 0, 1e5) ?? 0,
  };
}

/** A span as `[d.]hh:mm:ss[.fffffff]`; null where it is none. */
function spanMs(value: unknown): number | null {
  const parts =
    typeof value === 'string' ? /^(?:(\d{1,3})\.)?(\d\d):(\d\d):(\d\d)(\.\d{1,7})?$/.exec(value) : null;
  if (!parts) return null;
  const [, days = '0', hours = '0', minutes = '0', seconds = '0', rest = '0'] = parts;
  return (
    (((Number(days) * 24 + Number(hours)) * 60 + Number(minutes)) * 60 + Number(seconds) + Number(rest)) *
    1000
  );
}
