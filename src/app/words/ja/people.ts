import type { words as english } from '../en/people.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  whoTitle: '誰が作業しますか',
  yourLanguage: 'あなたの言語（どのタブレットでも）',
  pinTitle: (name) => `${name}さんの PIN`,
  pinHelp: '4〜8桁の数字。',
  pinWrong: 'PIN が違います。',
  pinLeft: (left) => `PIN が違います。あと${left}回試せます。`,
  pinLocked: (minutes) => `試行が多すぎます。${minutes} min ロックします。`,
  pinUnsafe: 'PIN は安全なページでしか確認できません。https のアドレスでアプリを開いてください。',
  notSeenHere: (name) =>
    `サーバーの応答がなく、このタブレットは${name}さんを一度も確認していません。サーバーが応答する場所で試してください。`,
  pinNotHere: (name) =>
    `このタブレットはまだ${name}さんの PIN を知りません。サーバーが応答する場所か、PIN を設定したタブレットで一度入力してください。`,
  seenTooLongAgo: (name) =>
    `サーバーの応答がなく、このタブレットが${name}さんを確認したのは3日より前です。サーバーが応答する場所で試してください。`,
  asking: '確認中…',
  enter: '確定する',
  erase: '消す',
  nobody: 'このタブレットにはまだ人がいません。先に技術者を追加してください。ほかの人は技術者が追加します。',
  addFirst: '最初の技術者を追加する',
  awayTitle: (name) => `${name}さんはサインアウトしました`,
  awayHelp: (name) =>
    `途中の作業は残っています。${name}さんがサインインすると続けられます。ほかの人がサインインすると閉じます。`,
  awayClose: '途中の作業を閉じる',
  badgeNeeded: (name) => `${name}さんには PIN がありません：バッジをスキャンしてください。`,
  scanBadge: 'バッジをスキャン',
  badgeHelp: 'スキャナーを使うか、コードの下の文字を入力してください。',
  badgeUnknown: '不明なバッジです。別のバッジをスキャンしてください。',
  noPin: (name) => `${name}さんにはまだ PIN がありません。技術者が「工場」で設定します。`,
  clearTitle: '班長が判断します',
  clearHelp: '班長のバッジをスキャンし、PIN と理由を入力してください。',
  clearReason: '理由',
  reasons: ['このロットは技術部門が承認', '人が確認し測定済み', 'ラベル破損、部品は確認済み', '人が数えた'],
  otherReason: 'その他の理由',
  accept: 'リールを受け入れる',
  decline: '却下する',
  cartKept: (f) => `${f.cart}には今、${f.slot}用の${f.carries}があります。${f.held}は台車に載せません。`,
  cleared: (slot) => `${slot}用に許可しました。`,
  declined: '却下しました。リールはラインに付けません。',
  withoutPasskey: 'なしで保存',
  ownNotSigned: 'パスキーで署名されませんでした。何も保存していません。',
  withPasskey: 'パスキーを使う',
  passkeyAsks: '次にパスキーを求められます。',
  passkeyFailed:
    'パスキーで署名されなかったため、何も書き込んでいません。もう一度試すか、キャンセルして PIN を使ってください。',
  needsRole: (role) => `必要：${role}`,
  quantityTitle: 'リールに部品は何個ありますか',
  quantityHelp: '印字された数、または数えた数。あとで訂正できます。訂正はすべてログに残ります。',
  quantityWrong: '0より大きい整数を入力してください。',
};
