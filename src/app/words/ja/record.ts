import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '紙の記録',
  asking: 'サーバーに証明を問い合わせています…',
  proven: (place, size) => `証明済み：工場ログ全${size}件中の${place}件目。工場の鍵で署名されています。`,
  holds: 'コードに証明が入っています。ログがなくても「reelward log verify --record」で確認できます。',
  seen: (count, names) => `タブレット${count}台が確認して署名：${names}。`,
  since: (when) => `まだ証明なし：${when}からサーバーがありません。`,
  never: 'まだ証明なし：サーバーにつながっていません。',
  waiting: 'まだ証明なし：サーバーにこの記録がありません。',
  noProof: '証明なし：サーバーから証明がありません。',
  later: 'サーバーに届いたら印刷し直してください。紙に証明が付きます。',
  key: (fingerprint) => `工場の鍵：${fingerprint}`,
  brought: {
    'one-log': 'この紙はこのタブレットと同じログのものです。',
    'not-one-log': 'この紙とサーバーのログが違います。品質リーダーを呼んでください。',
    'not-the-plants': 'この紙はこの工場の鍵で署名されていません。',
    'no-server': 'サーバーがありません。応答があれば紙を確認します。',
    'not-checked': '紙は確認していません。同期済みのタブレットでスキャンしてください。',
  },
};
