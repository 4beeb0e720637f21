import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `このタブレットの時計が${clock}に${span}戻りました。合わせてください。`,
  ahead: (span, clock) =>
    `このタブレットが${clock}に${span}スリープしたか、時計が進みました。今ずれていたら、合わせてください。`,
  'behind-log': (span) => `このタブレットの時計が最新の記録より${span}遅れています。合わせてください。`,
  'behind-server': (span) => `このタブレットの時計がサーバーより${span}遅れています。合わせてください。`,
  'ahead-of-server': (span) => `このタブレットの時計がサーバーより${span}進んでいます。合わせてください。`,
  goesOn: '警告と時刻は、最後の正しい時刻から続けて計算します。',
  short: '時計を確認',
  isRight: '時計は合っている',
};
