import { Button } from '../ui/Button.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { unreachable } from '../words/unreachable.ts';
import { language, languageOf } from '../words/words.ts';
import '../ui/shell.css';

/** Where not even the words of the page could be fetched: says so in the language in use, in the browser's and in English. */
export function NoWords({ detail }: { readonly detail: string }) {
  const codes = [...new Set([language.value, languageOf(navigator.language), 'en' as const])];
  return (
    <div class="curtain" role="alert" data-testid="no-words">
      <span style={{ color: 'var(--stop)' }}>
        <VerdictShape verdict="refused" size={120} />
      </span>
      {codes.map((code) => (
        <p key={code} lang={code}>
          {unreachable[code].told}
        </p>
      ))}
      <p class="soft code">{detail}</p>
      <Button tone="act" large onPress={() => location.reload()}>
        {codes.map((code) => unreachable[code].reload).join(' · ')}
      </Button>
    </div>
  );
}
