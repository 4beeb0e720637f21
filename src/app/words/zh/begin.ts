import type { words as english } from '../en/begin.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  about: '从空平板到第一盘正确的料。哪一步都可以停下；在这台或别的平板上接着做。',
  language: '本平板的语言',
  done: '已完成',
  steps: {
    plant: {
      title: '工厂',
      text: '名称和时区。打印件和导出文件带此名称。',
      act: '命名工厂',
    },
    engineer: {
      title: '第一名工程师',
      text: '姓名、工牌和 PIN。由工程师添加其他人。',
      act: '添加工程师',
    },
    line: {
      title: '产线',
      text: '产线的机器和料台，站位照机器上所写的。',
      act: '录入产线',
    },
    people: {
      title: '人员和工牌',
      text: '操作员和班长。工牌可以在这里打印。',
      act: '添加人员',
    },
    product: {
      title: '第一个产品',
      text: '站位表文件，或电路板的坐标文件和物料清单。',
      act: '导入产品',
    },
    labels: {
      title: '站位标签',
      text: '每个站位一个可扫的码。飞达和料车的也在那里打印。',
      act: '打印标签',
    },
    scanner: {
      title: '扫描枪',
      text: '测试一次，就知道本平板读得对不对。',
      act: '测试扫描枪',
    },
    label: {
      title: '一张打印的标签',
      text: '扫描一张站位标签：必须读出该站位。',
      act: '测试标签',
    },
    practice: {
      title: '第一次上料，先练习',
      text: '在产线的副本上。那里什么都不算数。',
      act: '开始练习',
    },
    load: {
      title: '第一盘料',
      text: '扫描站位、飞达和料盘。平板会说它们是否对得上。',
      act: '给产线上料',
    },
  },
  fromFile: '用另一家工厂的文件开始',
  badges: '打印工牌',
  more: '打开',
  openOf: (step) => `打开：${step}`,
};
