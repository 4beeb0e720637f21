import type { words as english } from '../en/passkeys.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  open: (count) => `パスキー${count}個`,
  openOf: (shown, name) => `${name}さん：${shown}`,
  title: (name) => `${name}さんのパスキー`,
  help: 'パスキーは誰が判断したかを証明します：このタブレット自身のロック、またはかざすキー。なければ PIN で決まります。',
  none: 'パスキーはまだありません。',
  where: {
    unsafe:
      'パスキーには安全なページが必要です。アプリを https のアドレスで開いてください。ここでは PIN で決まります。',
    'by-number': 'パスキーには、数字ではなく名前のアドレスが必要です。ここでは PIN で決まります。',
    none: 'このブラウザーではパスキーが使えません。ここでは PIN で決まります。',
  },
  who: (name) => `${name}さんか技術者だけができます。バッジをスキャンし、PIN を入力してください。`,
  notThem: (name) => `${name}さんか技術者だけです。`,
  add: 'パスキーを追加する',
  name: '名前は？',
  nameHelp: '例：「青いキー」「ライン先頭のタブレット」。',
  nameMissing: '名前を入力してください。',
  make: '今作る',
  made: (name) => `パスキー「${name}」を追加しました。`,
  notMade:
    'パスキーは作られませんでした。キーをタブレットにかざすか、タブレットのロックを解除して、もう一度試してください。',
  remove: '削除する',
  removeOf: (name) => `パスキー「${name}」を削除する`,
  removed: (name) => `パスキー「${name}」を削除しました。`,
  addedBy: (name, host) => `${name}さんが追加、${host}のページ用`,
  fell: 'カウンターが減りました：複製されたおそれがあります。削除して作り直してください。',
  unproven:
    '誰が追加したか証明するものがありません。班長が「ログ」で確認するまで、このパスキーは何も証明しません。',
  signed: '署名',
  byPasskey: (name) => `${name}さんのパスキーで証明済み`,
  pinOnly: 'PIN だけ、タブレットの報告による',
  refused: 'パスキーでは証明できません：別の内容に署名したか、この人のものではありません。',
  checking: '確認中…',
};
