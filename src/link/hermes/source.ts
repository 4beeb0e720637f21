// Hears one machine on its supervisory channel (IPC-HERMES-9852) and tells the station's desk what passed. Reads only: what it sends is who
// it is, and that it is still there. It is never on the channel between neighbours, which takes one client only.
// Method: connect, say who we are, wait for the machine's own word; each message is a beat; after three missed ones the connection is given
// up and another begun. Every connection is read by one loop that waits for the disk, so that a fast sender is slowed by TCP itself.
// Refused: to answer what asks for orders or settings; to date anything by the machine's clock.

import { connect, type Socket } from 'node:net';
import { BEATS_MISSED } from '../../../shared/floor/counters.ts';
import { sleep, waitAfter } from '../../app/sync/backoff.ts';
import { type HermesStation, placeOf } from '../config.ts';
import type { NoticeWhat } from '../notices.ts';
import type { Now, StationDesk } from '../station-desk.ts';
import { clockFault } from './clock.ts';
import { MESSAGE_MOST, openFramer } from './framing.ts';
import { type Board, type HermesMessage, readEnvelope } from './message.ts';
import { type OwnTotal, openOwnTotal, type Totalled } from './own-total.ts';
import { askAlive, describeUs, stillHere } from './say.ts';
import { type HermesTimes, usualTimes } from './times.ts';

/** A beat may come so much late, ms. */
const LATE_MS = 2_000;

/** What hearing needs. */
export interface HermesParts {
  readonly folder: string;
  readonly now: () => Now;
  readonly desk: Pick<StationDesk, 'take' | 'notice'>;
  /** A line for people. */
  readonly say: (line: string) => void;
  /** Told of faults that are not the machine's: a disk that does not take what is to be kept. */
  readonly onFault: (error: unknown) => void;
  readonly chance?: () => number;
  readonly times?: HermesTimes;
  /** False only where a power cut is played and not feared. */
  readonly flush?: boolean;
}

/** One machine's source. */
export interface HermesSource {
  /** Without a word for so long the machine is silent, ms. */
  readonly silentMs: () => number;
  /** Tells the desk what was counted on the disk and not told; before anything else is. */
  readonly recall: () => Promise<void>;
  readonly start: () => void;
  /** Hangs up; resolves when all that was read is with the desk. */
  readonly stop: () => Promise<void>;
}

/** What is known over all connections. */
interface Work extends HermesParts {
  readonly station: HermesStation;
  readonly times: HermesTimes;
  readonly total: OwnTotal;
  readonly ending: AbortController;
  /** When this process last heard the machine. */
  heard: Now | null;
  /** True where it answers a question whether it is there. */
  answers: boolean;
  told: string | null;
}

/** One connection. */
interface Session {
  readonly socket: Socket;
  readonly sinceMs: number;
  /** It has said who it is; what it tells counts from then on. */
  isGreeted: boolean;
  hasBegun: boolean;
  /** It tells boards: without that nothing of it is a beat, and people count. */
  tracks: boolean;
  /** When it said the last thing, and when it was asked. */
  wordMs: number;
  askedMs: number;
  asked: number;
  /** A piece of the stream is being worked on. */
  isBusy: boolean;
  /** Nothing was heard for too long when it was last looked at. */
  isLate: boolean;
  isWrong: boolean;
}

/** Opens a station's source. Throws `LinkRefused` where its file is damaged. */
export function openHermes(station: HermesStation, parts: HermesParts): HermesSource {
  const { folder, flush = true, times = usualTimes } = parts;
  const work: Work = {
    ...parts,
    station,
    times,
    total: openOwnTotal(folder, station.station, flush),
    ending: new AbortController(),
    heard: null,
    answers: true,
    told: null,
  };
  let running: Promise<void> = Promise.resolve();
  return {
    silentMs: () => missedMs(work) + LATE_MS,
    recall: async () => {
      for (const each of work.total.untold()) await tell(work, each);
    },
    start: () => {
      running = hearForGood(work).catch((error: unknown) => {
        if (!work.ending.signal.aborted) parts.onFault(error);
      });
    },
    stop: async () => {
      work.ending.abort();
      await running;
      await work.total.close(work.now().wallMs);
    },
  };
}

const missedMs = ({ answers, times }: Work): number =>
  BEATS_MISSED * (answers ? times.askMs : times.ownBeatMs);

async function hearForGood(work: Work): Promise<void> {
  const { ending, times, chance = Math.random } = work;
  for (let failures = 0; !ending.signal.aborted; failures += 1) {
    const sinceMs = work.now().ms;
    const how = await hearOnce(work);
    if (ending.signal.aborted) return;
    // One that hangs up as soon as it has talked is not asked again and again.
    if (how === 'heard' && work.now().ms - sinceMs >= times.greetMs) failures = 0;
    // A machine that was heard tells nobody what passes meanwhile, so it is not waited for long.
    const isKnown = how === 'heard' || work.heard !== null;
    const waitMs = Math.min(
      isKnown ? times.againMs : Number.POSITIVE_INFINITY,
      waitAfter(failures, chance()),
    );
    const strangeMs = how === 'strange' && !isKnown ? times.strangeMs : waitMs;
    await sleep(how === 'wrong' ? times.wrongMs : strangeMs, ending.signal);
  }
}

function sayOnce(work: Work, line: string): void {
  if (work.told !== line) work.say(`${work.station.station}: ${line}`);
  work.told = line;
}

/** One connection from its beginning to its end. */
async function hearOnce(work: Work): Promise<'heard' | 'away' | 'strange' | 'wrong'> {
  const { station, ending, times, now } = work;
  const at = station.source.connect;
  const socket = await reach(work);
  if (socket === null) {
    sayOnce(work, `nobody answers at ${at}`);
    return 'away';
  }
  const { ms } = now();
  const session: Session = {
    socket,
    sinceMs: ms,
    isGreeted: false,
    hasBegun: false,
    tracks: false,
    wordMs: ms,
    askedMs: ms,
    asked: 0,
    isBusy: false,
    isLate: false,
    isWrong: false,
  };
  const hangUp = () => void socket.destroy();
  ending.signal.addEventListener('abort', hangUp);
  const watch = setInterval(() => look(work, session), times.lookMs);
  try {
    socket.write(describeUs(station.station, now().wallMs));
    await readAll(work, session);
  } finally {
    clearInterval(watch);
    ending.signal.removeEventListener('abort', hangUp);
    socket.destroy();
  }
  if (session.isWrong) {
    sayOnce(work, `${at} is the channel between machines, not the supervisory one: left alone for an hour`);
    return 'wrong';
  }
  sayOnce(work, session.isGreeted ? `the connection to ${at} is lost` : `${at} does not say who it is`);
  return session.isGreeted ? 'heard' : 'strange';
}

/** A connection; null where there is none. */
function reach({ station, times, ending }: Work): Promise<Socket | null> {
  return new Promise((resolve) => {
    const socket = connect({ ...placeOf(station.source.connect), noDelay: true, keepAlive: true });
    const end = (reached: boolean) => {
      clearTimeout(timer);
      ending.signal.removeEventListener('abort', giveUp);
      if (!reached) socket.destroy();
      resolve(reached ? socket : null);
    };
    const giveUp = () => end(false);
    const timer = setTimeout(giveUp, times.connectMs);
    ending.signal.addEventListener('abort', giveUp);
    // Stays for the life of the socket: a fault that nobody hears would end the process.
    socket.on('error', giveUp);
    socket.once('connect', () => end(true));
    if (ending.signal.aborted) giveUp();
  });
}

/** Time passes: the machine is asked whether it is there, and given up where it is not. */
function look(work: Work, session: Session): void {
  const { times, now } = work;
  const { socket } = session;
  const { ms, wallMs } = now();
  const wasLate = session.isLate;
  session.isLate =
    !session.isBusy &&
    (session.isGreeted ? ms - session.wordMs >= missedMs(work) : ms - session.sinceMs >= times.greetMs);
  // Late twice: a computer that slept looks before it reads what has come meanwhile.
  if (session.isLate && wasLate) {
    socket.destroy();
    return;
  }
  if (!session.isGreeted || ms - session.askedMs < times.askMs) return;
  session.askedMs = ms;
  session.asked += 1;
  send(session, askAlive(work.answers ? session.asked : null, wallMs));
}

/** What waits for a machine that does not read is kept within bounds. */
function send({ socket }: Session, text: string): void {
  if (socket.writableLength > MESSAGE_MOST) socket.destroy();
  else socket.write(text);
}

/** Reads until the connection ends. What the network does to it is no fault; what the disk does is thrown. */
async function readAll(work: Work, session: Session): Promise<void> {
  const framer = openFramer();
  const { socket } = session;
  let strays = 0;
  const take = async (frames: ReturnType<typeof framer.push>) => {
    for (const frame of frames) {
      if (session.isWrong) return;
      if (frame.is === 'message') {
        await takeEnvelope(work, session, frame.bytes);
        strays = 0;
        continue;
      }
      strays += frame.bytes;
      await notice(work, 'not-understood', `${frame.why} (${frame.bytes} bytes)`);
      // Whatever it is, it is no such machine.
      if (strays >= MESSAGE_MOST && !session.isGreeted) socket.destroy();
    }
  };
  const chunks = socket[Symbol.asyncIterator]();
  for (;;) {
    let next: IteratorResult<Buffer>;
    try {
      next = await chunks.next();
    } catch {
      break;
    }
    if (next.done) break;
    session.isBusy = true;
    await take(framer.push(next.value));
    session.isBusy = false;
  }
  await take(framer.end());
}

function notice(work: Work, what: NoticeWhat, said: string): Promise<unknown> {
  return work.desk.notice(what, said, work.now());
}

async function takeEnvelope(work: Work, session: Session, bytes: Buffer): Promise<void> {
  const { timestamp, messages, problems } = readEnvelope(bytes);
  for (const problem of problems) await notice(work, 'not-understood', problem);
  const off = clockFault(timestamp, work.now().wallMs);
  if (messages.length > 0 && off !== null) await notice(work, 'clock-off', off);
  for (const message of messages) await takeMessage(work, session, message);
}

async function takeMessage(work: Work, session: Session, message: HermesMessage): Promise<void> {
  switch (message.is) {
    case 'described':
      work.answers = message.features.has('FeatureCheckAliveResponse');
      session.tracks ||= message.features.has('FeatureBoardTracking');
      if (!session.tracks) await notice(work, 'no-boards', 'FeatureBoardTracking');
      greet(work, session);
      return heardOf(work, session);
    case 'alive':
      if (message.asks && session.isGreeted) send(session, stillHere(message.id, work.now().wallMs));
      return heardOf(work, session);
    case 'board':
      // It tells boards, whatever it said of itself.
      session.tracks = true;
      greet(work, session);
      await heardOf(work, session, true);
      return takeBoard(work, message.board);
    case 'notified':
      if (message.severity <= 3) await notice(work, 'machine-says', message.said);
      // Said in place of who it is: we are not wanted there.
      if (!session.isGreeted) session.socket.destroy();
      return heardOf(work, session);
    case 'passed-over':
      return heardOf(work, session);
    case 'unknown':
      await notice(work, 'not-understood', `${message.name.slice(0, 80)}: not known here`);
      return heardOf(work, session);
    case 'horizontal':
      session.isWrong = true;
      session.socket.destroy();
      await notice(work, 'wrong-channel', `${work.station.source.connect}: ${message.name}`);
      return;
    default:
      message satisfies never;
  }
}

/** It is such a machine. */
function greet(work: Work, session: Session): void {
  session.isGreeted = true;
  sayOnce(work, `hears ${work.station.source.connect}`);
}

/** Any word of a machine that tells boards is a beat. */
async function heardOf(work: Work, session: Session, isBoard = false): Promise<void> {
  const now = work.now();
  session.wordMs = now.ms;
  if (!session.tracks) return;
  if (!session.hasBegun) await begin(work, now);
  session.hasBegun = true;
  work.heard = now;
  const present = work.total.now();
  // A board tells its total itself.
  if (present && !isBoard) await tellBeat(work, present);
}

/** The first word of a connection: nobody knows what passed before it. That is said, and after more than some beats a new boot begins. */
async function begin(work: Work, now: Now): Promise<void> {
  const sinceMs = work.heard?.wallMs ?? work.total.lastMs();
  const holeMs = work.heard === null ? Number.POSITIVE_INFINITY : now.ms - work.heard.ms;
  if (sinceMs !== null) {
    const moments = [Math.min(sinceMs, now.wallMs), now.wallMs].map((ms) => new Date(ms).toISOString());
    await notice(work, 'not-heard', moments.join(' – '));
  }
  if (holeMs < missedMs(work)) return;
  await work.total.begin(now.wallMs);
  const present = work.total.now();
  // None yet, and said so: what comes is then known to be of now.
  if (present) await tellBeat(work, present);
}

function tellBeat(work: Work, { boot, total }: { readonly boot: string; readonly total: number }) {
  const none = { atMs: null, serial: null, skipped: null, state: null };
  return work.desk.take({ boot, total, ...none }, work.now());
}

async function takeBoard(work: Work, board: Board): Promise<void> {
  const { source } = work.station;
  const names = board.code ?? board.boardId ?? '?';
  if (board.way !== (source.counts ?? 'departed')) return;
  if (source.lane !== undefined && board.lane === null) {
    await notice(work, 'not-understood', `a board of no lane, where lane ${source.lane} counts: ${names}`);
    return;
  }
  if (source.lane !== undefined && board.lane !== source.lane) return;
  const pinned = source.machineId ?? work.total.machineId();
  if (pinned !== null && board.machineId !== null && board.machineId !== pinned) {
    await notice(work, 'other-machine', `${board.machineId}, not ${pinned}`);
    return;
  }
  if (board.transfer === 'by-hand') {
    await notice(work, 'by-hand', names);
    return;
  }
  if (pinned === null && board.machineId !== null) await work.total.pin(board.machineId);
  if (board.hasFailed) await notice(work, 'failed-board', names);
  const key = board.boardId === null ? null : `${board.boardId} ${board.up ?? ''}`.trim();
  const { code: serial, skipped } = board;
  const counted = await work.total.add({ key, serial, skipped }, work.now().wallMs);
  if (counted === null) await notice(work, 'board-twice', names);
  else await tell(work, counted);
}

/** The desk hears of a board that is on the disk. */
async function tell(work: Work, { boot, total, serial, skipped }: Totalled): Promise<void> {
  await work.desk.take({ boot, total, serial, skipped, atMs: null, state: null, once: true }, work.now());
  work.total.told();
}
