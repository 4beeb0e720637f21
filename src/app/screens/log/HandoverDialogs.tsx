// The two signatures of a handover. What is signed is looked at once more as the lead signs, so that the entry holds what is so then.

import { mostHandedNote } from '../../../../shared/floor/kinds-handover.ts';
import type { Handed } from '../../../../shared/floor/state-handover.ts';
import { useApp, useFloor } from '../../app.ts';
import { newId } from '../../device/ids.ts';
import type { Sure } from '../../frame/confirmed.ts';
import { LeadDecides } from '../../frame/LeadDecides.tsx';
import { recordSigned } from '../../frame/signed.ts';
import type { Watch } from '../../outlook/watch.ts';
import { AreaField } from '../../ui/Field.tsx';
import { handoverWords } from '../../words/handover.ts';
import { say } from '../../words/words.ts';
import { handedDraft, isUntaken, takenDraft } from './handover-model.ts';
import { personName } from './names.ts';
import { KnownBy, OpenMatters } from './OpenMatters.tsx';
import { PastHandover } from './PastHandover.tsx';
import { useOpenAtFirst, useStanding } from './use-open.ts';

const signerOf = ({ person, checked }: Sure) => ({ by: person.person, checked });

interface HandProps {
  readonly line: string;
  readonly watch: Watch;
  readonly note: string;
  readonly onNote: (note: string) => void;
  readonly onClose: () => void;
}

export function HandDialog({ line, watch, note, onNote, onClose }: HandProps) {
  const app = useApp();
  const words = say(handoverWords);
  const standing = useStanding();
  const { list, atMs, known } = useOpenAtFirst({ line, watch }, standing);
  const hand = (lead: Sure) => {
    const asked = { line, nowMs: app.clock.nowMs(), handover: newId(), note, standing };
    recordSigned(app, lead, [handedDraft(app.store.floor(), asked, signerOf(lead))], {
      notice: { tone: 'go', text: words.handed },
      next: () => {
        onNote('');
        onClose();
      },
    });
  };
  return (
    <LeadDecides
      title={words.handTitle}
      tone="plain"
      why={null}
      act={words.handOver}
      testId="hand"
      mayPasskey
      onDecide={hand}
      onClose={onClose}
    >
      <OpenMatters line={line} items={list.items} more={list.more} atMs={atMs} isPast={false} isWhole />
      <KnownBy line={line} known={known} />
      <AreaField
        label={words.note}
        help={words.noteHelp}
        rows={3}
        maxLength={mostHandedNote}
        testId="hand-note"
        value={note}
        onInput={onNote}
      />
    </LeadDecides>
  );
}

interface TakeProps {
  readonly handed: Handed;
  readonly watch: Watch;
  readonly onClose: () => void;
}

export function TakeDialog({ handed, watch, onClose }: TakeProps) {
  const app = useApp();
  const floor = useFloor();
  const words = say(handoverWords);
  const standing = useStanding();
  const { list, atMs, known } = useOpenAtFirst({ line: handed.line, watch, without: handed }, standing);
  const take = (lead: Sure) => {
    // Another tablet may have been quicker.
    if (!isUntaken(app.store.floor(), handed)) {
      onClose();
      return;
    }
    const asked = { handed, nowMs: app.clock.nowMs(), standing };
    recordSigned(app, lead, [takenDraft(app.store.floor(), asked, signerOf(lead))], {
      notice: { tone: 'go', text: words.taken },
      next: onClose,
    });
  };
  return (
    <LeadDecides
      title={words.takeTitle}
      tone="plain"
      why={null}
      act={words.takeOver}
      testId="take"
      mayPasskey
      objection={({ person }) =>
        person === handed.by ? words.notYourself(personName(floor, handed.by)) : null
      }
      onDecide={take}
      onClose={onClose}
    >
      <PastHandover handed={handed} />
      <h3>{words.cameSince}</h3>
      <OpenMatters
        line={handed.line}
        items={list.items}
        more={list.more}
        atMs={atMs}
        isPast={false}
        isWhole
      />
      <KnownBy line={handed.line} known={known} />
    </LeadDecides>
  );
}
