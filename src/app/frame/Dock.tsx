// The dock never moves: whatever is scanned lands here, and the wells show what the task still wants.

import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import {
  type Desk,
  type DeskView,
  deskAct,
  deskWells,
  suggestedSlots,
  type Well,
} from '../../../shared/desk/model.ts';
import { type App, useApp, useFloor } from '../app.ts';
import type { DeskRun } from '../desk/desk.ts';
import { later } from '../device/later.ts';
import { lineToTell, slotToTell } from '../line-in-hand.ts';
import { goTo, place } from '../router.ts';
import { Button } from '../ui/Button.tsx';
import { Icon } from '../ui/Icon.tsx';
import { dockWords } from '../words/dock.ts';
import { feedWords } from '../words/feeds.ts';
import { shellWords } from '../words/shell.ts';
import { formatTime, say } from '../words/words.ts';
import { nextPiece, reelName } from './label-so-far.ts';
import { lazy } from './lazy.tsx';

// It says words of the verdict, which the first screen does not need.
const LeadWanted = lazy(() => import('./LeadWanted.tsx').then((module) => module.LeadWanted));

interface DockProps {
  readonly desk: DeskRun;
  readonly isCameraOpen: boolean;
  /** Opens the camera, or closes it where it is open. */
  readonly onCamera: () => void;
  readonly onType: () => void;
}

function wellText(desk: Desk, well: Well): string | null {
  switch (well) {
    case 'slot':
      return desk.slot;
    case 'feeder':
      return desk.feeder;
    case 'old-reel':
      return desk.atSlot ? (desk.old?.reel ?? '✓') : null;
    case 'reel':
      return desk.reel ? reelName(desk.reel) : nextPiece(desk);
  }
}

/** Where a reel in hand belongs: the answer to "what is this" when no slot was scanned. */
function slotHint(homes: readonly string[]): string {
  const words = say(dockWords);
  return homes.length === 0 ? words.belongsNowhere : words.belongs(homes.slice(0, 3).join(', '));
}

/** Slots that the reel in hand may go to on the line in hand; where there is none, those of the other lines that the tablet serves. */
function homesIn(app: App, desk: Desk, view: DeskView): readonly string[] {
  const own = suggestedSlots(desk, view);
  if (own.length > 0) return own;
  return app.beside.value.flatMap((line) =>
    suggestedSlots(desk, { ...view, line }).map((slot) => slotToTell(app, line, slot)),
  );
}

/** Told beside the wells and not instead of them: the task goes on. */
const besideWells: ReadonlySet<string> = new Set(['sign-in', 'came-back', 'lead-wanted']);

/** What was told that is no verdict, as a sentence; null where there is nothing. */
function toldText(desk: Desk, zone: string): VNode | string | null {
  const words = say(dockWords);
  switch (desk.told?.tell) {
    case 'sign-in':
      return say(shellWords).signInFirst;
    case 'lead-wanted':
      return <LeadWanted reason={desk.told.reason} />;
    case 'came-back':
      return words.cameBack(formatTime(desk.told.atMs, zone));
    case 'unknown-slot':
      return words.unknownSlot(desk.told.slot);
    case 'unknown-code':
      return words.unknownCode(
        desk.told.text.length > 40 ? `${desk.told.text.slice(0, 40)}…` : desk.told.text,
      );
    case 'cart':
      return words.cartHere(desk.told.cart);
    case 'place':
      return words.placeHere(desk.told.place);
    case 'half-label':
      return words.halfLabel;
    case 'no-part':
      return words.noPart;
    case 'symbols-missing':
      return words.symbolsMissing(desk.told.have, desk.told.of);
    case 'wrong-keyboard':
      return words.wrongKeyboard(desk.told.layout);
    case 'old-reel-differs':
      return words.oldReelDiffers(desk.told.slot, desk.told.loaded ?? '–');
    default:
      return null;
  }
}

/** The codes of a label that nothing here reads, where somebody could teach it; null else. */
function unreadLabel(desk: Desk): readonly string[] | null {
  const told = desk.told;
  if (told?.tell !== 'unknown-code' && told?.tell !== 'half-label' && told?.tell !== 'no-part') return null;
  return told.codes.length > 0 ? told.codes : null;
}

/** One tap from a cart's code to the question whether to dock it. */
function CartDoor({ cart, onGo }: { readonly cart: string; readonly onGo: () => void }) {
  return (
    <Button
      tone="act"
      large
      testId="dock-cart"
      onPress={() => {
        onGo();
        goTo('change', 'dock', cart);
      }}
    >
      {say(dockWords).cartDoor(cart)}
    </Button>
  );
}

/** When the camera closes, a keyboard is back on the button that opened it, unless it went elsewhere meanwhile. */
function useWayBack(isCameraOpen: boolean) {
  const section = useRef<HTMLElement>(null);
  const wasOpen = useRef(false);
  useEffect(() => {
    if (wasOpen.current && !isCameraOpen && document.activeElement === document.body)
      section.current?.querySelector<HTMLElement>('[aria-pressed]')?.focus();
    wasOpen.current = isCameraOpen;
  }, [isCameraOpen]);
  return section;
}

export function Dock({ desk, isCameraOpen, onCamera, onType }: DockProps) {
  const section = useWayBack(isCameraOpen);
  useEffect(() => later(LeadWanted.preload), []);
  const app = useApp();
  const floor = useFloor();
  const words = say(dockWords);
  const line = app.line.value;
  const state = desk.desk.value;
  const idle = state.slot === null && state.feeder === null && state.reel === null && state.partial === null;
  const told = toldText(state, floor.lines.get(line ?? '')?.zone ?? 'UTC');
  const unread = unreadLabel(state);
  const view = line === null ? null : { floor, line };
  const lineName = line === null ? null : lineToTell(app, line);
  const wells = view ? deskWells(state, view) : [];
  const act = view !== null && state.slot !== null ? deskAct(state, view) : 'load';
  const homes = view && state.slot === null ? homesIn(app, state, view) : [];
  const refused = desk.shown.value?.verdict === 'refused' ? desk.shown.value : null;
  // One blue act a screen: the line has its own, and so has what was told.
  const tellsAct = state.told?.tell === 'cart' || state.told?.tell === 'came-back';
  const hasOtherAct = tellsAct || (place.value.screen === 'line' && app.line.value !== null);
  const firstOpen = refused ? undefined : wells.find((well) => !well.filled)?.well;
  return (
    <section ref={section} class="dock" aria-label={words.scanAnything} data-testid="dock">
      {told !== null && (
        <div class="well told" role="alert" data-testid="told">
          <b>{told}</b>
        </div>
      )}
      {told === null && idle && (
        <div class="well" data-testid="well-idle" data-idle>
          <small>{state.mode === 'sweep' ? words.sweepOn : words.scanAnything}</small>
          <b>{words.scanAnythingHelp}</b>
        </div>
      )}
      {(told === null || (state.told !== null && besideWells.has(state.told.tell))) &&
        !idle &&
        wells.map(({ well, filled }) => {
          const name = act === 'splice' && well === 'reel' ? 'new-reel' : well;
          const instead = well === 'reel' && (act === 'exchange' || act === 'refill') ? act : null;
          const text = wellText(state, well);
          return (
            <div
              class={`well${filled ? ' in' : ''}${well === firstOpen ? ' next' : ''}${well === refused?.bad ? ' bad' : ''}`}
              key={well}
              data-testid={`well-${well}`}
              data-filled={filled}
            >
              <small>
                {well === refused?.bad && '✕ '}
                {well === 'slot' && lineName !== null && `${lineName} · `}
                {instead === null ? words.wells[name] : say(feedWords).comesNext[instead]}
                {well === 'reel' && state.partial && ` ${reelName(state.partial)}`}
              </small>
              <b translate={false}>
                {text ??
                  (refused && !filled && well !== 'reel' ? words.notNow : null) ??
                  (well === 'slot' && (state.reel ?? state.partial) ? slotHint(homes) : words.wants[name])}
              </b>
            </div>
          );
        })}
      {state.told?.tell === 'cart' && (
        <CartDoor
          cart={state.told.cart}
          onGo={() => {
            desk.desk.value = { ...state, told: null };
          }}
        />
      )}
      {state.told?.tell === 'old-reel-differs' && (
        <Button large testId="dock-stands-here" onPress={desk.standsHere}>
          {words.standsHere}
        </Button>
      )}
      {unread !== null && (
        <Button
          large
          testId="dock-teach"
          onPress={() => {
            app.unreadLabel.value = unread;
            desk.desk.value = { ...state, told: null };
            goTo('plant', 'labels');
          }}
        >
          {words.teachLabel}
        </Button>
      )}
      {state.partial !== null && told === null && (
        <Button large onPress={desk.takeEnough} testId="dock-enough">
          {words.enough}
        </Button>
      )}
      {state.told?.tell === 'came-back' && (
        <Button large tone="act" onPress={desk.goOnWith} testId="dock-go-on">
          {words.goOnWith}
        </Button>
      )}
      {!idle || told !== null ? (
        // Another button, not the same with another word: whoever stands on "Type" must not find himself on "Clear".
        <Button key="clear" large onPress={desk.clear} testId="dock-clear">
          {words.clear}
        </Button>
      ) : (
        <Button key="type" large onPress={onType} testId="dock-type">
          <Icon name="keyboard" /> {words.typeIt}
        </Button>
      )}
      <Button
        large
        tone={isCameraOpen || hasOtherAct ? 'plain' : 'act'}
        pressed={isCameraOpen}
        onPress={onCamera}
        testId="dock-camera"
      >
        <Icon name="camera" /> {words.camera}
      </Button>
    </section>
  );
}
