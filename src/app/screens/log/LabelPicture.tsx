// The picture of a label that was kept as evidence, asked for by the log's hash or by the verdict that was made on it: of this tablet,
// else of the server. It is shown only where it is the one that was kept.

import { useEffect, useState } from 'preact/hooks';
import { useApp, useFloor } from '../../app.ts';
import { useNotWhole } from '../../behind.ts';
import { keptPicture } from '../../kept-picture.ts';
import { tabletPictures } from '../../store/pictures.ts';
import { picturesWords } from '../../words/pictures.ts';
import { say } from '../../words/words.ts';

interface LabelPictureProps {
  /** The hash in the log; null where only the verdict is known: then nothing is told where there is no picture, unless a person asked. */
  readonly sha256: string | null;
  /** True where a person asked for it. */
  readonly isAsked?: boolean;
  /** The verdict's entry. */
  readonly of: string;
}

type Seen = { readonly is: 'none' | 'broken' } | { readonly is: 'here'; readonly url: string };

/** The picture of a verdict among many: looked for when a person opens it. Nothing where no line ever kept pictures. */
export function PictureToOpen({ of }: Pick<LabelPictureProps, 'of'>) {
  const floor = useFloor();
  const [isOpen, setOpen] = useState(false);
  if (floor.pictureRules.size === 0) return null;
  return (
    <details data-testid="picture-open" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say(picturesWords).shown}</summary>
      {isOpen && <LabelPicture sha256={null} of={of} isAsked />}
    </details>
  );
}

export function LabelPicture({ sha256, of, isAsked = false }: LabelPictureProps) {
  const app = useApp();
  const words = say(picturesWords);
  // Until the history is here the log may tell of a picture all the same.
  const notWhole = useNotWhole();
  const isWhole = notWhole === null;
  const [seen, setSeen] = useState<Seen | null>(null);
  useEffect(() => {
    let url: string | null = null;
    let isOver = false;
    const show = (found: Seen) => {
      if (isOver) return;
      if (found.is === 'here') url = found.url;
      setSeen(found);
    };
    look().then(show, () => show({ is: 'none' }));
    async function look(): Promise<Seen> {
      // Where no line ever kept pictures the log tells of none.
      if (sha256 === null && app.store.floor().pictureRules.size === 0) return { is: 'none' };
      const got = await keptPicture(app, tabletPictures(), { of, sha256 });
      if (isOver || got === 'none') return { is: 'none' };
      if (got === 'broken') return { is: 'broken' };
      return { is: 'here', url: URL.createObjectURL(new Blob([got], { type: 'image/jpeg' })) };
    }
    return () => {
      isOver = true;
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [app, sha256, of, isWhole]);
  if (seen === null || (seen.is === 'none' && sha256 === null && !isAsked)) return null;
  if (seen.is === 'here')
    return <img class="label-picture" src={seen.url} alt={words.shown} data-testid="label-picture" />;
  return (
    <p class={seen.is === 'broken' ? 'chip stop' : 'soft'} data-testid="label-picture-none">
      {seen.is === 'broken' ? words.broken : sha256 === null ? (notWhole ?? words.none) : words.notHere}
    </p>
  );
}
