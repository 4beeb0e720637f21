// Checklists as the site wants them: pick one, change its steps, keep the next version.

import { Fragment } from 'preact';
import { useState } from 'preact/hooks';
import { checkTemplate } from '../../../../../shared/checklist/steps.ts';
import type { ChecklistStep, ChecklistTemplate } from '../../../../../shared/floor/checklist.ts';
import { mostShort } from '../../../../../shared/floor/payload-fields.ts';
import { useApp, useFloor } from '../../../app.ts';
import { newId } from '../../../device/ids.ts';
import { useRefusal } from '../../../may.ts';
import { Button } from '../../../ui/Button.tsx';
import { shellWords } from '../../../words/shell.ts';
import { sayText } from '../../../words/shipped-steps.ts';
import { templateWords } from '../../../words/template.ts';
import { formatCount, type Language, language, say } from '../../../words/words.ts';
import { askedLanguages, blankStep, moveStep, newestTemplates, nextVersion, setText } from './model.ts';
import { StepForm } from './StepForm.tsx';
import { MoreLanguage, Texts } from './Texts.tsx';

export function Checklists() {
  const floor = useFloor();
  const words = say(templateWords);
  const [editing, setEditing] = useState<ChecklistTemplate | null>(null);
  if (editing) return <Editor template={editing} onClose={() => setEditing(null)} />;
  return (
    <div>
      <p>{words.help}</p>
      {newestTemplates(floor).map((template) => (
        <div class="listed" key={template.template} data-testid={`template-${template.template}`}>
          <span class="grow">
            <b>{sayText(template.title)}</b>
            <br />
            <span class="soft">
              {words.version(String(template.version), formatCount(template.steps.length))}
            </span>
          </span>
          <Button onPress={() => setEditing(template)} testId={`edit-${template.template}`}>
            {words.edit}
          </Button>
        </div>
      ))}
    </div>
  );
}

interface EditorProps {
  readonly template: ChecklistTemplate;
  readonly onClose: () => void;
}

function Editor({ template, onClose }: EditorProps) {
  const app = useApp();
  const words = say(templateWords);
  const refusal = useRefusal('edit-checklist');
  const [steps, setSteps] = useState<readonly ChecklistStep[]>(template.steps);
  const [title, setTitle] = useState(template.title);
  const [added, setAdded] = useState<readonly Language[]>([]);
  const [open, setOpen] = useState<string | null>(null);
  const codes = askedLanguages(template, language.value, added);
  const next = nextVersion(template, { title, steps });
  const faults = checkTemplate(next);
  const version = String(next.version);
  const change = (step: ChecklistStep) =>
    setSteps(steps.map((each) => (each.step === step.step ? step : each)));
  return (
    <div class="stack">
      <h2>{sayText(title) || '…'}</h2>
      <div class="form">
        <Texts
          label={words.title}
          texts={title}
          codes={codes}
          maxLength={mostShort}
          onText={(code, text) => setTitle(setText(title, code, text))}
        />
        <MoreLanguage codes={codes} onAdd={(code) => setAdded([...added, code])} />
      </div>
      <ol class="template">
        {steps.map((step, at) => (
          <li key={step.step} class="listed" data-testid={`step-${at}`}>
            <span class="grow">
              <span class="soft">{sayText(step.group)}</span>
              <br />
              {sayText(step.text) || '…'}
              <br />
              <span class="soft">
                {words.kinds[step.kind]} · {words.times[step.time]} · {words.conditions[step.condition]}
              </span>
              {faults
                .filter((fault) => fault.step === step.step)
                .map((fault) => (
                  <Fragment key={fault.code}>
                    {' '}
                    <span class="chip stop">✕ {words.faults[fault.code]}</span>
                  </Fragment>
                ))}
            </span>
            <Button onPress={() => setOpen(open === step.step ? null : step.step)} testId={`open-step-${at}`}>
              {open === step.step ? words.done : words.edit}
            </Button>
            <Button
              label={words.up}
              onPress={() => setSteps(moveStep(steps, at, -1))}
              testId={`step-up-${at}`}
            >
              ↑
            </Button>
            <Button label={words.down} onPress={() => setSteps(moveStep(steps, at, 1))}>
              ↓
            </Button>
            <Button
              tone="quiet"
              label={words.remove}
              onPress={() => setSteps(steps.filter((each) => each.step !== step.step))}
            >
              ✕
            </Button>
            {open === step.step && <StepForm step={step} codes={codes} onChange={change} />}
          </li>
        ))}
      </ol>
      <div>
        <Button
          testId="step-add"
          onPress={() => {
            const step = blankStep(newId(), steps, { [language.value]: words.newGroup });
            setSteps([...steps, step]);
            setOpen(step.step);
          }}
        >
          {words.add}
        </Button>
      </div>
      <p>{words.help}</p>
      <div class="row">
        <Button
          tone="act"
          large
          testId="template-save"
          disabledReason={refusal ?? (faults[0] ? words.faults[faults[0].code] : null)}
          onPress={() => {
            const payload = { ...next, title: { ...next.title }, steps: [...next.steps] };
            app.record([{ kind: 'checklist.template', payload }], {
              notice: { tone: 'go', text: words.saved(version) },
              next: onClose,
            });
          }}
        >
          {words.save(version)}
        </Button>
        <Button large onPress={onClose}>
          {say(shellWords).cancel}
        </Button>
      </div>
    </div>
  );
}
