import type { words as english } from '../en/unproven.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  page: '未証明',
  none: '未証明のものはありません：班長が必要な記録にはすべてサーバーのチケットがあります。',
  noTickets:
    'この工場ではまだチケットが出ていません。サーバーが応答する場所で班長が PIN を入力すると始まります。',
  help: 'これらの記録は班長か技術者が必要ですが、サーバーのチケットなしで作られました。現場では有効です。事情を知る班長が確認するか否定します。',
  stands: {
    proven: 'チケットで証明済み',
    unproven: '未証明',
    confirmed: '班長が確認',
    rejected: '班長が否定',
    'before-tickets': 'チケット開始前',
  },
  right: '権限',
  why: {
    'no-ticket': (role) =>
      `サーバーのチケットなし：「${role}」の役割の人が行ったと証明するものがありません。`,
    'ticket-over': () => 'チケットの有効時間外でした。',
    role: (role) => `チケットの役割が足りません。必要：${role}。`,
  },
  before: 'これが書かれたとき、この工場ではまだチケットが出ていませんでした。',
  by: (name) => `${name}`,
  nobody: '名前なし',
  confirm: '確認する',
  reject: '否定する',
  confirmAll: (count) => (count === 1 ? '確認する' : `${count}件すべて確認する`),
  confirmTitle: (count) =>
    count === 1 ? '記録どおりに行われましたか' : `${count}件とも記録どおりに行われましたか`,
  rejectTitle: 'この人が行ったものではないと判断しますか',
  rejectHelp: '記録は否定の印を付けて残ります。現場で変わったこともそのままです：自分で直してください。',
  rejectPerson: 'サーバーでは、この人の変更は無効です。「工場」の「人」を見て、名簿を直してください。',
  reason: 'どうやって確かめましたか',
  needsServer: 'サーバーの応答が必要です：そのときだけ、誰が判断したかを証明できます。',
  notProven: '書き込みましたが、チケットがないため何も解決しません。サーバーが応答する場所で試してください。',
  confirmed: (count) => `記録${count}件を確認しました。`,
  rejected: '記録を否定しました。',
  engineerOnly: (count) => `そのうち${count}件は技術者の確認が必要です。`,
  badgeAlone: (name) =>
    `${name}さんはバッジだけでサインインしています。班長が必要なことは未証明のままです。証明するには、名前と PIN でサインインしてください。`,
  settled: { confirmed: '確認済み', rejected: '否定' },
};
