// Pieces that the list and the teaching share: what a label reads, how a pattern looks, text with its control characters shown.

import type { LabelReading } from '../../../../../shared/labels/reading.ts';
import type { CodePattern, RuleField } from '../../../../../shared/labels/rules.ts';
import { readsAsWanted, type VariedLabel } from '../../../../../shared/labels/teach.ts';
import { visible } from '../../../ui/visible.ts';
import { labelWarningWords } from '../../../words/label-warnings.ts';
import { teachWords } from '../../../words/teach.ts';
import { say } from '../../../words/words.ts';
import { statedFields } from './model.ts';

/** What a reading states, and what to know about it. */
export function Reading({ reading, testId }: { readonly reading: LabelReading; readonly testId?: string }) {
  const words = say(teachWords);
  const warnings = say(labelWarningWords);
  return (
    <div class="stack reads" {...(testId === undefined ? {} : { 'data-testid': testId })}>
      <dl>
        {statedFields(reading).map(({ field, value }) => (
          <div key={field}>
            <dt>{words.fields[field]}</dt>
            <dd class="code" translate={false}>
              {value}
            </dd>
          </div>
        ))}
      </dl>
      {reading.warnings
        // A rule may well read a label without a part number: the desk asks for it.
        .filter(({ code }) => code !== 'no-identifier')
        .map((warning) => (
          <p key={`${warning.code}${JSON.stringify(warning)}`} class="warned">
            △ {warnings.say(warning)}
          </p>
        ))}
    </div>
  );
}

/** A pattern as people read it: fixed text as it is, named pieces by their names, the rest by what it takes. */
export function Pattern({ pattern }: { readonly pattern: CodePattern }) {
  const words = say(teachWords);
  return (
    <p class="pattern">
      {pattern.pieces.map((piece, index) => {
        if ('text' in piece) {
          return (
            <span key={`${index}`} class="fixed code" translate={false}>
              {visible(piece.text).replaceAll(' ', '␣')}
            </span>
          );
        }
        const takes = words.pieces[piece.takes](piece.length ?? null);
        return (
          <span key={`${index}`} class={piece.field === undefined ? 'skip' : 'named'}>
            {piece.field === undefined ? words.skipped : words.fields[piece.field]} <small>{takes}</small>
          </span>
        );
      })}
    </p>
  );
}

/** What a rule reads of labels made up from the taught one: whether it reads the next reel shows before anybody approves it. */
export function Varied({ labels }: { readonly labels: readonly VariedLabel[] }) {
  const words = say(teachWords);
  return (
    <div class="stack" data-testid="teach-varied">
      <h3>{words.variedTitle}</h3>
      {labels.map((label) => {
        const isRead = readsAsWanted(label);
        return (
          <div key={label.codes.join('\n')} class={`fitted${isRead ? '' : ' otherwise'}`} data-read={isRead}>
            <p class="code" translate={false}>
              {visible(label.codes.join('  '))}
            </p>
            <p>{isRead ? `✓ ${saidBy(label, words.fields)}` : `△ ${words.variedNot}`}</p>
          </div>
        );
      })}
    </div>
  );
}

function saidBy({ reads }: VariedLabel, names: Readonly<Record<RuleField, string>>): string {
  const fields = Object.entries(reads ?? {}) as [RuleField, string][]; // keys of the record
  return fields.map(([field, value]) => `${names[field]} ${value}`).join(' · ');
}
