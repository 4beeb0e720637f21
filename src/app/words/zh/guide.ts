import type { words as english } from '../en/guide.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '引导练习',
  about: '一次一步。需要时可以离开，之后从同一步继续。',
  guides: {
    operator: '三盘料，其中一盘是错的。一次接料。一次警告。',
    lead: '一盘暂扣的料要决定。一次导出。',
    engineer: '导入一份站位表。',
  },
  start: '开始引导',
  goOn: (at, of) => `从第 ${at} 步继续（共 ${of} 步）`,
  again: '从第 1 步重新开始',
  step: (at, of) => `第 ${at} 步，共 ${of} 步`,
  leave: '离开引导',
  go: '告诉我在哪里',
  skip: '跳过这一步',
  still: '那是别的操作。这一步还没完成。',
  over: '所有步骤都完成了。可以继续练习，或结束练习。',
  noLead: '本厂还没有班长。请先添加。',
  example: '使用示例表',
  steps: {
    first: {
      ask: '点一个站位标签，再点它的正确料盘。',
      seen: (slot) => `${slot}：接受。`,
    },
    wrong: {
      ask: (group) => `点一个站位标签，再点一盘错料。见“${group}”。`,
      seen: (slot) => `${slot}：拒绝。那盘料不能上。`,
    },
    second: {
      ask: '再点一个站位标签，然后点它的正确料盘。',
      seen: (slot) => `${slot}：接受。`,
    },
    splice: {
      ask: (group) => `接料：在“${group}”下点站位，再点它的料盘。`,
      seen: (slot) => `${slot}：已接料。`,
    },
    run: {
      ask: '在产线上开始生产。',
      seen: '生产已开始。',
    },
    warning: {
      ask: '在产线上计数拼板，直到有站位发出警告。',
      seen: (slot) => `${slot}：有警告。`,
    },
    answer: {
      ask: (act) => `点警告旁的“${act}”，或给那个站位接料。`,
      seen: '警告已有人回应。',
    },
    hold: {
      ask: '点一个站位标签，再点没有数量的料盘。',
      seen: (slot) => `${slot}：暂扣。须由班长决定。`,
    },
    clear: {
      ask: '以班长身份决定：工牌、PIN、理由。',
      seen: '已决定，日志里有您的名字。',
    },
    export: {
      ask: (act) => `在日志里点“${act}”，再点 CSV。练习中不保存文件。`,
      seen: '已要求导出。没有保存文件。',
    },
    open: {
      ask: (page) => `打开“${page}”。`,
      seen: (page) => `“${page}”已打开。`,
    },
    take: {
      ask: (example, act) => `点“${example}”。看看有什么变化，再点“${act}”。`,
      seen: (product) => `${product}：已导入。`,
    },
    look: {
      ask: (page) => `在“${page}”里找到它。`,
      seen: '它在列表里。',
    },
  },
};
