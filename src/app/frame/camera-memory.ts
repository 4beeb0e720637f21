// Which camera of the device was used last: a preference of this tablet.

import type { App } from '../app.ts';
import type { CameraMemory } from '../scan/camera.ts';

/** The tablet's memory of its camera. */
export function cameraMemory(app: App): CameraMemory {
  return {
    read: () => app.preferences.peek().camera,
    write: (id) => {
      app.preferences.value = { ...app.preferences.peek(), camera: id };
    },
  };
}
