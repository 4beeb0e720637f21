import type { words as english } from '../en/sync.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  live: '同期済み',
  syncing: '同期中…',
  toSend: (count) => `送信待ち${count}件`,
  unreached: (span) => (span === null ? 'サーバーに届きません' : `${span}サーバーに届いていません`),
  waits: 'サーバーが待機を求めています',
  refused: 'サーバーが拒否',
  quarantined: (count) => `記録${count}件を隔離`,
  rolledBack: 'サーバーのログが戻った可能性があります',
  headFault: 'サーバーのログに疑いがあります',
  clocksOff: (count) => `タブレット${count}台の時計がずれています`,
  history: (share) => `履歴を読み込み中：${share}`,
  historyChecked: '履歴を確認中',
  historyTitle: '履歴',
  stillMissing: (missing, of) => `古い記録${of}件中${missing}件がまだありません。`,
  checkedHelp: 'すべての記録がそろいました。このタブレットは今、自分ですべて計算し直して比べています。',
  historyHelp:
    'このタブレットは、別のタブレットの計算結果から始めました。セットと照合は普段どおりできます。残りがそろうまで、ここのログ、書き出し、トレースは不完全です。',
  notWhole: (missing) =>
    `古い記録${missing}件がまだ届いていません：答えは不完全になります。サーバーにはすべてあります。`,
};
