// What an entry says, fact by fact, as a person reads it, with its unit. Facts that only tie entries together (ids of blocks, sweeps) are not told: the kind says it.

import type { FloorState } from '../../../../shared/floor/state.ts';
import type { Entry, Json } from '../../../../shared/log/entry.ts';
import { visible } from '../../ui/visible.ts';
import { checklistWords } from '../../words/checklist.ts';
import { countWords } from '../../words/count.ts';
import { feedWords } from '../../words/feeds.ts';
import { heldWords } from '../../words/held.ts';
import { lineWords } from '../../words/line.ts';
import { logWords } from '../../words/log.ts';
import { type FactName, factWords } from '../../words/log-facts.ts';
import { moistureWords } from '../../words/moisture.ts';
import { shellWords } from '../../words/shell.ts';
import { sayText } from '../../words/shipped-steps.ts';
import { unprovenWords } from '../../words/unproven.ts';
import { formatDay, formatNumber, languageOf, say, tongues } from '../../words/words.ts';
import { left, reasons, says } from './coded-sayings.ts';
import { handoverSayings } from './handover-sayings.ts';
import {
  entryName,
  lineName,
  passkeyName,
  personName,
  runName,
  setupName,
  stepName,
  tabletName,
  templateName,
  zoneOf,
} from './names.ts';
import {
  howMany,
  limits,
  list,
  nothing,
  number,
  oneOf,
  panels,
  parts,
  type Say,
  share,
  skippedBoards,
  span,
  text,
  weeks,
  withUnit,
  yesNo,
} from './plain-sayings.ts';
import {
  measureSayings,
  packSayings,
  pictureSayings,
  quantity,
  sayAnswers,
  sayBelieved,
  sayCosts,
  sayJobs,
  sayLengths,
  sayListed,
  sayMisses,
  sayUses,
} from './sayings-of-parts.ts';

const named =
  (name: (floor: FloorState, id: string) => string): Say =>
  (value, _, floor) =>
    typeof value === 'string' ? name(floor, value) : null;
const moment: Say = (value, entry, floor) =>
  typeof value === 'string' && Number.isFinite(Date.parse(value))
    ? formatDay(Date.parse(value), zoneOf(floor, textOf(entry, 'line')))
    : null;

function textOf(entry: Entry, name: string): string | null {
  const value = entry.payload[name];
  return typeof value === 'string' ? value : null;
}

/** `from` is a moment, the tablet that a bootstrap snapshot is of, or the setup that a changeover leaves. */
const from: Say = (value, entry, floor) => {
  if (entry.kind === 'reel.aired') return moment(value, entry, floor);
  if (entry.kind === 'feeder.moved') return text(value, entry, floor);
  if (typeof value !== 'string') return null;
  if (entry.kind === 'reel.merged') return visible(value);
  return entry.kind === 'state.differed' ? tabletName(floor, value) : setupName(floor, value);
};

const answer: Say = (value, entry) => {
  if (typeof value === 'number') return `${formatNumber(value)} ${textOf(entry, 'unit') ?? ''}`.trim();
  if (typeof value !== 'string') return null;
  return value.startsWith('data:') ? say(factWords).yes : visible(value); // a photo
};

const stepOf: Say = (value, entry, floor) =>
  typeof value === 'string' ? stepName(floor, textOf(entry, 'checklist') ?? '', value) : null;

const checklist: Say = (value, _, floor) =>
  typeof value === 'string' ? templateName(floor, floor.checklists.get(value)?.template ?? '') : null;

const changeover: Say = (value, entry, floor) =>
  typeof value === 'string' && !('product' in entry.payload)
    ? (floor.changeovers.get(value)?.product ?? say(factWords).unknown)
    : null;

/** Where an entry names its run's setup too, the run is enough; where it names its product, that is. */
const setup: Say = (value, entry, floor) =>
  typeof value === 'string' && !('product' in entry.payload && 'revision' in entry.payload)
    ? setupName(floor, value)
    : null;

/** Why a line stands is one of a list; any other reason is a person's own words. */
const reason: Say = (value, entry, floor) =>
  entry.kind === 'run.stopped'
    ? oneOf(() => say(lineWords).stopReasons)(value, entry, floor)
    : text(value, entry, floor);

const filter: Say = (value, entry, floor) => {
  if (typeof value !== 'string') return null;
  const words = say(factWords);
  let wanted: Record<string, Json>;
  try {
    wanted = JSON.parse(value) as Record<string, Json>; // written by the log screen as an object
  } catch {
    return null;
  }
  const told = [
    ...[moment(wanted['from'] ?? null, entry, floor)].flatMap((at) => (at === null ? [] : [words.since(at)])),
    ...[moment(wanted['to'] ?? null, entry, floor)].flatMap((at) => (at === null ? [] : [words.until(at)])),
    ...(['line', 'slot', 'verdict'] as const).flatMap(
      (name) => sayFact(name, wanted[name] ?? null, entry, floor) ?? [],
    ),
    ...(typeof wanted['who'] === 'string' ? [personName(floor, wanted['who'])] : []),
  ];
  return told.length === 0 ? words.all : told.join(', ');
};

const title: Say = (value) =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? sayText(value as Readonly<Record<string, string>>)
    : null;

const ofAnother = ['passkey.added', 'tablet.let-in']; // whose name is not the person's
/** How each fact is told; a fact that is missing here is a compile error. */
const sayings: Readonly<Record<FactName, Say>> = {
  name: text,
  app: text,
  key: nothing,
  previous: nothing,
  person: (value, entry, floor) =>
    typeof value === 'string' && (ofAnother.includes(entry.kind) || !('name' in entry.payload))
      ? personName(floor, value)
      : null,
  language: (value) => (typeof value === 'string' ? tongues[languageOf(value)].name : null),
  role: oneOf(() => say(shellWords).roles),
  badge: text,
  secret: nothing,
  badgeMark: nothing,
  pin: (value) => (value === null ? null : say(factWords).yes),
  into: text,
  paste: text,
  jar: text,
  thawHours: withUnit('h'),
  outHours: withUnit('h'),
  openHours: withUnit('h'),
  stencilHours: withUnit('h'),
  picture: (value) => (value === null ? null : say(factWords).yes),
  pinSet: (value) => (value === null ? null : say(factWords).yes),
  how: oneOf(() => ({ ...say(factWords).hows, ...say(checklistWords).signedHow })),
  passkey: (value, _, floor) => passkeyName(floor, (value as { credential?: Json }).credential),
  credential: (value, _, floor) => passkeyName(floor, value),
  host: text,
  left,
  minutes: withUnit('min'),
  stoodFrom: moment,
  why: oneOf(() => say(factWords).signedOut),
  // With a passkey no PIN was asked for.
  checked: (value, entry, floor) =>
    'passkey' in entry.payload ? null : oneOf(() => say(factWords).checked)(value, entry, floor),
  line: (value, entry, floor) =>
    entry.kind === 'line.defined' ? null : named(lineName)(value, entry, floor),
  zone: text,
  machines: howMany,
  machine: text,
  leadSeconds: span,
  walkSeconds: span,
  spliceSeconds: span,
  hubToPickMm: withUnit('mm'),
  intakeToPickMm: withUnit('mm'),
  loss: share,
  labelShare: share,
  missed: share,
  cause: oneOf(() => say(heldWords).causes),
  containment: nothing,
  runs: howMany,
  shifts: howMany,
  breaks: howMany,
  stops: howMany,
  comparison: nothing,
  feedersKnown: yesNo,
  limits,
  expires: text,
  type: text,
  lanes: number,
  drive: text,
  pocketMm: withUnit('mm'),
  comesIn: oneOf(() => say(feedWords).kinds),
  purged: yesNo,
  readying: yesNo,
  onTop: yesNo,
  replaces: named(entryName),
  ...packSayings,
  placements: number,
  weeks,
  firstWeek: text,
  holidays: howMany,
  overtime: howMany,
  trailerMm: withUnit('mm'),
  leaderMm: withUnit('mm'),
  feeder: text,
  tapeWidthMm: withUnit('mm'),
  pitchesMm: (value) =>
    Array.isArray(value) ? `${value.map((each) => formatNumber(Number(each))).join(', ')} mm` : null,
  positions: number,
  reason,
  supplierPart: text,
  part: text,
  setup,
  product: text,
  side: oneOf(() => say(shellWords).side),
  revision: text,
  source: text,
  run: named(runName),
  panelsWanted: panels,
  slots: (value) => (Array.isArray(value) ? say(factWords).slots(value.length) : null),
  panelSeconds: withUnit('s'),
  panelSd: withUnit('s'),
  panelPrefix: text,
  short: list,
  note: text,
  panels,
  add: panels,
  serial: text,
  skipped: skippedBoards,
  once: yesNo,
  boardsPerPanel: number,
  costs: sayCosts,
  alsoRead: sayLengths,
  pickOrder: oneOf(() => say(factWords).pickOrders),
  via: oneOf(() => say(logWords).sources),
  act: oneOf(() => say(logWords).acts),
  slot: text,
  reel: text,
  tablet: (v, { payload }, floor) => ('name' in payload ? null : (floor.tablets.get(`${v}`)?.name ?? null)),
  account: text,
  quantity,
  lot: text,
  dateCode: text,
  codes: list,
  verdict: oneOf(() => say(logWords).verdicts),
  reasons,
  basis: oneOf(() => say(countWords).bases),
  cut: parts,
  cart: text,
  of: named(entryName),
  by: named(personName),
  sd: parts,
  place: text,
  air: oneOf(() => say(moistureWords).airs),
  from,
  celsius: withUnit('°C'),
  hours: withUnit('h'),
  humidity: withUnit('%'),
  msl: text,
  parts: (value, entry, floor) => (Array.isArray(value) ? sayListed(value) : parts(value, entry, floor)),
  outerMm: withUnit('mm'),
  hubMm: withUnit('mm'),
  massG: withUnit('g'),
  emptyG: withUnit('g'),
  block: nothing,
  operators: number,
  sweep: nothing,
  seen: number,
  missing: list,
  need: nothing,
  level: oneOf(() => say(factWords).levels),
  due: moment,
  conflict: nothing,
  keep: named(entryName),
  rule: text,
  version: number,
  definition: (value) =>
    howMany((value as { codes?: Json } | null)?.codes ?? null, {} as Entry, {} as FloorState),
  format: text,
  filter,
  rows: number,
  entries: (value, entry, floor) => howMany(value, entry, floor) ?? number(value, entry, floor),
  settled: oneOf(() => say(unprovenWords).settled),
  ticket: nothing,
  template: named(templateName),
  purpose: oneOf(() => say(factWords).purposes),
  title,
  steps: howMany,
  checklist,
  changeover,
  facts: nothing,
  step: stepOf,
  value: answer,
  unit: nothing,
  to: (value, entry, floor) =>
    entry.kind === 'feeder.moved' ? text(value, entry, floor) : named(tabletName)(value, entry, floor),
  done: number,
  asked: number,
  lastPanel: moment,
  jobs: sayJobs,
  byHand: nothing,
  begins: list,
  percent: withUnit('%'),
  digits: number,
  right: yesNo,
  family: oneOf(() => say(moistureWords).families),
  pins: number,
  bodyMm: withUnit('mm'),
  bodyXMm: withUnit('mm'),
  bodyYMm: withUnit('mm'),
  isStacked: yesNo,
  edition: text,
  cabinetPauses: yesNo,
  lives: howMany,
  bakes: howMany,
  packageClass: text,
  leftSeconds: span,
  hotHours: withUnit('h'),
  restsOn: oneOf(() => say(moistureWords).sources),
  values: named(entryName),
  station: (value) => (typeof value === 'string' ? visible(value) : say(factWords).people),
  boot: text,
  total: number,
  at: oneOf(() => say(factWords).stationAt),
  address: text,
  since: moment,
  told: oneOf(() => say(factWords).silenceTold),
  code: number,
  kept: text,
  what: oneOf(() => ({ ...say(factWords).noticed, ...say(factWords).printed })),
  said: text,
  means: text,
  times: number,
  depleted: text,
  active: text,
  grey: parts,
  late: span,
  uses: sayUses,
  misses: sayMisses,
  says,
  reels: list,
  recipe: text,
  wants: howMany,
  finding: named(entryName),
  on: yesNo,
  unsure: text,
  answers: yesNo,
  results: sayAnswers,
  report: text,
  page: number,
  pages: number,
  whole: yesNo,
  places: sayBelieved,
  was: (value, _, floor) => (typeof value === 'string' ? entryName(floor, value.replace(/^~/, '')) : null),
  names: list,
  again: list,
  size: text,
  paper: oneOf(() => say(factWords).papers),
  widthMm: withUnit('mm'),
  heightMm: withUnit('mm'),
  pageWidthMm: withUnit('mm'),
  pageHeightMm: withUnit('mm'),
  columns: number,
  leftMm: withUnit('mm'),
  topMm: withUnit('mm'),
  gapXMm: withUnit('mm'),
  gapYMm: withUnit('mm'),
  marginMm: withUnit('mm'),
  dpi: number,
  ...measureSayings,
  ...pictureSayings,
  ...handoverSayings,
};

/** True for what is told at all. */
export function isFactName(name: string): name is FactName {
  return Object.hasOwn(sayings, name);
}

/** A fact's value for people; null where it says nothing. */
export function sayFact(name: string, value: Json, entry: Entry, floor: FloorState): string | null {
  if (value === null || value === '' || !isFactName(name)) return null;
  const told = sayings[name](value, entry, floor);
  return told === '' ? null : told;
}
