import type { ComponentChildren } from 'preact';
import { Icon, type IconName } from './Icon.tsx';

/** A button that chooses a file. */
export interface FileButtonProps {
  readonly icon: IconName;
  readonly tone: 'act' | 'plain';
  readonly large?: boolean;
  /** Endings and media types, as the platform's own field wants them; absent: any file, where endings say nothing. */
  readonly accept?: string;
  readonly testId: string;
  readonly onFile: (file: File) => void;
  readonly children: ComponentChildren;
}

export function FileButton({ icon, tone, large, accept, testId, onFile, children }: FileButtonProps) {
  return (
    <label class={`button file ${tone}${large ? ' large' : ''}`}>
      <Icon name={icon} />
      <span>{children}</span>
      <input
        type="file"
        class="hidden"
        accept={accept}
        data-testid={testId}
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          if (file) onFile(file);
          // Emptied, so that the same file, corrected meanwhile, can be chosen again.
          input.value = '';
        }}
      />
    </label>
  );
}
