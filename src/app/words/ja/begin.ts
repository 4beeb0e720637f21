import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about:
    '何も入っていないタブレットから、最初の正しいリールまで。どこで止めてもかまいません。続きはここでも、別のタブレットでもできます。',
  language: 'このタブレットの言語',
  done: '完了',
  steps: {
    plant: {
      title: '工場',
      text: '名前とタイムゾーン。印刷物とエクスポートに名前が入ります。',
      act: '工場に名前を付ける',
    },
    engineer: {
      title: '最初の技術者',
      text: '名前、バッジ、PIN。ほかの人は技術者が追加します。',
      act: '技術者を追加する',
    },
    line: {
      title: 'ライン',
      text: '機械とバンク。スロットは機械に書かれたとおりに。',
      act: 'ラインを登録する',
    },
    people: {
      title: '人とバッジ',
      text: 'オペレーターと班長。バッジはここで印刷できます。',
      act: '人を追加する',
    },
    product: {
      title: '最初の製品',
      text: '段取り表ファイル、または基板の座標ファイルと部品表。',
      act: '製品を取り込む',
    },
    labels: {
      title: 'スロットのラベル',
      text: 'スロットごとに、スキャンするコードが付きます。フィーダーと台車の分もそこで印刷します。',
      act: 'ラベルを印刷する',
    },
    scanner: {
      title: 'スキャナー',
      text: '1回のテストで、このタブレットが正しく読めるかわかります。',
      act: 'スキャナーをテストする',
    },
    label: {
      title: '印刷したラベル',
      text: 'スロットのラベルを1枚スキャンします。そのスロットと読めれば合格です。',
      act: 'ラベルをテストする',
    },
    practice: {
      title: '最初のセットを練習',
      text: 'ラインのコピーで行います。そこでの操作は実績になりません。',
      act: '練習を始める',
    },
    load: {
      title: '最初のリール',
      text: 'スロット、フィーダー、リールをスキャンしてください。組み合わせが合うかをタブレットが伝えます。',
      act: 'ラインにセットする',
    },
  },
  fromFile: '別の工場のファイルから始める',
  badges: 'バッジを印刷する',
  more: '開く',
  openOf: (step) => `開く：${step}`,
};
