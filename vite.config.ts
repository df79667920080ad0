/** How the page is built and served. The headless command is built by `scripts/build.mjs`. */
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { headers, metaPolicy } from './scripts/headers.mjs';

/** Puts the security policy into the built page and a recipe of headers for static hosts beside it. */
function securityPolicy(): Plugin {
  return {
    name: 'boughlight-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: metaPolicy },
        injectTo: 'head-prepend',
      },
    ],
    generateBundle() {
      const lines = Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`);
      this.emitFile({ type: 'asset', fileName: '_headers', source: `/*\n${lines.join('\n')}\n` });
    },
  };
}

export default defineConfig({
  // Relative, so that the built page works from any folder of any host.
  base: './',
  // A file that is not there is not found: no page in its place.
  appType: 'mpa',
  plugins: [react(), securityPolicy()],
  worker: { format: 'es' },
  build: {
    outDir: 'dist/page',
    target: 'es2022',
    // The policy allows no data: addresses.
    assetsInlineLimit: 0,
    // The stage (three) is loaded on its own, after the first picture of the page.
    chunkSizeWarningLimit: 1200,
    modulePreload: { polyfill: false },
  },
  preview: { host: 'localhost', port: 4173, headers },
});
