// The codes of a label as pieces to tap: select one, stretch it where needed, say what it is.

import { useState } from 'preact/hooks';
import { ruleFields } from '../../../../../shared/labels/rules.ts';
import { Button } from '../../../ui/Button.tsx';
import { GroupField } from '../../../ui/Field.tsx';
import { Icon } from '../../../ui/Icon.tsx';
import { visible } from '../../../ui/visible.ts';
import { teachWords } from '../../../words/teach.ts';
import { say } from '../../../words/words.ts';
import { dropCode, moveEnd, nameSpan, type Span, type Teaching, tapToken, tokensOf } from './model.ts';

interface TapCodesProps {
  readonly teaching: Teaching;
  readonly onChange: (part: Partial<Teaching>) => void;
}

export function TapCodes({ teaching, onChange }: TapCodesProps) {
  const words = say(teachWords);
  const [selected, setSelected] = useState<Span | null>(null);
  const { codes, taps } = teaching;
  return (
    <div class="stack">
      {codes.map((text, code) => (
        <div key={text} class="tap-code" data-testid={`tap-${code}`}>
          <div class="tokens code" translate={false}>
            {tokensOf(text, code, taps).map((token) => {
              const inside = selected?.code === code && selected.from < token.to && token.from < selected.to;
              const shown = visible(text.slice(token.from, token.to)).replaceAll(' ', '␣');
              if (!token.isPiece)
                return (
                  <span key={token.from} class={`mark${inside ? ' selected' : ''}`}>
                    {shown}
                  </span>
                );
              return (
                <button
                  type="button"
                  key={token.from}
                  class={`token${token.field === null ? '' : ' named'}${inside ? ' selected' : ''}`}
                  aria-pressed={inside}
                  onClick={() => setSelected(tapToken(selected, token))}
                >
                  {shown}
                  {token.field !== null && <small>{words.fields[token.field]}</small>}
                </button>
              );
            })}
          </div>
          <Button
            tone="quiet"
            label={words.remove}
            onPress={() => {
              setSelected(null);
              onChange({ codes: codes.filter((_, at) => at !== code), taps: dropCode(taps, code) });
            }}
          >
            <Icon name="cross" size={20} />
          </Button>
          {selected?.code === code && (
            <Named
              text={text}
              selected={selected}
              onSelect={setSelected}
              onName={(field) => {
                onChange({ taps: nameSpan(taps, selected, field) });
                setSelected(null);
              }}
            />
          )}
        </div>
      ))}
    </div>
  );
}

/** What the selected piece is, and where it begins and ends to the character. */
function Named(props: {
  readonly text: string;
  readonly selected: Span;
  readonly onSelect: (span: Span) => void;
  readonly onName: (field: (typeof ruleFields)[number] | null) => void;
}) {
  const { text, selected, onSelect, onName } = props;
  const words = say(teachWords);
  const ends = [
    { end: 'from', label: words.from },
    { end: 'to', label: words.to },
  ] as const;
  return (
    <div class="naming stack">
      <div class="row">
        <b class="code piece" translate={false} data-testid="teach-piece">
          {visible(text.slice(selected.from, selected.to))}
        </b>
        {ends.map(({ end, label }) => (
          <span key={end} class="stepper">
            <span>{label}</span>
            <Button
              label={`${label} ${words.earlier}`}
              testId={`${end}-earlier`}
              onPress={() => onSelect(moveEnd(selected, text, { end, by: -1 }))}
            >
              <Icon name="left" size={20} />
            </Button>
            <Button
              label={`${label} ${words.later}`}
              testId={`${end}-later`}
              onPress={() => onSelect(moveEnd(selected, text, { end, by: 1 }))}
            >
              <Icon name="right" size={20} />
            </Button>
          </span>
        ))}
      </div>
      <GroupField label={words.what}>
        <div class="choice">
          {ruleFields.map((field) => (
            <button type="button" key={field} data-testid={`name-${field}`} onClick={() => onName(field)}>
              {words.fields[field]}
            </button>
          ))}
          <button type="button" data-testid="name-nothing" onClick={() => onName(null)}>
            {words.nothing}
          </button>
        </div>
      </GroupField>
    </div>
  );
}
