// From where on does the plant give tickets? What its log held when it gave the first one was written when nothing could prove who acted:
// how far each chain had come then, signed by the plant's key, so that no tablet can date itself back to before.

/** The start. */
export interface TicketStart {
  /** The name of the plant's key. */
  readonly origin: string;
  /** When the first ticket was given, ISO 8601. */
  readonly at: string;
  /** Chain (`tablet/epoch`) -> the number of its last entry then. Chains that are not named were not there. */
  readonly before: ReadonlyMap<string, number>;
}

/** The start as the text of a note. */
export function ticketStartText({ origin, at, before }: TicketStart): string {
  return `${origin}/tickets\n${at}\n${[...before].map(([chain, seq]) => `${chain} ${seq}\n`).join('')}`;
}

/** Reads the text of a note; null where it is no start of tickets. */
export function parseTicketStart(text: string): TicketStart | null {
  const [title = '', at = '', ...rest] = text.split('\n');
  const origin = /^(\S+)\/tickets$/.exec(title)?.[1];
  if (rest.pop() !== '' || origin === undefined || Number.isNaN(Date.parse(at))) return null;
  const before = new Map<string, number>();
  for (const line of rest) {
    const [, chain, seq] = /^(\S+) (\d{1,15})$/.exec(line) ?? [];
    if (chain === undefined || before.has(chain)) return null;
    before.set(chain, Number(seq));
  }
  return { origin, at, before };
}
