// One part of the plant's list while it is typed; its picture is chosen here too.

import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import { packageFamilies, packageKinds } from '../../../../../shared/floor/vocabulary.ts';
import { moistureLevels } from '../../../../../shared/moisture/levels.ts';
import type { ListedPart } from '../../../../../shared/sheet/part-list.ts';
import { useApp, useFloor } from '../../../app.ts';
import { Button } from '../../../ui/Button.tsx';
import { AreaField, Field, GroupField, SelectField } from '../../../ui/Field.tsx';
import { FileButton } from '../../../ui/FileButton.tsx';
import { moistureWords } from '../../../words/moisture.ts';
import { packagesWords } from '../../../words/packages.ts';
import { partListWords } from '../../../words/part-list.ts';
import { partsWords } from '../../../words/parts.ts';
import { say } from '../../../words/words.ts';
import { formEntries, formToPart, type PartForm } from './part-list-model.ts';
import { smallPicture } from './small-picture.ts';

interface PartCardProps {
  readonly form: PartForm;
  /** The part as it was when the form was opened. */
  readonly before: ListedPart;
  readonly onChange: (form: PartForm) => void;
  readonly onClose: () => void;
  /** Null for a part that is not on the list. */
  readonly onRemove: (() => void) | null;
}

export function PartCard({ form, before, onChange, onClose, onRemove }: PartCardProps) {
  const app = useApp();
  const words = say(partListWords);
  const typed = formToPart(form);
  return (
    <section class="card form" data-testid="part-form">
      <TextFields form={form} onChange={onChange} isFirst />
      <ChosenFields form={form} onChange={onChange} />
      <TextFields form={form} onChange={onChange} isFirst={false} />
      <AreaField
        label={words.fields['supplierParts'] ?? ''}
        testId="part-makers"
        isWhole
        isCode
        rows={3}
        autocapitalize="off"
        value={form.makers}
        help={words.makersHelp}
        onInput={(makers) => onChange({ ...form, makers })}
      />
      {before.part !== '' && <PictureField part={before.part} />}
      <div class="whole row">
        <Button
          tone="act"
          large
          testId="part-save"
          disabledReason={'wrong' in typed ? words.wrong(words.fields[typed.wrong] ?? typed.wrong) : null}
          onPress={() => {
            if ('wrong' in typed) return;
            // Another number in the form is another part: nothing is withdrawn from the first.
            const was = typed.part === before.part ? before : { ...before, makers: [] };
            app.record([...formEntries(was, typed)], {
              notice: { tone: 'go', text: words.saved(typed.part) },
              next: onClose,
            });
          }}
        >
          {words.save}
        </Button>
        {onRemove !== null && (
          <Button large testId="part-remove" onPress={onRemove}>
            {words.remove}
          </Button>
        )}
        <Button large onPress={onClose}>
          {say(partsWords).cancel}
        </Button>
      </div>
    </section>
  );
}

interface FieldsProps {
  readonly form: PartForm;
  readonly onChange: (form: PartForm) => void;
}

const texts = ['part', 'description', 'value', 'tolerance', 'package'] as const;
const figures = [
  'pins',
  'bodySize',
  'bodyThickness',
  'tapeWidth',
  'pitch',
  'ageMonths',
  'orientation',
  'price',
  'currency',
] as const;

/** What is typed: names first, figures behind what is chosen. */
function TextFields({ form, onChange, isFirst }: FieldsProps & { readonly isFirst: boolean }) {
  const words = say(partListWords);
  return (
    <>
      {(isFirst ? texts : figures).map((field) => (
        <Field
          key={field}
          label={words.fields[field] ?? field}
          testId={`part-${field}`}
          autocomplete="off"
          maxLength={field === 'part' ? 64 : 200}
          isCode={field === 'part'}
          value={form[field]}
          onInput={(text) => onChange({ ...form, [field]: text })}
        />
      ))}
    </>
  );
}

/** What is chosen out of a few. */
function ChosenFields({ form, onChange }: FieldsProps) {
  const words = say(partListWords);
  const { families } = say(moistureWords);
  const select = <T extends string>(
    field: 'family' | 'msl' | 'comesIn',
    label: string,
    choices: readonly (readonly [T, string])[],
  ) => (
    <SelectField
      label={label}
      testId={`part-${field}`}
      value={form[field] ?? ''}
      onChoose={(chosen) =>
        onChange({ ...form, [field]: choices.find(([value]) => value === chosen)?.[0] ?? null })
      }
    >
      <option value="">{words.notKnown}</option>
      {choices.map(([value, text]) => (
        <option key={value} value={value}>
          {text}
        </option>
      ))}
    </SelectField>
  );
  return (
    <>
      {select(
        'family',
        say(packagesWords).family,
        packageFamilies.map((each) => [each, families[each]]),
      )}
      {select(
        'msl',
        words.fields['msl'] ?? '',
        moistureLevels.map((each) => [each, each]),
      )}
      {select(
        'comesIn',
        words.fields['comesIn'] ?? '',
        packageKinds.map((each) => [each, words.comesIn[each]]),
      )}
    </>
  );
}

/** The picture that people see beside the part; made small on this tablet before it is kept. */
function PictureField({ part }: { readonly part: string }) {
  const app = useApp();
  const floor = useFloor();
  const words = say(partListWords);
  const there = floor.pictures.get(part);
  const entry = (picture: string | null): DraftEntry => ({
    kind: 'part.pictured',
    payload: { part, picture },
  });
  async function take(file: File): Promise<void> {
    const picture = await smallPicture(file);
    if (picture === null) app.notice.value = { tone: 'care', text: words.pictureWrong };
    else app.record([entry(picture)]);
  }
  return (
    <GroupField label={words.picture} isWhole>
      <div class="row">
        {there !== undefined && <img class="part-picture" src={there} alt={words.pictureOf(part)} />}
        <FileButton
          icon="camera"
          tone="plain"
          accept="image/*"
          testId="part-picture"
          onFile={(file) => void take(file)}
        >
          {words.pictureAdd}
        </FileButton>
        {there !== undefined && (
          <Button testId="part-picture-gone" onPress={() => app.record([entry(null)])}>
            {words.pictureGone}
          </Button>
        )}
      </div>
    </GroupField>
  );
}
