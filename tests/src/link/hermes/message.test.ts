// What one message says: by messages written by hand from the published field lists, and by messages that are broken on purpose.
// Field lists: hermes-org/lib_cpp f7cf267d, src/Hermes/MessageSerialization.cpp (BoardArrived and BoardDeparted); numbers of BoardTransfer,
// FailedBoard, FlippedBoard and of a sub-board's state: src/include/HermesData.hpp; the number of all zeros is that library's default.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readEnvelope } from '../../../../src/link/hermes/message.ts';
import { departed, description, element, guid, hermes, subBoards } from './machine.ts';

const read = (inside: string) => readEnvelope(Buffer.from(hermes(inside)));
function board(inside: string) {
  const { messages, problems } = read(inside);
  const [message] = messages;
  if (message?.is !== 'board') throw new Error(problems.join());
  return { ...message.board, problems };
}

// Every attribute that the field list names, with the units that it gives.
const full = `<BoardDeparted MachineId="oven &amp; Söhne" DownstreamLaneId="2" DownstreamInterfaceId="I2" MagazineId="MG1" SlotId="4"
  BoardTransfer="2" BoardId="{ABCDEF01-2345-4789-8ABC-DEF012345678}" BoardIdCreatedBy="loader" FailedBoard="2" ProductTypeId="P-7"
  FlippedBoard="2" TopBarcode="T&lt;1&gt;" BottomBarcode="&quot;B&quot;&#x1F600;&#228;" Length="120.5" Width="80.2" Thickness="1.6"
  ConveyorSpeed="200" TopClearanceHeight="20" BottomClearanceHeight="12.5" Weight="98.7" WorkOrderId="W1" BatchId="B1" Route="3" Action="1">
  <SubBoards><SB Pos="1" Bc="S1" St="1"/><SB Pos="2" St="4"/><SB Pos="3" St="3"/><SB Pos="4" St="2"/><SB Pos="5" St="0"/></SubBoards>
  </BoardDeparted>`;

describe('a message', () => {
  test('of a board says how it went, which it is, its code on the upper side, and what is left out on it', () => {
    expect(board(full)).toEqual({
      way: 'departed',
      machineId: 'oven & Söhne',
      lane: 2,
      transfer: 'loaded',
      boardId: 'abcdef01-2345-4789-8abc-def012345678',
      hasFailed: true,
      up: 'bottom',
      code: '"B"\u{1F600}ä',
      skipped: [2, 3],
      problems: [],
    });
    const arrived = full.replaceAll('BoardDeparted', 'BoardArrived').replaceAll('Downstream', 'Upstream');
    expect(board(arrived)).toMatchObject({ way: 'arrived', lane: 2, problems: [] });
  });

  test('names a board by the upper side’s code, else by the other side’s', () => {
    const both = { TopBarcode: 'T', BottomBarcode: 'B' };
    const codes = [0, 1, 2].map((FlippedBoard) => board(departed({ FlippedBoard, ...both })).code);
    expect(codes).toEqual(['T', 'T', 'B']);
    expect(board(departed({ FlippedBoard: 2, TopBarcode: 'T' })).code).toBe('T');
    expect(board(departed({ FlippedBoard: 1, BottomBarcode: 'B', TopBarcode: '' })).code).toBe('B');
    expect(board(departed()).code).toBe(null);
  });

  test('gives no board’s number where it is all zeros, or none', () => {
    for (const BoardId of [
      '00000000-0000-0000-0000-000000000000',
      '{00000000-0000-0000-0000-000000000000}',
      '',
      ' ',
    ])
      expect(board(departed({ BoardId })).boardId).toBe(null);
    expect(board(departed({ BoardId: guid(7).toUpperCase() })).boardId).toBe(guid(7));
  });

  test('says which boards of a panel are left out, or how many where their places are no places', () => {
    expect(board(departed({}, subBoards([1, 4, 3]))).skipped).toEqual([2, 3]);
    expect(board(departed({}, subBoards([1, 2, 0]))).skipped).toEqual([]);
    expect(board(departed({}, subBoards([4, 4, 1], 0))).skipped).toBe(2);
    expect(board(departed({}, '<SubBoards />')).skipped).toBe(null);
    const many = board(departed({}, subBoards(Array.from({ length: 1001 }, () => 4))));
    expect(many).toMatchObject({
      skipped: null,
      problems: [expect.stringMatching(/SubBoards: expected at most/)],
    });
  });

  test('whose texts cannot be read loses those texts, and still says that a board has passed', () => {
    const cases: readonly (readonly [string, RegExp])[] = [
      [
        '<BoardDeparted BoardTransfer="1" TopBarcode="a&unknown;b"/>',
        /BoardDeparted.TopBarcode: expected plain/,
      ],
      ['<BoardDeparted BoardTransfer="1" TopBarcode="a & b"/>', /TopBarcode: expected plain/],
      ['<BoardDeparted BoardTransfer="1" TopBarcode="a&#0;b"/>', /TopBarcode: expected plain/],
      ['<BoardDeparted BoardTransfer="1" TopBarcode="&#xD800;"/>', /TopBarcode: expected plain/],
      ['<BoardDeparted BoardTransfer="1" TopBarcode="&#x110000;"/>', /TopBarcode: expected plain/],
      [
        `<BoardDeparted BoardTransfer="1" TopBarcode="${'x'.repeat(201)}"/>`,
        /TopBarcode: expected at most 200/,
      ],
      ['<BoardDeparted BoardTransfer="9"/>', /BoardTransfer: expected 1, 2 or 3, found 9/],
      ['<BoardDeparted/>', /BoardTransfer: expected 1, 2 or 3, found none/],
      ['<BoardDeparted BoardTransfer="1" FlippedBoard="up"/>', /FlippedBoard: expected a whole number/],
    ];
    for (const [inside, says] of cases) {
      const { problems, ...rest } = board(inside);
      expect(rest, inside).toMatchObject({ way: 'departed', transfer: 'conveyed', code: null });
      expect(problems.join('; ')).toMatch(says);
    }
    // Latin-1 in what says it is UTF-8.
    const latin = Buffer.from(hermes(departed({ TopBarcode: 'ä1' })), 'latin1');
    const { messages, problems } = readEnvelope(latin);
    expect(messages).toMatchObject([{ is: 'board', board: { code: null, transfer: 'conveyed' } }]);
    expect(problems).toEqual(['BoardDeparted.TopBarcode: expected plain UTF-8 text']);
  });

  test('that is not well formed, or brings declarations of its own, is no message', () => {
    const bomb = `<!DOCTYPE x [<!ENTITY a "${'lol'.repeat(20)}"><!ENTITY b "&a;&a;&a;&a;">]>`;
    const broken = [
      `<Hermes>${bomb}<BoardDeparted BoardTransfer="1" TopBarcode="&b;"/></Hermes>`,
      '<Hermes><?do it?><BoardDeparted BoardTransfer="1"/></Hermes>',
      '<Hermes><BoardDeparted BoardTransfer="1"></Hermes>',
      '<Hermes><BoardDeparted BoardTransfer="1" BoardTransfer="3"/></Hermes>',
      '<Hermes><BoardDeparted BoardTransfer=1 /></Hermes>',
      '<Hermes><BoardDeparted BoardTransfer/></Hermes>',
      '<Hermes><1/></Hermes>',
      '<Hermes><!-- </Hermes>',
      '<Hermes></Hermes>',
    ];
    for (const text of broken) {
      const { messages, problems } = readEnvelope(Buffer.from(text));
      expect([text, messages]).toEqual([text, []]);
      expect(problems, text).toHaveLength(1);
    }
  });

  test('of a machine says what it can do, whether it asks, and what it warns of', () => {
    expect(read(description()).messages).toEqual([
      { is: 'described', features: new Set(['FeatureCheckAliveResponse', 'FeatureBoardTracking']) },
    ]);
    expect(read('<CheckAlive Type="1" Id="7" />').messages).toEqual([{ is: 'alive', asks: true, id: '7' }]);
    expect(read('<CheckAlive />').messages).toEqual([{ is: 'alive', asks: false, id: null }]);
    const note = element('Notification', { NotificationCode: 4, Severity: 1, Description: 'shutting down' });
    expect(read(note).messages).toEqual([{ is: 'notified', severity: 1, said: '4: shutting down' }]);
    expect(read('<QueryWorkOrderInfo/><StartTransport/><Dance/>').messages).toEqual([
      { is: 'passed-over', name: 'QueryWorkOrderInfo' },
      { is: 'horizontal', name: 'StartTransport' },
      { is: 'unknown', name: 'Dance' },
    ]);
  });

  test('of any bytes at all is read without a fault', () => {
    const piece = fc.constantFrom(
      '<',
      '>',
      '</',
      '/>',
      '"',
      '&',
      ';',
      '=',
      ' ',
      'Hermes',
      'BoardDeparted',
      'SB',
      '<!',
      ']]>',
      'ä',
      '\0',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(piece, fc.string({ maxLength: 5 })), { maxLength: 40 }), (pieces) => {
        const { messages, problems } = readEnvelope(Buffer.from(`<Hermes>${pieces.join('')}</Hermes>`));
        expect(messages.length + problems.length).toBeGreaterThan(0);
      }),
    );
  });
});
