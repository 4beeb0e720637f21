import type { words as english } from '../en/demo.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  stale: 'Buổi tập này là của lần mở demo trước.',
  fresh: 'Bắt đầu lại',
  failed: (why) => `Không mở được nhà máy demo: ${why}`,
};
