/** `boughlight scene FILE` */

import { sceneGlb } from '../document/scene/sceneGlb.ts';
import { asOneScene } from '../document/views.ts';
import { lightJob } from '../engine/lightJob.ts';
import { runJob } from '../engine/runJob.ts';
import { sceneOf, withThrownLight } from '../engine/sceneOf.ts';
import { rayOptions } from './rayOptions.ts';
import { misuse, type Read } from './read.ts';
import { readWork, tellNotes } from './readTree.ts';
import type { WorkRequest } from './request.ts';
import type { Workplace } from './workplace.ts';

const megabytes = (bytes: Uint8Array): string => (bytes.length / 1e6).toFixed(1);

/**
 * Traces the tree as `light` does, by the same job, and hands over what was traced. A pot that is turned stays as it stands at bud
 * break; light that walls throw back stands apart.
 */
export async function sceneCommand(request: WorkRequest, { terminal }: Workplace): Promise<Read<string>> {
  const tree = await readWork(request, terminal);
  if (!tree.ok) return tree;
  const { file, leftOut, isThrownBeside } = asOneScene(tree.value);
  tellNotes(leftOut, terminal);
  const { period, weather, sky, glb, json } = request;
  const options = {
    ...(period === undefined ? {} : { period }),
    ...(weather === undefined ? {} : { weather }),
    ...(sky === undefined ? {} : { sky }),
    ...rayOptions(request),
  };
  const trace = (site: typeof file.site) =>
    runJob(lightJob({ ...file, site }, options, null), ({ doing, done }) =>
      terminal.showProgress?.(doing, done),
    ).result;
  const { traced, answer } = await trace(file.site);
  const dark = sceneOf(traced, answer);
  const scene = isThrownBeside
    ? withThrownLight(dark, await trace({ ...file.site, wallsThrowLight: true }))
    : dark;
  let written = '';
  if (glb !== undefined) {
    const bytes = sceneGlb({
      scene,
      name: file.name,
      names: new Map(answer.report.shoots.map(({ id, name }) => [id, name])),
      receiverShares: answer.nodes.map(({ share }) => share),
    });
    try {
      await terminal.writeFile(glb, bytes);
    } catch (error) {
      return misuse(
        `${glb}: the file cannot be written (${error instanceof Error ? error.message : String(error)}).`,
      );
    }
    written = `${glb}: ${file.name} as glTF, ${megabytes(bytes)} MB.\n`;
  }
  return { ok: true, value: json ? `${JSON.stringify(scene)}\n` : written };
}
