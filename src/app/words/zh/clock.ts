import type { words as english } from '../en/clock.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  back: (span, clock) => `本平板的时钟在 ${clock} 倒退了 ${span}：请校准。`,
  ahead: (span, clock) => `本平板在 ${clock} 休眠了 ${span}，或时钟跳快了。若现在不对，请校准。`,
  'behind-log': (span) => `本平板的时钟比最新记录慢 ${span}：请校准。`,
  'behind-server': (span) => `本平板的时钟比服务器慢 ${span}：请校准。`,
  'ahead-of-server': (span) => `本平板的时钟比服务器快 ${span}：请校准。`,
  goesOn: '预警和时间从上一个正确时间接着算。',
  short: '请查时钟',
  isRight: '时钟是准的',
};
