import type { Words } from '../areas.ts';

export const words: Words<'feeds'> = {
  kinds: { tape: '料带', 'cut-tape': '剪带', tray: '托盘', tube: '料管', bulk: '散料' },
  acts: { splice: '接料', exchange: '更换', refill: '补料' },
  label: '打印它的标签',
  warns: {
    splice: (span, clock) => `${span} 后料尽，约 ${clock}。请拿下一段来。`,
    exchange: (span, clock) => `${span} 后料尽，约 ${clock}。之后机器停，直到更换。`,
    refill: (span, clock) => `${span} 后料尽，约 ${clock}。请在此之前补料。`,
  },
  comesNext: { splice: '新料盘', exchange: '换上去的', refill: '倒在上面的' },
  accepted: {
    exchange: '原来的算作已取下。这不是接料：装好之前机器一直停。',
    refill: '从这里起两个批次都有可能，直到飞达清空。',
  },
  sayFeeds: {
    tape: '',
    'cut-tape': '剪带：没有可接时段。这段用完就没了。',
    tray: '托盘：空了机器就停，直到更换。',
    tube: '料管：空了机器就停，直到更换。',
    bulk: '散料：请在用空之前补料。',
  },
  picks: {
    tape: '',
    'cut-tape': (count) => `${count} 段`,
    tray: (count) => `${count} 叠托盘`,
    tube: (count) => `${count} 组料管`,
    bulk: (count) => `${count} 包`,
  },
  dueNow: { splice: '现在接料', exchange: '现在更换', refill: '现在补料' },
  forLane: (lane, part, count) => `供 ${lane}：${part}，每拼板 ${count}。`,
};
