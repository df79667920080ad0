interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(url: string): string },
  ): { createScriptURL(url: string): unknown };
}

/** Starts workers from this one script; the page's policy lets them be made from nothing else. */
export function workerScript(scriptUrl: string): (name: string) => Worker {
  const { trustedTypes } = globalThis as { trustedTypes?: TrustedTypes };
  const policy = trustedTypes?.createPolicy('boughlight-worker', {
    createScriptURL: (url) => {
      if (url !== scriptUrl) throw new Error(`workerScript: no worker is made from ${url}`);
      return url;
    },
  });
  const trusted = policy === undefined ? scriptUrl : (policy.createScriptURL(scriptUrl) as string);
  return (name) => new Worker(trusted, { type: 'module', name });
}
