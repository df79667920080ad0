/** What the page's server has to say of safety; also written beside the built page for other hosts. */

/** Nothing from elsewhere, no inline code or style, no code from strings. */
const policy = {
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'object-src': "'none'",
  // Scripts and workers are made from addresses that the code names, never from text.
  'require-trusted-types-for': "'script'",
  'trusted-types': 'boughlight-worker',
};

const written = (/** @type {Record<string, string>} */ rules) =>
  Object.entries(rules)
    .map(([name, value]) => `${name} ${value}`)
    .join('; ');

/** For a meta element: what a page can say by itself. It does not cover workers, so headers come first. */
export const metaPolicy = written(policy);

/** @type {Record<string, string>} */
export const headers = {
  'Content-Security-Policy': written({ ...policy, 'frame-ancestors': "'none'" }),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=()',
};
