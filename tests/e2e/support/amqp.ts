// A machine's side of AMQP 1.0, for tests that send what a machine would.

import * as library from 'rhea';

const rhea = (library as unknown as { readonly default: typeof library }).default;

/** Sends envelopes as one message of a machine to `HOST:PORT`; resolves when it is accepted. */
export async function sendEnvelopes(at: string, envelopes: readonly object[]): Promise<void> {
  const [host = '', port = ''] = at.split(':');
  const container = rhea.create_container();
  await new Promise<void>((resolve, reject) => {
    container.on('sendable', ({ sender }) => {
      if (container.listeners('accepted').length > 0) return;
      container.on('accepted', ({ connection }) => {
        connection.close();
        resolve();
      });
      sender?.send({ body: rhea.message.data_section(Buffer.from(JSON.stringify(envelopes))) });
    });
    container.on('disconnected', () => reject(new Error('the machine was cut off')));
    container.connect({ host, port: Number(port), reconnect: false }).open_sender('machines');
  });
}
