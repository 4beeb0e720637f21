import { describe, expect, it } from 'vitest';
import { type CameraMemory, openCamera } from '../../../../src/app/scan/camera.ts';

interface Lens {
  readonly deviceId: string;
  readonly label: string;
  readonly capabilities?: object;
}

/** A tablet with the given lenses; the first rear lens answers a wish for the rear. */
function createDevices(
  lenses: readonly Lens[],
  refuse: (constraints: MediaStreamConstraints) => string | null = () => null,
) {
  const asked: MediaStreamConstraints[] = [];
  const applied: object[] = [];
  const stopped: string[] = [];
  const streamOf = (lens: Lens) => {
    let readyState = 'live';
    const track = {
      label: lens.label,
      get readyState() {
        return readyState;
      },
      getSettings: () => ({ deviceId: lens.deviceId }),
      getCapabilities: () => lens.capabilities ?? {},
      applyConstraints: async (wish: { advanced: readonly object[] }) => {
        const [extra = {}] = wish.advanced;
        const has = Object.keys(extra).every((name) => name in (lens.capabilities ?? {}));
        if (!has) throw new DOMException('no such extra', 'OverconstrainedError');
        applied.push(extra);
      },
      stop: () => {
        readyState = 'ended';
        stopped.push(lens.deviceId);
      },
    };
    return { getVideoTracks: () => [track], getTracks: () => [track] };
  };
  const devices = {
    getUserMedia: async (constraints: MediaStreamConstraints) => {
      asked.push(constraints);
      const name = refuse(constraints);
      if (name !== null) throw new DOMException('refused', name);
      const video = constraints.video as { deviceId?: { ideal: string } } | true;
      const wanted = video === true ? undefined : video.deviceId?.ideal;
      const lens = lenses.find(({ deviceId }) => deviceId === wanted) ?? lenses[0];
      if (lens === undefined) throw new DOMException('none', 'NotFoundError');
      return streamOf(lens);
    },
    enumerateDevices: async () =>
      lenses.map(({ deviceId, label }) => ({ kind: 'videoinput', deviceId, label })),
  };
  return { devices: devices as unknown as MediaDevices, asked, applied, stopped }; // the parts that are used
}

function createMemory(kept: string | null = null): CameraMemory & { kept: () => string | null } {
  let value = kept;
  return {
    read: () => value,
    write: (deviceId) => {
      value = deviceId;
    },
    kept: () => value,
  };
}

const FIXED: Lens = { deviceId: 'wide', label: 'Back Wide', capabilities: { focusMode: ['manual'] } };
const SHARP: Lens = {
  deviceId: 'main',
  label: 'Back Main',
  capabilities: { focusMode: ['continuous'], torch: true, zoom: { min: 1, max: 4, step: 0.1 } },
};
const FRONT: Lens = { deviceId: 'front', label: 'Front', capabilities: { focusMode: ['continuous'] } };

describe('openCamera()', () => {
  it('asks once, with wishes only, and remembers the lens', async () => {
    const { devices, asked, applied } = createDevices([SHARP, FRONT]);
    const memory = createMemory();
    const opened = await openCamera({ devices, memory });
    expect(opened.ok && opened.value).toMatchObject({
      deviceId: 'main',
      focus: 'continuous',
      hasTorch: true,
    });
    expect([asked.length, JSON.stringify(asked[0]).includes('exact'), memory.kept()]).toEqual([
      1,
      false,
      'main',
    ]);
    expect(applied).toEqual([{ focusMode: 'continuous' }]);
  });

  it('leaves a rear lens of fixed focus for one that focuses, and not for the front one', async () => {
    const { devices, stopped } = createDevices([FIXED, FRONT, SHARP]);
    const opened = await openCamera({ devices, memory: createMemory() });
    expect([opened.ok && opened.value.deviceId, stopped]).toEqual(['main', ['wide']]);
  });

  it('keeps the fixed lens when no other rear lens focuses', async () => {
    const { devices } = createDevices([FIXED, FRONT]);
    const opened = await openCamera({ devices, memory: createMemory() });
    expect(opened.ok && [opened.value.deviceId, opened.value.focus]).toEqual(['wide', 'fixed']);
  });

  it('takes the remembered lens without looking for a better one', async () => {
    const { devices, asked } = createDevices([SHARP, FIXED]);
    const opened = await openCamera({ devices, memory: createMemory('wide') });
    expect([opened.ok && opened.value.deviceId, asked.length]).toEqual(['wide', 1]);
  });

  it('takes the lens chosen by hand over the remembered one', async () => {
    const { devices } = createDevices([SHARP, FRONT]);
    const memory = createMemory('main');
    const opened = await openCamera({ devices, memory, deviceId: 'front' });
    expect([opened.ok && opened.value.deviceId, memory.kept()]).toEqual(['front', 'front']);
  });

  it('goes on when an extra is refused', async () => {
    const { devices } = createDevices([{ deviceId: 'plain', label: 'Camera' }]);
    const opened = await openCamera({ devices, memory: createMemory() });
    if (!opened.ok) throw new Error(opened.error.code);
    const { hasTorch, zoom, focus } = opened.value;
    expect([hasTorch, zoom, focus]).toEqual([false, null, 'unknown']);
    expect(await opened.value.setTorch(true)).toBe(false);
    expect(await opened.value.setZoom(2)).toBe(false);
  });

  it('opens without any wish where wishes are refused', async () => {
    const { devices, asked } = createDevices([SHARP], ({ video }) =>
      video === true ? null : 'OverconstrainedError',
    );
    const opened = await openCamera({ devices, memory: createMemory() });
    expect([opened.ok, asked.length]).toEqual([true, 2]);
  });

  const problems = [
    ['NotAllowedError', 'denied'],
    ['NotFoundError', 'absent'],
    ['NotReadableError', 'busy'],
  ] as const;
  for (const [name, code] of problems) {
    it(`answers ${code} for ${name} without asking a second time`, async () => {
      const { devices, asked } = createDevices([SHARP], () => name);
      const opened = await openCamera({ devices, memory: createMemory() });
      expect([!opened.ok && opened.error.code, asked.length]).toEqual([code, 1]);
    });
  }

  it('answers insecure on a page without TLS', async () => {
    const opened = await openCamera({ devices: undefined, memory: createMemory() });
    expect(!opened.ok && opened.error.code).toBe('insecure');
  });
});
