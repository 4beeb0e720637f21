import type { Words } from '../areas.ts';

export const words: Words<'feeds'> = {
  kinds: {
    tape: 'テープ',
    'cut-tape': 'カットテープ',
    tray: 'トレイ',
    tube: 'スティック',
    bulk: 'バラ',
  },
  acts: { splice: 'スプライスする', exchange: '交換する', refill: '補充する' },
  label: 'ラベルを印刷する',
  warns: {
    splice: (span, clock) => `あと${span}、${clock}ごろ部品切れ。次のテープを持ってきてください。`,
    exchange: (span, clock) => `あと${span}、${clock}ごろ部品切れ。そのあと交換まで機械が止まります。`,
    refill: (span, clock) => `あと${span}、${clock}ごろ部品切れ。その前に補充してください。`,
  },
  comesNext: { splice: '新しいリール', exchange: '代わりに載せるもの', refill: '上から補充するもの' },
  accepted: {
    exchange:
      '前のものは取り外したとみなします。スプライスではありません：これを入れるまで機械は止まります。',
    refill: 'ここから先は、フィーダーを空にするまで両方のロットの可能性があります。',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': 'カットテープ：スプライス可能時間はありません。その1本の終わりで切れます。',
    tray: 'トレイ：空になると、交換まで機械が止まります。',
    tube: 'スティック：空になると、交換まで機械が止まります。',
    bulk: 'バラ：空になる前に補充してください。',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => `テープ${count}本`,
    tray: (count) => `トレイ${count}山`,
    tube: (count) => `スティック${count}組`,
    bulk: (count) => `${count}包`,
  },
  dueNow: { splice: '今スプライス', exchange: '今交換', refill: '今補充' },
  forLane: (lane, part, count) => `${lane}：${part}、パネルあたり${count}。`,
};
