import type { words as english } from '../en/in-line.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'ライン内のパネル',
  help: 'リールが替わるところでは、これらのパネルが疑わしくなります。ありうる最大数を入力してください。機械の前で止まっているパネルも含めます。誰も入力していない所は推定値を使います。',
  behind: (machine) => `${machine}：ここを終え、まだ数えていないパネル、最大`,
  before: (machine) => `${machine}：数えたがまだ届いていないパネル、最大`,
  missed: '数えられずに通るパネル、最大',
  guess: (most) => `未入力：最大${most}枚と仮定します（一般的な慣行）。`,
  seen: (panels, most) => `${panels}枚を両方の場所でスキャンしました。その間は最大${most}枚でした。`,
  takeSeen: 'スキャンの結果を使う',
  takeHelp:
    '見えた数は上限ではありません。もっと多くなりうるなら大きい数を入力してください。スキャンがそれを超えれば、範囲は自動で広がります。',
  scansHere: 'このタブレットでスキャンしたパネル',
  count: '数える',
  goInto: (machine) => `${machine}に入る`,
  scansHelp:
    '機械の前で数枚スキャンし、数える場所でもう一度スキャンしてください。間に何枚あるかをラインが学びます。',
  save: 'ライン内のパネルを保存する',
  saved: '保存しました。今後のトレースはこれに従います。',
  wrong: '0〜500の整数と、50 % 未満の割合を入力してください。',
  exitOpen: '出口画面を開く',
  exitTitle: '生産済みパネル',
  exitHelp: 'ラインを出るパネルを1枚ずつスキャンしてください。',
  exitCounted: '数えました：',
  exitBefore: 'スキャン済みのため加算なし：',
  exitOther: 'パネルではないため加算なし：',
  exitNoRun: 'このラインは生産していません。先に開始してください。',
  exitLost: 'このページはキーボードを失いました。スキャンの前にここをタップしてください。',
  exitLeave: 'この画面を離れる',
};
