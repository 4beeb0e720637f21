import type { StoreFault } from '../store/database.ts';
import { Button } from '../ui/Button.tsx';
import { VerdictShape } from '../ui/Shape.tsx';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';
// In the frame's order, since whoever is first brings them in: a phone's rules come last.
import '../ui/shell.css';
import '../ui/banner.css';
import '../ui/phone.css';

/** Stops work visibly when the log cannot be written: what happened, what is safe, what to do. */
export function FaultCurtain({ fault, detail }: { readonly fault: StoreFault; readonly detail?: string }) {
  const words = say(shellWords);
  const told = words.fault[fault];
  return (
    <div class="curtain" role="alert" data-testid="fault" data-fault={fault}>
      <span style={{ color: 'var(--stop)' }}>
        <VerdictShape verdict="refused" size={120} />
      </span>
      <h1>{told.title}</h1>
      <p>{told.text}</p>
      {detail !== undefined && <p class="soft code">{detail}</p>}
      <Button tone="act" large onPress={() => location.reload()}>
        {fault === 'closed-by-newer' ? words.reload : words.tryAgain}
      </Button>
    </div>
  );
}
