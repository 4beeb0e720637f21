// Where may this page load a script from? From its own server only, worker by worker and copy by copy: the server's policy lets nothing
// become a script that has not passed here. Browsers without that check go by the rest of the policy.

/** The browser's factory, as far as it is used. */
interface Trusted {
  readonly createPolicy: (
    name: 'default',
    rules: { readonly createScriptURL: (url: string) => string },
  ) => unknown;
}

/** Sets the page's one policy; called before anything that starts a worker. */
export function trustOwnScripts(): void {
  const { trustedTypes } = globalThis as { readonly trustedTypes?: Trusted }; // not in every browser
  trustedTypes?.createPolicy('default', {
    createScriptURL: (url) => {
      if (new URL(url, document.baseURI).origin === location.origin) return url;
      throw new TypeError(
        `Cannot load a script as it must come from this page's server: current value is ${url}`,
      );
    },
  });
}
