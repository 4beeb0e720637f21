// What parts there are and may be used, and on which feeders: the part list, supplier parts, feeders, blocks; packages and the moisture tables that they are looked up in. Each list has an address of its own.

import { useFloor } from '../../../app.ts';
import { address, place } from '../../../router.ts';
import { partsWords } from '../../../words/parts.ts';
import { formatCount, say } from '../../../words/words.ts';
import { Approvals } from './Approvals.tsx';
import { Blocks } from './Blocks.tsx';
import { Feeders } from './Feeders.tsx';
import { FeederTypes } from './FeederTypes.tsx';
import { MoistureTables } from './MoistureTables.tsx';
import { Packages } from './Packages.tsx';
import { PartList } from './PartList.tsx';
import { listedPackages } from './packages-model.ts';
import { ReelCounts } from './ReelCounts.tsx';
import './parts.css';

const tabs = ['list', 'approved', 'feeders', 'types', 'blocks', 'packages', 'moisture'] as const;

export function Parts() {
  const floor = useFloor();
  const words = say(partsWords);
  const tab = tabs.find((each) => each === place.value.rest[1]) ?? 'approved';
  // A file of counted reels comes from the reels’ own screen, and is read as the other lists are.
  if (place.value.rest[1] === 'counts') return <ReelCounts />;
  const counts = {
    list: floor.listed.size,
    approved: floor.approvals.size,
    feeders: floor.feeders.size,
    types: floor.feederTypes.size,
    blocks: floor.blocks.size,
    packages: listedPackages(floor).length,
    moisture: null,
  };
  return (
    <div class="stack parts">
      <nav class="choice" aria-label={words.tabs[tab]}>
        {tabs.map((each) => (
          <a
            key={each}
            href={address('plant', 'parts', each)}
            data-testid={`parts-${each}`}
            {...(each === tab ? { 'aria-current': 'page' as const } : {})}
          >
            {words.tabs[each]}{' '}
            {counts[each] !== null && <span class="soft">{formatCount(counts[each])}</span>}
          </a>
        ))}
      </nav>
      {tab === 'list' && <PartList />}
      {tab === 'approved' && <Approvals />}
      {tab === 'feeders' && <Feeders />}
      {tab === 'types' && <FeederTypes />}
      {tab === 'blocks' && <Blocks />}
      {tab === 'packages' && <Packages />}
      {tab === 'moisture' && <MoistureTables />}
    </div>
  );
}
