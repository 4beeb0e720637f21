// Drags a part to another slot with mouse or finger. Method: pointer events on a handle, which alone is kept from scrolling; what lies under the finger says
// by `data-drop` which slot it is. Refused: the browser's own dragging, which no finger starts.

import { useEffect, useRef, useState } from 'preact/hooks';

/** A part on its way: where the finger is, and the slot under it. */
export interface SlotDrag {
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly over: string | null;
}

/** px from the edge of the window in which a held part scrolls the page, and px a frame. */
const EDGE = 96;
const STEP = 14;

/** The slot that lies at a point. */
function slotAt(x: number, y: number): string | null {
  const [found] = document.elementsFromPoint(x, y).flatMap((element) => {
    const place = element.closest('[data-drop]');
    return place instanceof HTMLElement ? [place.dataset['drop'] ?? ''] : [];
  });
  return found ?? null;
}

/** What scrolls around an element. */
function scrollerOf(element: Element): Element | null {
  for (let at: Element | null = element.parentElement; at !== null; at = at.parentElement)
    if (at.scrollHeight > at.clientHeight && /auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
  return document.scrollingElement;
}

/** Dragging of parts; `onDrop` gets the part and the slot that it was let go over. */
export function useSlotDrag(onDrop: (part: string, slot: string) => void) {
  const [drag, setDrag] = useState<SlotDrag | null>(null);
  const scroller = useRef<Element | null>(null);
  const isHeld = drag !== null;
  const now = useRef(drag);
  now.current = drag;
  useEffect(() => {
    if (!isHeld) return;
    let frame = 0;
    const step = () => {
      const at = now.current;
      const [top, bottom] = [EDGE, innerHeight - EDGE];
      const by = at === null ? 0 : at.y < top ? -STEP : at.y > bottom ? STEP : 0;
      if (at !== null && by !== 0 && scroller.current !== null) {
        scroller.current.scrollBy(0, by);
        setDrag({ ...at, over: slotAt(at.x, at.y) });
      }
      frame = requestAnimationFrame(step);
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape') setDrag(null);
    };
    frame = requestAnimationFrame(step);
    addEventListener('keydown', onKey);
    return () => {
      cancelAnimationFrame(frame);
      removeEventListener('keydown', onKey);
    };
  }, [isHeld]);
  /** What a part's handle listens to. */
  const handle = (part: string) => ({
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      scroller.current = scrollerOf(event.currentTarget);
      setDrag({ part, x: event.clientX, y: event.clientY, over: null });
    },
    onPointerMove: ({ clientX: x, clientY: y }: PointerEvent) => {
      if (now.current?.part === part) setDrag({ part, x, y, over: slotAt(x, y) });
    },
    onPointerUp: ({ clientX, clientY }: PointerEvent) => {
      if (now.current?.part !== part) return;
      const slot = slotAt(clientX, clientY);
      setDrag(null);
      if (slot !== null) onDrop(part, slot);
    },
    onPointerCancel: () => setDrag(null),
  });
  return { drag, handle };
}
