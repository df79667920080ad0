/**
 * Finds a browser for the tests, in this order: the variable BOUGHLIGHT_BROWSER, the one that came with
 * Playwright, a Chromium, Chrome or Edge of this machine; then, when allowed to install: Debian's and Ubuntu's own
 * package (as root), Playwright's download.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { root } from './fingerprint.mjs';

/** Where systems put their browsers; the wrapper scripts of Debian come after what they start. */
function usualPlaces() {
  const { ProgramFiles, 'ProgramFiles(x86)': programFilesX86, LOCALAPPDATA, PATH = '' } = process.env;
  const windows = [ProgramFiles, programFilesX86, LOCALAPPDATA]
    .filter((folder) => folder !== undefined)
    .flatMap((folder) => [
      join(folder, 'Google/Chrome/Application/chrome.exe'),
      join(folder, 'Microsoft/Edge/Application/msedge.exe'),
    ]);
  const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge'];
  const onPath = PATH.split(process.platform === 'win32' ? ';' : ':').flatMap((folder) =>
    names.map((name) => join(folder, name)),
  );
  return [
    '/usr/lib/chromium/chromium',
    '/usr/lib/chromium-browser/chromium-browser',
    '/opt/google/chrome/chrome',
    ...onPath,
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ...windows,
  ];
}

/** @returns {string | null} path of a browser that is there */
export function findBrowser() {
  const told = process.env.BOUGHLIGHT_BROWSER;
  if (told !== undefined && told !== '') {
    if (!existsSync(told)) throw new Error(`BOUGHLIGHT_BROWSER: there is no file ${told}`);
    return told;
  }
  const own = chromium.executablePath();
  if (own !== '' && existsSync(own)) return own;
  return usualPlaces().find((path) => existsSync(path)) ?? null;
}

/** @param {string} command @param {string[]} args */
const runs = (command, args) =>
  spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

function installFromSystem() {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return;
  const install = ['install', '-y', '-qq', '--no-install-recommends', 'chromium'];
  if (!runs('apt-get', install) && runs('apt-get', ['update', '-qq'])) runs('apt-get', install);
}

function installFromPlaywright() {
  const cli = createRequire(import.meta.url).resolve('@playwright/test/cli');
  runs(process.execPath, [cli, 'install', 'chromium']);
}

/** Finds a browser or installs one; throws with what to do when neither works. */
export function ensureBrowser() {
  for (const install of [installFromSystem, installFromPlaywright]) {
    const found = findBrowser();
    if (found !== null) return found;
    console.log('Installing a browser for the tests (once) ...');
    install();
  }
  const found = findBrowser();
  if (found !== null) return found;
  throw new Error(
    'No browser found for the tests. Install Chromium, Chrome or Edge, or set BOUGHLIGHT_BROWSER to the path of one.',
  );
}
