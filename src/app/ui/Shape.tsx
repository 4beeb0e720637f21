import type { Verdict } from '../../../shared/floor/vocabulary.ts';

/** The colour beside each verdict's shape, as the classes of chips and parts name it. */
export const verdictTones = {
  accepted: 'go',
  refused: 'stop',
  held: 'care',
} as const satisfies Record<Verdict, 'go' | 'stop' | 'care'>;

/** A verdict's shape as a letter, where it stands in a line of text. */
export const verdictSigns = { accepted: '✓', refused: '✕', held: '?' } as const satisfies Record<
  Verdict,
  string
>;

/** A verdict's shape, told apart without colour: a disc with a tick, an eight-corner with a cross, a diamond with a question. */
export function VerdictShape({ verdict, size = 160 }: { readonly verdict: Verdict; readonly size?: number }) {
  const outline = {
    accepted: <circle cx="50" cy="50" r="45" />,
    refused: <path d="M31 5h38l26 26v38L69 95H31L5 69V31z" />,
    held: <path d="M50 3l47 47-47 47L3 50z" />,
  }[verdict];
  const mark = {
    accepted: <path d="M28 52l16 16 30-34" />,
    refused: <path d="M34 34l32 32M66 34L34 66" />,
    held: <path d="M38 40a12 12 0 1 1 17 11c-4 2-5 5-5 9M50 72h.01" />,
  }[verdict];
  return (
    <svg
      class={`shape ${verdict}`}
      width={size}
      height={size}
      viewBox="0 0 100 100"
      fill="none"
      stroke="currentColor"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <g stroke-width="6">{outline}</g>
      <g stroke-width="10">{mark}</g>
    </svg>
  );
}
