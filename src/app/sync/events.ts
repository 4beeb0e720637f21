// Reads server-sent events from a signed request's body. The browser's own EventSource was passed over: it cannot sign.
// Source: WHATWG HTML, "Server-sent events", the event stream format; only `data` matters here.

/** Yields the data of each event until the stream ends. Comments and other fields are passed over. */
export async function* readEvents(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.getReader();
  const decoder = new TextDecoder();
  let rest = '';
  let data: string[] = [];
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      rest += decoder.decode(value, { stream: true });
      const lines = rest.split(/\r\n|\n|\r(?!$)/);
      rest = lines.pop() ?? '';
      for (const line of lines) {
        if (line === '') {
          if (data.length > 0) yield data.join('\n');
          data = [];
        } else if (line.startsWith('data:')) data.push(line.slice(5).replace(/^ /, ''));
      }
      // Beats come as comments; yielding nothing lets the caller see that the stream lives.
      yield '';
    }
  } finally {
    await reader.cancel().catch(() => undefined); // a broken stream cannot be cancelled, which is what was wanted
  }
}
