import type { words as english } from '../en/walks.ts';
import { formatCount, type Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  walksTitle: '巡回',
  walkSplices: (count) => (count === 1 ? 'スプライス1件' : `スプライス${count}件、1回の巡回`),
  walkMore: (count) => `あとに巡回${count}回`,
  crew: 'このラインの人数',
  missTitle: '間に合わない',
  miss: {
    windowTooShort: (moment) => `${moment}までにスプライス：時間が短すぎます`,
    closesTooSoon: (moment) => `${moment}までにスプライス：誰も間に合いません`,
    crowdedOut: (moment) => `${moment}までにスプライス：全員が別のスプライス中です`,
  },
  remedies: {
    cutEarly: (parts, moment) => `前のテープを早めに${moment}に切る：約${formatCount(parts)}個が無駄になる`,
    secondPerson: (moment) => `2人目が${moment}までに行く`,
    secondSlot: (moment) => `${moment}までに部品を2つ目のスロットにセットする`,
  },
  orRemedy: (remedy) => `または：${remedy}`,
  missMore: (count) => `あとに${count}件`,
  noRemedy: 'ラインが止まります。次のリールを用意してください。',
};
