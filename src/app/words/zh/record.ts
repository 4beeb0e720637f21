import type { words as english } from '../en/record.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  title: '纸质记录',
  asking: '正在向服务器请求证明…',
  proven: (place, size) => `已证明：工厂日志共 ${size} 条中的第 ${place} 条，由工厂密钥签名。`,
  holds: '码中带有证明。没有日志也可用“reelward log verify --record”核对。',
  seen: (count, names) => `${count} 台平板已核对并签名：${names}。`,
  since: (when) => `尚未证明：自 ${when} 起没有服务器。`,
  never: '尚未证明：未连上服务器。',
  waiting: '尚未证明：服务器还没有该记录。',
  noProof: '未证明：服务器没有给出证明。',
  later: '服务器收到该记录后请重新打印，纸上就会带有证明。',
  key: (fingerprint) => `工厂密钥：${fingerprint}`,
  brought: {
    'one-log': '这张纸与本平板属于同一日志。',
    'not-one-log': '这张纸与服务器显示两份不同的日志。请通知质量主管。',
    'not-the-plants': '这张纸不是由本工厂密钥签名的。',
    'no-server': '没有服务器。服务器应答后再核对这张纸。',
    'not-checked': '这张纸未核对。请在已同步的平板上扫描。',
  },
};
