// The pieces of a database's address: several hosts may stand in it, which no reader of URLs takes.

/** Takes an address apart; `hosts` is [''] where it names none. */
export function splitAddress(url: string): {
  readonly head: string;
  readonly hosts: readonly string[];
  readonly place: string;
  readonly query: string;
} {
  const [, head = '', hosts = '', place = '', query = ''] =
    /^(\w+:\/\/(?:[^@/]*@)?)([^/?]*)([^?]*)\??(.*)$/.exec(url) ?? [];
  return { head, hosts: hosts.split(','), place, query };
}
