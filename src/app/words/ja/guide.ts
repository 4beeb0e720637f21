import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: 'ガイド付き練習',
  about: '1回に1ステップ。途中で離れても、同じステップから続けられます。',
  guides: {
    operator: 'リール3本、うち1本は間違い。スプライス。警告。',
    lead: '保留中のリールの判断。書き出し。',
    engineer: '段取り表の取り込み。',
  },
  start: 'ガイドを始める',
  goOn: (at, of) => `ステップ ${at}/${of} から続ける`,
  again: 'ステップ 1 からやり直す',
  step: (at, of) => `ステップ ${at}/${of}`,
  leave: 'ガイドを離れる',
  go: '場所を表示',
  skip: 'このステップを飛ばす',
  still: '別の操作でした。このステップはまだ終わっていません。',
  over: 'すべてのステップが終わりました。練習を続けるか、終了してください。',
  noLead: 'この工場にはまだ班長がいません。先に登録してください。',
  example: '例の表を使う',
  steps: {
    first: {
      ask: 'スロットのラベル、次に正しいリールをタップしてください。',
      seen: (slot) => `${slot}：合格。`,
    },
    wrong: {
      ask: (group) => `スロットのラベル、次に間違いのリールをタップ。「${group}」にあります。`,
      seen: (slot) => `${slot}：拒否。そのリールは使えません。`,
    },
    second: {
      ask: 'もう1つスロットを、次に正しいリールをタップしてください。',
      seen: (slot) => `${slot}：合格。`,
    },
    splice: {
      ask: (group) => `スプライス：「${group}」でスロット、次にリールをタップしてください。`,
      seen: (slot) => `${slot}：スプライス済み。`,
    },
    run: {
      ask: 'ラインで生産を開始してください。',
      seen: '生産が始まりました。',
    },
    warning: {
      ask: 'スロットの警告が出るまで、ラインでパネルを数えてください。',
      seen: (slot) => `${slot}：警告。`,
    },
    answer: {
      ask: (act) => `警告の横の「${act}」をタップするか、そのスロットをスプライスしてください。`,
      seen: '警告に応答しました。',
    },
    hold: {
      ask: 'スロットのラベル、次に数量のないリールをタップしてください。',
      seen: (slot) => `${slot}：保留。班長が判断します。`,
    },
    clear: {
      ask: '班長として判断：バッジ、PIN、理由。',
      seen: '判断しました。ログに名前が残ります。',
    },
    export: {
      ask: (act) => `ログで「${act}」、次に CSV をタップ。練習ではファイルを保存しません。`,
      seen: '書き出しを頼みました。ファイルは保存していません。',
    },
    open: {
      ask: (page) => `「${page}」を開いてください。`,
      seen: (page) => `「${page}」が開いています。`,
    },
    take: {
      ask: (example, act) => `「${example}」をタップし、変更点を見てから「${act}」をタップしてください。`,
      seen: (product) => `${product}：取り込み済み。`,
    },
    look: {
      ask: (page) => `「${page}」で探してください。`,
      seen: '一覧にあります。',
    },
  },
};
