// A machine asks whether materials are right where they are (ValidateTopicRequest, topic Materials): answered from the last verdicts where an
// engineer has turned that on, each answer in the log before it is sent, as a row of its own or as one that the log had already. It is the only thing that is ever said to a machine beside a
// question, and it is a help beside the machine's own guards, not a safety function: no answer, too, must be safe for it.

import { randomUUID } from 'node:crypto';
import { type AnsweredRow, answerPlaces, answersAs, resultOf } from '../../../shared/floor/interlock.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { type InterlockWhy, interlockWhys } from '../../../shared/floor/vocabulary.ts';
import { openTurn } from '../../../shared/kit/turn.ts';
import type { FloorWatch } from '../floor.ts';
import type { NoticeWhat } from '../notices.ts';
import type { Now, WriteEntry } from '../station-desk.ts';
import { asList, asRecord, asText, type Envelope } from './envelope.ts';
import { type Place, placeOf } from './messages.ts';
import { answerPages, openToldAnswers } from './told-answers.ts';

/** The question, and its answer. */
export const VALIDATE = 'CFX.InformationSystem.TopicValidation.ValidateTopicRequest';
const VALIDATED = 'CFX.InformationSystem.TopicValidation.ValidateTopicResponse';
/** As people are told of it. */
const SHORT = 'ValidateTopicRequest';
/** The log must be read within so long, ms: a machine waits half a minute for an answer. */
const FLOOR_WITHIN_MS = 8_000;
/** Places of one question. */
const PLACES_MOST = 2_000;
/** Questions that are answered in a minute: each answer stays in the log for good. */
const A_MINUTE = 60;

/** What a machine's screen may show beside an answer. */
const texts: Readonly<Record<InterlockWhy, string>> = {
  verified: 'Ok',
  refused: 'This reel was refused here',
  held: 'A verdict waits for a lead',
  'other-reel': 'Another reel was verified here',
  'other-part': 'Another part was verified here',
  'wrong-feeder': 'The feeder is not right for this slot',
  blocked: 'The material is blocked',
  'no-setup': 'No setup is chosen',
  'unknown-slot': 'No such slot is known',
  'not-in-setup': 'The setup wants nothing here',
  'not-verified': 'Nothing was verified here',
  'unknown-reel': 'This reel was never scanned',
  'no-reel-told': 'The message names no reel',
  'out-of-date': 'The log cannot be read',
  'in-conflict': 'Two tablets say different things of this slot',
  unproven: 'Let on by a word that nothing proves',
};

/** Sends an envelope back to who asked; false where that cannot be. */
export type Reply = (envelope: object) => boolean;

/** Answers the machine of one station. */
export interface Validator {
  /** Resolves when the answer is in the log and sent. */
  readonly answer: (envelope: Envelope, reply: Reply, now: Now) => Promise<unknown>;
  /** Tells the log how often it had the answer already; `isEnd`: at once. */
  readonly tick: (now: Now, isEnd: boolean) => Promise<unknown>;
}

/** Opens it. */
export function openValidator(world: {
  readonly station: string;
  readonly line: string;
  readonly floor: FloorWatch;
  readonly slotOf: (place: Place) => string | null;
  readonly write: WriteEntry;
  readonly notice: (what: NoticeWhat, said: string, now: Now) => Promise<unknown>;
}): Validator {
  const { station, line, floor, write, notice } = world;
  const told = openToldAnswers();
  let minute = { fromMs: Number.NEGATIVE_INFINITY, asked: 0 };

  const rowsOf = async (rows: readonly unknown[]): Promise<readonly AnsweredRow[] | null> => {
    const fresh = await floor.upToDate(FLOOR_WITHIN_MS);
    const state = fresh ?? floor.known();
    const unsure = state && answersAs(state, station);
    if (!unsure) return null;
    const places = rows.map((row) => {
      const place = placeOf(row);
      const slot = place && world.slotOf(place);
      const { reel = null, part = null, feeder = null } = place ?? {};
      return { slot: slot ?? '?', reel, part, feeder };
    });
    const answers = answersOf(fresh, places, { line, unsure, knows: floor.knows });
    return answers.map((each, at) => {
      const { reel = null, part = null } = places[at] ?? {};
      return { ...each, reel, part };
    });
  };
  // One after the other: what the first of two questions has still to write, the second would take for said.
  const inTurn = openTurn();
  const tellAgain = async (ms: number | null): Promise<void> => {
    const times = told.again(ms);
    if (times === 0) return;
    await write('station.answered-again', { station, line, times });
    told.toldAgain(times);
  };
  const tell = async (results: readonly AnsweredRow[], ms: number): Promise<void> => {
    const fresh = told.fresh(results);
    // What was said before stands before what is said now.
    if (fresh.length > 0) await tellAgain(null);
    await Promise.all(
      answerPages(fresh).map((some) => write('station.answered', { station, line, results: [...some] })),
    );
    told.told(results, fresh, ms);
  };
  return {
    tick: ({ ms }, isEnd) => inTurn(() => tellAgain(isEnd ? null : ms)),
    answer: async (envelope, reply, now) => {
      const no = (why: string, what: NoticeWhat, said: string) => {
        reply(refusalOf(envelope, station, why));
        return notice(what, said, now);
      };
      if (now.ms - minute.fromMs >= 60_000) minute = { fromMs: now.ms, asked: 0 };
      minute.asked += 1;
      if (minute.asked > A_MINUTE) return no('asked too often', 'asked-often', SHORT);
      const topic = asText(envelope.body['ValidationTopic'], 40);
      if (topic !== 'Materials')
        return no('only Materials are answered', 'not-used', `${SHORT} ${topic ?? ''}`.trim());
      const data = asRecord(envelope.body['ValidationTopicData'])?.['ValidationTopicData'];
      const rows = asList(data);
      if (rows.length === 0 || rows.length > PLACES_MOST)
        return no('expected 1 to 2000 places', 'not-understood', `${SHORT}: ${rows.length} places`);
      const results = await rowsOf(rows);
      if (results === null) return no('not turned on', 'asked-off', SHORT);
      await inTurn(() => tell(results, now.ms));
      if (reply(answerOf(envelope, station, results))) return null;
      return notice('not-replied', SHORT, now);
    },
  };
}

type Asked = {
  readonly slot: string;
  readonly reel: string | null;
  readonly part: string | null;
  readonly feeder: string | null;
};

/** One answer a place; where the log cannot be read nobody can know. */
function answersOf(
  fresh: FloorState | null,
  places: readonly Asked[],
  of: {
    readonly line: string;
    readonly unsure: 'Warning' | 'Failed';
    readonly knows: (reel: string) => boolean;
  },
): readonly Pick<AnsweredRow, 'slot' | 'result' | 'why'>[] {
  const { line, unsure, knows } = of;
  if (fresh === null)
    return places.map(({ slot }) => ({ slot, result: unsure, why: 'out-of-date' as const }));
  return answerPlaces(fresh, line, places, unsure).map((answer, at) => {
    const reel = places[at]?.reel ?? null;
    if (answer.why !== 'unknown-reel' || reel === null || !knows(reel)) return answer;
    // Scanned once, and on no slot since: another reel than the one that was verified here.
    return { ...answer, result: resultOf('other-reel', unsure), why: 'other-reel' as const };
  });
}

/** The envelope of an answer (fields as CFX/CFXEnvelope.cs and ValidateTopicResponse.cs publish them). */
function envelopeOf(asked: Envelope, station: string, name: string, body: object): object {
  return {
    MessageName: name,
    Version: '2.0',
    TimeStamp: new Date().toISOString(),
    UniqueID: randomUUID(),
    Source: `reelward.${station}`,
    Target: asked.source,
    RequestID: asked.request,
    MessageBody: body,
  };
}

function answerOf(asked: Envelope, station: string, results: readonly AnsweredRow[]): object {
  const Result = results.map(({ result, why }) => ({
    Result: result,
    ResultCode: interlockWhys.indexOf(why),
    Message: texts[why],
  }));
  return envelopeOf(asked, station, VALIDATED, { ValidationTopic: 'Materials', Result });
}

/** What the standard has for a question that is not answered. */
function refusalOf(asked: Envelope, station: string, why: string): object {
  const RequestResult = { Result: 'Failed', ResultCode: interlockWhys.length, Message: why };
  return envelopeOf(asked, station, 'CFX.NotSupportedResponse', { RequestResult });
}
