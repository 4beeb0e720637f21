import type { words as english } from '../en/shell.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  nav: { line: 'ライン', load: 'セット', change: '段替え', stock: 'リール', log: 'ログ', plant: '工場' },
  noLine: 'まだラインなし',
  noSetup: '段取り表が未選択',
  side: { top: '表面', bottom: '裏面' },
  revision: (revision) => `改訂${revision}`,
  run: (done, wanted) => `${done} / ${wanted}パネル`,
  signIn: 'サインイン',
  signInFirst: '先にバッジをスキャンしてください',
  needsRole: (role) => `必要：${role}`,
  signInHelp: 'バッジをスキャンするか、名前を選んでください。',
  signedInAs: (name) => `サインイン中：${name}`,
  signOut: 'サインアウト',
  roles: { operator: 'オペレーター', lead: '班長', engineer: '技術者' },
  offlineReady: 'オフラインで使えます',
  gettingReady: 'オフラインの準備中…',
  toSend: (count) => `送信待ち${count}件`,
  skipToDock: '「入力」と「カメラ」へ移動',
  done: '完了',
  cancel: 'キャンセル',
  detailsOf: (what) => `詳しく：${what}`,
  lessOf: (what) => `閉じる：${what}`,
  close: '閉じる',
  newVersion: '新しい版があります。',
  update: '今すぐ更新する',
  updateLater: '途中の作業がなくなるまで待ちます。',
  languageLater: 'その言語はまだこのタブレットにありません。ネットワークにつないで、選び直してください。',
  leftAlone: (name, minutes) =>
    `${name}さんはサインアウトしました：${minutes}分間操作なし。途中の作業は残っています。`,
  shiftOver: (name) => `${name}さんはサインアウトしました：シフトが過ぎました。途中の作業は残っています。`,
  notInPractice: '練習では使えません',
  fault: {
    'disk-full': {
      title: 'このタブレットは満杯です',
      text: 'ここではもう書き込みも照合もできません。受け付けた記録はすべて無事です。別のタブレットで作業してください。このタブレットの空きを作ってから、もう一度試してください。',
    },
    'closed-by-newer': {
      title: '別のウィンドウで新しい版が開いています',
      text: 'このウィンドウは古い版のため止まりました。受け付けた記録はすべて無事です。再読み込みして続けてください。',
    },
    lost: {
      title: 'このタブレットのログを開けません',
      text: '別のタブレットで作業し、タブレットの担当者を呼んでください。ブラウザーのデータを消さないでください：未送信の記録が残っている可能性があります。',
    },
    unknown: {
      title: 'ログに書き込めませんでした',
      text: '完了と表示されたものは無事です。最後の操作は書き込まれていません。続ける前に再読み込みし、ログを確認してください。',
    },
  },
  reload: '再読み込みする',
  tryAgain: 'もう一度',
  muted: 'タップするまで音は出ません',
  storageLow: (megabytes) => `このタブレットのログの空きは残り${megabytes} MB だけです。`,
};
