import type { words as english } from '../en/pictures.ts';
import type { Sentences } from '../words.ts';

export const words: Sentences<typeof english> = {
  rule: '标签照片',
  ruleHelp: '保存摄像头在上料或接料时读取的每张标签照片。',
  keep: '保存照片',
  days: '保存天数',
  megabytes: '每台平板的空间，MB',
  fault: '照片需要 1 至 3650 天和 1 至 10000 MB。',
  shown: '标签照片',
  notHere: '此平板没有该照片。请到读取标签的平板上查看。',
  none: '未找到照片。',
  broken: '此照片不是当时保存的照片。请告知班长。',
  failed: '标签照片未保存。判定仍有效。',
  exported: '同时保存标签照片',
  saved: (name) => `已存为 ${name}。`,
};
