// The plant's list of its parts: what is known of each, from a list that came in, a package entered by hand, or a setup; changed one by one here.

import { useMemo, useState } from 'preact/hooks';
import { lookedAt } from '../../../../../shared/floor/look-alikes.ts';
import type { ListedPart } from '../../../../../shared/sheet/part-list.ts';
import { useApp, useFloor } from '../../../app.ts';
import { LookAlikes } from '../../../frame/LookAlikes.tsx';
import { useRefusal } from '../../../may.ts';
import { address, place } from '../../../router.ts';
import { Button } from '../../../ui/Button.tsx';
import { moistureWords } from '../../../words/moisture.ts';
import { formatMoney } from '../../../words/money.ts';
import { packagesWords } from '../../../words/packages.ts';
import { partListWords } from '../../../words/part-list.ts';
import { formatNumber, say } from '../../../words/words.ts';
import { ImportParts } from './ImportParts.tsx';
import { ListPage, WithdrawDialog } from './ListPage.tsx';
import { matches } from './model.ts';
import { PartCard } from './PartCard.tsx';
import { knownParts, makersByPart, type PartForm, partAsListed, partForm } from './part-list-model.ts';
import { useScans } from './shared.tsx';

export function PartList() {
  return place.value.rest[2] === 'import' ? <ImportParts /> : <AllParts />;
}

function AllParts() {
  const app = useApp();
  const floor = useFloor();
  const words = say(partListWords);
  const refusal = useRefusal('describe-part');
  const [search, setSearch] = useState('');
  const [form, setForm] = useState<{ readonly typed: PartForm; readonly before: ListedPart } | null>(null);
  const [removing, setRemoving] = useState<string | null>(null);
  useScans(({ raw, part }) => {
    if (form === null) setSearch(part ?? raw);
    else setForm({ ...form, typed: { ...form.typed, part: part ?? raw } });
  });
  const parts = useMemo(() => knownParts(floor), [floor.listed.size, floor.parts.size, floor.setups.size]);
  const makers = makersByPart(floor);
  const found =
    search === ''
      ? parts
      : parts.filter((part) => {
          const { value, package: packed } = lookedAt(floor, part);
          return matches(search, [part, value, packed, floor.listed.get(part)?.description ?? null]);
        });
  const edit = (part: string) => {
    const before = partAsListed(floor, part, makers.get(part) ?? []);
    setForm({ before, typed: partForm(before) });
  };
  const setup = floor.chosen.get(app.line.value ?? '');
  const alikes = form === null && search === '' && setup !== undefined && <LookAlikes setup={setup} />;
  return (
    <ListPage
      search={{ value: search, onChange: setSearch }}
      add={{ label: words.add, testId: 'listed-add', refusal, onPress: () => edit(search.trim()) }}
      acts={
        refusal === null ? (
          <a class="button" href={address('plant', 'parts', 'list', 'import')} data-testid="listed-import">
            {words.import}
          </a>
        ) : null
      }
      form={
        form && (
          <PartCard
            form={form.typed}
            before={form.before}
            onChange={(typed) => setForm({ ...form, typed })}
            onClose={() => setForm(null)}
            onRemove={floor.listed.has(form.before.part) ? () => setRemoving(form.before.part) : null}
          />
        )
      }
      count={parts.length}
      none={words.none}
      noneHelp={words.noneHelp}
      found={found}
      noMatch={words.noMatch(search)}
      above={alikes}
      keyOf={(part) => part}
      draw={(part) => (
        <PartRow
          key={part}
          part={partAsListed(floor, part, makers.get(part) ?? [])}
          isListed={floor.listed.has(part)}
          picture={floor.pictures.get(part) ?? null}
          refusal={refusal}
          onEdit={() => edit(part)}
        />
      )}
    >
      {removing !== null && (
        <WithdrawDialog
          title={words.removeTitle(removing)}
          why={words.removeWhy}
          act={words.remove}
          entry={(reason) => ({ kind: 'part.unlisted', payload: { part: removing, reason } })}
          done={words.removed(removing)}
          onClose={() => {
            setRemoving(null);
            setForm(null);
          }}
        />
      )}
    </ListPage>
  );
}

interface PartRowProps {
  readonly part: ListedPart;
  readonly isListed: boolean;
  readonly picture: string | null;
  readonly refusal: string | null;
  readonly onEdit: () => void;
}

function PartRow({ part, isListed, picture, refusal, onEdit }: PartRowProps) {
  const words = say(partListWords);
  return (
    <div class="listed" data-testid={`listed-${part.part}`}>
      {picture !== null && (
        <img class="part-picture" src={picture} alt={words.pictureOf(part.part)} width={64} height={64} />
      )}
      <span class="grow">
        <b class="code" translate={false}>
          {part.part}
        </b>{' '}
        <span class="soft">{part.description}</span>{' '}
        {!isListed && <span class="chip plain">{words.notListed}</span>}
        <br />
        <span class="soft">{factsOf(part).join(' · ')}</span>
      </span>
      <Button disabledReason={refusal} testId={`listed-edit-${part.part}`} onPress={onEdit}>
        {words.change}
      </Button>
    </div>
  );
}

/** What a row says of a part, in its order. */
function factsOf(part: ListedPart): readonly string[] {
  const words = say(partListWords);
  const packages = say(packagesWords);
  const tape = [part.tapeWidthMm, part.pitchMm].filter((each) => each !== null).map(formatNumber);
  const value = [part.value, part.tolerance].filter((each) => each !== null).join(' ');
  return [
    value,
    part.package ?? (part.family === null ? '' : say(moistureWords).families[part.family]),
    part.msl === null ? '' : packages.level(part.msl),
    part.comesIn === null ? '' : words.comesIn[part.comesIn],
    tape.length === 0 ? '' : `${tape.join(' / ')} mm`,
    part.ageMonths === null ? '' : words.ageLimit(part.ageMonths),
    part.makers.length === 0 ? '' : words.makers(part.makers.length),
    part.orientation ?? '',
    part.price === undefined
      ? ''
      : [formatMoney(part.price.each), part.price.currency ?? ''].join(' ').trim(),
  ].filter((text) => text !== '');
}
