/// <reference path="../../../shared/kit/saxen.d.ts" />
// What does one message of IPC-HERMES-9852 say? The words of that standard stand in this file alone.
// Method: one pass over the elements; a text that cannot be read costs that text, never the message that says a board has passed. XML that
// is not well formed costs the message. Declarations of entities are refused, and no entity is known but XML's own five.
// Field names and numbers: hermes-org/lib_cpp f7cf267d, src/Hermes/MessageSerialization.cpp and src/include/HermesData.hpp.

import { Parser } from 'saxen';

/** How a board went: by the conveyor, loaded or unloaded by the machine, or put in or taken out by a hand. */
export type Transfer = 'conveyed' | 'loaded' | 'by-hand';

/** A board that came to a machine, or left it. */
export interface Board {
  readonly way: 'arrived' | 'departed';
  readonly machineId: string | null;
  readonly lane: number | null;
  readonly transfer: Transfer;
  /** Null where the machine gave none, or the number of all zeros, which says none. */
  readonly boardId: string | null;
  readonly hasFailed: boolean;
  readonly up: 'top' | 'bottom' | null;
  /** The code on the side that lies up; where that has none, the other side's. */
  readonly code: string | null;
  /** Boards of the panel that are left out or missing: which of them from 1, or how many; null where nothing is said. */
  readonly skipped: number[] | number | null;
}

/** One message. */
export type HermesMessage =
  | { readonly is: 'described'; readonly features: ReadonlySet<string> }
  | { readonly is: 'alive'; readonly asks: boolean; readonly id: string | null }
  | { readonly is: 'board'; readonly board: Board }
  | { readonly is: 'notified'; readonly severity: number; readonly said: string }
  /** Known, and none of a listener's business. */
  | { readonly is: 'passed-over'; readonly name: string }
  /** Of the channel between neighbours, where a listener must never be. */
  | { readonly is: 'horizontal'; readonly name: string }
  | { readonly is: 'unknown'; readonly name: string };

/** What an envelope held. */
export interface Envelope {
  readonly timestamp: string | null;
  readonly messages: readonly HermesMessage[];
  /** What of it could not be read: where and what. */
  readonly problems: readonly string[];
}

/** Boards on a panel that are looked at. */
const SUB_BOARDS_MOST = 1_000;
const CODE_MOST = 200;

const passedOver = new Set([
  'CurrentConfiguration',
  'GetConfiguration',
  'SetConfiguration',
  'QueryWorkOrderInfo',
  'SendWorkOrderInfo',
  'ReplyWorkOrderInfo',
  'QueryHermesCapabilities',
  'SendHermesCapabilities',
]);
const horizontal = new Set([
  'ServiceDescription',
  'BoardAvailable',
  'RevokeBoardAvailable',
  'MachineReady',
  'RevokeMachineReady',
  'StartTransport',
  'StopTransport',
  'TransportFinished',
  'BoardForecast',
  'QueryBoardInfo',
  'SendBoardInfo',
  'Command',
]);

/** An element with its attributes as they stand. */
interface Element {
  readonly name: string;
  readonly at: Readonly<Record<string, string>>;
  readonly within: Element[];
}

/** Reads one envelope out of its bytes. Never throws: what is not well formed has no message, and one problem. */
export function readEnvelope(bytes: Uint8Array): Envelope {
  const text = new TextDecoder('utf-8').decode(bytes);
  const read = readTree(text);
  if (typeof read === 'string') return { timestamp: null, messages: [], problems: [read] };
  const problems: string[] = [];
  const messages = read.within.map((element) => messageOf(element, problems));
  if (messages.length === 0) problems.push('Hermes: a message with nothing in it');
  return { timestamp: textOf(read, 'Timestamp', problems), messages, problems };
}

/** The outermost element, or what is wrong. */
function readTree(text: string): Element | string {
  const root: Element = { name: '', at: {}, within: [] };
  const open = [root];
  let wrong: string | null = null;
  const parser = new Parser();
  const refuse = (what: string) => {
    wrong ??= `XML: ${what}`.slice(0, CODE_MOST);
  };
  parser.on('error', (error) => refuse(error.message));
  parser.on('warn', (error) => refuse(error.message));
  parser.on('attention', () => refuse('a declaration (<!…>) is not allowed here'));
  parser.on('question', () => refuse('an instruction (<?…>) is not allowed here'));
  parser.on('openTag', (name, attributes) => {
    const element = { name, at: attributes() || {}, within: [] };
    open.at(-1)?.within.push(element);
    open.push(element);
  });
  parser.on('closeTag', () => void open.pop());
  parser.parse(text);
  return wrong ?? root.within[0] ?? 'XML: nothing in it';
}

function messageOf(element: Element, problems: string[]): HermesMessage {
  const { name } = element;
  switch (name) {
    case 'BoardArrived':
    case 'BoardDeparted':
      return { is: 'board', board: boardOf(element, problems) };
    case 'CheckAlive':
      return {
        is: 'alive',
        asks: numberOf(element, 'Type', problems) === 1,
        id: textOf(element, 'Id', problems),
      };
    case 'SupervisoryServiceDescription': {
      const features = element.within.find((each) => each.name === 'SupportedFeatures')?.within ?? [];
      return { is: 'described', features: new Set(features.map((each) => each.name)) };
    }
    case 'Notification': {
      const code = numberOf(element, 'NotificationCode', problems) ?? 0;
      const description = textOf(element, 'Description', problems) ?? '';
      const severity = numberOf(element, 'Severity', problems) ?? 1;
      return { is: 'notified', severity, said: `${code}: ${description}` };
    }
    default:
      if (passedOver.has(name)) return { is: 'passed-over', name };
      return { is: horizontal.has(name) ? 'horizontal' : 'unknown', name };
  }
}

const transfers: Readonly<Record<number, Transfer>> = { 1: 'conveyed', 2: 'loaded', 3: 'by-hand' };

function boardOf(element: Element, problems: string[]): Board {
  const way = element.name === 'BoardArrived' ? 'arrived' : 'departed';
  const given = numberOf(element, 'BoardTransfer', problems);
  const transfer = transfers[given ?? 0];
  // It passed all the same.
  if (transfer === undefined)
    problems.push(`${element.name}.BoardTransfer: expected 1, 2 or 3, found ${given ?? 'none'}`);
  const flipped = numberOf(element, 'FlippedBoard', problems);
  const up = flipped === 1 ? 'top' : flipped === 2 ? 'bottom' : null;
  const top = codeOf(element, 'TopBarcode', problems);
  const bottom = codeOf(element, 'BottomBarcode', problems);
  return {
    way,
    machineId: textOf(element, 'MachineId', problems),
    lane: numberOf(element, way === 'arrived' ? 'UpstreamLaneId' : 'DownstreamLaneId', problems),
    transfer: transfer ?? 'conveyed',
    boardId: idOf(textOf(element, 'BoardId', problems)),
    hasFailed: numberOf(element, 'FailedBoard', problems) === 2,
    up,
    code: up === 'bottom' ? (bottom ?? top) : (top ?? bottom),
    skipped: skippedOf(element, problems),
  };
}

/** The standard's own library sends the number of all zeros where a board has none: it names no board. */
function idOf(text: string | null): string | null {
  const id = text?.replace(/^\{|\}$/g, '').toLowerCase() ?? '';
  return id === '' || /^[0-]*$/.test(id) ? null : id.slice(0, 64);
}

/** 3 = missing, 4 = to be left out; a board that failed took its parts. */
function skippedOf(element: Element, problems: string[]): number[] | number | null {
  const boards = element.within
    .filter(({ name }) => name === 'SubBoards')
    .flatMap(({ within }) => within.filter(({ name }) => name === 'SB'));
  if (boards.length === 0) return null;
  if (boards.length > SUB_BOARDS_MOST) {
    problems.push(`${element.name}.SubBoards: expected at most ${SUB_BOARDS_MOST}, found ${boards.length}`);
    return null;
  }
  const places = boards.flatMap((board) => {
    const state = numberOf(board, 'St', problems);
    return state === 3 || state === 4 ? [numberOf(board, 'Pos', problems)] : [];
  });
  const named = places.filter((place) => place !== null && place >= 1) as number[]; // checked here
  return named.length === places.length ? [...new Set(named)].sort((a, b) => a - b) : places.length;
}

function numberOf({ name, at }: Element, field: string, problems: string[]): number | null {
  const raw = at[field]?.trim();
  if (raw === undefined || raw === '') return null;
  if (/^\d{1,9}$/.test(raw)) return Number(raw);
  problems.push(`${name}.${field}: expected a whole number`);
  return null;
}

function codeOf(element: Element, field: string, problems: string[]): string | null {
  const text = textOf(element, field, problems);
  if (text === null || text.length <= CODE_MOST) return text;
  problems.push(`${element.name}.${field}: expected at most ${CODE_MOST} signs`);
  return null;
}

const isControl = /[\u0000-\u001f\u007f\ufffd\ud800-\udfff]/u;

/** A text; null where it is empty, or holds what no reader can have meant. */
function textOf({ name, at }: Element, field: string, problems: string[]): string | null {
  const raw = at[field];
  const text = raw === undefined ? '' : decoded(raw);
  if (text !== null && !isControl.test(text)) return text.trim() === '' ? null : text.trim();
  problems.push(`${name}.${field}: expected plain UTF-8 text`);
  return null;
}

const named: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** With XML's own five entities and numbers of signs; null where another stands, or one that is no sign. */
function decoded(raw: string): string | null {
  let isPlain = true;
  const text = raw.replace(/&(?:(amp|lt|gt|quot|apos);|#(\d{1,7});|#x([0-9a-fA-F]{1,6});)?/g, (...found) => {
    const [, name, decimal, hex] = found as (string | undefined)[];
    if (name !== undefined) return named[name] ?? '';
    const sign = decimal !== undefined ? Number(decimal) : Number.parseInt(hex ?? '', 16);
    if (sign <= 0x10ffff) return String.fromCodePoint(sign);
    isPlain = false;
    return '';
  });
  return isPlain ? text : null;
}
