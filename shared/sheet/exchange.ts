/// <reference path="../kit/saxen.d.ts" />
// What does an IPC-2581 file say of placements and of the bill of materials?
// Method: one pass over the elements that concern an assembly: Layer (side), Step, Component with Xform and Location, BomItem with RefDes, and
// AvlItem with AvlMpn, by the element and attribute names of the published schema (IPC-2581B, https://webstds.ipc.org/2581). Everything else is
// passed over. Method refused: a tree of the whole document, of which the copper is by far the largest part.

import { Parser } from 'saxen';
import type { Side } from '../floor/vocabulary.ts';
import type { BillReading } from './bill.ts';
import type { BillLine } from './bill-row.ts';
import { parseSide } from './cells.ts';
import { oddThing } from './designators.ts';
import { isNotFittedMark } from './not-placed.ts';
import { checkPackages, dropDoubled } from './placement-checks.ts';
import type { LeftOutReason } from './placement-row.ts';
import { type LeftOut, type Placement, type PlacementReading, totalsOf } from './placements.ts';
import { problemSink, type SheetProblem } from './problems.ts';

/** What an XML file is by its first element; null where the text is no XML. */
export function xmlRoot(text: string): string | null {
  const start = text.slice(0, 4000).replace(/^\uFEFF/, '');
  if (!/^\s*</.test(start)) return null;
  const body = start.replace(/<\?[\s\S]*?\?>|<!--[\s\S]*?-->|<!DOCTYPE[^>[]*(?:\[[\s\S]*?\])?[^>]*>/gi, '');
  return /^\s*<([A-Za-z_][\w.:-]*)/.exec(body)?.[1] ?? null;
}

/** Whether an XML file's first element is that of IPC-2581. */
export function isExchangeFile(text: string): boolean {
  return /^(?:[\w-]+:)?IPC-2581$/i.test(xmlRoot(text) ?? '');
}

/** What the file says. */
export interface ExchangeReading {
  readonly placements: PlacementReading;
  /** Null where the file has no bill of materials. */
  readonly bill: BillReading | null;
}

interface RawComponent {
  readonly row: number;
  readonly step: string;
  readonly attributes: Readonly<Record<string, string>>;
  isMirrored: boolean | null;
  x: string;
  y: string;
  rotation: string;
  value: string;
}

interface RawItem {
  readonly row: number;
  readonly attributes: Readonly<Record<string, string>>;
  readonly places: {
    readonly name: string;
    readonly isPopulated: boolean;
    readonly package: string;
    readonly layer: string;
  }[];
  value: string;
}

interface RawFile {
  readonly components: RawComponent[];
  readonly items: RawItem[];
  readonly sideByLayer: Map<string, string>;
  readonly makersByPart: Map<string, { readonly name: string; readonly rank: number }[]>;
  /** Boards by step that a panel's step repeats. */
  readonly repeats: Map<string, number>;
  unitMm: number;
  problem: SheetProblem | null;
}

/** Line numbers of the elements that become rows, in the order of the text. */
function rowLines(text: string): readonly number[] {
  const lines: number[] = [];
  let line = 1;
  let from = 0;
  for (const match of text.matchAll(/<(?:[\w-]+:)?(?:Component|BomItem)[\s/>]/g)) {
    for (let at = text.indexOf('\n', from); at >= 0 && at < match.index; at = text.indexOf('\n', at + 1))
      line++;
    from = match.index;
    lines.push(line);
  }
  return lines;
}

const unitsMm: Readonly<Record<string, number>> = { MILLIMETER: 1, MICRON: 0.001, INCH: 25.4, MIL: 0.0254 };

function parseExchange(text: string): RawFile {
  const file: RawFile = {
    components: [],
    items: [],
    sideByLayer: new Map(),
    makersByPart: new Map(),
    repeats: new Map(),
    unitMm: 1,
    problem: null,
  };
  const lines = rowLines(text);
  let rows = 0;
  let step = '';
  let component: RawComponent | null = null;
  let item: RawItem | null = null;
  let approved = '';
  const parser = new Parser();
  parser.on('error', (error, context) => {
    // At the end of a text that breaks off the parser knows no line any more.
    const isCutOff = error.message.includes('end of file');
    const row = isCutOff ? text.trimEnd().split('\n').length : context().line + 1;
    file.problem ??= brokenXml(row, error.message);
  });
  parser.on('warn', () => undefined);
  parser.on('openTag', (qualified, attributes, decode) => {
    const name = qualified.slice(qualified.indexOf(':') + 1);
    if (!wanted.has(name)) return;
    const read = attributes() || {};
    const at = Object.fromEntries(Object.entries(read).map(([key, value]) => [key, decode(value).trim()]));
    if (name === 'CadHeader') file.unitMm = unitsMm[(at['units'] ?? '').toUpperCase()] ?? 1;
    else if (name === 'Layer') file.sideByLayer.set(at['name'] ?? '', at['side'] ?? '');
    else if (name === 'Step') step = at['name'] ?? '';
    else if (name === 'StepRepeat') {
      const count = Math.max(1, Number(at['nx'] ?? 1)) * Math.max(1, Number(at['ny'] ?? 1));
      file.repeats.set(at['stepRef'] ?? '', (file.repeats.get(at['stepRef'] ?? '') ?? 0) + count);
    } else if (name === 'Component') {
      component = {
        row: lines[rows++] ?? 0,
        step,
        attributes: at,
        isMirrored: null,
        x: '',
        y: '',
        rotation: '',
        value: '',
      };
      file.components.push(component);
    } else if (name === 'BomItem') {
      item = { row: lines[rows++] ?? 0, attributes: at, places: [], value: '' };
      file.items.push(item);
    } else if (name === 'AvlItem') approved = at['OEMDesignNumber'] ?? '';
    else if (name === 'AvlMpn') addMaker(file, approved, at);
    else if (item !== null) readInItem(item, name, at);
    else if (component !== null) readInComponent(component, name, at);
  });
  parser.on('closeTag', (qualified) => {
    const name = qualified.slice(qualified.indexOf(':') + 1);
    if (name === 'Component') component = null;
    if (name === 'BomItem') item = null;
  });
  parser.parse(text);
  return file;
}

const wanted = new Set([
  'CadHeader',
  'Layer',
  'Step',
  'StepRepeat',
  'Component',
  'Xform',
  'Location',
  'BomItem',
  'RefDes',
  'Textual',
  'NonstandardAttribute',
  'AvlItem',
  'AvlMpn',
]);

function brokenXml(row: number, detail: string): SheetProblem {
  const sink = problemSink(1);
  sink.add('xmlBroken', { row }, { found: detail });
  return sink.list()[0]!; // just added
}

function addMaker(file: RawFile, part: string, at: Readonly<Record<string, string>>): void {
  const makers = file.makersByPart.get(part) ?? [];
  if (at['name']) makers.push({ name: at['name'], rank: Number(at['rank'] ?? 99) || 99 });
  file.makersByPart.set(part, makers);
}

function readInItem(item: RawItem, name: string, at: Readonly<Record<string, string>>): void {
  if (name === 'RefDes') {
    const isPopulated = !/^(?:false|0|no)$/i.test(at['populate'] ?? 'true');
    item.places.push({
      name: at['name'] ?? '',
      isPopulated,
      package: at['packageRef'] ?? '',
      layer: at['layerRef'] ?? '',
    });
  } else if (name === 'Textual' && /(?:^|[_ ])val(?:ue)?$/i.test(at['textualCharacteristicName'] ?? '')) {
    item.value ||= at['textualCharacteristicValue'] ?? '';
  }
}

function readInComponent(component: RawComponent, name: string, at: Readonly<Record<string, string>>): void {
  if (name === 'Xform') {
    component.rotation = at['rotation'] ?? '0';
    component.isMirrored = /^(?:true|1)$/i.test(at['mirror'] ?? '');
  } else if (name === 'Location') {
    component.x = at['x'] ?? '';
    component.y = at['y'] ?? '';
  } else if (name === 'NonstandardAttribute' && /^val(?:ue)?$/i.test(at['name'] ?? ''))
    component.value = at['value'] ?? '';
}

function sideOf(component: RawComponent, file: RawFile): Side | null {
  const layer = component.attributes['layerRef'] ?? '';
  const side = parseSide(file.sideByLayer.get(layer) ?? '') ?? parseSide(layer);
  if (side !== null) return side;
  return component.isMirrored === null ? null : component.isMirrored ? 'bottom' : 'top';
}

function numberOf(text: string, factor: number): number | null {
  const value = text === '' ? Number.NaN : Number(text);
  return Number.isFinite(value) ? Math.round(value * factor * 1e6) / 1e6 : null;
}

/** Why a component is not placed, by the file alone; null = it is. */
function reasonOf(placement: Placement, component: RawComponent, isPopulated: boolean): LeftOutReason | null {
  if (!isPopulated || isNotFittedMark(placement.part)) return 'notFitted';
  const { mountType = '' } = component.attributes;
  const thing = oddThing(placement.designator, [placement.part, placement.value, placement.package]);
  if (thing !== null && (thing === 'fiducial' || placement.part === '' || /^other$/i.test(mountType)))
    return thing;
  if (/^thmt$/i.test(mountType)) return 'throughHole';
  return null;
}

function placementsOf(file: RawFile, hasBill: boolean): PlacementReading {
  const sink = problemSink(1000);
  if (file.problem !== null) sink.addAll([file.problem]);
  const unpopulated = new Set(
    file.items.flatMap(({ places }) =>
      places.filter(({ isPopulated }) => !isPopulated).map(({ name }) => name),
    ),
  );
  const itemByPlace = new Map(
    file.items.flatMap((item) => item.places.map(({ name }) => [name, item] as const)),
  );
  const placements: Placement[] = [];
  const leftOut: LeftOut[] = [];
  for (const component of file.components) {
    const { attributes, row } = component;
    const designator = attributes['refDes'] ?? '';
    const item = itemByPlace.get(designator);
    const side = sideOf(component, file);
    const stated = attributes['part'] || (item?.attributes['OEMDesignNumberRef'] ?? '');
    const value = component.value || (item?.value ?? '');
    const placement: Placement = {
      row,
      designator,
      part: stated || value,
      isNamedByValue: stated === '',
      value,
      package: attributes['packageRef'] ?? '',
      side: side ?? 'top',
      x: numberOf(component.x, file.unitMm),
      y: numberOf(component.y, file.unitMm),
      rotation: numberOf(component.rotation, 1),
    };
    const reason = reasonOf(placement, component, !unpopulated.has(designator));
    if (reason === null && side === null)
      sink.add('placementSideUnknown', { row, column: 'layerRef' }, { found: attributes['layerRef'] ?? '' });
    if (reason === 'throughHole')
      sink.add('throughHole', { row, column: 'mountType' }, { designator, part: placement.part });
    if (reason !== null) leftOut.push({ placement, reason });
    else if (placement.part === '' && !hasBill) {
      sink.add('placementPartMissing', { row, column: 'part' }, { designator });
      leftOut.push({ placement, reason: 'noPart' });
    } else placements.push(placement);
  }
  const boards = Math.max(1, ...file.components.map(({ step }) => file.repeats.get(step) ?? 1));
  if (boards > 1) sink.add('panelOfFile', { row: null }, { found: boards });
  const single = dropDoubled(placements, 'refDes', sink);
  const named = hasBill ? single.placements : checkPackages(single.placements, 'packageRef', sink);
  const doubled = single.doubled.map((placement) => ({ placement, reason: 'doubled' as const }));
  if (file.components.length === 0 && file.problem === null) sink.add('noComponents', { row: null });
  return {
    headerRow: 0,
    columns: [],
    parts: totalsOf(named),
    placements: named,
    leftOut: [...leftOut, ...doubled],
    boards: single.boards,
    designatorHeader: 'refDes',
    problems: sink.list(),
    ignored: leftOut.length + doubled.length,
  };
}

/** The side that all places of an item are on; null where they differ or do not say. */
function commonSide(places: RawItem['places'], file: RawFile): Side | null {
  const sides = new Set(places.map(({ layer }) => parseSide(file.sideByLayer.get(layer) ?? '')));
  const [only = null] = sides;
  return sides.size === 1 ? only : null;
}

function billOf(file: RawFile): BillReading | null {
  const items = file.items.filter(
    ({ places, attributes }) => places.length > 0 || !/^document$/i.test(attributes['category'] ?? ''),
  );
  if (items.length === 0) return null;
  const sink = problemSink(1000);
  const lines: BillLine[] = [];
  for (const { row, attributes, places, value } of items) {
    const number = attributes['OEMDesignNumberRef'] || attributes['internalPartNumber'] || '';
    const quantity = numberOf(attributes['quantity'] ?? '', 1);
    const makers = [...(file.makersByPart.get(number) ?? [])]
      .sort((a, b) => a.rank - b.rank)
      .map(({ name }) => name);
    for (const isFitted of [true, false]) {
      const own = places.filter((place) => place.isPopulated === isFitted);
      if (own.length === 0) continue;
      lines.push({
        row,
        designators: own.map(({ name }) => name),
        part: number || value,
        namedBy: number === '' ? 'value' : 'part',
        supplierParts: [...new Set(makers)],
        value,
        package: own[0]?.package ?? '',
        description: attributes['description'] ?? '',
        isFitted,
        side: commonSide(own, file),
        quantity,
      });
    }
    const populated = places.filter(({ isPopulated }) => isPopulated).length;
    if (quantity !== null && quantity !== places.length && quantity !== populated)
      sink.add('quantityDiffers', { row, column: 'quantity' }, { found: places.length, wanted: quantity });
  }
  return {
    headerRow: 0,
    columns: [],
    lines,
    variants: [],
    packageHeader: 'packageRef',
    designatorHeader: 'RefDes',
    problems: sink.list(),
    ignored: 0,
  };
}

/**
 * Reads an IPC-2581 file. Rows are lines of the file. `hasBill`: whether another bill names the parts. Never throws: broken XML is a problem, with
 * what stands before it read. Linear in the text.
 */
export function readExchange(text: string, hasBill = false): ExchangeReading {
  const file = parseExchange(text);
  const bill = billOf(file);
  return { placements: placementsOf(file, hasBill || bill !== null), bill };
}
