import type { words as english } from '../en/held.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  causes: {
    'wrong-reel': 'リール違いの発見遅れ',
    cleared: '保留の解除が誤り',
    blocked: '使用禁止の部品',
    'floor-life': 'フロアライフ切れ',
  },
  hold: 'これらのパネルを保留する',
  holdTitle: (panels) => `${panels}パネルを保留しますか`,
  holdHelp:
    '使われた可能性のあるパネルをすべて、ライン内のものも保留します。班長が署名するまで保留のままです。',
  goesOn:
    'まだスロットに付いています。先に取り外してください。取り外さないと、これからのパネルは保留されません。',
  cause: '保留の理由は？',
  lifeHelp: 'フロアライフが終わった時点からのパネルを保留します。',
  noLifeOver: 'ログでは、パネルの生産中にフロアライフが切れたことはありません。',
  reason: '何が見つかりましたか',
  codes: (codes) => `パネルコード${codes}個がわかっています。`,
  sure: (panels) =>
    panels === 0 ? '確実に使われたパネルはありません。' : `${panels}パネルに確実に使われています。`,
  done: (panels) => `${panels}パネルを保留しました。`,
  none: '保留中のパネルはありません。',
  span: (first, last) => `パネル${first}〜${last}`,
  still: (held, all) => `未署名：${all}中${held}`,
  noCodes: 'パネルコードがありません。番号でこれらのパネルを探してください。',
  signed: (who, when) => `署名：${who}、${when}`,
  sign: '署名する',
  signAll: '全部に署名する',
  signTitle: 'これらのパネルをどうしましたか',
  signHelp: 'パネルを1枚ずつ選ぶか、全部に署名してください。',
  signWhy: '何をしましたか。例：手直し、廃棄、問題なし。',
  signDone: '署名しました。',
  save: 'コードを CSV で保存する',
  which: 'どのパネルですか',
};
