// What the server's trace has of a text: it keeps an index of the plant's whole log, older entries too. Asked by a tap, as the tablet answers
// at once and the server when it can.

import { useEffect, useRef, useState } from 'preact/hooks';
import { useApp } from '../../app.ts';
import { askServer, type TraceKind } from '../../ask-trace.ts';
import { address } from '../../router.ts';
import { Button } from '../../ui/Button.tsx';
import { searchWords } from '../../words/search.ts';
import { traceWords } from '../../words/trace.ts';
import { formatCount, say } from '../../words/words.ts';

/** What a text may be to the trace. */
const kinds = ['lot', 'reel', 'panel', 'part', 'feeder'] as const satisfies readonly TraceKind[];

/** How much the server has of a text, by kind; `none`: it did not answer. */
type Answer = readonly { readonly kind: (typeof kinds)[number]; readonly count: number }[] | 'none';

export function AtServer({ text }: { readonly text: string }) {
  const app = useApp();
  const words = say(searchWords);
  const [answer, setAnswer] = useState<{ readonly text: string; readonly is: Answer } | null>(null);
  const [isAsking, setAsking] = useState(false);
  const isHere = useRef(true);
  useEffect(
    () => () => {
      isHere.current = false;
    },
    [],
  );
  const ask = async () => {
    setAsking(true);
    const is = await askAll(app, text).catch((): Answer => 'none');
    if (!isHere.current) return;
    setAnswer({ text, is });
    setAsking(false);
  };
  if (app.connection.value === null) return <p class="soft">{words.noServer}</p>;
  const known = answer?.text === text ? answer.is : null;
  return (
    <section class="row at-server">
      {known === null && (
        <Button
          onPress={() => void ask()}
          testId="search-server"
          disabledReason={isAsking ? words.asking : null}
        >
          {words.askServer}
        </Button>
      )}
      {known === 'none' && <p class="soft">{words.noServer}</p>}
      {known?.length === 0 && <p class="soft">{words.serverNothing(text)}</p>}
      {known !== 'none' &&
        known?.map(({ kind, count }) => (
          <a key={kind} class="button" href={address('log', 'trace', kind, text)}>
            {words.serverHas(say(traceWords).kinds[kind], formatCount(count))}
          </a>
        ))}
    </section>
  );
}

async function askAll(app: Parameters<typeof askServer>[0], text: string): Promise<Answer> {
  const found = await Promise.all(kinds.map((kind) => askServer(app, kind, text)));
  // Half an answer would say of the rest that there is nothing.
  if (found.some((each) => each === null)) return 'none';
  return kinds.flatMap((kind, at) => {
    const each = found[at];
    const count = each?.kind === 'panel' ? each.runs.length : (each?.places.length ?? 0);
    return count > 0 ? [{ kind, count }] : [];
  });
}
