// A machine that stands for a foreign one: a TCP server that speaks the supervisory channel of IPC-HERMES-9852 by text put together here by
// hand, with none of the product's code. What it tells, and how it fails, is the test's to say.
// Field names and their order: hermes-org/lib_cpp f7cf267d, src/Hermes/MessageSerialization.cpp (BoardDeparted, CheckAlive,
// SupervisoryServiceDescription); the envelope: SenderEnvelope.cpp; who is told what: src/include/Hermes.hpp (VerticalService).

import { type AddressInfo, createServer, type Server, type Socket } from 'node:net';

/** What a board's message says, by the standard's own names. */
export type Fields = Readonly<Record<string, string | number>>;

/** A board's number as the standard has it. */
export function guid(at: number): string {
  return `00000000-0000-4000-8000-${String(at).padStart(12, '0')}`;
}

const quoted = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;').replaceAll('>', '&gt;');

/** An element with attributes. */
export function element(name: string, fields: Fields, within = ''): string {
  const attributes = Object.entries(fields).map(([field, value]) => ` ${field}="${quoted(String(value))}"`);
  return within === ''
    ? `<${name}${attributes.join('')} />`
    : `<${name}${attributes.join('')}>${within}</${name}>`;
}

/** What the machines' clocks show. */
export const clock = { ms: 0 };

/** A message in its envelope; local time without a zone, as the initiative's own library writes it. */
export function hermes(inside: string, timestamp = new Date(clock.ms).toISOString().slice(0, -1)): string {
  return `<Hermes Timestamp="${timestamp}">${inside}</Hermes>`;
}

/** A board that left, with what a machine usually says of it. */
export function departed(fields: Fields = {}, within = ''): string {
  const usual = { MachineId: 'M1', DownstreamLaneId: 1, BoardTransfer: 1, BoardId: guid(0) };
  const board = { BoardIdCreatedBy: 'loader', FailedBoard: 1, FlippedBoard: 1 };
  return element('BoardDeparted', { ...usual, ...board, ...fields }, within);
}

/** The boards on a panel, by their places and states. */
export function subBoards(states: readonly number[], first = 1): string {
  const boards = states.map((state, at) => element('SB', { Pos: at + first, St: state }));
  return `<SubBoards>${boards.join('')}</SubBoards>`;
}

/** What the machine says of itself. */
export function description(features = ['FeatureCheckAliveResponse', 'FeatureBoardTracking']): string {
  const supported = `<SupportedFeatures>${features.map((each) => `<${each} />`).join('')}</SupportedFeatures>`;
  return element('SupervisoryServiceDescription', { SystemId: 'M1', Version: '1.5' }, supported);
}

/** A machine at work. */
export interface Machine {
  readonly at: string;
  /** All that was ever sent to it. */
  readonly said: () => string;
  readonly clients: () => number;
  /** How often somebody has connected. */
  readonly calls: () => number;
  /** Sends bytes or text to whoever listens to boards. */
  readonly send: (bytes: string | Uint8Array) => void;
  readonly tell: (inside: string) => void;
  /** Its connections break, as when a cable is pulled or the power goes. */
  readonly cut: () => void;
  /** It does not answer any more, and the connections stand. */
  readonly freeze: (frozen: boolean) => void;
  readonly stop: () => Promise<void>;
  readonly restart: () => Promise<void>;
}

/** How it differs from the usual one. */
export interface Ways {
  readonly features?: string[];
  /** It says nothing of itself. */
  readonly isMute?: boolean;
  /** Sent as soon as somebody connects, in place of waiting. */
  readonly greets?: string;
}

/** Starts a machine. */
export async function startMachine(ways: Ways = {}): Promise<Machine> {
  const clients = new Set<Socket>();
  const listeners = new Set<Socket>();
  let [said, isFrozen, port, calls] = ['', false, 0, 0];
  let server: Server;

  const answer = (socket: Socket, message: string) => {
    if (isFrozen) return;
    if (message.includes('<SupervisoryServiceDescription')) {
      if (message.includes('<FeatureBoardTracking')) listeners.add(socket);
      if (ways.isMute !== true) socket.write(hermes(description(ways.features)));
    }
    const id = /<CheckAlive Type="1" Id="([^"]*)"/.exec(message)?.[1];
    if (
      id !== undefined &&
      (ways.features ?? ['FeatureCheckAliveResponse']).includes('FeatureCheckAliveResponse')
    )
      socket.write(hermes(element('CheckAlive', { Type: 2, Id: id })));
  };
  const open = () =>
    new Promise<void>((resolve) => {
      server = createServer((socket) => {
        calls += 1;
        clients.add(socket);
        let text = '';
        socket.on('data', (chunk: Buffer) => {
          said += chunk.toString('utf8');
          text += chunk.toString('utf8');
          for (let end = text.indexOf('</Hermes>'); end >= 0; end = text.indexOf('</Hermes>')) {
            answer(socket, text.slice(0, end));
            text = text.slice(end + 9);
          }
        });
        socket.on('error', () => undefined);
        socket.on('close', () => {
          clients.delete(socket);
          listeners.delete(socket);
        });
        if (ways.greets !== undefined) socket.write(ways.greets);
      });
      server.listen(port, '127.0.0.1', () => {
        port = (server.address() as AddressInfo).port;
        resolve();
      });
    });
  const cut = () => {
    for (const socket of clients) socket.resetAndDestroy();
    clients.clear();
    listeners.clear();
  };
  await open();
  const send = (bytes: string | Uint8Array) => {
    for (const socket of listeners) socket.write(bytes);
  };
  return {
    at: `127.0.0.1:${port}`,
    said: () => said,
    clients: () => listeners.size,
    calls: () => calls,
    send,
    tell: (inside) => send(hermes(inside)),
    cut,
    freeze: (frozen) => {
      isFrozen = frozen;
    },
    stop: () => {
      cut();
      return new Promise((resolve) => server.close(() => resolve()));
    },
    restart: open,
  };
}
