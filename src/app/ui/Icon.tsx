/** Line drawings of 24 units, of our own making; each stands beside a word, never alone. */
const drawings = {
  line: 'M2 9h20M2 15h20M6 9v-3M12 9v-3M18 9v-3M6 12h.01M12 12h.01M18 12h.01',
  load: 'M12 3a9 9 0 1 0 9 9M12 9.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5M21 3v6h-6M21 3l-6.5 6.5',
  splice: 'M2 8h8l3 4-3 4H2zM22 8h-5l3 4-3 4h5M5 12h.01M8 12h.01',
  change: 'M4 8h13l-4-4M20 16H7l4 4',
  stock: 'M3 7.5l9-4 9 4v9l-9 4-9-4zM3 7.5l9 4 9-4M12 11.5v9',
  log: 'M6 3h12v18H6zM9 8h6M9 12h6M9 16h3',
  plant: 'M3 20V9l6 4V9l6 4V5h6v15zM7 16h.01M12 16h.01M17 16h.01',
  camera: 'M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7',
  torch: 'M7 3h10v4l-3 4v10h-4V11L7 7zM7 7h10M12 14v2',
  turn: 'M4 11a8 8 0 0 1 14-4.5M18 2.5v4h-4M20 13a8 8 0 0 1-14 4.5M6 21.5v-4h4',
  keyboard: 'M2 7h20v11H2zM6 11h.01M10 11h.01M14 11h.01M18 11h.01M8 15h8',
  check: 'M4 12.5l5.5 5.5L20 6.5',
  cross: 'M5 5l14 14M19 5L5 19',
  question: 'M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .6-1.5 1.3-1.5 2.6M12 18.5h.01',
  bell: 'M6 16V10a6 6 0 0 1 12 0v6l2 2H4zM10 21h4',
  mute: 'M6 16V10a6 6 0 0 1 12 0v6l2 2H4zM10 21h4M3 3l18 18',
  warn: 'M12 3.5l9.5 17h-19zM12 10v5M12 18h.01',
  person: 'M12 4a4 4 0 1 0 0 8 4 4 0 0 0 0-8M4 21c0-4 3.5-6.5 8-6.5s8 2.5 8 6.5',
  pause: 'M8 5v14M16 5v14',
  play: 'M7 4.5l12 7.5-12 7.5z',
  walk: 'M13 4h.01M11 8l-2 5 3 3v5M9 13l-2 7M11 8l3 1 2 3h3',
  undo: 'M4 9h10a6 6 0 0 1 0 12h-3M4 9l4.5-4.5M4 9l4.5 4.5',
  out: 'M4 4h9v16H4M10 12h11M17 8l4 4-4 4',
  save: 'M12 3v12M7 10.5l5 5 5-5M4 20h16',
  print: 'M7 9V3h10v6M7 17H3V9h18v8h-4M7 14h10v7H7z',
  cloud: 'M7 18a4.5 4.5 0 0 1 0-9 6 6 0 0 1 11.3 1.5A3.8 3.8 0 0 1 18 18z',
  more: 'M5 12h.01M12 12h.01M19 12h.01',
  search: 'M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13M20 20l-4.8-4.8',
  reel: 'M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18M12 10a2 2 0 1 0 0 4 2 2 0 0 0 0-4M12 3v4M19.8 16.5l-3.5-2M4.2 16.5l3.5-2',
  left: 'M15 4l-8 8 8 8',
  right: 'M9 4l8 8-8 8',
} as const;

export type IconName = keyof typeof drawings;

/** One drawing; hidden from readers of the screen, as the word beside it says the same. */
export function Icon({ name, size = 26 }: { readonly name: IconName; readonly size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
      {...(name === 'left' || name === 'right' ? { class: 'way' } : {})}
    >
      <path d={drawings[name]} />
    </svg>
  );
}
