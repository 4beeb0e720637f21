import { generate } from 'lean-qr';
import { useEffect, useRef } from 'preact/hooks';

/** A QR code: dark on light whatever the theme, since some readers do not take the inverse. */
export function Qr({ text }: { readonly text: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    if (canvas.current)
      generate(text).toCanvas(canvas.current, { on: [0, 0, 0, 255], off: [255, 255, 255, 255] });
  }, [text]);
  return <canvas class="qr" ref={canvas} role="img" aria-label={text} />;
}
